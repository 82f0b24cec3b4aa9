"""soapledger recipe revise."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.heard import hear
from ledger.cli.kit.options import Recipe
from ledger.cli.kit.show import say, say_marked, say_wrapped
from ledger.cli.recipe.difference import say_difference
from ledger.cli.recipe.pages import File
from ledger.operations.recipe.recipes import revise_recipe
from ledger.rows.recipe import recipe_by_code
from ledger.units.toml_reader import toml_text
from ledger.views.release.assessment import recipe_beside


def command(ctx: typer.Context, which: Recipe, file: File) -> None:
    """Book the next version of a recipe from its changed file; batches keep the version they used."""
    here = desk(ctx)
    done = revise_recipe(here.book(), which, hear(toml_text(file)), file=file.name)
    say(f"{done.recipe.name} has version {done.version} now. What changed:")
    say_difference(here, done.code, done.version)
    view = recipe_beside(here.rows(), recipe_by_code(here.rows(), done.code), on=here.today)
    if view is None:
        return
    name = f"assessment {view.assessment.reference} of {view.assessment.assessor}"
    outside = [
        f"{one.what} {one.found} (assessed: {one.assessed})" for one in view.compared if one.verdict == "outside"
    ]
    if outside:
        say_marked(f"Outside {name}: {'; '.join(outside)}.")
        say(f"See: soapledger recipe assessment {done.code}")
    else:
        say_wrapped(f"It lies inside {name} in all that was compared, so that goes on counting for it.")
