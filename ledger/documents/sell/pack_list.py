"""The list to pack from: each batch with its code large, a box to tick, boxes for what goes and what comes back."""

from reportlab.lib.colors import black
from reportlab.lib.units import mm
from reportlab.platypus import CondPageBreak, Flowable, KeepTogether, Spacer, Table

from ledger.documents.kit.blocks import facts, titled
from ledger.documents.kit.boxes import BOX_HEIGHT, Box, box_pairs
from ledger.documents.kit.fonts import printable
from ledger.documents.kit.page import GREY, HAIR, Sheet, Type, build, para, plain
from ledger.units.dates import show_date
from ledger.views.sell.pack import PackBatch, PackList, PackProduct

TYPE = Type(large=26, head=14, body=11)  # read at a metre, standing
_TICK, _BOX, _GAP = 9 * mm, 22 * mm, 3 * mm


def draw_pack_list(found: PackList, *, paper: str = "A4") -> bytes:
    """The list as a PDF."""
    found = printable(found)
    sheet = Sheet(paper, f"{found.stall}, {show_date(found.on)}", "Pack list", found.business, found.printed_from, TYPE)
    wide = sheet.width
    bars = sum(one.take for one in found.products)
    days = ", ".join(show_date(day) for day in found.days) or "none yet"
    left: list[Flowable] = [
        para(found.stall, TYPE.large, bold=True, leading=1.1),
        para(show_date(found.on), TYPE.head, bold=True),
        Spacer(1, 2 * mm),
        facts(
            [("to take", f"{bars} bars of {len([p for p in found.products if p.take])} products"), ("last days", days)],
            TYPE.body,
            label_width=22 * mm,
            total=wide - 29 * mm,
        ),
    ]
    story: list[Flowable] = [titled(left, sheet, found.code), Spacer(1, 4 * mm), _heads(wide)]
    for one in found.products:
        story += [CondPageBreak(34 * mm), KeepTogether(_product(one, wide))]
    story += [
        Spacer(1, 5 * mm),
        KeepTogether(
            [
                box_pairs(
                    [("Float in the box", ""), ("Cash in the evening", ""), ("By card", ""), ("Packed by", "")],
                    TYPE.body,
                    wide,
                )
            ]
        ),
    ]
    return build(story, sheet)


def _heads(wide: float) -> Table:
    cells = [para("packed", TYPE.body), "", para("out", TYPE.body), "", para("back", TYPE.body)]
    table = Table([["", *cells]], colWidths=_widths(wide))
    table.setStyle(plain(("BOTTOMPADDING", (0, 0), (-1, -1), 1 * mm), ("LINEBELOW", (0, 0), (-1, -1), 0.8, black)))
    return table


def _widths(wide: float) -> list[float]:
    boxes = [_TICK + 7 * mm, _GAP, _BOX, _GAP, _BOX]
    return [wide - sum(boxes), *boxes]


def _product(one: PackProduct, wide: float) -> list[Flowable]:
    sold = f"sold {', '.join(map(str, one.sold))}" if one.sold else ""
    kept = f"{one.promised} promised" if one.promised else ""
    said = ", ".join(word for word in (sold, f"{one.ready} ready", kept) if word)
    take = f"take {one.take}" if one.take else "take …"
    head = Table(
        [[para(one.product, TYPE.head, bold=True), para(take, TYPE.head, bold=True, right=True)]],
        colWidths=[wide * 0.7, wide * 0.3],
    )
    head.setStyle(plain())
    rows = [_batch(batch) for batch in one.batches]
    found: list[Flowable] = [Spacer(1, 3 * mm), head, para(said, TYPE.body), Spacer(1, 1 * mm)]
    if rows:
        table = Table(rows, colWidths=_widths(wide))
        table.setStyle(
            plain(
                ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
                ("TOPPADDING", (0, 0), (-1, -1), 1 * mm),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 1 * mm),
                ("LINEBELOW", (0, 0), (-1, -1), HAIR, GREY),
            )
        )
        found.append(table)
    return found


def _batch(one: PackBatch) -> list[Flowable | str]:
    until = f", best before {show_date(one.best_before)}" if one.best_before else ""
    words = [
        para(f"{one.code}   {f'{one.take} of {one.bars}' if one.take else f'{one.bars} here'}", TYPE.head, bold=True),
        para(f"made {show_date(one.made_on)}{until}", TYPE.body),
    ]
    return [
        Table([[words]], style=plain()),
        Box(TYPE.body, "", 5 * mm, 5 * mm),
        "",
        Box(TYPE.body, "", _BOX, BOX_HEIGHT),
        "",
        Box(TYPE.body, "", _BOX, BOX_HEIGHT),
    ]
