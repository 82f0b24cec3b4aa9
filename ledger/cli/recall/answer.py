"""The answer to a supplier's call, to the code on a bar, to whatever else is bad: held, said, written."""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from shlex import quote
from typing import Annotated, NamedTuple

import typer

from ledger import __version__
from ledger.cli.kit.amounts import amount
from ledger.cli.kit.answer import answer as given
from ledger.cli.kit.desk import Desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.show import count, out_json, say, say_next, say_wrapped, table
from ledger.cli.recall.words import say_answer
from ledger.documents.kit.files import check_free, write_file
from ledger.domain.recall.question import Question
from ledger.errors import BadInput
from ledger.rows.batch import find_batch
from ledger.units.dates import show_date
from ledger.views.recall.reach import Starts
from ledger.views.recall.recall import RecallAnswer
from ledger.views.recall.recall_answer import recall_answer
from ledger.views.recall.recall_people import names_persons, without_names
from ledger.views.recall.recall_starts import Asked, asked_about
from ledger.views.recall.recall_way import way_to
from ledger.views.recall.recall_words import already_words, to_hold_words

Hold = Annotated[bool, typer.Option("--hold", help="Put all that is here on hold at once.")]
Dry = Annotated[bool, typer.Option("-n", help="With --hold: say what it would hold, and hold nothing.")]
Reason = Annotated[str, typer.Option("--reason", help="Why, for the hold.")]
Exercise = Annotated[bool, typer.Option("--exercise", help="This is only an exercise.")]
Output = Annotated[Path | None, typer.Option("-o", help="Write the report as a PDF file.")]
Contacts = Annotated[Path | None, typer.Option("--csv", help="Write whom to call as a CSV file.")]
Names = Annotated[bool, typer.Option("--names", help="With the names of private persons in the files.")]
ForWay = Annotated[str | None, typer.Option("--way", metavar="CODE", help="Show the whole way to this batch.")]
AsOf = Annotated[str | None, typer.Option("--as-of", help="As it was known at an entry or on a day.")]
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
    dry: bool = False
    names: bool = False
    way: str | None = None
    as_of: str | None = None

    def check(self) -> None:
        """Raise BadInput before anything is held, for what does not go together or a file that may not be written."""
        if self.hold and self.exercise:
            raise BadInput("An exercise holds nothing back; leave out --hold, or --exercise if this is no exercise.")
        if self.hold and self.as_of:
            raise BadInput("What is here is held as it stands now; leave out --as-of, or --hold.")
        if self.dry and not self.hold:
            raise BadInput("-n says what --hold would hold; add --hold.")
        for path in (self.output, self.contacts):
            check_free(path, self.force)
        if self.output and self.contacts and self.output.absolute() == self.contacts.absolute():
            raise BadInput(f"The report and the list of whom to call cannot both be {self.output}; name two files.")


def give_answer(here: Desk, question: Question, wanted: AnswerWanted) -> None:
    """Hold if told, say the answer, then write the contacts and last of all the report, which takes longest to draw."""
    wanted.check()
    rows = here.rows_as_of(wanted.as_of) if wanted.as_of else here.rows()
    of_more = {start.kind for start in question.starts} & {"recipe", "tool", "instead"}
    ask = loaded("views.recall.recall_kinds").asked_about_anything if of_more else asked_about
    asked = ask(rows, question, on=here.today)
    starts = asked.starts
    if wanted.way:
        _say_way(way_to(rows, starts, find_batch(rows, wanted.way)), wanted.json)
        return
    answer = recall_answer(
        rows, starts.lots, bars_of=starts.bars_of, labelled=starts.labelled, asked=asked.words, program=__version__,
        exercise=wanted.exercise,
    )  # fmt: skip
    if wanted.dry:
        _say_to_hold(answer, wanted.json)
        return
    if wanted.hold and answer.stoppable:
        answer = loaded("operations.recall.hold_reached").hold_reached(
            here.book(), starts.lots, bars_of=starts.bars_of, labelled=starts.labelled, asked=asked.words,
            on=here.today, by=here.decider, reason=wanted.reason,
        )  # fmt: skip
        contacts = f" --csv {quote(str(wanted.contacts))}" if wanted.contacts else ""
        here.again = here.typed(f"recall {again(question, asked.starts)}{contacts}", wanted.output)
    if asked.doubts:
        answer = replace(answer, cannot_exclude=(*answer.cannot_exclude, *asked.doubts))
    answer = replace(answer, as_known=wanted.as_of is not None)
    here.let_go()  # a long report is drawn without keeping a writer out
    if wanted.json:
        out_json(answer)
    else:
        say_answer(answer)
        _say_next(answer, asked, question, wanted)
    _write_files(here, answer, question, asked, wanted)


