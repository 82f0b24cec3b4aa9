"""The answer to a supplier's call, and to the code on a bar: held, said, written."""

from collections.abc import Sequence
from pathlib import Path
from shlex import quote
from typing import Annotated, NamedTuple

import typer

from ledger import __version__
from ledger.cli.kit.desk import Desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.show import out_json, say
from ledger.cli.recall.words import say_answer
from ledger.documents.kit.files import check_free, write_file
from ledger.documents.recall.contact_list import contact_list
from ledger.errors import BadInput
from ledger.rows.batch import BatchRow
from ledger.rows.lot import LotRow
from ledger.views.recall.recall import RecallAnswer
from ledger.views.recall.recall_answer import recall_answer

Hold = Annotated[bool, typer.Option("--hold", help="Put all that is here on hold at once.")]
Reason = Annotated[str, typer.Option("--reason", help="Why, for the hold.")]
Exercise = Annotated[bool, typer.Option("--exercise", help="This is only an exercise.")]
Output = Annotated[Path | None, typer.Option("-o", help="Write the report as a PDF file.")]
Contacts = Annotated[Path | None, typer.Option("--csv", help="Write whom to call as a CSV file.")]
Force = Annotated[bool, typer.Option("--force", help="Overwrite existing files.")]


class AnswerWanted(NamedTuple):
    """What is to become of an answer: whether all of it is held, and which files are written."""

    hold: bool
    reason: str
    exercise: bool
    output: Path | None
    contacts: Path | None
    paper: str
    force: bool
    json: bool

    def check(self) -> None:
        """Raise BadInput before anything is held, for an exercise that holds or a file that may not be written."""
        if self.hold and self.exercise:
            raise BadInput("An exercise holds nothing back; leave out --hold, or --exercise if this is no exercise.")
        for path in (self.output, self.contacts):
            if path is not None:
                check_free(path, self.force)
        if self.output and self.contacts and self.output.absolute() == self.contacts.absolute():
            raise BadInput(f"The report and the list of whom to call cannot both be {self.output}; name two files.")


def give_answer(
    here: Desk, lots: Sequence[LotRow], bars_of: Sequence[BatchRow], asked: tuple[str, ...], wanted: AnswerWanted
) -> None:
    """Hold if told, say the answer, then write the contacts and last of all the report, which takes longest to draw."""
    wanted.check()
    if wanted.hold:
        answer = loaded("operations.recall.hold_reached").hold_reached(
            here.book(), lots, bars_of=bars_of, asked=asked, on=here.today, by=here.decider, reason=wanted.reason
        )
        contacts = f" --csv {quote(str(wanted.contacts))}" if wanted.contacts else ""
        here.again = here.typed(f"recall {_again(answer)}{contacts}", wanted.output)
    else:
        answer = recall_answer(
            here.rows(), lots, bars_of=bars_of, asked=asked, program=__version__, exercise=wanted.exercise
        )
    here.let_go()  # a long report is drawn without keeping a writer out
    if wanted.json:
        out_json(answer)
    else:
        say_answer(answer)
        _say_next(answer)
    if wanted.contacts:
        _write_contacts(answer, wanted.contacts, wanted)
        here.paper = wanted.contacts
        here.again = here.again and here.typed(f"recall {_again(answer)}", wanted.output)
    if wanted.output:
        drawn = loaded("documents.recall.recall_report").draw_recall(answer, paper=wanted.paper)
        write_file(wanted.output, drawn, force=wanted.force)
        if not wanted.json:
            say(f"The report is {wanted.output}.")


def _say_next(answer: RecallAnswer) -> None:
    if answer.held:
        return
    if answer.stoppable:
        say(f"Next, to stop all that is here: soapledger recall {_again(answer)} --hold")
    elif answer.stopped:
        say(f"All of it that is here is {' or '.join(answer.stopped)} already.")


def _again(answer: RecallAnswer) -> str:
    """The words that ask the same once more."""
    if answer.bars_of:
        return f"bar {' '.join(answer.bars_of)}"
    return f"lot {' '.join(one.lot_code for one in answer.lots)}"


def _write_contacts(answer: RecallAnswer, path: Path, wanted: AnswerWanted) -> None:
    write_file(path, contact_list(answer), force=wanted.force)
    if not wanted.json:
        say(f"Whom to call is in {path}.")
        if any(one.complaint for one in answer.call):
            say("Who complained stands in it by number alone: soapledger complaint show NUMBER")
