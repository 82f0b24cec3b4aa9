"""soapledger batch plan."""

from collections.abc import Sequence
from typing import Annotated

import typer

from ledger import __version__
from ledger.cli.bench.worksheet_words import say_cautions, say_worksheet
from ledger.cli.kit.answer import answer, paper_of_entry
from ledger.cli.kit.desk import desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.options import Force, Json, On, Pdf, Recipe
from ledger.cli.kit.paper import PAPER, paper_size
from ledger.cli.kit.show import say
from ledger.errors import BadInput
from ledger.operations.bench.plan import PlanRequest, plan_batch
from ledger.reference.cautions import cautions
from ledger.units.dates import parse_date, show_date
from ledger.units.quantity import parse_mass, parse_pieces
from ledger.views.bench.worksheet import Worksheet, worksheet


def command(
    ctx: typer.Context,
    recipe: Recipe,
    fats: Annotated[str | None, typer.Option("--fats", help="For so much fat, e.g. 1200 g.")] = None,
    bars: Annotated[str | None, typer.Option("--bars", help="How many bars to cut (else as the recipe says).")] = None,
    on: On = None,
    using: Annotated[
        list[str] | None, typer.Option("--using", help="A lot of your choosing: 'olive oil=L41-5' (repeat).")
    ] = None,
    version: Annotated[str | None, typer.Option("--version", help="An earlier version of the recipe.")] = None,
    anyway: Annotated[
        str | None,
        typer.Option("--anyway", help="Plan it though the superfat is likely to be nothing, with the reason."),
    ] = None,
    output: Pdf = None,
    paper: PAPER = "a4",
    force: Force = False,
    json: Json = False,
) -> None:
    """Plan a batch from the lots in hand and print its worksheet, e.g. batch plan calendula -o sheet.pdf."""
    here = desk(ctx)
    size = paper_size(paper)
    request = PlanRequest(
        recipe=recipe,
        on=parse_date(on, today=here.today, what="the day") if on else here.today,
        fats_mg=parse_mass(fats, what="the fats") if fats else None,
        bars=parse_pieces(bars, what="the number of bars") if bars else None,
        using=_choices(using or ()),
        version=parse_pieces(version, what="the version") if version else None,
        anyway=anyway,
    )
    with paper_of_entry(here, output, force=force) as put:

        def draw(sheet: Worksheet) -> None:
            put(loaded("documents.bench.worksheet").draw_worksheet(sheet, cautions=cautions(), paper=size))

        code = plan_batch(here.book(), request, draw if output else None)
        here.again = here.typed(f"batch show {code} --worksheet", output)
    here.again = here.typed(f"batch show {code}")
    sheet = worksheet(here.rows(), code, program=__version__)
    if answer(sheet, json):
        return
    say_cautions(sheet)
    facts = f"{sheet.product}, version {sheet.recipe_version}, for {show_date(sheet.made_on)}"
    say(f"Batch {sheet.batch_code} is planned: {facts}.")
    say_worksheet(sheet)
    if output:
        say(f"The worksheet is {output}.")
    say(f"Next, at the bench: soapledger batch log {code}")


def _choices(texts: Sequence[str]) -> dict[str, str]:
    """The --using options. Raises BadInput for one that cannot be read or stands twice."""
    chosen: dict[str, str] = {}
    for text in texts:
        material, separator, code = (part.strip() for part in text.partition("="))
        if not separator:
            raise BadInput(f"'{text}' is not a choice of lot; write --using 'olive oil=L41-5'.")
        if material in chosen:
            raise BadInput(f"Two lots are chosen to begin {material} with; name one, the next fills up by itself.")
        chosen[material] = code
    return chosen
