"""soapledger batch cut."""

from typing import Annotated

import typer

from ledger.cli.bench.cut_words import say_cut
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, On
from ledger.operations.bench.cut import cut_batch
from ledger.rows.batch import find_batch
from ledger.units.quantity import parse_mass, parse_pieces


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
) -> None:
    """Book the bars cut from a loaf, e.g. soapledger batch cut 26-118-0 10 --weight "1310 g"."""
    here = desk(ctx)
    number = parse_pieces(bars, what="the number of bars")
    balance = cut_batch(
        here.book(),
        code,
        bars=number,
        on=here.day(on),
        by=here.who,
        bars_mg=parse_mass(weight, what="the weight of the bars") if weight else None,
        offcuts_mg=parse_mass(offcuts, what="the weight of the offcuts") if offcuts else 0,
        waste_mg=parse_mass(waste, what="the weight of the waste") if waste else 0,
        weights_mg=[parse_mass(one, what="the weight of a bar") for one in weights.split(";")] if weights else (),
    )
    say_cut(here, find_batch(here.rows(), code), balance)
