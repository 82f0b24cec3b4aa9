"""soapledger lot waste."""

from typing import Annotated

import typer

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On, Why
from ledger.cli.kit.show import say
from ledger.cli.stock.lots import read_quantity
from ledger.cli.stock.options import At, Code
from ledger.operations.stock.lots import waste_lot


def command(
    ctx: typer.Context,
    code: Code,
    quantity: Annotated[str, typer.Argument(help="How much was thrown away.")],
    reason: Why,
    at: At = None,
    on: On = None,
) -> None:
    """Book what was spilt, spoilt or thrown away."""
    here = desk(ctx)
    gone = read_quantity(here, code, quantity)
    lot = waste_lot(here.book(), code, gone, place=at, on=here.day(on), reason=reason)
    left = amount(lot.on_hand, lot.counted, here.settings.units)
    say(
        f"{amount(gone, lot.counted, here.settings.units)} of lot {lot.code} is booked as waste: {reason}. "
        f"{left} is left in all."
    )
