"""The bench worksheet: numbered lines in the order of work, with boxes to write in."""

from typing import Any

from reportlab.lib.colors import black
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Paragraph, Spacer, Table, TableStyle

from ledger.documents.fonts import BOLD
from ledger.documents.page import GREY, HAIR, Sheet, build, escape, para, qr, style
from ledger.domain.dates import show_date
from ledger.domain.quantity import show_mass, show_share
from ledger.reference.cautions import Cautions
from ledger.views.worksheet import WeighLine, Worksheet

BODY = 11.5
BIG = 26
NOTE = 11
BOX = 12 * mm


class Box(Flowable):
    """An empty box to write in, with what belongs in it small in its corner."""

    def __init__(self, width: float, height: float, unit: str = "") -> None:
        super().__init__()
        self.width, self.height, self.unit = width, height, unit

    def draw(self) -> None:
        """Draw the frame and the unit."""
        self.canv.setLineWidth(0.8)
        self.canv.setStrokeColor(black)
        self.canv.rect(0, 0, self.width, self.height)
        if self.unit:
            self.canv.setFont(BOLD, 9)
            self.canv.drawRightString(self.width - 3, 3, self.unit)


def draw_worksheet(view: Worksheet, *, cautions: Cautions, paper: str = "A4") -> bytes:
    """The worksheet as a PDF. Raises Refused for a character that cannot be printed."""
    sheet = Sheet(paper, f"Batch {view.batch_code}", "Worksheet", view.business, view.printed_from)
    wide = sheet.width
    story: list[Flowable] = [_head(view, wide), Spacer(1, 3 * mm)]
    story += _caution(("the supplier first", (cautions.first,)), wide)
    story += _caution(("start", cautions.by_step.get("start", ())), wide)
    story += _caution(("first aid", cautions.by_step.get("first aid", ())), wide)
    story.append(_ticks(("Bench and tools clean", "Scale checked: test weight and reading"), wide))
    lye_said = mix_said = False
    for line in view.lines:
        if line.pieces:
            continue
        if line.stage == "with the lye" and not lye_said:
            story += _caution(("lye", cautions.by_step.get("lye", ())), wide)
            lye_said = True
        if line.stage in ("at trace", "after the cook") and lye_said and not mix_said:
            story += _mixing(view, cautions, wide)
            mix_said = True
        story.append(_line(line, view.units, wide))
    if lye_said and not mix_said:
        story += _mixing(view, cautions, wide)
    story += _ending(view, wide)
    return build(story, sheet)


def _head(view: Worksheet, wide: float) -> Table:
    unit = view.units
    facts = [f"{view.product}, recipe {view.recipe_code} version {view.recipe_version}, {view.process}"]
    facts.append(f"for {show_date(view.made_on)}")
    if view.superfat_ppm is not None and view.lye_concentration_ppm is not None:
        ratio = (view.water_per_alkali_thousandths or 0) / 1000
        facts.append(
            f"superfat {show_share(view.superfat_ppm)}, lye {show_share(view.lye_concentration_ppm)} "
            f"(water to alkali {ratio:.2f} : 1)"
        )
    mould = f", mould {view.mould}" if view.mould else ""
    bars = f", {view.bars_planned} bars" if view.bars_planned else ""
    facts.append(f"{show_mass(view.dough_mg, unit)} in the pot{mould}{bars}")
    left = [Paragraph(escape(view.batch_code), style(BIG, bold=True, leading=1.1)), Spacer(1, 1 * mm)]
    left += [para(one, BODY) for one in facts]
    table = Table([[left, qr(view.batch_code, 30 * mm)]], colWidths=[wide - 31 * mm, 31 * mm])
    table.setStyle(
        TableStyle(
            [
                ("LEFTPADDING", (0, 0), (-1, -1), 0),
                ("RIGHTPADDING", (0, 0), (-1, -1), 0),
                ("TOPPADDING", (0, 0), (-1, -1), 0),
                ("VALIGN", (0, 0), (-1, -1), "TOP"),
                ("ALIGN", (1, 0), (1, 0), "RIGHT"),
            ]
        )
    )
    return table


