"""What the commands of a delivery take alike."""

from typing import Annotated

import typer

from ledger import __version__
from ledger.cli.kit.desk import Desk
from ledger.cli.shop.words import read_number
from ledger.errors import BadInput
from ledger.views.shop.delivery import Delivery, delivery

Sale = Annotated[str | None, typer.Argument(help="The number of the sale, e.g. 12.", metavar="[SALE]")]
Entry = Annotated[
    str | None, typer.Option("--entry", help="Of bars on sale or return: the entry that took them.", metavar="ENTRY")
]


def delivered(here: Desk, sale: str | None, entry: str | None) -> Delivery:
    """The delivery that is meant. Raises BadInput for neither or both."""
    if (sale is None) == (entry is None):
        raise BadInput(
            "Which delivery? Write the number of its sale, or --entry N where the bars are on sale or return."
        )
    if sale is not None:
        return delivery(here.rows(), sale=read_number(sale, "sale"), program=__version__)
    return delivery(here.rows(), entry=read_number(entry or "", "entry"), program=__version__)
