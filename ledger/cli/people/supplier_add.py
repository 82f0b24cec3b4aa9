"""soapledger supplier add."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Address, Email, Note, Phone, ShortName
from ledger.cli.kit.show import say
from ledger.cli.people.supplier import Contact
from ledger.operations.people.suppliers import SupplierDetails, add_supplier
from ledger.storage.personal import PersonDetails

Name = Annotated[str, typer.Argument(help="Its name.")]


def command(
    ctx: typer.Context,
    name: Name,
    code: ShortName = None,
    own: Annotated[bool, typer.Option("--own", help="This is your own garden or kitchen.")] = False,
    contact: Contact = None,
    phone: Phone = None,
    email: Email = None,
    address: Address = None,
    note: Note = None,
) -> None:
    """Add a supplier, e.g. soapledger supplier add "Tarnlow Oils" --phone "020 910 0142"."""
    details = SupplierDetails(name, PersonDetails(contact, phone, email, address), note)
    chosen = add_supplier(desk(ctx).book(), details, own=own, code=code)
    say(f"{name} is added as '{chosen}'.")
    say(f"Next: soapledger receive {chosen}")
