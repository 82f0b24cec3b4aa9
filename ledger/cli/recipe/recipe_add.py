"""soapledger recipe add."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.heard import hear
from ledger.cli.kit.show import say
from ledger.cli.recipe.pages import File
from ledger.operations.recipe.recipes import add_recipe
from ledger.units.toml_reader import toml_text


def command(ctx: typer.Context, file: File) -> None:
    """Add a recipe from its file, e.g. soapledger recipe add calendula.toml."""
    added = add_recipe(desk(ctx).book(), hear(toml_text(file)), file=file.name)
    say(f"{added.recipe.name} is added as '{added.code}', version 1.")
    say(f"Next: soapledger recipe show {added.code}, then soapledger batch plan {added.code}")
