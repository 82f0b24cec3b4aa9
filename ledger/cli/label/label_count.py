"""soapledger label count."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import say
from ledger.operations.label.labels import count_labels
from ledger.units.quantity import parse_pieces


def command(
    ctx: typer.Context,
    run: Annotated[str, typer.Argument(help="The number of the run; see label runs.")],
    spoiled: Annotated[str, typer.Option("--spoiled", help="How many were spoiled.")] = "0",
    returned: Annotated[str, typer.Option("--returned", help="How many came back unused.")] = "0",
    on: On = None,
) -> None:
    """Book back the labels spoiled and unused; the rest of the run is on the bars."""
    here = desk(ctx)
    done = count_labels(
        here.book(),
        parse_pieces(run, what="the run"),
        spoiled=parse_pieces(spoiled, what="the number spoiled"),
        returned=parse_pieces(returned, what="the number returned"),
        on=here.day(on),
    )
    say(
        f"Run {done.number}: {done.count} issued = {done.used} used + {done.spoiled} spoiled + "
        f"{done.returned} returned."
    )
    say(f"Next, once every run is counted: soapledger release {done.batch_code}")
