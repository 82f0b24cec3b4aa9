"""soapledger supplier edit."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Address, Email, NewName, Note, Phone, Which
from ledger.cli.kit.show import say
from ledger.cli.people.supplier import Contact
from ledger.operations.people.suppliers import SupplierDetails, edit_supplier
from ledger.rows.people import supplier_by_code
from ledger.storage.personal import PersonDetails


def command(
    ctx: typer.Context,
    which: Which,
    name: NewName = None,
    contact: Contact = None,
    phone: Phone = None,
    email: Email = None,
    address: Address = None,
    note: Note = None,
) -> None:
    """Change what is known of a supplier; what you leave out stays as it was."""
    here = desk(ctx)
    old = supplier_by_code(here.rows(), which)
    person = PersonDetails(contact or old.person, phone or old.phone, email or old.email, address or old.address)
    details = SupplierDetails(name or old.name, person, note or old.note)
    edit_supplier(here.book(), old.code, details)
    say(f"{details.name} is changed; documents printed before keep what stood then.")
