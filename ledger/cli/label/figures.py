"""What the commands of a label take alike: market, net weight, months, day of supply."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk
from ledger.domain.label import net_quantity
from ledger.errors import BadInput
from ledger.markets import own_market
from ledger.units.quantity import parse_pieces

Net = Annotated[str | None, typer.Option("--net", help="Net weight per bar (else the recipe's), e.g. 100 g.")]
Months = Annotated[
    str | None, typer.Option("--months", help="Best before, months from the making (else the recipe's).")
]
SupplyDay = Annotated[str | None, typer.Option("--on", help="The day they are first supplied (today).")]


def figures(net: str | None, months: str | None) -> tuple[net_quantity.Net | None, int | None]:
    """The net weight, in the unit it was typed in, and the months, as typed. Raises BadInput."""
    mass = net_quantity.read_net(net) if net else None
    number = parse_pieces(months, what="the months") if months else None
    if number == 0:
        raise BadInput("Best before lies at least one month after the making.")
    return mass, number


MarketOption = Annotated[str | None, typer.Option("--market", help="Where they are sold (else your own market).")]


def sold_in(here: Desk, market: str | None) -> str:
    """The market as typed, else the code of her own; every answer names it. Raises BadInput for several."""
    return own_market(here.settings.addresses, here.settings.country).code if market is None else market