def _caution(part: tuple[str, tuple[str, ...]], wide: float) -> list[Flowable]:
    """Cautions with a heavy bar beside them, seen on a mono printer and at arm's length."""
    texts = part[1]
    if not texts:
        return []
    body = Table([[[para(text, NOTE, bold=True) for text in texts]]], colWidths=[wide])
    body.setStyle(
        TableStyle(
            [
                ("LINEBEFORE", (0, 0), (0, -1), 3, black),
                ("LEFTPADDING", (0, 0), (-1, -1), 8),
                ("TOPPADDING", (0, 0), (-1, -1), 1),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 3),
            ]
        )
    )
    return [Spacer(1, 1.2 * mm), body, Spacer(1, 1.6 * mm)]


def _row(cells: list[Any], widths: list[float]) -> Table:
    table = Table([cells], colWidths=widths)
    table.setStyle(
        TableStyle(
            [
                ("LEFTPADDING", (0, 0), (-1, -1), 0),
                ("RIGHTPADDING", (0, 0), (-1, -1), 4),
                ("TOPPADDING", (0, 0), (-1, -1), 2.5),
                ("BOTTOMPADDING", (0, 0), (-1, -1), 2.5),
                ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
                ("LINEBELOW", (0, 0), (-1, -1), HAIR, GREY),
            ]
        )
    )
    return table


def _line(line: WeighLine, units: str, wide: float) -> Table:
    lot = f"lot {line.lot_code}" if line.lot_code else "lot: write it here"
    origin = f", their {line.supplier_lot}" if line.supplier_lot else ""
    what = [para(line.material, BODY + 1, bold=True), para(f"{lot}{origin}", NOTE)]
    window = f"OK {show_mass(line.low, units)} to {show_mass(line.high, units)}"
    target = [
        para(show_mass(line.target, units), BODY + 2, bold=True, right=True),
        para(window, NOTE, right=True),
    ]
    weighed = (
        para(show_mass(line.weighed, units), BODY + 1, bold=True)
        if line.weighed is not None
        else Box(30 * mm, BOX, "oz" if units == "us" else "g")
    )
    tick = [Box(6 * mm, 6 * mm), para("lot seen", 9)]
    widths = [10 * mm, wide - 114 * mm, 52 * mm, 34 * mm, 18 * mm]
    return _row([para(str(line.number), BODY + 2, bold=True), what, target, weighed, tick], widths)


def _ticks(texts: tuple[str, ...], wide: float) -> Table:
    return _row(
        [[para(text, BODY)] for text in texts] + [Box(30 * mm, BOX, "reading")],
        [(wide - 34 * mm) * 0.38, (wide - 34 * mm) * 0.62, 34 * mm],
    )


def _write(label: str, unit: str, wide: float, note: str = "") -> Table:
    words = [para(label, BODY)] + ([para(note, NOTE)] if note else [])
    return _row([words, Box(34 * mm, BOX, unit)], [wide - 38 * mm, 38 * mm])


def _mixing(view: Worksheet, cautions: Cautions, wide: float) -> list[Flowable]:
    degree = "°F" if view.units == "us" else "°C"
    apart = "10 °F" if view.units == "us" else "5.6 °C"
    found: list[Flowable] = [
        _write("Lye temperature", degree, wide),
        _write("Fats temperature", degree, wide, f"within {apart} of the lye before mixing (common practice)"),
    ]
    found += _caution(("mix", cautions.by_step.get("mix", ())), wide)
    found.append(_write("Trace after", "min", wide))
    if view.process == "hot":
        cool = "180 °F" if view.units == "us" else "82 °C"
        found += [
            _write("Cook from", "clock", wide),
            _write("Cook to", "clock", wide),
            _write("Temperature before fragrance", degree, wide, f"below {cool} (common practice)"),
        ]
    return found


def _ending(view: Worksheet, wide: float) -> list[Flowable]:
    unit = "oz" if view.units == "us" else "g"
    if view.process == "infusion":
        rows = [_write("Strained on", "date", wide), _write("Oil strained off", unit, wide)]
    else:
        rows = [
            _write("Poured at", "clock", wide),
            _write("Cut on", "date", wide),
            _write("Bars", "", wide),
            _write("All bars together", unit, wide),
            _write("Offcuts", unit, wide),
        ]
    notes = [Spacer(1, 3 * mm), para("What went wrong, and what was done about it", BODY), Spacer(1, 1 * mm)]
    return [*rows, KeepTogether([*notes, Box(wide, 42 * mm)])]
