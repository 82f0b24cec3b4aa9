"""The batch record: what an inspector, an insurer, or a stranger who must repeat the batch can work from."""

from collections.abc import Iterator

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Spacer, Table

from ledger.documents.kit.blocks import facts, grid, heading, titled
from ledger.documents.kit.drying_chart import DryingChart
from ledger.documents.kit.fonts import printable
from ledger.documents.kit.page import GREY, HAIR, Sheet, Type, build, para, plain
from ledger.views.record.head import Head, Section
from ledger.views.record.pieces import Chart, Facts, Grid, Pieces
from ledger.views.record.record import BatchRecord

TYPE = Type(large=26, head=12, body=8.5)
_LABEL = 32 * mm


def draw_batch_record(view: BatchRecord, *, paper: str = "A4") -> bytes:
    """The record as a PDF, marked as a draft until the batch is decided."""
    view = printable(view)
    head = view.head
    mark = "DRAFT" if head.draft else None
    if head.as_known:
        mark = f"{mark}, AS KNOWN THEN" if mark else "AS KNOWN THEN"
    sheet = Sheet(paper, f"Batch {head.batch_code}", "Batch record", head.business, head.printed_from, TYPE, mark)
    story: list[Flowable] = [_head(head, sheet)]
    for section in view.on_paper:
        story += _section(section, head, sheet.width)
    return build([*story, _close()], sheet)


def _head(head: Head, sheet: Sheet) -> Table:
    left = [
        para(head.batch_code, TYPE.large, bold=True, leading=1.1),
        para(head.product, TYPE.head, bold=True),
        Spacer(1, 2.5 * mm),
        facts(head.paper().pairs, TYPE.body, label_width=20 * mm, total=sheet.width - 29 * mm, columns=2),
    ]
    return titled(left, sheet, head.batch_code)


def _section(section: Section, head: Head, wide: float) -> list[Flowable]:
    """A section under its title; one with a chart is not torn apart."""
    pieces = section.paper(head)
    if not pieces:
        return []
    drawn = [*heading(section.title, TYPE.head), *_drawn(pieces, head, wide)]
    return [KeepTogether(drawn)] if any(isinstance(one, Chart) for one in pieces) else drawn


def _drawn(pieces: Pieces, head: Head, wide: float) -> Iterator[Flowable]:
    for place, one in enumerate(pieces):
        if isinstance(one, Facts):
            yield facts(one.pairs, TYPE.body, label_width=_LABEL, total=wide, columns=2)
        elif isinstance(one, Grid):
            if place:
                yield Spacer(1, 1.5 * mm)
            widths = [wide * column.share for column in one.columns]
            bold = [i for i, column in enumerate(one.columns) if column.bold]
            yield grid(one.heads, one.rows, widths, TYPE.body, right=one.right, bold=bold)
        elif not isinstance(one, Chart):
            yield para(one.text, TYPE.body, bold=one.bold)
        else:
            yield Spacer(1, 2 * mm)
            yield DryingChart(one.forecast, one.weighings, TYPE.body, wide, head.units)


def _close() -> Flowable:
    """What the record does not say, and a line to sign by hand."""
    words = (
        "This record states what was logged. It is no safety assessment and claims nothing for the product; "
        "what may be sold where is for the responsible person and a licensed assessor to decide."
    )
    lines = Table(
        [[para("read by", TYPE.body), "", para("on", TYPE.body, right=True), ""]],
        colWidths=[14 * mm, 80 * mm, 10 * mm, 40 * mm],
        hAlign="LEFT",
    )
    lines.setStyle(
        plain(("RIGHTPADDING", (2, 0), (2, 0), 3 * mm), *(("LINEBELOW", (x, 0), (x, 0), HAIR, GREY) for x in (1, 3)))
    )
    return KeepTogether([Spacer(1, 6 * mm), para(words, TYPE.body), Spacer(1, 10 * mm), lines])
