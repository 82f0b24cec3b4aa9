"""soapledger order add."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Note, On
from ledger.cli.kit.show import count, say, warn
from ledger.cli.shop.words import THINGS, Shop, due_day
from ledger.cli.stock.bars import read_bars
from ledger.operations.shop.orders import add_order
from ledger.units.dates import show_date
from ledger.units.money import parse_money
from ledger.views.shop.orders import order_view


def command(
    ctx: typer.Context,
    customer: Shop,
    things: THINGS,
    due: Annotated[str, typer.Option("--due", help="By which day: a date, or the next such weekday.", metavar="DAY")],
    price: Annotated[str | None, typer.Option("--price", help="What one bar will be sold for.")] = None,
    note: Note = None,
    on: On = None,
) -> None:
    """Promise bars, of curing batches too, e.g. order add tern-hall rosemary=12 26-118-0=6 --due friday."""
    here = desk(ctx)
    wanted, day = read_bars(things), due_day(here, due)
    each = parse_money(price, here.settings.currency, what="the price") if price else None
    number = add_order(here.book(), customer, wanted, on=here.day(on), due_on=day, price_minor=each, note=note)
    found = order_view(here.rows(), number, here.today)
    say(f"Order {number}: {count(found.bars, 'bar')} promised to {found.customer} by {show_date(day)}.")
    for sentence in found.words:
        warn(sentence)
    say(f"When they go: soapledger dispatch --order {number}")
