"""soapledger rework."""

from typing import Annotated

import typer

from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, Json, On
from ledger.cli.kit.show import count, say
from ledger.operations.release.rework import rework_bars
from ledger.units.codes import read_batch_code
from ledger.units.quantity import parse_mass, parse_pieces, show_mass


def command(
    ctx: typer.Context,
    code: Batch,
    weight: Annotated[str, typer.Argument(help="What the bars weigh together, e.g. 820 g.")],
    bars: Annotated[str | None, typer.Option("--bars", help="How many bars (all in the workshop).")] = None,
    on: On = None,
    json: Json = False,
) -> None:
    """Book rejected bars back in by weight, on hold, for a rebatch, e.g. soapledger rework 26-118-0 "820 g"."""
    here, code = desk(ctx), read_batch_code(code)
    done = rework_bars(
        here.book(),
        code,
        parse_mass(weight, what="the weight of the bars"),
        on=here.day(on),
        by=here.decider,
        bars=None if bars is None else parse_pieces(bars, what="the number of bars"),
    )
    if answer(done, json):
        return
    mass = show_mass(done.mass_mg, here.settings.units)
    say(f"{count(done.bars, 'bar')} of batch {code} are lot {done.lot} now, {mass}, on hold (batch {done.batch}).")
    say(f'Next, when it may go into a rebatch: soapledger lot accept {done.lot} --reason "…"')
