"""soapledger recall close."""

from typing import Annotated

import typer

from ledger import __version__
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import ask, can_answer, say, say_next, say_wrapped
from ledger.cli.recall.named import Number
from ledger.operations.recall.recall_life import close_recall
from ledger.views.recall.recall_life import recall_life


def command(
    ctx: typer.Context,
    number: Number,
    conclusion: Annotated[
        str | None, typer.Option("--conclusion", metavar="WORDS", help="How it ended, in quotes.")
    ] = None,
    reason: Annotated[str | None, typer.Option("--reason", help="Why bars are unexplained, if any are.")] = None,
    on: On = None,
) -> None:
    """Close a recall, by name, with its conclusion, e.g. recall close R1 --conclusion "all back, destroyed"."""
    here = desk(ctx)
    if conclusion is None and can_answer():
        conclusion = ask("How did it end?")
    card = close_recall(here.book(), number, conclusion or "", reason=reason, on=here.day(on), by=here.decider)
    life = recall_life(here.rows(), card.name, on=here.today, program=__version__)
    say(f"Recall {card.name} is closed.")
    if life.not_told:
        say_wrapped(
            f"{len(life.not_told)} of {len(life.people)} to call "
            f"{'was' if len(life.not_told) == 1 else 'were'} not noted as told."
        )
    if "on hold" in life.answer.stopped:
        say_next("What it held stays on hold until someone decides: soapledger lot accept or reject, or release.")
    assert card.closed is not None
    say_next(f"To go on with it after all: soapledger undo {card.closed.entry}")
