"""soapledger batch plan."""

from collections.abc import Sequence
from typing import Annotated

import typer

from ledger import __version__
from ledger.cli.kit.amounts import amount
from ledger.cli.kit.answer import answer, paper_of_entry
from ledger.cli.kit.desk import desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.options import Force, Json, On, Pdf, Recipe
from ledger.cli.kit.paper import PAPER, paper_size
from ledger.cli.kit.show import say, say_wrapped, table
from ledger.cli.recipe.page_words import say_stated, superfat_words
from ledger.errors import BadInput
from ledger.operations.bench.plan import PlanRequest, plan_batch
from ledger.reference.cautions import cautions
from ledger.units.dates import parse_date, show_date
from ledger.units.quantity import parse_mass, parse_pieces, show_mass, show_share
from ledger.units.words import Units
from ledger.views.bench.worksheet import Worksheet, acid_in_jug, worksheet


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
    say_plan(sheet, here.settings.units)
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


def say_plan(sheet: Worksheet, units: Units) -> None:
    """The cautions, then the plan in a sentence, then its lines."""
    care = cautions()
    say(care.first)
    unsaid = ("discard",) if acid_in_jug(sheet.lines) else ("discard", "acid")
    for step, texts in care.by_step.items():
        for one in texts if step not in unsaid else ():
            say_wrapped(one, first="  ! ", indent="    ")
    say()
    facts = f"{sheet.product}, version {sheet.recipe_version}, for {show_date(sheet.made_on)}"
    say(f"Batch {sheet.batch_code} is planned: {facts}.")
    if sheet.superfat_ppm is not None and sheet.lye_concentration_ppm is not None:
        say_wrapped(
            f"Superfat {show_share(sheet.superfat_ppm)}, lye concentration {show_share(sheet.lye_concentration_ppm)}, "
            f"{show_mass(sheet.dough_mg, units)} in the pot."
        )
    if sheet.superfat:
        if sheet.before_addition:
            say_wrapped(f"In the pot, before the fat held back goes in: {superfat_words(sheet.before_addition)}.")
        say_wrapped(f"From these lots: superfat {superfat_words(sheet.superfat)}.")
        say_stated(sheet.stated)
    table(
        ("line", "when", "material", "lot", "amount", "OK from", "to"),
        [
            (
                str(line.number),
                line.stage,
                line.material,
                line.lot_code or "none yet",
                amount(line.target, line.pieces, units),
                "" if line.pieces else amount(line.low, False, units),
                "" if line.pieces else amount(line.high, False, units),
            )
            for line in sheet.lines
        ],
        right=(0, 4, 5, 6),
    )
    for note in sheet.notes:
        say_wrapped(note, first="  ! ", indent="    ")
