"""soapledger recipe revise."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.heard import hear
from ledger.cli.kit.options import Recipe
from ledger.cli.kit.show import say
from ledger.cli.recipe.difference import say_difference
from ledger.cli.recipe.pages import File
from ledger.operations.recipe.recipes import revise_recipe
from ledger.units.toml_reader import toml_text


def command(ctx: typer.Context, which: Recipe, file: File) -> None:
    """Book the next version of a recipe from its changed file; batches keep the version they used."""
    here = desk(ctx)
    done = revise_recipe(here.book(), which, hear(toml_text(file)), file=file.name)
    say(f"{done.recipe.name} has version {done.version} now. What changed:")
    say_difference(here, done.code, done.version)
