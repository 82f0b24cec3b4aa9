"""What the commands of a recipe take alike, and a recipe worked out."""

from pathlib import Path
from typing import Annotated

import typer

from ledger import __version__
from ledger.cli.kit.desk import desk
from ledger.domain.recipe.mould import Mould
from ledger.rows.recipe import recipe_by_code
from ledger.units.quantity import parse_mass, parse_pieces
from ledger.views.recipe.recipe_page import RecipePage, recipe_page

File = Annotated[Path, typer.Argument(help="The recipe file (TOML).")]
Version = Annotated[str | None, typer.Option("--version", help="An earlier version.")]
Fats = Annotated[str | None, typer.Option("--fats", help="For so much fat, e.g. 1200 g.")]


def read_version(text: str | None) -> int | None:
    """The number of a version as typed; None for the latest. Raises BadInput."""
    return parse_pieces(text, what="the version") if text else None


def worked_out(
    ctx: typer.Context,
    which: str,
    version: str | None,
    fats: str | None,
    *,
    fats_mg: int | None = None,
    mould: Mould | None = None,
    bars: int | None = None,
) -> RecipePage:
    """A recipe worked out for so much fat, a mould or so many bars. Raises BadInput."""
    here = desk(ctx)
    size = parse_mass(fats, what="the fats") if fats else fats_mg
    card = recipe_by_code(here.rows(), which)
    return recipe_page(
        here.rows(), card, version=read_version(version), fats_mg=size, mould=mould, bars=bars, program=__version__
    )
