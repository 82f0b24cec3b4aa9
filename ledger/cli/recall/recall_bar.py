"""soapledger recall bar."""

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
from ledger.domain.recall.question import Question, Start


def command(
    ctx: typer.Context,
    codes: Annotated[list[str], typer.Argument(help="Batch codes, as they stand on the bars.")],
    hold: Hold = False,
    dry: Dry = False,
    reason: Reason = "recall of these bars",
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
    """Answer for the batch of a bar and what was made from it, e.g. soapledger recall bar 26-118-0 --hold."""
    wanted = AnswerWanted(
        hold, reason, exercise, output, csv_file, paper_size(paper), force, json, dry, names, way, as_of
    )
    give_answer(desk(ctx), Question(tuple(Start("bar", code) for code in codes)), wanted)
