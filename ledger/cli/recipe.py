"""soapledger recipe: her recipes and their versions."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from ledger.cli.assessment import assess, assessment
from ledger.cli.desk import desk
from ledger.cli.paper import PAPER, paper_size
from ledger.cli.show import out_json, say, table
from ledger.errors import BadInput

if TYPE_CHECKING:
    from ledger.domain.mould import Mould
    from ledger.views.recipe_page import RecipePage

app = typer.Typer(
    help="Your recipes, small text files: add, revise (the next version), list, show, scale, print, assess."
)

app.command("assess")(assess)
app.command("assessment")(assessment)

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


@app.command("revise")
def revise(ctx: typer.Context, which: Which, file: File) -> None:
    """Book the next version of a recipe from its changed file; batches keep the version they used."""
    from ledger.cli.revision import say_difference
    from ledger.operations.recipes import revise_recipe

    here = desk(ctx)
    done = revise_recipe(here.book(), which, read_text(file), file=file.name)
    say(f"{done.recipe.name} has version {done.version} now. What changed:")
    say_difference(here, done.code, done.version)


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


Version = Annotated[str | None, typer.Option("--version", help="An earlier version.")]
Fats = Annotated[str | None, typer.Option("--fats", help="For so much fat, e.g. 1200 g.")]


@app.command("show")
def show(ctx: typer.Context, which: Which, version: Version = None, fats: Fats = None, json: Json = False) -> None:
    """Show a recipe worked out in grams: lines, lye, superfat, the soap it makes and its fatty acids."""
    page = _page(ctx, which, version, fats)
    if json:
        out_json(page)
        return
    from ledger.cli.recipe_page import say_page

    say_page(page)


@app.command("scale")
def scale(
    ctx: typer.Context,
    which: Which,
    mould: Annotated[
        str | None,
        typer.Option("--mould", help="To a mould: '21 x 7 x 6.5 cm', 'cylinder 7.5 x 25 cm', '6 of 90 mL'."),
    ] = None,
    bars: Annotated[str | None, typer.Option("--bars", help="To so many bars, with --size or --net-weight.")] = None,
    size: Annotated[str | None, typer.Option("--size", help="The size of a bar: '80 x 55 x 25 mm'.")] = None,
    net_weight: Annotated[str | None, typer.Option("--net-weight", help="What a bar weighs after the cure.")] = None,
    stock: Annotated[str | None, typer.Option("--stock", help="To all that is free of one of its fats.")] = None,
    version: Version = None,
    json: Json = False,
) -> None:
    """Scale a recipe to a mould, to so many bars, or to the stock of one fat."""
    from ledger.cli.scaling import say_scaled, scaled_fats
    from ledger.domain.mould import parse_mould
    from ledger.domain.quantity import parse_pieces

    here = desk(ctx)
    number = _version(version)
    fats_mg = scaled_fats(here, which, number, mould=mould, bars=bars, size=size, net_weight=net_weight, stock=stock)
    pieces = parse_pieces(bars, what="the number of bars") if bars else None
    into = parse_mould(mould) if mould else None
    if into and into.cavities > 1:
        pieces = into.cavities
    page = _page(ctx, which, version, None, fats_mg=fats_mg, mould=into, bars=pieces)
    if json:
        out_json(page)
        return
    say_scaled(here, page)


@app.command("print")
def print_(
    ctx: typer.Context,
    which: Which,
    output: Annotated[Path, typer.Option("-o", help="The PDF file to write.")],
    version: Version = None,
    fats: Fats = None,
    paper: PAPER = "a4",
    force: Annotated[bool, typer.Option("--force", help="Overwrite an existing file.")] = False,
) -> None:
    """Print a recipe as a sheet of one page, with a chart of its fatty acids."""
    from ledger.documents.files import check_free, write_file
    from ledger.documents.recipe_sheet import draw_recipe_sheet
    from ledger.reference.cautions import cautions

    check_free(output, force)
    size = paper_size(paper)
    page = _page(ctx, which, version, fats)
    write_file(output, draw_recipe_sheet(page, cautions=cautions(), paper=size), force=force)
    say(f"{page.name}, version {page.version}, is {output}.")


def _version(text: str | None) -> int | None:
    from ledger.domain.quantity import parse_pieces

    return parse_pieces(text, what="the version") if text else None


def _page(
    ctx: typer.Context,
    which: str,
    version: str | None,
    fats: str | None,
    *,
    fats_mg: int | None = None,
    mould: "Mould | None" = None,
    bars: int | None = None,
) -> "RecipePage":
    from ledger import __version__
    from ledger.domain.quantity import parse_mass
    from ledger.views.recipe import recipe_by_code
    from ledger.views.recipe_page import recipe_page

    here = desk(ctx)
    size = parse_mass(fats, what="the fats") if fats else fats_mg
    card = recipe_by_code(here.rows(), which)
    return recipe_page(
        here.rows(), card, version=_version(version), fats_mg=size, mould=mould, bars=bars, program=__version__
    )
