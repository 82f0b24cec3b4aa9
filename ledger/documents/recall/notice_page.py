"""A recall notice as a page: the headline seen from afar, room for a picture of the bar, the parts in their order."""

from reportlab.lib.colors import black
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Spacer, Table

from ledger.documents.kit.blocks import heading
from ledger.documents.kit.fonts import printable
from ledger.documents.kit.page import Sheet, Type, build, para, plain
from ledger.views.recall.recall_notice import RecallNotice

TYPE = Type(large=30, head=13, body=11.5)
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
        if turn:
            story.append(KeepTogether(part))
            continue
        picture = Table([[para("picture of the bar", 8)]], colWidths=[48 * mm], rowHeights=[36 * mm])
        picture.setStyle(plain(("BOX", (0, 0), (-1, -1), 0.4, black), ("LEFTPADDING", (0, 0), (-1, -1), 4)))
        beside = Table([[part, picture]], colWidths=[sheet.width - 52 * mm, 52 * mm])
        beside.setStyle(plain(("RIGHTPADDING", (0, 0), (0, 0), 8)))
        story.append(beside)
    return build(story, sheet)
