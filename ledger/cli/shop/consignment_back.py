"""soapledger consignment back."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import count, say
from ledger.cli.shop.words import THINGS, Shop
from ledger.cli.stock.bars import read_bars
from ledger.operations.shop.back import back_from_shop


def command(ctx: typer.Context, customer: Shop, things: THINGS, on: On = None) -> None:
    """Book bars that a shop gives back unsold, on the returns shelf, e.g. consignment back tern-hall 26-118-0=3."""
    here = desk(ctx)
    shop, codes = back_from_shop(here.book(), customer, read_bars(things), on=here.day(on))
    say(f"{count(sum(codes.values()), 'bar')} from {shop} on the returns shelf, to be looked at first.")
    bars = " ".join(f"{code}={number}" for code, number in codes.items())
    say(f'When someone decided so: soapledger resell {bars} --by NAME --reason "…"')
