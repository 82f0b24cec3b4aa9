"""soapledger recall of."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.paper import PAPER, paper_size
from ledger.cli.recall.answer import (
    AnswerWanted,
    AsOf,
    Contacts,
    Dry,
    Exercise,
    Force,
    ForWay,
    Hold,
    Names,
    Output,
    Reason,
    give_answer,
)
from ledger.domain.recall.question import Kind, Question, Start
from ledger.units.dates import parse_date

Numbers = Annotated[list[str] | None, typer.Argument(help="Their lot numbers, our lot codes, batch codes from bars.")]
Many = list[str] | None


def command(
    ctx: typer.Context,
    numbers: Numbers = None,
    bar: Annotated[Many, typer.Option("--bar", metavar="CODE", help="The batch of a bar.")] = None,
    product: Annotated[Many, typer.Option("--product", metavar="NAME", help="A soap, made between the days.")] = None,
    labels: Annotated[Many, typer.Option("--labels", metavar="RUN", help="A print run, as after a misprint.")] = None,
    tool: Annotated[Many, typer.Option("--tool", metavar="NAME", help="All that a failed tool measured.")] = None,
    instead: Annotated[
        Many, typer.Option("--instead", metavar="NAME", help="A material that was weighed for another.")
    ] = None,
    recipe: Annotated[
        Many, typer.Option("--recipe", metavar="NAME", help="A recipe, or NAME@2 for one version.")
    ] = None,
    complaint: Annotated[Many, typer.Option("--complaint", metavar="NUMBER", help="What a complaint is about.")] = None,
    supplier: Annotated[str | None, typer.Option("--supplier", help="Only lots from this supplier.")] = None,
    material: Annotated[str | None, typer.Option("--material", help="Only lots of this material.")] = None,
    from_: Annotated[
        str | None, typer.Option("--from", metavar="DATE", help="Received, or made, on this day or later.")
    ] = None,
    to: Annotated[
        str | None, typer.Option("--to", metavar="DATE", help="Received, or made, on this day or earlier.")
    ] = None,
    every: Annotated[bool, typer.Option("--all", help="All lots that fit, where several do.")] = False,
    hold: Hold = False,
    dry: Dry = False,
    reason: Reason = "recall",
    exercise: Exercise = False,
    output: Output = None,
    csv_file: Contacts = None,
    names: Names = False,
    way: ForWay = None,
    as_of: AsOf = None,
    paper: PAPER = "a4",
    force: Force = False,
    json: Json = False,
) -> None:
    """Answer for anything, several at once, e.g. soapledger recall of --tool bench-scale --complaint 3."""
    wanted = AnswerWanted(
        hold, reason, exercise, output, csv_file, paper_size(paper), force, json, dry, names, way, as_of
    )
    here = desk(ctx)
    asked: dict[Kind, Many] = {
        "number": numbers, "bar": bar, "product": product, "labels": labels, "tool": tool, "instead": instead,
        "recipe": recipe, "complaint": complaint,
    }  # fmt: skip
    question = Question(
        tuple(Start(kind, what) for kind, words in asked.items() for what in words or ()),
        supplier,
        material,
        parse_date(from_, today=here.today, what="the day of --from") if from_ else None,
        parse_date(to, today=here.today, what="the day of --to") if to else None,
        every,
    )
    give_answer(here, question, wanted)
