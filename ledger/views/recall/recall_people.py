"""Who has bars that a recall reaches, and where others were sold to nobody known."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from ledger.rows.bars import BarCount, BarsWith
from ledger.rows.lot import LotRow
from ledger.rows.people import Contact, CustomerCard
from ledger.views.recall.recall import RecallAnswer, SoldAt, ToCall

_GIFT, _LEFT_OUT = " (a gift)", ""
SOMEBODY, PERSON = "a private customer", "a private person"


def without_a_name(one: ToCall) -> ToCall:
    """The same for others to read: a private person without name and details, who complained by number alone."""
    if not one.private:
        return one
    if one.complaint:
        name = f"complaint {one.complaint}"
    else:
        name = "a gift" if one.name.endswith(_GIFT) else SOMEBODY
    phone = _LEFT_OUT if one.phone is not None else None
    return one._replace(name=name, phone=phone, email=None, address=None)


def without_names(answer: RecallAnswer) -> RecallAnswer:
    """The whole answer for others to read: private persons without names and details, in every table of it."""
    return replace(
        answer,
        call=tuple(map(without_a_name, answer.call)),
        bars=tuple(replace(one, detail=PERSON, contact=None) if one.private else one for one in answer.bars),
    )


def left_out(one: ToCall) -> bool:
    """Whether there is a telephone number, and it was left out."""
    return one.phone == _LEFT_OUT


def names_persons(answer: RecallAnswer) -> bool:
    """Whether a private person is named in it."""
    return answer != without_names(answer)


def to_call(found: Sequence[BarsWith], known: Mapping[int, Contact] | Mapping[int, CustomerCard]) -> tuple[ToCall, ...]:
    """Everyone who has bars, who has most first; someone who gave all of theirs back is called no more."""
    return tuple(sorted((_to_call(one, known) for one in found), key=lambda one: (-one.bars, one.name)))


def _to_call(one: BarsWith, known: Mapping[int, Contact] | Mapping[int, CustomerCard]) -> ToCall:
    if one.customer_id is None:
        name = f"{one.note or 'someone not named'}{_GIFT}"
        return ToCall(name, None, None, None, one.bars, one.codes, one.last_on, private=True)
    card = known[one.customer_id]
    return ToCall(
        name=card.name + (f" ({card.person})" if card.kind == "shop" and card.person else ""),
        phone=card.phone,
        email=card.email,
        address=card.address,
        bars=one.bars,
        batches=one.codes,
        last_on=one.last_on,
        private=card.kind == "person",
        customer_id=one.customer_id,
    )


def contact_words(card: Contact | None) -> str | None:
    """Person, telephone and mail in one line; None where nothing is known."""
    if card is None:
        return None
    return ", ".join(word for word in (card.person, card.phone, card.email) if word) or None


def sold_at(counts: Sequence[BarCount], lots: Mapping[int, LotRow]) -> tuple[SoldAt, ...]:
    """Every place where bars were sold to buyers who are not on the books, with the days between which they were.

    What came back from there, as was said when it was booked, is taken off.
    """
    found: dict[str, SoldAt] = {}
    for one in counts:
        if one.where == "sold" and one.customer_id is None and one.on is not None:
            code = lots[one.lot_id].code
            so_far = found.get(one.detail, SoldAt(one.detail, 0, one.on, one.on, ()))
            found[one.detail] = SoldAt(
                one.detail,
                so_far.bars + one.count,
                min(so_far.first_on, one.on),
                max(so_far.last_on, one.on),
                so_far.batches if code in so_far.batches[-1:] else (*so_far.batches, code),
            )
    left = [one._replace(bars=one.bars - _back_from(one.place, counts)) for one in found.values()]
    return tuple(sorted((one for one in left if one.bars > 0), key=lambda one: (-one.bars, one.place)))


def _back_from(place: str, counts: Sequence[BarCount]) -> int:
    said = f"sold at {place}"  # as a return is booked
    back = (one for one in counts if one.left and one.where == "returned" and one.customer_id is None)
    return sum(-one.count for one in back if one.detail == said or one.detail.startswith(f"{said}; "))
