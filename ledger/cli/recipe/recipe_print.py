"""soapledger recipe print."""

from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.kit.options import Force, Recipe
from ledger.cli.kit.paper import PAPER, paper_size
from ledger.cli.kit.show import say
from ledger.cli.recipe.pages import Fats, Version, worked_out
from ledger.documents.kit.files import check_free, write_file
from ledger.documents.recipe.recipe_sheet import draw_recipe_sheet
from ledger.reference.cautions import cautions


def command(
    ctx: typer.Context,
    which: Recipe,
    output: Annotated[Path, typer.Option("-o", help="The PDF file to write.")],
    version: Version = None,
    fats: Fats = None,
    paper: PAPER = "a4",
    force: Force = False,
) -> None:
    """Print a recipe as a sheet of one page, with a chart of its fatty acids."""
    check_free(output, force)
    size = paper_size(paper)
    page = worked_out(ctx, which, version, fats)
    write_file(output, draw_recipe_sheet(page, cautions=cautions(), paper=size), force=force)
    say(f"{page.name}, version {page.version}, is {output}.")
