"""soapledger batch show."""

from typing import Annotated

import typer

from ledger import __version__
from ledger.cli.kit.desk import desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.options import Batch, Force, Json, Pdf
from ledger.cli.kit.paper import PAPER, paper_size
from ledger.cli.kit.show import out_json, say
from ledger.cli.record.words import say_record
from ledger.documents.kit.files import write_file
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
        if json or not output:
            out_json(sheet)
            return
        cautions = loaded("reference.cautions").cautions()
        drawn = loaded("documents.bench.worksheet").draw_worksheet(sheet, cautions=cautions, paper=size)
        write_file(output, drawn, force=force)
        say(f"The worksheet of batch {sheet.batch_code} is {output}.")
        return
    record = batch_record(rows, code, program=__version__, as_known=as_of is not None)
    if output:
        write_file(output, loaded("documents.record.batch_record").draw_batch_record(record, paper=size), force=force)
        say(f"The record of batch {record.head.batch_code} is {output}{' (a draft)' if record.head.draft else ''}.")
    elif json:
        out_json(record.facts)
    else:
        say_record(record)
