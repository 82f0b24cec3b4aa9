"""soapledger label count."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import say
from ledger.errors import Refused
from ledger.operations.label.labels import Counted, count_run
from ledger.rows.batch import find_batch
from ledger.rows.label import run_by_number
from ledger.units.quantity import parse_pieces


def command(
    ctx: typer.Context,
    run: Annotated[str, typer.Argument(help="The number of the run; see label runs.")],
    spoiled: Annotated[str | None, typer.Option("--spoiled", help="How many were spoiled (none).")] = None,
    returned: Annotated[str | None, typer.Option("--returned", help="How many came back unused (none).")] = None,
    destroyed: Annotated[
        str | None, typer.Option("--destroyed", help="How many of those were destroyed; the rest is kept.")
    ] = None,
    specimen: Annotated[
        str | None, typer.Option("--specimen", help="How many are kept with the record (one, if the bars leave it).")
    ] = None,
    on: On = None,
) -> None:
    """Book back the labels spoiled and unused, and the specimen; the rest of the run is on the bars."""
    here, number = desk(ctx), parse_pieces(run, what="the run")
    before = run_by_number(here.rows(), number)
    if before.counted and (spoiled, returned, destroyed, specimen) == (None,) * 4:
        raise Refused(
            f"Run {number} was counted already: {before.count} issued = {before.became}. To count it anew, say what "
            f"became of it: soapledger label count {number} --spoiled 0 --returned 0"
        )
    counted = Counted(
        spoiled=parse_pieces(spoiled or "0", what="the number spoiled"),
        returned=parse_pieces(returned or "0", what="the number returned"),
        destroyed=parse_pieces(destroyed or "0", what="the number destroyed"),
        specimen=None if specimen is None else parse_pieces(specimen, what="the number kept as a specimen"),
    )
    done = count_run(here.book(), number, counted, on=here.day(on))
    say(f"Run {done.number}: {done.count} issued = {done.became}.")
    if find_batch(here.rows(), done.batch_code).lot_status != "released":
        say(f"Next, once every run is counted: soapledger release {done.batch_code}")
