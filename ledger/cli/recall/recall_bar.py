"""soapledger recall bar."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.paper import PAPER, paper_size
from ledger.cli.recall.answer import AnswerWanted, Contacts, Exercise, Force, Hold, Output, Reason, give_answer
from ledger.views.recall.recall_search import batches_meant


def command(
    ctx: typer.Context,
    codes: Annotated[list[str], typer.Argument(help="Batch codes, as they stand on the bars.")],
    hold: Hold = False,
    reason: Reason = "recall of these bars",
    exercise: Exercise = False,
    output: Output = None,
    csv_file: Contacts = None,
    paper: PAPER = "a4",
    force: Force = False,
    json: Json = False,
) -> None:
    """Answer for the batch of a bar and what was made from it, e.g. soapledger recall bar 26-118-0 --hold."""
    wanted = AnswerWanted(hold, reason, exercise, output, csv_file, paper_size(paper), force, json)
    here = desk(ctx)
    meant = batches_meant(here.rows(), codes)
    give_answer(here, (), meant, tuple(batch.code for batch in meant), wanted)
