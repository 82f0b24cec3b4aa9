"""soapledger complaint add."""

from typing import Annotated

import typer

from ledger.cli.complaint.words import Batch, DecidedBy, Serious, read_grave, say_candidates, say_duties
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Email, On, Phone
from ledger.cli.kit.show import say, say_wrapped
from ledger.operations.complaint.complaints import Report, book_complaint
from ledger.rows.complaint import complaint
from ledger.storage.personal import PersonDetails
from ledger.views.complaint.complaint_candidates import candidate_batches


def command(
    ctx: typer.Context,
    what: Annotated[str, typer.Argument(help="What happened, in quotes; no names.")],
    batch: Batch = None,
    bought: Annotated[str | None, typer.Option("--bought", help="Where and when it was bought, in words.")] = None,
    bought_on: Annotated[str | None, typer.Option("--bought-on", help="The day it was bought.")] = None,
    at: Annotated[str | None, typer.Option("--at", help="The stall or customer it was bought at.")] = None,
    serious: Serious = None,
    decided_by: DecidedBy = None,
    name: Annotated[str | None, typer.Option("--name", help="Who reported it (can be erased).")] = None,
    phone: Phone = None,
    email: Email = None,
    health: Annotated[str | None, typer.Option("--health", help="What it did to them (can be erased).")] = None,
    on: On = None,
) -> None:
    """Book a complaint, e.g. complaint add "rash on both hands" --batch 26-118-0 --bought "Saturday market"."""
    here = desk(ctx)
    grave = read_grave(serious)
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
            bought_on=here.day(bought_on, what="the day it was bought") if bought_on else None,
            at=at,
        ),
    )
    say(f"Complaint {number} is booked.")
    if grave:
        say_duties(here)
    if batch:
        code = complaint(here.rows(), number).batch_code
        say(f"To stop these bars: soapledger lot hold {code} --reason 'complaint {number}'")
        say(f"Where all its bars are, and whom to call: soapledger recall of --complaint {number}")
    else:
        say_wrapped("Its batch is not known, so a recall will name it among what cannot be excluded.")
        card = complaint(here.rows(), number)
        say_candidates(candidate_batches(here.rows(), card), card)
