"""Take one entry back: an entry of its own that mirrors its movements."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby
from operator import attrgetter

from ledger.errors import Refused
from ledger.rows.decision import recalls
from ledger.rows.dependants import Dependant, after_a_hold, dependants
from ledger.rows.history import decides, entry_written, erases, holds_for_a_recall, starts_the_ledger
from ledger.rows.movement import moved_by
from ledger.rows.opened import Rows
from ledger.rows.sell.invoice import InvoiceRow, made_in, over_sales_of
from ledger.rows.sell.paid import followed
from ledger.storage.book import Book
from ledger.storage.verbs import Moved


@dataclass(frozen=True)
class Undone:
    """Which entry was taken back, and what it had said."""

    entry: int
    said: str


def undo(book: Book, number: int) -> Undone:
    """Take back one entry.

    Its movements are mirrored on their own dates; its other facts no longer count. Raises Refused when
    something later depends on it (named), when it is a decision (followed by another one), an erasure, an
    undo, or was taken back already; BadInput for an entry that is not there.
    """
    with book.write("undo", reverses=number) as tx:
        said = may_be_taken_back(tx.rows, number)
        for (way, place_id, on), alike in groupby(moved_by(tx.rows, number), attrgetter("kind", "place_id", "on")):
            mirrored = [
                Moved(
                    one.lot_id,
                    -one.quantity,
                    one.batch_id,
                    one.plan_line_id,
                    one.customer_id,
                    None if one.money_minor is None else -one.money_minor,
                    f"takes back entry {number}",
                )
                for one in alike
            ]
            tx.move(mirrored, way, place_id=place_id, on=on)
        tx.say(f"Took back entry {number}: {said}")
        return Undone(number, said)


def may_be_taken_back(rows: Rows, number: int) -> str:
    """What an entry says, where it may be taken back; raises as `undo`."""
    entry = entry_written(rows, number)
    if entry.reverses is not None:
        raise Refused(f"Entry {number} is itself an undo; do again what it took back.")
    if entry.undone_by is not None:
        raise Refused(f"Entry {number} was taken back already.")
    said = entry.said.rstrip(".")
    if starts_the_ledger(rows, number):
        raise Refused("The start of a ledger is not taken back; change what is wrong with: soapledger init")
    if erases(rows, number):
        raise Refused(f"Entry {number} ({said}) erased for good; it cannot be taken back.")
    if made := made_in(rows, number):
        raise Refused(
            f"Entry {number} made {made.kind} {made.number}; its number is given, so it is never taken back. "
            + _credited(made)
        )
    if over := over_sales_of(rows, number):
        raise Refused(
            f"Entry {number} ({said}) is on {over[0].kind} {over[0].number}, which is never taken back. "
            + _credited(over[0])
        )
    if holds_for_a_recall(rows, number):
        if found := (*after_a_hold(rows, number), *dependants(rows, number)):
            raise Refused(_held_by(number, said, found, _instead(rows, number)))
    elif decides(rows, number):
        raise Refused(
            f"Entry {number} ({said}) is a decision; it is not taken back but followed by another, "
            "such as soapledger lot hold or reject, and both stay to be read."
        )
    elif found := dependants(rows, number):
        raise Refused(_held_by(number, said, found, sales=followed(rows, number)))
    return entry.said


def _instead(rows: Rows, number: int) -> str:
    """What becomes of an entry that held lots for a recall, once something was decided about them."""
    opened = next((one.name for one in recalls(rows) if one.entry == number), None)
    close = f" To close the recall: soapledger recall close {opened} --conclusion WORDS" if opened else ""
    return f"Each hold is decided anew, with soapledger lot accept or reject, or release.{close}"


def _credited(made: InvoiceRow) -> str:
    """What is done in place of taking an invoice back."""
    if made.kind == "invoice":
        return f"Book what came back or is credited, then: soapledger invoice credit {made.number}"
    return "Make another invoice for what is owed after all."


def _held_by(
    entry: int, said: str, found: tuple[Dependant, ...], instead: str | None = None, sales: Sequence[int] = ()
) -> str:
    """`instead`: what is done where a decision depends on it; `sales`: those that were paid or taken back since."""
    found = tuple(dict.fromkeys(found))
    names = ", ".join(one.name for one in found[:5]) + (f" and {len(found) - 5} more" if len(found) > 5 else "")
    verb = "depends" if len(found) == 1 else "depend"
    advice = (
        instead
        or "A decision is not taken back; book what is true now instead, with soapledger lot count or lot waste."
        if any(one.decision for one in found)
        else f"Of sale {sales[0]} something was paid or taken back since, so it is not undone but credited: soapledger "
        f'sale credit {sales[0]} --reason "…"'
        if sales
        else "Take that back first, the latest first."
    )
    return f"Entry {entry} ({said}) cannot be taken back: {names} {verb} on it. {advice}"
