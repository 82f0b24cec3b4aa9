"""Tickets, rack cards and labels of lots: what carries no law's text and is not booked as a run."""

from collections.abc import Sequence
from pathlib import Path

from ledger.cli.kit.desk import Desk
from ledger.cli.kit.show import count, say
from ledger.cli.label.sheets import read_nudge, usual_sheet_of
from ledger.documents.kit.files import check_free, write_file
from ledger.documents.kit.layout import label_layout, sheet_layout
from ledger.documents.label.labels import RackText, TicketText, draw_labels
from ledger.errors import BadInput
from ledger.units.quantity import parse_pieces
from ledger.views.label.lot_label import LotLabel
from ledger.views.label.parcel import ParcelText


def print_card(
    here: Desk,
    texts: Sequence[TicketText | RackText | LotLabel | ParcelText],
    layout: str,
    sheet: str | None,
    number: str,
    start: str,
    nudge: str | None,
    output: Path,
    force: bool,
) -> None:
    """So many of each, which carry no law's text and are not booked as runs."""
    check_free(output, force)
    page = sheet_layout(sheet or usual_sheet_of(layout, here.settings.country))
    many = parse_pieces(number, what="the number")
    if many == 0:
        raise BadInput("How many? Write --count with a number above zero.")
    first = parse_pieces(start, what="the position")
    each = tuple(text for text in texts for _ in range(many)) if len(texts) > 1 else ()
    form = label_layout(layout)
    shift, business = read_nudge(nudge), here.settings.business
    data = draw_labels(texts[0], form, page, count=many, start=first, nudge_mm=shift, each=each, business=business)
    write_file(output, data, force=force)
    say(f"{count(len(each) or many, 'label' if form.purpose in ('lot', 'parcel') else 'card')} in {output}.")
