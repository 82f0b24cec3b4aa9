"""soapledger order end."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On, Why
from ledger.cli.kit.show import count, say
from ledger.cli.shop.words import Number, read_number
from ledger.operations.shop.orders import end_order
from ledger.views.shop.orders import order_view


def command(
    ctx: typer.Context,
    number: Number,
    reason: Why,
    by: Annotated[str | None, typer.Option("--by", help="Who ended it (you).")] = None,
    on: On = None,
) -> None:
    """End an order before all of it went, e.g. order end 3 --by Orla --reason "they closed"; it stays to be read."""
    here = desk(ctx)
    who = by or here.decider
    order = read_number(number, "order")
    end_order(here.book(), order, on=here.day(on), by=who, reason=reason)
    found = order_view(here.rows(), order, here.today)
    left = found.bars - found.gone
    say(f"Order {order} is ended; {count(left, 'bar')} of it {'is' if left == 1 else 'are'} promised no longer.")
