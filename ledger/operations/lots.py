"""What is decided about a lot, counted of it, or thrown away."""

from collections.abc import Sequence
from datetime import date

from ledger.domain.quantity import show_mass
from ledger.errors import BadInput, Refused
from ledger.storage.book import Book
from ledger.storage.tables import Decision, Movement
from ledger.views.lots import LotRow, find_lot, on_hand_at, place_of_kind, places
from ledger.views.reading import Rows
from ledger.views.settings import settings


def decide_lots(
    book: Book, codes: Sequence[str], *, verdict: str, on: date, by: str, reason: str | None
) -> tuple[LotRow, ...]:
    """Accept, reject or hold lots: a decision by a named person, superseding the one before.

    Raises BadInput for an unknown code, a missing reason, or a date before the lot was there; Refused
    where the verdict does not fit (bars are released, not accepted).
    """
    if verdict in ("rejected", "on hold") and not reason:
        raise BadInput('Say why, so that it can be read later: --reason "…".')
    with book.write(f"lot {verdict}") as tx:
        lots = [find_lot(tx.rows, code) for code in codes]
        for lot in lots:
            if on < lot.on:
                raise BadInput(f"Lot {lot.code} was not there before {lot.on.isoformat()}; look at --on.")
            if verdict == "accepted" and lot.kind == "soap":
                raise Refused(f"Bars are not accepted but released: soapledger release {lot.code}")
            tx.add(Decision(lot_id=lot.id, verdict=verdict, on=on, by=by, reason=reason))
        tx.say(f"{', '.join(lot.code for lot in lots)}: {verdict}{f' ({reason})' if reason else ''}.")
    return tuple(lots)


def count_lot(book: Book, code: str, counted: int, *, place: str | None, on: date, note: str | None) -> int:
    """Book what a count found; returns the difference (mg or pieces), below zero for a loss.

    Raises BadInput for an unknown lot or place.
    """
    with book.write("lot count") as tx:
        lot = find_lot(tx.rows, code)
        at = _place_id(tx.rows, place)
        difference = counted - on_hand_at(tx.rows, lot.id, at, on=on)
        if difference:
            tx.add(
                Movement(
                    lot_id=lot.id,
                    place_id=at,
                    on=on,
                    quantity=difference,
                    kind="counted",
                    note=note or "found at a count",
                )
            )
        tx.say(f"Counted lot {lot.code}.")
    return difference


def waste_lot(book: Book, code: str, quantity: int, *, place: str | None, on: date, reason: str) -> LotRow:
    """Book what was thrown away, spilt or spoilt. Raises Refused for more than is there."""
    with book.write("lot waste") as tx:
        lot = find_lot(tx.rows, code)
        at = _place_id(tx.rows, place)
        held = on_hand_at(tx.rows, lot.id, at, on=on)
        if quantity <= 0 or quantity > held:
            raise Refused(_too_much(lot, held, quantity, settings(tx.rows).units))
        tx.add(Movement(lot_id=lot.id, place_id=at, on=on, quantity=-quantity, kind="wasted", note=reason))
        tx.say(f"Threw away some of lot {lot.code}: {reason}.")
    return lot


def _too_much(lot: LotRow, held: int, asked: int, units: str) -> str:
    if lot.counted:
        return f"Lot {lot.code} holds {held} there, and {asked} was asked for; nothing was written."
    return (
        f"Lot {lot.code} ({lot.material}) holds {show_mass(held, units)} there, "
        f"and {show_mass(asked, units)} was asked for; nothing was written."
    )


def _place_id(rows: Rows, text: str | None) -> int:
    if text is None:
        return place_of_kind(rows, "workshop").id
    from ledger.domain.names import match_name

    known = places(rows)
    code = match_name(text, [(one.code, one.name) for one in known], noun="place", add="soapledger stall add NAME")
    return next(one.id for one in known if one.code == code)
