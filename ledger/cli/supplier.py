"""soapledger supplier: who sells her materials, and her own garden."""

from typing import Annotated

import typer

from ledger.cli.desk import desk
from ledger.cli.show import out_json, plain, say, table

app = typer.Typer(help="Who you buy from, and your own garden: add, edit, list, show.")

Json = Annotated[bool, typer.Option("--json", help="Answer as JSON.")]
Name = Annotated[str, typer.Argument(help="Its name.")]
Code = Annotated[str | None, typer.Option("--code", help="A short name of your choosing.")]
Contact = Annotated[str | None, typer.Option("--contact", help="Whom to ask for.")]
Phone = Annotated[str | None, typer.Option("--phone")]
Email = Annotated[str | None, typer.Option("--email")]
Address = Annotated[str | None, typer.Option("--address")]
Note = Annotated[str | None, typer.Option("--note")]


@app.command("add")
def add(
    ctx: typer.Context,
    name: Name,
    code: Code = None,
    own: Annotated[bool, typer.Option("--own", help="This is your own garden or kitchen.")] = False,
    contact: Contact = None,
    phone: Phone = None,
    email: Email = None,
    address: Address = None,
    note: Note = None,
) -> None:
    """Add a supplier, e.g. soapledger supplier add "Tarnlow Oils" --phone "020 910 0142"."""
    from ledger.operations.suppliers import SupplierDetails, add_supplier
    from ledger.storage.personal import PersonDetails

    details = SupplierDetails(name, PersonDetails(contact, phone, email, address), note)
    chosen = add_supplier(desk(ctx).book(), details, own=own, code=code)
    say(f"{name} is added as '{chosen}'.")
    say(f"Next: soapledger receive {chosen}")


@app.command("edit")
def edit(
    ctx: typer.Context,
    which: Annotated[str, typer.Argument(help="Its short name or name.")],
    name: Annotated[str | None, typer.Option("--name")] = None,
    contact: Contact = None,
    phone: Phone = None,
    email: Email = None,
    address: Address = None,
    note: Note = None,
) -> None:
    """Change what is known of a supplier; what you leave out stays as it was."""
    from ledger.operations.suppliers import SupplierDetails, edit_supplier
    from ledger.storage.personal import PersonDetails
    from ledger.views.supplier import supplier_by_code

    here = desk(ctx)
    old = supplier_by_code(here.rows(), which)
    person = PersonDetails(contact or old.person, phone or old.phone, email or old.email, address or old.address)
    details = SupplierDetails(name or old.name, person, note or old.note)
    edit_supplier(here.book(), old.code, details)
    say(f"{details.name} is changed; documents printed before keep what stood then.")


@app.command("list")
def list_(ctx: typer.Context, json: Json = False) -> None:
    """List the suppliers with their telephone numbers."""
    from ledger.views.supplier import supplier_list

    cards = supplier_list(desk(ctx).rows())
    if json:
        out_json(cards)
        return
    if not cards:
        say("No supplier yet. Add one: soapledger supplier add NAME --phone NUMBER")
        return
    say(f"{len(cards)} suppliers.")
    table(
        ("short name", "name", "phone", "lots"),
        [(c.code, c.name + (" (own)" if c.own else ""), c.phone or "", str(c.lots)) for c in cards],
        right=(3,),
    )


@app.command("show")
def show(
    ctx: typer.Context,
    which: Annotated[str, typer.Argument(help="Its short name or name.")],
    json: Json = False,
) -> None:
    """Show one supplier, how to reach it, and its latest approval."""
    from ledger.domain.dates import show_date
    from ledger.views.supplier import supplier_by_code
    from ledger.views.upkeep import latest_approval

    here = desk(ctx)
    card = supplier_by_code(here.rows(), which)
    approval = latest_approval(here.rows(), card.code, here.today)
    if json:
        out_json({**plain(card), "approval": approval})
        return
    say(f"{card.name} ({card.code}): {card.lots} lots received.")
    if card.own:
        say("Your own growing.")
    for label, value in (
        ("ask for", card.person),
        ("phone", card.phone),
        ("email", card.email),
        ("address", card.address),
        ("note", card.note),
    ):
        if value:
            say(f"  {label:8} {value}")
    if approval:
        again = f"; again on {show_date(approval.next_on)}, {approval.state}" if approval.next_on else ""
        say(f"  approved {show_date(approval.on)} by {approval.by}: {approval.what}{again}")
    elif not card.own:
        say(f'  no approval was noted: soapledger upkeep add "supplier approval" "WHY" --supplier {card.code}')
