"""soapledger label reprint."""

from typing import Annotated

import typer

from ledger.cli.kit.answer import paper_of_entry
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Force, On
from ledger.cli.kit.show import count, say
from ledger.cli.label.sheets import Nudge, Output, draw_run, read_nudge
from ledger.documents.kit.files import check_free, write_file
from ledger.errors import BadInput
from ledger.operations.label.labels import labels_of, reprint_labels
from ledger.units.quantity import parse_pieces


def command(
    ctx: typer.Context,
    run: Annotated[str, typer.Argument(help="The number of the run; see label runs.")],
    output: Output,
    number: Annotated[
        str | None, typer.Option("--count", help="How many more (left out: the same again, not booked).")
    ] = None,
    start: Annotated[str | None, typer.Option("--start", help="The first free position of a used sheet (1).")] = None,
    nudge: Nudge = None,
    on: On = None,
    force: Force = False,
) -> None:
    """Print more labels of an earlier run: the same text, the same layout; or its sheet again, whose file was lost."""
    here = desk(ctx)
    place, shift = parse_pieces(run, what="the run"), read_nudge(nudge)
    day, business = here.day(on), here.settings.business
    if number is None:
        if start:
            raise BadInput("The same labels stand where they stood; leave out --start, or say --count.")
        check_free(output, force)
        same, kept, view = labels_of(here.rows(), place, on=day, the_same=True)
        form, page = kept.layout_source, kept.sheet_source
        data = draw_run(view, form, page, same.count, kept.start or 1, shift, business=business)
        write_file(output, data, force=force)
        say(f"{count(same.count, 'label')} of run {place} once more in {output}; nothing more was booked.")
        return
    many, first = parse_pieces(number, what="the number of labels"), parse_pieces(start or "1", what="the position")
    with paper_of_entry(here, output, force=force) as put:
        more = reprint_labels(
            here.book(), place, many, on=day, start=first,
            draw=lambda view, form, page: put(draw_run(view, form, page, many, first, shift, business=business)),
        )  # fmt: skip
        here.again = here.typed(f"label reprint {more}", output)
    here.again = here.typed("label runs")
    say(f"{count(many, 'label')} more of run {place} in {output}.")
