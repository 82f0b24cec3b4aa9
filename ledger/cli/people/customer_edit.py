"""soapledger customer edit."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Address, Email, NewName, Note, Phone
from ledger.cli.kit.show import say
from ledger.cli.people.customer import Contact, Which
from ledger.operations.people.customers import CustomerDetails, edit_customer
from ledger.rows.people import customer_by_code
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
    """Change what is known of a customer; what you leave out stays as it was."""
    here = desk(ctx)
    old = customer_by_code(here.rows(), which)
    person = PersonDetails(contact or old.person, phone or old.phone, email or old.email, address or old.address)
    details = CustomerDetails(name or old.name, person, note or old.note)
    edit_customer(here.book(), old.code, details)
    say(f"{details.name} is changed; documents printed before keep what stood then.")
