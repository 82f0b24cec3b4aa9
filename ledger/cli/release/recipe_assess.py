"""soapledger recipe assess."""

from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.heard import hear
from ledger.cli.kit.options import Recipe
from ledger.cli.kit.show import say
from ledger.operations.release.assess import assess_recipe
from ledger.units.dates import show_date
from ledger.units.toml_reader import toml_text


def command(
    ctx: typer.Context,
    which: Recipe,
    file: Annotated[Path, typer.Argument(help="The assessment as a small file (TOML).")],
) -> None:
    """Book the safety assessment of a product, e.g. soapledger recipe assess calendula assessment.toml."""
    card, booked = assess_recipe(desk(ctx).book(), which, hear(toml_text(file)), file=file.name)
    say(f"Assessment {booked.reference} of {booked.assessor}, {show_date(booked.on)}, is booked for {card.name}.")
    say(f"Lay the recipe beside it: soapledger recipe assessment {card.code}")
