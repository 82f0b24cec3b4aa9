"""soapledger pass."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, On
from ledger.cli.kit.show import count, say, say_wrapped
from ledger.domain.release.bars import Passing
from ledger.markets import home_markets
from ledger.operations.release.release import pass_bars
from ledger.units.codes import read_batch_code
from ledger.units.quantity import parse_pieces


def command(
    ctx: typer.Context,
    code: Batch,
    wasted: Annotated[str, typer.Option("--wasted", help="Bars that are no good.")] = "0",
    reason: Annotated[str | None, typer.Option("--reason", help="What is wrong with those.")] = None,
    anyway: Annotated[
        str | None,
        typer.Option("--anyway", help="Pass early, still drying, or with lye left over, with the reason."),
    ] = None,
    lift: Annotated[str | None, typer.Option("--lift", help="Lift a hold, with the reason.")] = None,
    unwrapped: Annotated[bool, typer.Option("--unwrapped", help="No wrapping is used.")] = False,
    on: On = None,
) -> None:
    """Pass cured bars for packing, e.g. soapledger pass 26-118-0 --wasted 1 --reason cracked."""
    here, code = desk(ctx), read_batch_code(code)
    book = here.book()
    asked = Passing(
        on=here.day(on),
        by=here.decider,
        wasted=parse_pieces(wasted, what="the number of bars wasted"),
        reason=reason,
        anyway=anyway,
        lift=lift,
        unwrapped=unwrapped,
    )
    done = pass_bars(book, code, asked)
    wrapping = "; ".join(f"{used} of {name} used" for name, used in done.wrapping)
    say(f"{count(done.good, 'bar')} of batch {code} passed for packing{f' ({wrapping})' if wrapping else ''}.")
    home = home_markets(here.settings.addresses, here.settings.country)
    where = f" --market {home[0].code}" if len(home) == 1 else ""
    say_wrapped(f"Next: soapledger label check {code}{where}, then label approve and label print, then release")
