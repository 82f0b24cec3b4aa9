"""soapledger recall: the answer to a supplier's call, and to the code on a bar."""

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from ledger.cli.desk import Desk, desk
from ledger.cli.paper import PAPER, paper_size
from ledger.cli.recall_words import say_answer
from ledger.cli.show import out_json, say
from ledger.errors import BadInput

if TYPE_CHECKING:
    from collections.abc import Sequence

    from ledger.views.batch import BatchRow
    from ledger.views.lots import LotRow
    from ledger.views.recall import RecallAnswer

app = typer.Typer(help="A lot or a bar is bad: which batches, which bars, where, whom to call.")

Hold = Annotated[bool, typer.Option("--hold", help="Put all that is here on hold at once.")]
Reason = Annotated[str, typer.Option("--reason", help="Why, for the hold.")]
Exercise = Annotated[bool, typer.Option("--exercise", help="This is only an exercise.")]
Output = Annotated[Path | None, typer.Option("-o", help="Write the report as a PDF file.")]
Contacts = Annotated[Path | None, typer.Option("--csv", help="Write whom to call as a CSV file.")]
Force = Annotated[bool, typer.Option("--force", help="Overwrite existing files.")]
Json = Annotated[bool, typer.Option("--json", help="Answer as JSON.")]


@app.callback()
def group() -> None:
    """A lot or a bar is bad: which batches, which bars, where, whom to call."""


@dataclass(frozen=True)
class Wanted:
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
                from ledger.documents.files import check_free

                check_free(path, self.force)
        if self.output and self.contacts and self.output.absolute() == self.contacts.absolute():
            raise BadInput(f"The report and the list of whom to call cannot both be {self.output}; name two files.")


@app.command("lot")
def lot(
    ctx: typer.Context,
    numbers: Annotated[list[str] | None, typer.Argument(help="Their lot numbers, as the notice quotes them.")] = None,
    supplier: Annotated[str | None, typer.Option("--supplier", help="Only from this supplier.")] = None,
    material: Annotated[str | None, typer.Option("--material", help="Only this material.")] = None,
    from_: Annotated[str | None, typer.Option("--from", help="Received on this day or later.")] = None,
    to: Annotated[str | None, typer.Option("--to", help="Received on this day or earlier.")] = None,
    every: Annotated[bool, typer.Option("--all", help="All lots that fit, where several do.")] = False,
    hold: Hold = False,
    reason: Reason = "supplier's recall",
    exercise: Exercise = False,
    output: Output = None,
    csv_file: Contacts = None,
    paper: PAPER = "a4",
    force: Force = False,
    json: Json = False,
) -> None:
    """Answer for one or several lot numbers, e.g. soapledger recall lot "4471/2" --hold -o recall.pdf."""
    from ledger.domain.dates import parse_date, show_date
    from ledger.views.material import material_by_code
    from ledger.views.recall_search import Notice, bars_called, batches_meant, lots_meant
    from ledger.views.supplier import supplier_by_code

    wanted = Wanted(hold, reason, exercise, output, csv_file, paper_size(paper), force, json)
    here = desk(ctx)
    asked = tuple(numbers or ())
    if not asked and not (supplier and material):
        raise BadInput("Give their lot number, or both --supplier and --material (and --from and --to).")
    vendor = supplier_by_code(here.rows(), supplier) if supplier else None
    card = material_by_code(here.rows(), material) if material else None
    notice = Notice(
        numbers=asked,
        supplier_id=vendor.id if vendor else None,
        material_id=card.id if card else None,
        received_from=parse_date(from_, today=here.today, what="the day of --from") if from_ else None,
        received_to=parse_date(to, today=here.today, what="the day of --to") if to else None,
    )
    ours, from_bars = bars_called(here.rows(), notice)
    if from_bars:
        _answer(here, (), batches_meant(here.rows(), asked), asked, wanted)
        return
    found = lots_meant(here.rows(), notice, every=every)
    if not asked and vendor and card:
        days = (("from", notice.received_from), ("up to", notice.received_to))
        span = "".join(f" {word} {show_date(day)}" for word, day in days if day)
        asked = (f"{card.name} from {vendor.name}" + (f", received{span}" if span else ""),)
    _answer(here, found, (), asked, wanted)
    if not json:
        for code in ours:
            say(f"{code} is the code of a batch of ours too; for its bars: soapledger recall bar {code}")


@app.command("bar")
def bar(
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
    from ledger.views.recall_search import batches_meant

    wanted = Wanted(hold, reason, exercise, output, csv_file, paper_size(paper), force, json)
    here = desk(ctx)
    meant = batches_meant(here.rows(), codes)
    _answer(here, (), meant, tuple(batch.code for batch in meant), wanted)


def _answer(
    here: Desk, lots: "Sequence[LotRow]", bars_of: "Sequence[BatchRow]", asked: tuple[str, ...], wanted: Wanted
) -> None:
    """Hold if told, say the answer, then write the contacts and last of all the report, which takes longest to draw."""
    from ledger import __version__
    from ledger.views.recall_answer import recall_answer

    wanted.check()
    if wanted.hold:
        from ledger.operations.hold_reached import hold_reached

        answer = hold_reached(
            here.book(), lots, bars_of=bars_of, asked=asked, on=here.today, by=here.who, reason=wanted.reason
        )
        here.again = here.typed(f"recall {_again(answer)}", wanted.output)
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
    _write(answer, wanted)


def _say_next(answer: "RecallAnswer") -> None:
    if answer.held:
        return
    if answer.stoppable:
        say(f"Next, to stop all that is here: soapledger recall {_again(answer)} --hold")
    elif answer.stopped:
        say(f"All of it that is here is {' or '.join(answer.stopped)} already.")


def _again(answer: "RecallAnswer") -> str:
    """The words that ask the same once more."""
    if answer.bars_of:
        return f"bar {' '.join(answer.bars_of)}"
    return f"lot {' '.join(one.lot_code for one in answer.lots)}"


def _write(answer: "RecallAnswer", wanted: Wanted) -> None:
    if wanted.contacts:
        from ledger.documents.contact_list import contact_list
        from ledger.documents.files import write_file

        write_file(wanted.contacts, contact_list(answer), force=wanted.force)
        if not wanted.json:
            say(f"Whom to call is in {wanted.contacts}.")
            if any(one.complaint for one in answer.call):
                say("Who complained stands in it by number alone: soapledger complaint show NUMBER")
    if wanted.output:
        from ledger.documents.files import write_file
        from ledger.documents.recall_report import draw_recall

        write_file(wanted.output, draw_recall(answer, paper=wanted.paper), force=wanted.force)
        if not wanted.json:
            say(f"The report is {wanted.output}.")
