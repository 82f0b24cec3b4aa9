"""soapledger label check."""

from datetime import date
from fractions import Fraction
from typing import Annotated

import typer

from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.options import Batch, Json
from ledger.cli.label.check_words import say_check
from ledger.cli.label.figures import MarketOption, Months, Net, SupplyDay, figures, sold_in
from ledger.domain.label.panel import panel_area_cm2
from ledger.errors import BadInput
from ledger.units.dates import parse_date
from ledger.units.quantity import parse_length
from ledger.views.label.label_check import label_check


def command(
    ctx: typer.Context,
    code: Batch,
    market: MarketOption = None,
    on: SupplyDay = None,
    net: Net = None,
    months: Months = None,
    panel: Annotated[
        str | None, typer.Option("--panel", help="The front of the pack, for the US: '2 x 3 in', 'cylinder 3 x 8 in'.")
    ] = None,
    json: Json = False,
) -> None:
    """Check what a label says, particular by particular, against the rules of a market on a day."""
    here = desk(ctx)
    market = sold_in(here, market)
    mass, number = figures(net, months)
    day = _supply_day(here, on)
    area = panel_area(panel) if panel else None
    found = label_check(here.rows(), code, market, on=day, net=mass, best_before_months=number, panel_cm2=area)
    answer(found, json, lambda: say_check(found, here.settings.units))


def panel_area(text: str) -> Fraction:
    """The area of the principal display panel in cm2: height x width, or cylinder height x circumference."""
    plain = text.removeprefix("cylinder ")
    sizes = [one.strip() for one in plain.replace("×", "x").split("x")]
    if len(sizes) != 2 or not sizes[1][-1:].isalpha():
        raise BadInput(f"'{text}' is not a panel; write its height and width, '2 x 3 in', or 'cylinder 3 x 8 in'.")
    unit = "".join(sign for sign in sizes[1] if sign.isalpha())
    high, across = (parse_length(one if one[-1:].isalpha() else f"{one} {unit}", what="the panel") for one in sizes)
    if text.startswith("cylinder"):
        return panel_area_cm2("cylinder", height_um=high, across_um=across)
    return panel_area_cm2("rectangle", height_um=high, across_um=across)


def _supply_day(here: Desk, on: str | None) -> "date":
    """The day bars are first supplied: a day to come is meant too, for what will change."""
    return parse_date(on, today=here.today, what="the day") if on else here.today
