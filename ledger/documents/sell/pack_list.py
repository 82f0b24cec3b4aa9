"""The list to pack from: for each batch its code, how many to take, a box to tick, boxes for out and back."""

from reportlab.lib.colors import black
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Spacer, Table

from ledger.documents.kit.blocks import facts
from ledger.documents.kit.boxes import BOX_HEIGHT, Box, box_pairs
from ledger.documents.kit.fonts import printable
from ledger.documents.kit.page import GREY, HAIR, Sheet, Type, build, para, plain
from ledger.units.dates import show_date
from ledger.units.wording import count
from ledger.views.sell.pack import PackBatch, PackList, PackProduct

TYPE = Type(large=26, head=14, body=11)  # read at a metre, standing
_TAKE, _TICK, _BOX, _GAP = 24 * mm, 18 * mm, 22 * mm, 3 * mm


def draw_pack_list(found: PackList, *, paper: str = "A4") -> bytes:
    """The list as a PDF."""
    found = printable(found)
    sheet = Sheet(paper, show_date(found.on), "Pack list", found.business, found.printed_from, TYPE)
    wide = sheet.width
    taken = [one for one in found.products if one.take]
    pairs = (
        ("to take", f"{count(sum(one.take for one in taken), 'bar')} of {count(len(taken), 'product')}"),
        ("sold on", ", ".join(show_date(day) for day in found.days) or "no day there yet"),
    )
    story: list[Flowable] = [
        para(found.stall, TYPE.large, bold=True, leading=1.1),
        para(show_date(found.on), TYPE.head, bold=True),
        Spacer(1, 2 * mm),
        facts(pairs, TYPE.body, label_width=18 * mm, total=wide),
        Spacer(1, 3 * mm),
        _table(found, wide),
        Spacer(1, 5 * mm),
    ]
    asked = [("Float in the box", ""), ("Cash in the evening", ""), ("By card", ""), ("Packed by", "")]
    story.append(KeepTogether([box_pairs(asked, TYPE.body, wide)]))
    return build(story, sheet)


def _table(found: PackList, wide: float) -> Table:
    heads = ("", "take", "", "packed", "out", "", "back")
    rows: list[list[Flowable | str]] = [[para(one, TYPE.body, right=one == "take") if one else "" for one in heads]]
    for product in found.products:
        rows += [_batch(product, one) for one in product.batches]
        if not product.batches:
            rows.append([_words(product.product, _past(product, "none ready")), *[""] * 6])
    boxes = [_TAKE, 5 * mm, _TICK, _BOX, _GAP, _BOX]
    table = Table(rows, colWidths=[wide - sum(boxes), *boxes], repeatRows=1)
    table.setStyle(
        plain(
            ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
            ("TOPPADDING", (0, 0), (-1, -1), 1 * mm),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 1 * mm),
            ("LINEBELOW", (0, 0), (-1, 0), 0.8, black),
            ("LINEBELOW", (0, 1), (-1, -1), HAIR, GREY),
        )
    )
    return table


def _words(head: str, body: str) -> list[Flowable]:
    return [para(head, TYPE.head, bold=True), para(body, TYPE.body)]


def _past(one: PackProduct, ready: str) -> str:
    sold = f"sold {', '.join(map(str, one.sold))}" if one.sold else ""
    kept = f"{one.promised} promised" if one.promised else ""
    return "; ".join(word for word in (sold, ready, kept) if word)


def _batch(product: PackProduct, one: PackBatch) -> list[Flowable | str]:
    age = f"best before {show_date(one.best_before)}" if one.best_before else f"made {show_date(one.made_on)}"
    take = f"{one.take} of {one.bars}" if one.take else f"… of {one.bars}"
    return [
        _words(f"{product.product}  {one.code}", _past(product, age)),
        para(take, TYPE.head, bold=True, right=True),
        "",
        Box(TYPE.body, "", 7 * mm, 7 * mm),
        Box(TYPE.body, "", _BOX, BOX_HEIGHT),
        "",
        Box(TYPE.body, "", _BOX, BOX_HEIGHT),
    ]
