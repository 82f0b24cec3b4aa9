"""soapledger complaint: what customers report."""

from typing import Annotated

import typer

from ledger.cli.desk import desk
from ledger.cli.show import confirm, count, out_json, say, table
from ledger.errors import BadInput

app = typer.Typer(help="What customers report: add, list, show, erase.")

Json = Annotated[bool, typer.Option("--json", help="Answer as JSON.")]

# As gathered in the project's notes on the law; the first read in a secondary text, the others from there too.
REPORTING = (
    "EU, NI and GB: a serious undesirable effect is reported to the authority without delay (Regulation (EC) "
    "1223/2009, Art 23; read in a secondary text).",
    "US: a serious adverse event of a cosmetic is reported within 15 business days (MoCRA 2022; read in a "
    "secondary text).",
)


@app.command("add")
def add(
    ctx: typer.Context,
    what: Annotated[str, typer.Argument(help="What happened, in quotes.")],
    batch: Annotated[str | None, typer.Option("--batch", help="The code on the bar, if known.")] = None,
    bought: Annotated[str | None, typer.Option("--bought", help="Where and when it was bought.")] = None,
    serious: Annotated[str | None, typer.Option("--serious", help="yes or no, as a person decided.")] = None,
    decided_by: Annotated[str | None, typer.Option("--decided-by", help="Who decided that.")] = None,
    name: Annotated[str | None, typer.Option("--name", help="Who reported it (can be erased).")] = None,
    phone: Annotated[str | None, typer.Option("--phone")] = None,
    email: Annotated[str | None, typer.Option("--email")] = None,
    health: Annotated[str | None, typer.Option("--health", help="What it did to them (can be erased).")] = None,
    on: Annotated[str | None, typer.Option("--on", help="The day (today).")] = None,
) -> None:
    """Book a complaint, e.g. complaint add "rash on both hands" --batch 26-118-0 --bought "Saturday market"."""
    from ledger.operations.complaints import Report, book_complaint
    from ledger.storage.personal import PersonDetails

    here = desk(ctx)
    if serious is not None and serious.casefold() not in ("yes", "no"):
        raise BadInput("Is it serious? Write --serious yes or --serious no.")
    grave = None if serious is None else serious.casefold() == "yes"
    number = book_complaint(
        here.book(),
        Report(
            on=here.day(on),
            what=what,
            person=PersonDetails(name=name, phone=phone, email=email, health=health),
            batch=batch,
            bought=bought,
            serious=grave,
            decided_by=decided_by,
        ),
    )
    say(f"Complaint {number} is booked.")
    if grave:
        say("A reminder, not legal advice:")
        for line in REPORTING:
            say(f"  {line}")
    if batch:
        say(f"To stop these bars: soapledger lot hold {batch} --reason 'complaint {number}'")
    else:
        say("Its batch is not known, so a recall will name it among what cannot be excluded.")


@app.command("list")
def list_(
    ctx: typer.Context,
    batch: Annotated[str | None, typer.Option("--batch", help="Of one batch.")] = None,
    json: Json = False,
) -> None:
    """List the complaints."""
    from ledger.domain.dates import show_date
    from ledger.views.complaint import complaints
    from ledger.views.lots import find_lot

    here = desk(ctx)
    code = find_lot(here.rows(), batch).code if batch else None
    found = complaints(here.rows(), batch_code=code)
    if json:
        out_json(found)
        return
    if not found:
        say("No complaint was booked.")
        return
    say(f"{count(len(found), 'complaint')}.")
    words = {None: "not decided", True: "serious", False: "not serious"}
    table(
        ("number", "on", "batch", "seriousness", "what"),
        [(str(c.id), show_date(c.on), c.batch_code or "unknown", words[c.serious], c.what) for c in found],
        right=(0,),
    )


@app.command("show")
def show(ctx: typer.Context, number: Annotated[str, typer.Argument(help="Its number.")], json: Json = False) -> None:
    """Show one complaint with who reported it."""
    from ledger.domain.dates import show_date
    from ledger.domain.quantity import parse_pieces
    from ledger.views.complaint import complaint

    card = complaint(desk(ctx).rows(), parse_pieces(number, what="the number of the complaint"))
    if json:
        out_json(card)
        return
    say(f"Complaint {card.id} of {show_date(card.on)}: {card.what}")
    words = {None: "not decided yet", True: "serious", False: "not serious"}
    for label, value in (
        ("batch", f"{card.batch_code}, {card.product}" if card.batch_code else "not known"),
        ("bought", card.bought),
        ("seriousness", words[card.serious] + (f", decided by {card.decided_by}" if card.decided_by else "")),
        ("reported by", ", ".join(word for word in (card.person, card.phone, card.email) if word)),
        ("health", card.health),
    ):
        if value:
            say(f"  {label:12} {value}")


@app.command("erase")
def erase(
    ctx: typer.Context,
    number: Annotated[str, typer.Argument(help="Its number.")],
    reason: Annotated[str, typer.Option("--reason", help="Why, e.g. asked to be forgotten.")],
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again.")] = False,
) -> None:
    """Erase who reported it and what it did to them, e.g. complaint erase 3 --reason "asked by letter"."""
    from ledger.domain.quantity import parse_pieces
    from ledger.operations.complaints import erase_complaint

    which = parse_pieces(number, what="the number of the complaint")
    confirm(f"Erase the personal details of complaint {which} for good?", yes)
    erase_complaint(desk(ctx).book(), which, reason=reason)
    say(f"The personal details of complaint {which} are erased; what happened stays.")
