"""soapledger demo."""

from dataclasses import replace
from pathlib import Path
from typing import Annotated

import typer

from ledger import __version__
from ledger.cli.cure.words import say_cure
from ledger.cli.kit.desk import Desk, desk, now
from ledger.cli.kit.show import say, warn
from ledger.cli.recall.words import say_answer
from ledger.documents.bench.worksheet import draw_worksheet
from ledger.documents.kit.files import write_file
from ledger.documents.kit.layout import label_layout, sheet_layout
from ledger.documents.label.labels import draw_labels
from ledger.documents.recall.contact_list import contact_list
from ledger.documents.recall.recall_report import draw_recall
from ledger.documents.record.batch_record import draw_batch_record
from ledger.errors import BadInput
from ledger.operations.season.play import Season
from ledger.reference.cautions import cautions
from ledger.reference.shipped import sample_data
from ledger.storage.book import Book
from ledger.units.dates import not_future, parse_date, show_date
from ledger.views.bench.worksheet import worksheet
from ledger.views.cure.cure import cure_list
from ledger.views.label.label import LabelText, label_text
from ledger.views.recall.recall_answer import recall_answer
from ledger.views.recall.recall_people import without_names
from ledger.views.recall.recall_search import Notice, lots_meant
from ledger.views.record.record import batch_record


def command(
    ctx: typer.Context,
    folder: Annotated[Path, typer.Argument(help="A new folder for the demo.", metavar="DIR")],
    on: Annotated[str | None, typer.Option("--on", help="The day the season ends (today).")] = None,
) -> None:
    """Play the season of an invented soapworks into DIR and do the main job on it."""
    today = now().astimezone().date()
    day = not_future(parse_date(on, today=today), today=today) if on else today
    try:
        if folder.exists() and any(folder.iterdir()):
            raise BadInput(f"{folder} is there already and not empty; name a new folder for the demo.")
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise BadInput(f"{folder} cannot be made ({error.strerror}); name a new folder for the demo.") from error
    here = desk(ctx)
    here.path = folder / "soap.db"
    book = here.writing_in(Book.create(here.path, who=here.who_given or "Orla Penhallow", now=now))
    season = Season(
        book, sample_data(), day, lambda view, count: _sheet_of_bands(view, count, _business(season)), here.rows
    )
    say(f"A season of {season.scenario['business']}, an invented one-person soapworks, ending {show_date(day)}.")
    steps = list(season.steps())
    stage = ""
    with typer.progressbar(steps, label="Writing the season", file=typer.get_text_stream("stderr")) as bar:
        for step in bar:
            if step.stage != stage:
                stage = step.stage
                warn(f"\n{stage} …")
            step.do()
    book.close()
    _main_job(here, season, folder)


def _business(season: Season) -> str:
    return str(season.scenario["business"])


def _sheet_of_bands(view: LabelText, count: int, business: str) -> bytes:
    return draw_labels(view, label_layout("band"), sheet_layout("a4-6"), count=count, business=business)


def _main_job(here: Desk, season: Season, folder: Path) -> None:
    """The cure list, one worksheet, one record, one sheet of labels, and one recall with its report."""
    rows, told, code = here.rows(), season.scenario, season.batches
    say()
    say("1. What is on the rack:")
    say_cure(cure_list(rows, on=season.on), season.on)
    sheet = worksheet(rows, code[told["worksheet_example"]], program=__version__)
    record = batch_record(rows, code[told["record_example"]], program=__version__)
    label = label_text(rows, code[told["label_example"]], "eu", on=season.on)
    number = told["recall_example"]
    found = lots_meant(rows, Notice(numbers=(number,)))
    answer = recall_answer(rows, found, asked=(number,), program=__version__)
    for name, data in (
        ("worksheet.pdf", draw_worksheet(sheet, cautions=cautions())),
        ("batch-record.pdf", draw_batch_record(record)),
        ("labels.pdf", _sheet_of_bands(replace(label, draft=True), 6, _business(season))),
        ("recall.pdf", draw_recall(without_names(answer))),
        ("whom-to-call.csv", contact_list(answer)),
    ):
        write_file(folder / name, data, force=True)
    say()
    say(f"2. The supplier rings: their lot {number} is bad. The answer:")
    say_answer(answer)
    say()
    say("3. Open these:")
    say(f"  {folder / 'worksheet.pdf'}: the bench worksheet of batch {sheet.batch_code}, planned for today")
    say(f"  {folder / 'batch-record.pdf'}: the record of batch {record.head.batch_code}, {record.head.product}")
    say(f"  {folder / 'labels.pdf'}: a sheet of labels, as a draft, for batch {label.batch_code}, {label.product}")
    say(f"  {folder / 'recall.pdf'}: the recall report; {folder / 'whom-to-call.csv'}: the contacts")
    say(f"Next, look around: soapledger --ledger {here.path} stock")
