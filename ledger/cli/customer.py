"""soapledger customer: the shops and people her bars go to."""

from typing import Annotated

import typer

from ledger.cli.desk import desk
from ledger.cli.show import confirm, out_json, say, table
from ledger.errors import BadInput

app = typer.Typer(help="The shops and people your bars go to: add, edit, list, show, erase.")

Json = Annotated[bool, typer.Option("--json", help="Answer as JSON.")]
Which = Annotated[str, typer.Argument(help="The short name or name.")]
Contact = Annotated[str | None, typer.Option("--contact", help="Whom to ask for in a shop.")]
Phone = Annotated[str | None, typer.Option("--phone")]
Email = Annotated[str | None, typer.Option("--email")]
Address = Annotated[str | None, typer.Option("--address")]
Note = Annotated[str | None, typer.Option("--note")]


@app.command("add")
def add(
    ctx: typer.Context,
    name: Annotated[str, typer.Argument(help="The shop's trade name, or the person's name.")],
    shop: Annotated[bool, typer.Option("--shop", help="A shop.")] = False,
    person: Annotated[bool, typer.Option("--person", help="A person; the name can be erased later.")] = False,
    code: Annotated[str | None, typer.Option("--code", help="A short name of your choosing.")] = None,
    contact: Contact = None,
    phone: Phone = None,
    email: Email = None,
    address: Address = None,
    note: Note = None,
) -> None:
    """Add a customer, e.g. soapledger customer add "The Tern Hall" --shop --phone "020 910 0177"."""
    from ledger.operations.customers import CustomerDetails, add_customer
    from ledger.storage.personal import PersonDetails

    if shop == person:
        raise BadInput(f"Is {name} a shop or a person? Add --shop or --person.")
    details = CustomerDetails(name, PersonDetails(contact, phone, email, address), note)
    chosen = add_customer(desk(ctx).book(), details, kind="shop" if shop else "person", code=code)
    say(f"{name} is added as '{chosen}'.")
    say(f"Next: soapledger dispatch {chosen} BATCH=NUMBER")


@app.command("edit")
def edit(
    ctx: typer.Context,
    which: Which,
    name: Annotated[str | None, typer.Option("--name")] = None,
    contact: Contact = None,
    phone: Phone = None,
    email: Email = None,
    address: Address = None,
    note: Note = None,
) -> None:
    """Change what is known of a customer; what you leave out stays as it was."""
    from ledger.operations.customers import CustomerDetails, edit_customer
    from ledger.storage.personal import PersonDetails
    from ledger.views.customer import customer_by_code

    here = desk(ctx)
    old = customer_by_code(here.rows(), which)
    person = PersonDetails(contact or old.person, phone or old.phone, email or old.email, address or old.address)
    details = CustomerDetails(name or old.name, person, note or old.note)
    edit_customer(here.book(), old.code, details)
    say(f"{details.name} is changed; documents printed before keep what stood then.")


@app.command("list")
def list_(ctx: typer.Context, json: Json = False) -> None:
    """List the customers and how many bars each has."""
    from ledger.views.customer import customer_list

    cards = customer_list(desk(ctx).rows())
    if json:
        out_json(cards)
        return
    if not cards:
        say("No customer yet. Add one: soapledger customer add NAME --shop --phone NUMBER")
        return
    say(f"{len(cards)} customers.")
    table(
        ("short name", "name", "kind", "phone", "bars"),
        [(c.code, c.name, c.kind, c.phone or "", str(c.bars)) for c in cards],
        right=(4,),
    )


@app.command("show")
def show(ctx: typer.Context, which: Which, json: Json = False) -> None:
    """Show one customer and how to reach them."""
    from ledger.views.customer import customer_by_code

    card = customer_by_code(desk(ctx).rows(), which)
    if json:
        out_json(card)
        return
    say(f"{card.name} ({card.code}), a {card.kind}: {card.bars} bars went there and stayed.")
    for label, value in (
        ("ask for", card.person if card.kind == "shop" else None),
        ("phone", card.phone),
        ("email", card.email),
        ("address", card.address),
        ("note", card.note),
    ):
        if value:
            say(f"  {label:8} {value}")


@app.command("erase")
def erase(
    ctx: typer.Context,
    which: Which,
    reason: Annotated[str, typer.Option("--reason", help="Why, e.g. asked to be forgotten.")],
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again.")] = False,
) -> None:
    """Erase a customer's name, phone, email and address for good; what they bought stays."""
    from ledger.operations.customers import erase_customer
    from ledger.views.customer import details_held

    here = desk(ctx)
    held = details_held(here.rows(), which)
    confirm(
        f"Erase the personal details of {held.name} for good? A recall could then not reach them.",
        yes,
    )
    erase_customer(here.book(), which, reason=reason)
    say(f"The personal details of customer {held.code} are erased; the sales remain.")
