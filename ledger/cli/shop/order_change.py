"""soapledger order change."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.show import count, say, warn
from ledger.cli.shop.words import THINGS, Number, read_changes, read_number
from ledger.operations.shop.orders import change_order
from ledger.units.dates import show_date
from ledger.views.shop.orders import order_view


def command(ctx: typer.Context, number: Number, things: THINGS) -> None:
    """Promise more or fewer bars on an order, e.g. soapledger order change 3 rosemary=+4 oat=-2."""
    here = desk(ctx)
    order = read_number(number, "order")
    change_order(here.book(), order, read_changes(things))
    found = order_view(here.rows(), order, here.today)
    say(f"Order {order}: {count(found.still, 'bar')} still to go to {found.customer} by {show_date(found.due_on)}.")
    for sentence in found.words:
        warn(sentence)
