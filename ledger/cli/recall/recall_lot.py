"""soapledger recall lot."""

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
from ledger.cli.recall.named import question_of


def command(
    ctx: typer.Context,
    numbers: Annotated[list[str] | None, typer.Argument(help="Their lot numbers, as the notice quotes them.")] = None,
    supplier: Annotated[str | None, typer.Option("--supplier", help="Only from this supplier.")] = None,
    material: Annotated[str | None, typer.Option("--material", help="Only this material.")] = None,
    from_: Annotated[str | None, typer.Option("--from", metavar="DATE", help="Received on this day or later.")] = None,
    to: Annotated[str | None, typer.Option("--to", metavar="DATE", help="Received on this day or earlier.")] = None,
    every: Annotated[bool, typer.Option("--all", help="All lots that fit, where several do.")] = False,
    hold: Hold = False,
    dry: Dry = False,
    reason: Reason = "supplier's recall",
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
    """Answer for one or several lot numbers, e.g. soapledger recall lot "4471/2" --hold -o recall.pdf."""
    wanted = AnswerWanted(
        hold, reason, exercise, output, csv_file, paper_size(paper), force, json, dry, names, way, as_of
    )
    here = desk(ctx)
    question = question_of(
        {"number": numbers}, supplier=supplier, material=material, days=(from_, to), every=every, today=here.today
    )
    give_answer(here, question, wanted)
