"""What is decided about a lot, counted of it, or thrown away."""

from collections.abc import Sequence
from datetime import date

from ledger.errors import BadInput, Refused
from ledger.rows.decision import last_decision
from ledger.rows.lot import LotRow, PlaceRow, find_lot, on_hand_at, place_of_kind, places
from ledger.rows.opened import Rows
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.tables.decision import Decision
from ledger.storage.verbs import Moved
from ledger.units.dates import show_date
from ledger.units.names import named
from ledger.units.quantity import show_mass
from ledger.units.words import Verdict


def decide_lots(
    book: Book, codes: Sequence[str], *, verdict: Verdict, on: date, by: str, reason: str | None
) -> tuple[LotRow, ...]:
    """Accept, reject or hold lots: a decision by a named person, superseding the one before.

    Returns the lots decided about; those accepted already are left as they are, and when all are,
    nothing is written. Raises BadInput for an unknown code, a missing reason (to reject, to hold, or to
    accept what was rejected or on hold), or a date before the lot was there; Refused where the verdict does
    not fit (bars are released, not accepted) or would be dated before another that it supersedes.
    """
    if verdict in ("rejected", "on hold") and not reason:
        raise BadInput('Say why, so that it can be read later: --reason "…".')
    with book.look() as rows:
        wanted = [code for code in codes if not (verdict == "accepted" and _accepted_by(rows, code, on))]
    if not wanted:
        return ()
    with book.write(f"lot {verdict}") as tx:
        lots = tuple({lot.id: lot for lot in (find_lot(tx.rows, code) for code in wanted)}.values())
        for lot in lots:
            _check(tx.rows, lot, verdict, on, reason)
            tx.add(Decision(lot_id=lot.id, verdict=verdict, on=on, by=by, reason=reason))
        tx.say(f"{', '.join(lot.code for lot in lots)}: {verdict}{f' ({reason})' if reason else ''}.")
    return lots


def _accepted_by(rows: Rows, code: str, on: date) -> bool:
    return find_lot(rows, code).status == "accepted" == find_lot(rows, code, on=on).status


def _check(rows: Rows, lot: LotRow, verdict: Verdict, on: date, reason: str | None) -> None:
    _there(lot, on)
    if verdict == "accepted" and lot.kind == "soap":
        raise Refused(f"Bars are not accepted but released: soapledger release {lot.code}")
    if verdict == "accepted" and lot.status in ("rejected", "on hold") and not reason:
        raise BadInput(f'Lot {lot.code} is {lot.status}; to accept it all the same, say why: --reason "…".')
    last = last_decision(rows, lot.id)
    # the decision taken last holds, so an older date would lift the newer decision unseen
    if last and last.verdict != verdict and last.on > on:
        raise Refused(
            f"Lot {lot.code} has been {last.verdict} since {show_date(last.on)}, which a decision dated "
            f"{show_date(on)} would lift; date it that day or later."
        )


def _there(lot: LotRow, on: date) -> None:
    if on < lot.on:
        raise BadInput(f"Lot {lot.code} was not there before {show_date(lot.on)}; look at --on.")


def count_lot(book: Book, code: str, counted: int, *, place: str | None, on: date, note: str | None) -> int:
    """Book what a count found; returns the difference (mg or pieces), below zero for a loss.

    Raises BadInput for an unknown lot or place, or a date before the lot was there.
    """
    with book.write("lot count") as tx:
        lot = find_lot(tx.rows, code)
        _there(lot, on)
        at = _place(tx.rows, place)
        difference = counted - on_hand_at(tx.rows, lot.id, at.id, on=on)
        if difference:
            found_there = Moved(lot.id, difference, note=note or "found at a count")
            tx.move([found_there], "counted", place_id=at.id, on=on)
        size = _amount(tx.rows, lot, abs(difference))
        found = f"{size} {'missing' if difference < 0 else 'more than booked'}" if difference else "as booked"
        tx.say(f"Counted lot {lot.code} {_where(at)}: {found}.")
    return difference


def waste_lot(book: Book, code: str, quantity: int, *, place: str | None, on: date, reason: str) -> LotRow:
    """Book what was thrown away, spilt or spoilt; returns the lot as it stands after.

    Raises BadInput for nothing, an unknown lot or place, or a date before the lot was there; Refused for
    more than is there.
    """
    if quantity <= 0:
        raise BadInput("Nothing was thrown away; write how much it was, such as 120 g or 2.")
    with book.write("lot waste") as tx:
        lot = find_lot(tx.rows, code)
        _there(lot, on)
        at = _place(tx.rows, place)
        held = on_hand_at(tx.rows, lot.id, at.id, on=on)
        if quantity > held:
            raise Refused(
                f"Lot {lot.code} ({lot.material}) holds {_amount(tx.rows, lot, held)} {_where(at)}, "
                f"and {_amount(tx.rows, lot, quantity)} was asked for; nothing was written."
            )
        tx.move([Moved(lot.id, -quantity, note=reason)], "wasted", place_id=at.id, on=on)
        tx.say(f"Threw away {_amount(tx.rows, lot, quantity)} of lot {lot.code}: {reason}.")
        return find_lot(tx.rows, lot.code)


def _amount(rows: Rows, lot: LotRow, quantity: int) -> str:
    return str(quantity) if lot.counted else show_mass(quantity, settings(rows).units)


def _where(place: PlaceRow) -> str:
    return "in the workshop" if place.kind == "workshop" else f"at {place.name}"


def _place(rows: Rows, text: str | None) -> PlaceRow:
    if text is None:
        return place_of_kind(rows, "workshop")
    return named(text, places(rows), noun="place", add="soapledger stall add NAME")
