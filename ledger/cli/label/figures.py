"""What the commands of a label take alike: market, net weight, months, day of supply."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk
from ledger.documents.kit.layout import label_layout
from ledger.domain.label import net_quantity
from ledger.domain.label.panel import EXAMPLES, Front, read_front
from ledger.errors import BadInput
from ledger.markets import market as law_of
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


Pack = Annotated[
    str | None,
    typer.Option("--pack", help="The side of the pack that bears the front, e.g. '55 x 80 mm' (else the layout's)."),
]
Layout = Annotated[str, typer.Option("--layout", help="A layout that is shipped, or a file of your own.")]


def front_of(pack: str | None, layout: str, market: str) -> Front | None:
    """The side of the pack that bears the front: hers, or as the layout says.

    Raises BadInput where neither says it and the law of the market goes by it.
    """
    law, front = law_of(market), read_front(pack) if pack else label_layout(layout).pack
    if front is None and law.figure_heights and law.heights_by == "panel":
        raise BadInput(
            f"In {law.name} the height of the net quantity goes by the side of the pack that bears the front, and the "
            f"layout '{layout}' does not say it; measure and write it: --pack {EXAMPLES}."
        )
    return front if law.heights_by == "panel" else None


MarketOption = Annotated[str | None, typer.Option("--market", help="Where they are sold (else your own market).")]


def sold_in(here: Desk, market: str | None) -> str:
    """The market as typed, else the code of her own; every answer names it. Raises BadInput for several."""
    return own_market(here.settings.addresses, here.settings.country).code if market is None else market
