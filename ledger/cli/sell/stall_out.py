"""soapledger stall out."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import count, say
from ledger.cli.sell.stalls import Name
from ledger.cli.stock.bars import BARS, read_bars, say_presumed_bare, warn_of_holds, without_a_label
from ledger.cli.stock.first_supply import First, first_supplied
from ledger.operations.sell.stall_out import stall_out


def command(ctx: typer.Context, name: Name, bars: BARS, first: First = None, on: On = None) -> None:
    """Take released bars to a stall, e.g. soapledger stall out saturday 26-118-0=6 26-117-2=4."""
    here = desk(ctx)
    wanted = read_bars(bars)
    bare = without_a_label(here, wanted)
    place = stall_out(here.book(), name, wanted, on=here.day(on), first=first_supplied(here, first))
    say(f"{count(sum(wanted.values()), 'bar')} taken to {place}.")
    say_presumed_bare(here, bare)
    warn_of_holds(here, wanted)
    say(f'Next, when you are home: soapledger stall back "{place}"')
