"""soapledger customer add."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Address, Email, Note, Phone, ShortName
from ledger.cli.kit.show import say
from ledger.cli.people.customer import Contact
from ledger.errors import BadInput
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.storage.personal import PersonDetails


def command(
    ctx: typer.Context,
    name: Annotated[str, typer.Argument(help="The shop's trade name, or the person's name.")],
    shop: Annotated[bool, typer.Option("--shop", help="A shop.")] = False,
    person: Annotated[bool, typer.Option("--person", help="A person; the name can be erased later.")] = False,
    code: ShortName = None,
    contact: Contact = None,
    phone: Phone = None,
    email: Email = None,
    address: Address = None,
    note: Note = None,
) -> None:
    """Add a customer, e.g. soapledger customer add "The Tern Hall" --shop --phone "020 910 0177"."""
    if shop == person:
        raise BadInput(f"Is {name} a shop or a person? Add --shop or --person.")
    details = CustomerDetails(name, PersonDetails(contact, phone, email, address), note)
    chosen = add_customer(desk(ctx).book(), details, kind="shop" if shop else "person", code=code)
    say(f"{name} is added as '{chosen}'.")
    say(f"Next: soapledger dispatch {chosen} BATCH=NUMBER")
