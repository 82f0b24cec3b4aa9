"""soapledger recipe show."""

from typing import Annotated

import typer

from ledger.cli.kit.answer import answer
from ledger.cli.kit.options import Json, Recipe
from ledger.cli.recipe.page_words import say_page
from ledger.cli.recipe.pages import Fats, Version, worked_out


def command(
    ctx: typer.Context,
    which: Recipe,
    version: Version = None,
    fats: Fats = None,
    parts: Annotated[bool, typer.Option("--parts", help="What the range of the superfat is made of.")] = False,
    json: Json = False,
) -> None:
    """Show a recipe worked out in grams: lines, lye, superfat, the soap it makes and its fatty acids."""
    page = worked_out(ctx, which, version, fats)
    answer(page, json, lambda: say_page(page, parts=parts))
