"""soapledger recipe: her recipes and their versions."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from ledger.cli.assessment import assess, assessment
from ledger.cli.desk import desk
from ledger.cli.show import amount, out_json, say, table
from ledger.errors import BadInput

if TYPE_CHECKING:
    from ledger.views.recipe import RecipeSheet

app = typer.Typer(help="Your recipes, small text files: add, edit (the next version), list, show, assess.")

File = Annotated[Path, typer.Argument(help="The recipe file (TOML).")]
Which = Annotated[str, typer.Argument(help="The recipe's short name or name.")]
Json = Annotated[bool, typer.Option("--json", help="Answer as JSON.")]


def read_text(file: Path) -> str:
    """A text file as typed. Raises BadInput when it cannot be read."""
    try:
        return file.read_text(encoding="utf-8")
    except OSError as error:
        raise BadInput(f"{file} cannot be read ({error.strerror}).") from None
    except UnicodeDecodeError:
        raise BadInput(f"{file} is not in UTF-8; save it so and try again.") from None


@app.command("add")
def add(ctx: typer.Context, file: File) -> None:
    """Add a recipe from its file, e.g. soapledger recipe add calendula.toml."""
    from ledger.operations.recipes import add_recipe

    added = add_recipe(desk(ctx).book(), read_text(file), file=file.name)
    say(f"{added.recipe.name} is added as '{added.code}', version 1.")
    say(f"Next: soapledger recipe show {added.code}, then soapledger batch plan {added.code}")


@app.command("edit")
def edit(ctx: typer.Context, which: Which, file: File) -> None:
    """Book the next version of a recipe from its changed file; batches keep the version they used."""
    from ledger.operations.recipes import edit_recipe

    here = desk(ctx)
    added = edit_recipe(here.book(), which, read_text(file), file=file.name)
    say(f"{added.recipe.name} has version {added.version} now. What changed:")
    assert added.before is not None
    old = {(line.role, line.material): line for line in added.before.lines}
    new = {(line.role, line.material): line for line in added.recipe.lines}
    for key in [*old, *(key for key in new if key not in old)]:
        was, now = (_written(found.get(key), here.settings.units) for found in (old, new))
        if was != now:
            say(f"  {key[1]}: {was or 'not there'} → {now or 'gone'}")
    for label, before, after in (
        ("superfat", added.before.superfat_ppm, added.recipe.superfat_ppm),
        ("fats in all, mg", added.before.fats_total_mg, added.recipe.fats_total_mg),
        ("cure days", added.before.cure_days, added.recipe.cure_days),
        ("bars", added.before.bars, added.recipe.bars),
    ):
        if before != after:
            shown = [f"{v / 10_000:g} %" if label == "superfat" and v is not None else v for v in (before, after)]
            say(f"  {label}: {shown[0]} → {shown[1]}")


def _written(line: object, units: str) -> str:
    from ledger.domain.quantity import show_mass, show_share
    from ledger.domain.recipe import RecipeLine

    if not isinstance(line, RecipeLine):
        return ""
    if line.share_ppm is not None:
        return show_share(line.share_ppm)
    if line.mass_mg is not None:
        return show_mass(line.mass_mg, units)
    return f"{line.per_bar} per bar" if line.per_bar else line.stage


@app.command("list")
def list_(ctx: typer.Context, json: Json = False) -> None:
    """List the recipes."""
    from ledger.views.recipe import recipe_list

    cards = recipe_list(desk(ctx).rows())
    if json:
        out_json(cards)
        return
    if not cards:
        say("No recipe yet. Add one: soapledger recipe add FILE.toml")
        return
    say(f"{len(cards)} recipes.")
    table(
        ("short name", "name", "process", "version", "batches"),
        [(c.code, c.name, c.process, str(c.version), str(c.batches)) for c in cards],
        right=(3, 4),
    )


@app.command("show")
def show(
    ctx: typer.Context,
    which: Which,
    version: Annotated[str | None, typer.Option("--version", help="An earlier version.")] = None,
    fats: Annotated[str | None, typer.Option("--fats", help="For so much fat, e.g. 1200 g.")] = None,
    json: Json = False,
) -> None:
    """Show a recipe worked out in grams, with the figures of its materials."""
    from ledger.domain.quantity import parse_mass, parse_pieces
    from ledger.views.recipe import recipe_by_code, recipe_sheet

    here = desk(ctx)
    card = recipe_by_code(here.rows(), which)
    number = parse_pieces(version, what="the version") if version else None
    size = parse_mass(fats, what="the fats") if fats else None
    sheet = recipe_sheet(here.rows(), card, version=number, fats_mg=size)
    if json:
        out_json(sheet)
        return
    _show_sheet(sheet, here.settings.units)


def _show_sheet(sheet: "RecipeSheet", units: str) -> None:
    from ledger.domain.quantity import show_mass, show_share
    from ledger.reference.cautions import cautions

    recipe = sheet.recipe
    made = f"{recipe.process} process" if recipe.process in ("cold", "hot") else recipe.process
    head = f"{recipe.name}, version {sheet.version}: {made}"
    if recipe.superfat_ppm is not None:
        head += f", superfat {show_share(recipe.superfat_ppm)} of the alkali withheld"
    say(head + ".")
    body = []
    fats = sum(t.target for t in sheet.targets if t.line.role == "fat")
    amounts = {(t.line.role, t.line.material): t.target for t in sheet.targets}
    if sheet.lye:
        amounts["alkali", recipe.of_role("alkali")[0].material] = sheet.lye.alkali.weigh_mg
        amounts["liquid", recipe.of_role("liquid")[0].material] = sheet.lye.water_mg
    for line in recipe.lines:
        target = amounts[line.role, line.material]
        counted = line.role == "packaging"
        share = show_share(round(target * 1_000_000 / fats)) if fats and not counted else ""
        name = sheet.materials[line.material].name
        body.append((line.stage, name, amount(target, counted, units), share))
    table(("when", "material", "amount", "of the fats"), body, right=(2, 3))
    if sheet.lye:
        dough = fats + sheet.lye.water_mg + sheet.lye.alkali.weigh_mg
        say(
            f"Lye concentration {show_share(sheet.lye.concentration_ppm)}, water to alkali "
            f"{sheet.lye.water_per_alkali_thousandths / 1000:.2f} : 1; fats, lye and water together "
            f"{show_mass(dough, units)}."
        )
        say("The alkali follows the figures of the materials; a batch is reckoned from the lots in hand.")
        say(cautions().first)
    if recipe.process in ("cold", "hot", "rebatch"):
        usable = (
            f"; usable from {recipe.usable_from_days} days, not yet steady in weight" if recipe.usable_from_days else ""
        )
        say(f"Cure {recipe.cure_days} days{usable} (her own figures; common practice, no source).")


app.command("assess")(assess)
app.command("assessment")(assessment)
