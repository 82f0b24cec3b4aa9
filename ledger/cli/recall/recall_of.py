"""soapledger recall of."""

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
from ledger.cli.recall.named import (
    Bar,
    Complaint,
    Fitting,
    From,
    Instead,
    LabelsOf,
    Many,
    Material,
    Numbers,
    Product,
    Recipe,
    Supplier,
    To,
    Tool,
    question_of,
)
from ledger.domain.recall.question import Kind


def command(
    ctx: typer.Context,
    numbers: Numbers = None,
    bar: Bar = None,
    product: Product = None,
    labels: LabelsOf = None,
    tool: Tool = None,
    instead: Instead = None,
    recipe: Recipe = None,
    complaint: Complaint = None,
    supplier: Supplier = None,
    material: Material = None,
    from_: From = None,
    to: To = None,
    every: Fitting = False,
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
    question = question_of(asked, supplier=supplier, material=material, days=(from_, to), every=every, today=here.today)
    give_answer(here, question, wanted)
