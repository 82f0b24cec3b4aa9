"""Which product, and at which outlet, as the commands of prices take them."""

from datetime import date
from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk
from ledger.domain.sale.pricing import ANYWHERE, Outlet
from ledger.errors import BadInput
from ledger.rows.people import customer_by_code
from ledger.rows.sell.product import product_by_name
from ledger.units.dates import parse_date
from ledger.views.stock.stall import stall_by_name

Product = Annotated[str, typer.Argument(help="The product, or all.", metavar="PRODUCT|all")]
Stall = Annotated[str | None, typer.Option("--stall", help="At this stall alone.")]
To = Annotated[str | None, typer.Option("--to", help="For this customer alone.")]
From = Annotated[str | None, typer.Option("--from", help="From this day on (today).", metavar="DATE")]


def outlet_of(here: Desk, stall: str | None, to: str | None) -> tuple[Outlet, str]:
    """The outlet meant, and its name; anywhere with no name where none is. Raises BadInput for two."""
    if stall and to:
        raise BadInput("Give --stall or --to, not both; a price for each is set apart.")
    if stall:
        place = stall_by_name(here.rows(), stall)
        return Outlet(place_id=place.id), place.name
    if to:
        card = customer_by_code(here.rows(), to)
        return Outlet(customer_id=card.id), card.name
    return ANYWHERE, ""


def recipe_of(here: Desk, product: str) -> tuple[int | None, str]:
    """The product meant, by its recipe, with its name; none for all."""
    if product.strip().casefold() == "all":
        return None, "every product"
    found = product_by_name(here.rows(), product)
    return found.recipe_id, found.name


def day_from(here: Desk, text: str | None) -> date:
    """The day a price holds from, which may be one to come."""
    return parse_date(text, today=here.today, what="the day") if text else here.today
