"""What the commands of a stall take alike."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk
from ledger.domain.sell.takings import Takings
from ledger.units.money import parse_money

Name = Annotated[str, typer.Argument(help="The stall's name.")]
Bars = Annotated[list[str] | None, typer.Argument(help="Batches or products with numbers, e.g. rosemary=12.")]
Cash = Annotated[
    str | None, typer.Option("--cash", help="What was counted in the box, its float with it.", metavar="MONEY")
]
Float = Annotated[
    str | None, typer.Option("--float", help="Of the cash: what was in the box in the morning.", metavar="MONEY")
]
Card = Annotated[str | None, typer.Option("--card", help="What came by card; it may be told later.", metavar="MONEY")]
Whole = Annotated[str | None, typer.Option("--takings", help="What you took that day, where you do not part it.")]
OtherGoods = Annotated[
    str | None,
    typer.Option("--other-goods", help="Of the takings: for goods that are not in the ledger.", metavar="MONEY"),
]
Complete = Annotated[bool, typer.Option("--complete", help="No more takings come of that day.")]
Reason = Annotated[str | None, typer.Option("--reason", help="Why the takings differ, if you know.")]


def read_takings(
    here: Desk,
    *,
    cash: str | None = None,
    float_: str | None = None,
    card: str | None = None,
    whole: str | None = None,
    other: str | None = None,
    complete: bool = False,
    reason: str | None = None,
) -> Takings:
    """What was typed of the money of a day, in minor units. Raises BadInput."""

    def read(text: str | None, what: str) -> int | None:
        return None if text is None else parse_money(text, here.settings.currency, what=what)

    return Takings(
        read(cash, "the cash"),
        read(float_, "the float"),
        read(card, "the card total"),
        read(whole, "the takings"),
        read(other, "the takings for other goods") or 0,
        complete,
        reason,
    )
