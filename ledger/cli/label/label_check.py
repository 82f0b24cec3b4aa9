"""soapledger label check."""

from datetime import date

import typer

from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.options import Batch, Json
from ledger.cli.label.check_words import say_check
from ledger.cli.label.figures import (
    Language,
    Layout,
    MarketOption,
    Months,
    Net,
    Pack,
    SupplyDay,
    figures,
    front_of,
    sold_in,
    words_of,
)
from ledger.units.dates import parse_date
from ledger.views.label.label_check import label_check


def command(
    ctx: typer.Context,
    code: Batch,
    market: MarketOption = None,
    on: SupplyDay = None,
    net: Net = None,
    months: Months = None,
    layout: Layout = "band",
    pack: Pack = None,
    language: Language = None,
    json: Json = False,
) -> None:
    """Check what a label says, particular by particular, against the rules of a market on a day."""
    here = desk(ctx)
    market = sold_in(here, market)
    mass, number = figures(net, months)
    day = _supply_day(here, on)
    front = front_of(pack, layout, market)
    words = words_of(here, market, language)
    found = label_check(
        here.rows(), code, market, on=day, net=mass, best_before_months=number, front=front, words=words
    )
    answer(found, json, lambda: say_check(found, here.settings.units))


def _supply_day(here: Desk, on: str | None) -> "date":
    """The day bars are first supplied: a day to come is meant too, for what will change."""
    return parse_date(on, today=here.today, what="the day") if on else here.today
