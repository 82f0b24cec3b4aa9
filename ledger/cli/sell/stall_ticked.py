"""soapledger stall ticked."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.show import count, say_wrapped
from ledger.cli.sell.stalls import Name
from ledger.operations.sell.stall_ticked import stall_ticked
from ledger.units.dates import show_date


def command(
    ctx: typer.Context,
    name: Name,
    home: Annotated[
        bool,
        typer.Option("--home", help="The bars at home were looked at too and are as booked; so is what was sold."),
    ] = False,
    by: Annotated[str | None, typer.Option("--by", help="Who looked at the bars (else you).")] = None,
    on: Annotated[str | None, typer.Option("--on", help="The day the bars went out (the last one).")] = None,
) -> None:
    """Say that the list of what went to a stall was ticked: the batches of its bars are as booked."""
    here = desk(ctx)
    went = here.day(on) if on else None
    done = stall_ticked(here.book(), name, went_on=went, on=here.today, by=by or here.decider, home=home)
    said = f"What went to {done.stall} on {show_date(done.on)} is ticked: its batches are as booked."
    if done.stay:
        said += (
            f" Of {count(done.stay, 'bar')} counted by product in the evening the batch stays assumed; when you have "
            f"looked at the bars at home too: soapledger stall ticked {name} --home"
        )
    say_wrapped(said)
