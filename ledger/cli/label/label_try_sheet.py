"""soapledger label try-sheet."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Force
from ledger.cli.kit.show import say_wrapped
from ledger.cli.label.sheets import Nudge, Output, read_nudge
from ledger.documents.kit.files import check_free, write_file
from ledger.documents.kit.layout import sheet_layout
from ledger.documents.label.labels import draw_test_sheet


def command(
    ctx: typer.Context,
    sheet: Annotated[str, typer.Argument(help="The sheet.")],
    output: Output,
    nudge: Nudge = None,
    force: Force = False,
) -> None:
    """Print the outlines of a sheet, to lay over a sheet of labels and see whether the printer feeds askew."""
    here = desk(ctx)
    check_free(output, force)
    whose = here.settings.business if here.path.exists() else ""  # it is printed before there is a ledger too
    data = draw_test_sheet(sheet_layout(sheet), nudge_mm=read_nudge(nudge), business=whose)
    write_file(output, data, force=force)
    say_wrapped(f"The outlines of {sheet} are {output}; hold it against a sheet, then print with --nudge.")
