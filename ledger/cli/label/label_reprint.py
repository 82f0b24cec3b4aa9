"""soapledger label reprint."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Force, On
from ledger.cli.kit.show import count, say
from ledger.cli.label.sheets import Nudge, Output, Start, draw_run, read_nudge
from ledger.documents.kit.files import fill, written_beside
from ledger.operations.label.labels import reprint_labels
from ledger.units.quantity import parse_pieces
from ledger.views.label.label import LabelText


def command(
    ctx: typer.Context,
    run: Annotated[str, typer.Argument(help="The number of the run; see label runs.")],
    output: Output,
    number: Annotated[str, typer.Option("--count", help="How many more.")],
    start: Start = "1",
    nudge: Nudge = None,
    on: On = None,
    force: Force = False,
) -> None:
    """Print more labels of an earlier run: the same text, the same layout."""
    here = desk(ctx)
    many, first = parse_pieces(number, what="the number of labels"), parse_pieces(start, what="the position")
    shift = read_nudge(nudge)
    place = parse_pieces(run, what="the run")

    def draw(view: LabelText, form: str, page: str) -> bytes:
        data = draw_run(view, form, page, many, first, shift)
        fill(beside, data)
        return data

    with written_beside(output, force=force) as beside:
        reprint_labels(here.book(), place, many, on=here.day(on), start=first, draw=draw)
        here.again = here.typed("label runs")
    say(f"{count(many, 'label')} more of run {place} in {output}.")
