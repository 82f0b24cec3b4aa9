"""soapledger batch show."""

from typing import Annotated

import typer

from ledger import __version__
from ledger.cli.kit.answer import Paper, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.options import Batch, Force, Json, Pdf
from ledger.cli.kit.paper import PAPER, paper_size
from ledger.cli.record.words import say_record
from ledger.errors import BadInput, Refused
from ledger.rows.batch import find_batch
from ledger.views.record.record import batch_record


def command(
    ctx: typer.Context,
    code: Batch,
    output: Pdf = None,
    paper: PAPER = "a4",
    as_of: Annotated[
        str | None, typer.Option("--as-of", help="As it was known at an entry's number, or on a day.")
    ] = None,
    worksheet_: Annotated[bool, typer.Option("--worksheet", help="The worksheet in place of the record.")] = False,
    force: Force = False,
    json: Json = False,
) -> None:
    """Show the record of a batch, or print it, e.g. batch show 26-118-0 -o record.pdf."""
    here = desk(ctx)
    size = paper_size(paper)
    rows = here.rows_as_of(as_of) if as_of else here.rows()
    if as_of:
        try:
            find_batch(rows, code)
        except Refused:
            batch = find_batch(here.rows(), code)  # unknown now too
            raise BadInput(f"Batch {batch.code} was not planned yet then; give a later --as-of.") from None
    if worksheet_:
        sheet = loaded("views.bench.worksheet").worksheet(rows, code, program=__version__)
        paper_ = Paper(
            f"The worksheet of batch {sheet.batch_code} is {output}.",
            lambda: loaded("documents.bench.worksheet").draw_worksheet(
                sheet, cautions=loaded("reference.cautions").cautions(), paper=size
            ),
            None if json else output,
            force,
        )
        answer(sheet, json, lambda: loaded("cli.bench.worksheet_words").say_again(sheet), paper=paper_)
        return
    record = batch_record(rows, code, program=__version__, as_known=as_of is not None)
    paper_ = Paper(
        f"The record of batch {record.head.batch_code} is {output}{' (a draft)' if record.head.draft else ''}.",
        lambda: loaded("documents.record.batch_record").draw_batch_record(record, paper=size),
        output,
        force,
    )
    answer(record.facts, json, lambda: say_record(record), paper=paper_)
