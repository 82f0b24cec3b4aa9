"""Add a supplier, or change what is known of one."""

from dataclasses import dataclass, field

from ledger.errors import BadInput
from ledger.rows.people import supplier_by_code, supplier_list
from ledger.storage.book import Book
from ledger.storage.personal import PersonDetails, remember_person
from ledger.storage.tables.supplier import Supplier, SupplierRevision
from ledger.storage.transaction import Transaction
from ledger.units.shortcode import check_code, short_code
from ledger.units.signs import folded


@dataclass(frozen=True)
class SupplierDetails:
    """Who supplies: a firm with someone to call, or her own garden."""

    name: str
    contact: PersonDetails = field(default_factory=PersonDetails)
    note: str | None = None


def add_supplier(book: Book, details: SupplierDetails, *, own: bool, code: str | None) -> str:
    """Book a new supplier and return its short name. Raises BadInput when the name or code is taken."""
    with book.write("supplier add") as tx:
        known = supplier_list(tx.rows)
        taken = {one.code for one in known}
        if any(folded(one.name) == folded(details.name) for one in known):
            raise BadInput(f"There is a supplier '{details.name}' already; see: soapledger supplier list")
        chosen = check_code(code, taken, noun="supplier") if code else short_code(details.name, taken)
        supplier = tx.add(Supplier(code=chosen, own=int(own)))
        assert supplier.id is not None
        _revise(tx, supplier.id, details)
        tx.say(f"Added supplier {details.name} ({chosen}).")
    return chosen


def edit_supplier(book: Book, code: str, details: SupplierDetails) -> None:
    """Write a new revision of a supplier; earlier documents keep what stood then."""
    with book.write("supplier edit") as tx:
        supplier = supplier_by_code(tx.rows, code)
        _revise(tx, supplier.id, details)
        tx.say(f"Changed supplier {details.name} ({code}).")


def _revise(tx: Transaction, supplier_id: int, details: SupplierDetails) -> None:
    person = remember_person(tx, details.contact)
    tx.add(SupplierRevision(supplier_id=supplier_id, name=details.name, personal_id=person, note=details.note))
