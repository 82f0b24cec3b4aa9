"""soapledger material peroxide."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Which
from ledger.cli.kit.show import say
from ledger.errors import BadInput
from ledger.operations.material.meant import state_peroxide
from ledger.units.quantity import parse_number


def command(
    ctx: typer.Context,
    which: Which,
    value: Annotated[str, typer.Argument(help="The peroxide value in mmol/L, as its certificate says.")],
    source: Annotated[str, typer.Option("--source", help="Where it stands, e.g. 'certificate 114'.")],
    lot: Annotated[str | None, typer.Option("--lot", help="For this lot alone.")] = None,
) -> None:
    """State the peroxide value of an oil, which the entries of limonene, pinene and some conifers ask for."""
    figure = value.strip().removesuffix("mmol/L").strip()
    if any(map(str.isalpha, figure)):
        raise BadInput(
            f"A peroxide value stands in mmol/L, as the entries ask for it, and '{value}' is in another measure; ask "
            "the supplier for mmol/L and write it like 12.5."
        )
    umol = round(parse_number(figure, what="the peroxide value") * 1000)
    where = state_peroxide(desk(ctx).book(), which, umol, source=source, lot=lot)
    say(f"{where}: peroxide value {umol / 1000:g} mmol/L ({source}).")
