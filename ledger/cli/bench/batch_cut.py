"""soapledger batch cut."""

from datetime import timedelta
from typing import Annotated

import typer

from ledger.cli.bench.cut_prompt import say_cut
from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.options import Batch, On, Yes
from ledger.cli.kit.show import warn_of
from ledger.errors import BadInput
from ledger.operations.bench.cut import cut_batch
from ledger.rows.batch import BatchRow, find_batch
from ledger.units.dates import show_date
from ledger.units.quantity import parse_mass, parse_pieces
from ledger.units.wording import count
from ledger.views.bench.cut_doubts import CUT_WITHIN_DAYS, cut_doubts, days_since_the_pour


def command(
    ctx: typer.Context,
    code: Batch,
    bars: Annotated[str, typer.Argument(help="How many bars.")],
    weight: Annotated[str | None, typer.Option("--weight", help="What all the bars weigh together.")] = None,
    offcuts: Annotated[str | None, typer.Option("--offcuts", help="What end slices and offcuts weigh.")] = None,
    waste: Annotated[str | None, typer.Option("--waste", help="What was thrown away at the cut.")] = None,
    weights: Annotated[
        str | None, typer.Option("--each", help="Bars weighed one by one, all or a sample: '131 g; 128.5 g; 130 g'.")
    ] = None,
    on: On = None,
    yes: Yes = False,
) -> None:
    """Book the bars cut from a loaf, e.g. soapledger batch cut 26-118-0 10 --weight "1310 g"."""
    here = desk(ctx)
    number, day = parse_pieces(bars, what="the number of bars"), here.day(on)
    together = parse_mass(weight, what="the weight of the bars") if weight else None
    kept = parse_mass(offcuts, what="the weight of the offcuts") if offcuts else 0
    thrown = parse_mass(waste, what="the weight of the waste") if waste else 0
    each = [parse_mass(one, what="the weight of a bar") for one in weights.split(";")] if weights else []
    batch = find_batch(here.rows(), code)
    if batch.yield_lot_id is None:
        if on is None:
            _said_when(here, batch)
        warn_of(cut_doubts(here.rows(), batch, number, together, kept + thrown), yes)
    balance = cut_batch(
        here.book(),
        code,
        bars=number,
        on=day,
        by=here.who,
        bars_mg=together,
        offcuts_mg=kept,
        waste_mg=thrown,
        weights_mg=each,
    )
    say_cut(here, find_batch(here.rows(), code), balance)


def _said_when(here: Desk, batch: BatchRow) -> None:
    """Raise BadInput for a cut without its day where the pour is long gone: the cure is reckoned from the cut."""
    ago = days_since_the_pour(here.rows(), batch, here.today)
    if ago > CUT_WITHIN_DAYS:
        made = here.today - timedelta(days=ago)
        raise BadInput(
            f"Batch {batch.code} was made on {show_date(made)}, {count(ago, 'day')} ago; say when it was cut: "
            f"--on {made + timedelta(days=1)}, or --on today."
        )
