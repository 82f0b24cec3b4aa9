"""soapledger label count."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import say
from ledger.operations.label.labels import Counted, count_run
from ledger.units.quantity import parse_pieces


def command(
    ctx: typer.Context,
    run: Annotated[str, typer.Argument(help="The number of the run; see label runs.")],
    spoiled: Annotated[str, typer.Option("--spoiled", help="How many were spoiled.")] = "0",
    returned: Annotated[str, typer.Option("--returned", help="How many came back unused.")] = "0",
    destroyed: Annotated[
        str, typer.Option("--destroyed", help="How many of those were destroyed; the rest is kept.")
    ] = "0",
    specimen: Annotated[
        str | None, typer.Option("--specimen", help="How many are kept with the record (one, if the bars leave it).")
    ] = None,
    on: On = None,
) -> None:
    """Book back the labels spoiled and unused, and the specimen; the rest of the run is on the bars."""
    here = desk(ctx)
    counted = Counted(
        spoiled=parse_pieces(spoiled, what="the number spoiled"),
        returned=parse_pieces(returned, what="the number returned"),
        destroyed=parse_pieces(destroyed, what="the number destroyed"),
        specimen=None if specimen is None else parse_pieces(specimen, what="the number kept as a specimen"),
    )
    done = count_run(here.book(), parse_pieces(run, what="the run"), counted, on=here.day(on))
    say(f"Run {done.number}: {done.count} issued = {done.became}.")
    say(f"Next, once every run is counted: soapledger release {done.batch_code}")
