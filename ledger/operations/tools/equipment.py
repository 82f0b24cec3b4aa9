"""Book scales, thermometers and pH meters."""

from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput
from ledger.rows.equipment import equipment_by_code, equipment_list
from ledger.storage.book import Book
from ledger.storage.tables.tools import Equipment, EquipmentRevision
from ledger.storage.transaction import Transaction
from ledger.units.shortcode import check_code, short_code
from ledger.units.signs import folded
from ledger.units.words import EquipmentKind


class EquipmentDetails(NamedTuple):
    """What is known of an item; `expected` and `tolerance` in the unit of its kind."""

    name: str
    every_days: int | None = None
    expected: int | None = None
    tolerance: int | None = None
    note: str | None = None


def add_equipment(
    book: Book, kind: EquipmentKind, details: EquipmentDetails, *, on: date, code: str | None = None
) -> str:
    """Book a new item and return its short name. Raises BadInput when the name or code is taken."""
    _complete(details)
    with book.write("equipment add") as tx:
        known = equipment_list(tx.rows, on)
        if any(folded(one.name) == folded(details.name.strip()) for one in known):
            raise BadInput(f"There is '{details.name.strip()}' already; see: soapledger equipment list")
        taken = {one.code for one in known}
        chosen = check_code(code, taken, noun=kind) if code else short_code(details.name, taken)
        item = tx.add(Equipment(code=chosen, kind=kind))
        assert item.id is not None
        _revision(tx, item.id, details, retired=False)
        tx.say(f"Added {kind} {details.name.strip()} ({chosen}).")
    return chosen


def revise_equipment(book: Book, code: str, details: EquipmentDetails, *, on: date, retired: bool) -> None:
    """Write what is known of an item now; its earlier checks keep what they were tried against."""
    _complete(details)
    with book.write("equipment edit") as tx:
        item = equipment_by_code(tx.rows, code, on)
        _revision(tx, item.id, details, retired=retired)
        tx.say(f"{'Retired' if retired else 'Changed'} {item.kind} {details.name.strip()} ({item.code}).")


def _complete(details: EquipmentDetails) -> None:
    if not details.name.strip():
        raise BadInput("What is it called? Write its name, such as 'bench scale'.")
    if details.every_days is not None and details.every_days < 1:
        raise BadInput("Every how many days is it tried? Write --every with 1 or more.")


def _revision(tx: Transaction, item_id: int, details: EquipmentDetails, *, retired: bool) -> None:
    kept = details._replace(name=details.name.strip())
    tx.add(EquipmentRevision(equipment_id=item_id, retired=int(retired), **kept._asdict()))