def _write_files(here: Desk, answer: RecallAnswer, question: Question, asked: Asked, wanted: AnswerWanted) -> None:
    if wanted.contacts:
        _write_contacts(answer, wanted.contacts, wanted)
        here.paper = wanted.contacts
        here.again = here.again and here.typed(f"recall {again(question, asked.starts)}", wanted.output)
    if wanted.output:
        told = answer if wanted.names else without_names(answer)
        drawn = loaded("documents.recall.recall_report").draw_recall(told, paper=wanted.paper)
        write_file(wanted.output, drawn, force=wanted.force)
        if not wanted.json:
            say(f"The report is {wanted.output}.")
    if (wanted.output or wanted.contacts) and not (wanted.names or wanted.json) and names_persons(answer):
        where = "both" if wanted.output and wanted.contacts else "it"
        say_wrapped(
            f"Private persons stand in {where} without a name, who complained by number alone; with names: --names"
        )


def again(question: Question, starts: Starts) -> str:
    """The words behind `recall` that ask the same once more, numbers by our own codes, which no other lot has."""
    lots = [lot.code for lot in starts.lots] if question.of("number") else []
    bars = [batch.code for batch in starts.bars_of]
    if {start.kind for start in question.starts} <= {"number", "bar"} and question.starts:
        if not bars or not lots:
            return f"bar {' '.join(bars)}" if bars else f"lot {' '.join(lots)}"
        return f"of {' '.join(lots)} {' '.join(f'--bar {code}' for code in bars)}"
    asked = [start for start in dict.fromkeys(question.starts) if start.kind != "number"]
    words = [*lots, *(f"--{start.kind} {quote(start.what)}" for start in asked)]
    if not lots:
        narrowed = (("supplier", question.supplier), ("material", question.material))
        words += [f"--{name} {quote(value)}" for name, value in narrowed if value]
    words += [f"--{name} {day}" for name, day in (("from", question.first), ("to", question.last)) if day]
    return f"{'of' if asked else 'lot'} {' '.join(words)}"


def opening(words: str) -> str:
    """The same words behind `recall open`, which takes batches as options."""
    way, _, rest = words.partition(" ")
    return " ".join(f"--bar {code}" for code in rest.split()) if way == "bar" else rest


def _say_way(steps: Sequence[NamedTuple], as_json: bool) -> None:
    if given(steps, as_json):
        return
    say(f"{count(len(steps) - 1, 'step')}, the shortest way:")
    table(("", "code", "what", "on"), [(str(n), *step[:2], show_date(step[2])) for n, step in enumerate(steps)])


def _say_to_hold(answer: RecallAnswer, as_json: bool) -> None:
    """What a hold would stop, lot by lot; nothing is held."""
    if given(answer.stoppable, as_json):
        return
    if not answer.stoppable:
        say_wrapped(already_words(answer))
        return
    say_wrapped(f"--hold would hold {to_hold_words(answer)}; nothing is held yet.")
    rows = [(one.code, one.what, amount(one.quantity, one.pieces, answer.units)) for one in answer.stoppable]
    table(("lot", "what", "here"), rows, right=(2,))


def _say_next(answer: RecallAnswer, asked: Asked, question: Question, wanted: AnswerWanted) -> None:
    """What she could do, as commands; a look-up opens and holds nothing by itself."""
    for code in asked.ours:
        say_next(f"{code} is the code of a batch of ours too; for its bars: soapledger recall bar {code}")
    if answer.held or wanted.as_of:
        return
    if answer.stoppable:
        words = again(question, asked.starts)
        say_next(f"Hold {to_hold_words(answer)} now? soapledger recall {words} --hold")
        say_next(f"As a recall that is told, noted and closed: soapledger recall open {opening(words)} --reason WORDS")
    elif answer.stopped or wanted.hold:
        say_wrapped(already_words(answer))


def _write_contacts(answer: RecallAnswer, path: Path, wanted: AnswerWanted) -> None:
    listed = loaded("documents.recall.contact_list").contact_list(answer, names=wanted.names)
    write_file(path, listed, force=wanted.force)
    if not wanted.json:
        say(f"Whom to call is in {path}.")
