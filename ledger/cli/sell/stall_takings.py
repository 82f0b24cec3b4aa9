"""soapledger stall takings."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Yes
from ledger.cli.kit.show import say, warn_of
from ledger.cli.sell.day_money import say_money
from ledger.cli.sell.stalls import Card, Cash, Complete, Float, Name, OtherGoods, Reason, Whole, read_takings
from ledger.operations.sell.stall_takings import stall_takings
from ledger.units.dates import show_date
from ledger.views.sell.takings import later_doubt
from ledger.views.stock.stall import stall_by_name


def command(
    ctx: typer.Context,
    name: Name,
    cash: Cash = None,
    float_: Float = None,
    card: Card = None,
    takings: Whole = None,
    other_goods: OtherGoods = None,
    complete: Complete = False,
    reason: Reason = None,
    on: Annotated[str | None, typer.Option("--on", help="The day at the stall (the last one).")] = None,
    yes: Yes = False,
) -> None:
    """Say later what was taken at a stall, e.g. soapledger stall takings saturday --card 84.50."""
    here = desk(ctx)
    told = read_takings(
        here, cash=cash, float_=float_, card=card, whole=takings, other=other_goods, complete=complete, reason=reason
    )
    day, place = here.day(on) if on else None, stall_by_name(here.rows(), name)
    doubt = later_doubt(here.rows(), place, told, on=day, currency=here.settings.currency)
    warn_of([doubt] if doubt else [], yes)
    stall, sold_on, money = stall_takings(here.book(), place.code, told, on=day, today=here.today)
    say(f"{stall} on {show_date(sold_on)}:")
    say_money(money, here.settings.currency, place.code)
