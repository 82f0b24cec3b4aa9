"""A recall notice as a page: the headline seen from afar, the labels by which a bar is known, the parts in order."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Spacer, Table

from ledger.documents.kit.blocks import heading
from ledger.documents.kit.fonts import printable
from ledger.documents.kit.page import Sheet, Type, build, para, plain
from ledger.documents.label.shown import label_shown
from ledger.views.recall.recall_notice import RecallNotice

TYPE = Type(large=30, head=13, body=11.5)
_WIDE, _HIGH, _PICTURES = 60 * mm, 45 * mm, 10
_TO_HANG = Type(large=46, head=19, body=16)


def draw_notice(notice: RecallNotice, *, size: str = "A4") -> bytes:
    """The notice as a PDF; one to hang up is set larger."""
    notice = printable(notice)
    mark = "EXERCISE" if notice.exercise else None
    kind = _TO_HANG if notice.to_hang else TYPE
    sheet = Sheet(
        size, f"Recall {notice.recall}", "Notice", notice.business, notice.printed_from, TYPE, mark, notice.language
    )
    story: list[Flowable] = [para(notice.headline, kind.large, bold=True, leading=1.1), Spacer(1, 5 * mm)]
    for turn, (head, text) in enumerate(notice.parts):
        part = [*heading(head, kind.head), para(text, kind.body)]
        pictures = [] if turn else _pictures(notice)
        if not pictures:
            story.append(KeepTogether(part))
            continue
        beside = Table([[part, pictures]], colWidths=[sheet.width - _WIDE - 2 * mm, _WIDE + 2 * mm])
        beside.setStyle(plain(("RIGHTPADDING", (0, 0), (0, 0), 8)))
        story.append(beside)
    return build(story, sheet)


def _pictures(notice: RecallNotice) -> list[Flowable]:
    """The faces of the labels: one or two large, one over the other; of more, small ones in two columns."""
    columns = 1 if len(notice.labels) <= 2 else 2
    room = _WIDE / columns
    shown = [
        label_shown(one.label, one.layout_source, wide=room - (columns - 1) * 2 * mm, high=_HIGH / columns)
        for one in notice.labels[:_PICTURES]
    ]
    drawn: list[Flowable | str] = [one for one in shown if one]
    rows = [[*drawn[place : place + columns], ""][:columns] for place in range(0, len(drawn), columns)]
    if not rows:
        return []
    table = Table(rows, colWidths=[room] * columns)
    table.setStyle(plain(("BOTTOMPADDING", (0, 0), (-1, -1), 2 * mm)))
    return [table]
