"""Book each try of a scale, thermometer or pH meter against something known."""

from datetime import date

from ledger.domain.tools.equipment import passes
from ledger.errors import BadInput, Refused
from ledger.rows.equipment import equipment_by_code, equipment_list
from ledger.storage.book import Book
from ledger.storage.tables.check import EquipmentCheck
from ledger.storage.transaction import Transaction
from ledger.units.dates import show_date


def check_equipment(
    book: Book,
    code: str,
    found: int,
    *,
    on: date,
    by: str,
    expected: int | None = None,
    tolerance: int | None = None,
    note: str | None = None,
) -> bool:
    """Book one try of an item and return whether it passed. Raises like `add_check`."""
    with book.write("equipment check") as tx:
        item = equipment_by_code(tx.rows, code, on)
        passed = add_check(tx, item.id, on, by, found, expected=expected, tolerance=tolerance, note=note)
        tx.say(f"Tried {item.name} ({item.code}) on {show_date(on)}: {'passed' if passed else 'failed'}.")
    return passed


def add_check(
    tx: Transaction,
    equipment_id: int,
    on: date,
    by: str,
    found: int,
    *,
    expected: int | None = None,
    tolerance: int | None = None,
    note: str | None = None,
) -> bool:
    """Add one try to an entry and return whether it passed.

    What it is tried against and the tolerance are the item's own unless given. Raises BadInput where neither
    says them, Refused for a retired item.
    """
    item = next(one for one in equipment_list(tx.rows, on) if one.id == equipment_id)
    if item.retired:
        raise Refused(f"{item.name} is retired; take it up again first: soapledger equipment edit {item.code} --in-use")
    expected = item.expected if expected is None else expected
    tolerance = item.tolerance if tolerance is None else tolerance
    if expected is None:
        raise BadInput(f"What was {item.name} tried against? Add --against, or keep it with equipment edit.")
    if tolerance is None:
        raise BadInput(f"How far may {item.name} be off? Add --tolerance, or keep it with equipment edit.")
    passed = passes(expected=expected, found=found, tolerance=tolerance)
    tx.add(
        EquipmentCheck(
            equipment_id=item.id,
            on=on,
            by=by,
            expected=expected,
            found=found,
            tolerance=tolerance,
            passed=int(passed),
            note=note,
        )
    )
    return passed
