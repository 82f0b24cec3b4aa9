"""The bench worksheet: numbered lines in the order of work, with boxes to write in."""

from itertools import groupby

from reportlab.lib.units import mm
from reportlab.platypus import CondPageBreak, Flowable, KeepTogether, Paragraph, Spacer, Table

from ledger.documents.boxes import BOX_WIDTH, TICK_WIDTH, Box, Notes, box_pairs, box_row
from ledger.documents.page import Sheet, Type, build, caution, escape, facts, para, plain, style, titled
from ledger.domain.dates import show_date
from ledger.domain.quantity import show_mass, show_share
from ledger.reference.cautions import Cautions
from ledger.views.worksheet import WeighLine, Worksheet

TYPE = Type(large=28, head=14, body=11)  # read at a metre with goggles on
_NUMBER_WIDTH, _TARGET_WIDTH = 9 * mm, 43 * mm
_STEPS = {
    "in the fats": "Weigh the fats",
    "with the lye": "Make the lye",
    "at trace": "At trace",
    "after the cook": "After the cook",
    "in the pot": "Into the pot",
}


def draw_worksheet(view: Worksheet, *, cautions: Cautions, paper: str = "A4") -> bytes:
    """The worksheet as a PDF. Raises Refused for a character that cannot be printed."""
    sheet = Sheet(paper, f"Batch {view.batch_code}", "Worksheet", view.business, view.printed_from, TYPE)
    wide = sheet.width
    story: list[Flowable] = [_head(view, wide), Spacer(1, 3 * mm)]
    story += [para(f"• {note}", TYPE.body, bold=True) for note in view.notes]
    story.append(Spacer(1, 2.5 * mm if view.notes else 0))
    story += caution((cautions.first, *cautions.by_step.get("start", ())), TYPE.body, wide)
    story += caution([f"First aid. {text}" for text in cautions.by_step.get("first aid", ())], TYPE.body, wide)
    story.append(box_row([para("Bench and tools clean; scale reads the test weight", TYPE.body)], _box(view), wide))
    mixed = view.process not in ("cold", "hot")
    for stage, group in groupby((line for line in view.lines if not line.pieces), key=lambda line: line.stage):
        if stage in ("at trace", "after the cook") and not mixed:
            story += _mixing(view, cautions, wide)
            mixed = True
        before = caution(cautions.by_step.get("lye", ()), TYPE.body, wide) if stage == "with the lye" else []
        lines = [_line(line, view, wide) for line in group]
        story += _step(_STEPS.get(stage, stage.capitalize()), [*before, *lines])
    if not mixed:
        story += _mixing(view, cautions, wide)
    story += _ending(view, wide)
    return build(story, sheet)


def _scale(view: Worksheet) -> str:
    return "oz" if view.units == "us" else "g"


def _box(view: Worksheet) -> Box:
    return Box(TYPE.body, _scale(view))


def _head(view: Worksheet, wide: float) -> Table:
    ratio = (view.water_per_alkali_thousandths or 0) / 1000
    bars = f"{view.bars_planned} bars" if view.bars_planned else None
    pairs = (
        ("for", show_date(view.made_on)),
        ("recipe", f"{view.recipe_code}, version {view.recipe_version}"),
        ("process", view.process),
        ("in the pot", show_mass(view.dough_mg, view.units)),
        ("mould", ", ".join(word for word in (view.mould, bars) if word)),
        ("superfat", _superfat(view)),
        ("lye", show_share(view.lye_concentration_ppm) if view.lye_concentration_ppm is not None else ""),
        ("water", f"{ratio:.2f} to 1 of alkali" if view.water_per_alkali_thousandths else ""),
    )
    left = [
        Paragraph(escape(view.batch_code), style(TYPE.large, bold=True, leading=1.1)),
        para(view.product, TYPE.head, bold=True, field="product"),
        Spacer(1, 2 * mm),
        facts(pairs, TYPE.body, label_width=20 * mm, total=wide - 29 * mm, columns=2),
    ]
    return titled(left, view.batch_code, wide)


def _superfat(view: Worksheet) -> str:
    """What is meant, and the likely low of the pot as it cooks."""
    if view.superfat_ppm is None:
        return ""
    low = view.before_addition or view.superfat
    return show_share(view.superfat_ppm) + (f", likely low {show_share(low.likely_low_ppm)}" if low else "")


def _step(title: str, parts: list[Flowable]) -> list[Flowable]:
    """One step of the work; its title stays with its cautions and its first line."""
    return [
        CondPageBreak(50 * mm),
        Spacer(1, 3.5 * mm),
        para(title, TYPE.head, bold=True),
        Spacer(1, 1.5 * mm),
        *parts,
    ]


def _line(line: WeighLine, view: Worksheet, wide: float) -> Table:
    lot = f"lot <b>{escape(line.lot_code, 'lot')}</b>" if line.lot_code else "lot not chosen; write it down"
    origin = ", ".join(word for word in (line.supplier, line.supplier_lot) if word)
    below = f"{lot} ({escape(origin, 'supplier')})" if origin else lot
    target = [
        para(show_mass(line.target, view.units), TYPE.head, bold=True, right=True),
        para(f"OK {show_mass(line.low, view.units)} to {show_mass(line.high, view.units)}", TYPE.body, right=True),
    ]
    words = Table(
        [
            [
                para(str(line.number), TYPE.head, bold=True),
                [para(line.material, TYPE.head, bold=True, field="material"), Paragraph(below, style(TYPE.body))],
                target,
            ]
        ],
        colWidths=[
            _NUMBER_WIDTH,
            wide - BOX_WIDTH - TICK_WIDTH - 3 * mm - _NUMBER_WIDTH - _TARGET_WIDTH,
            _TARGET_WIDTH,
        ],
    )
    words.setStyle(plain(("RIGHTPADDING", (1, 0), (1, 0), 2 * mm)))
    weighed = _box(view) if line.weighed is None else para(show_mass(line.weighed, view.units), TYPE.head, bold=True)
    return box_row([words], weighed, wide, [Box(TYPE.body, "", 5 * mm, 5 * mm), para("lot", TYPE.body)])


def _write(label: str, unit: str, wide: float, note: str = "") -> Table:
    words: list[Flowable] = [para(label, TYPE.body, bold=True)] + ([para(note, TYPE.body)] if note else [])
    return box_row(words, Box(TYPE.body, unit), wide)


def _mixing(view: Worksheet, cautions: Cautions, wide: float) -> list[Flowable]:
    us = view.units == "us"
    degree, apart, cool = ("°F", "10 °F", "180 °F") if us else ("°C", "5.6 °C", "82 °C")
    found = [
        *caution(cautions.by_step.get("mix", ()), TYPE.body, wide),
        _write("Lye temperature", degree, wide),
        _write("Fats temperature", degree, wide, f"within {apart} of the lye before mixing (common practice)"),
        _write("Trace after", "min", wide),
    ]
    if view.process == "hot":
        found += [
            _write("Cook from", "clock", wide),
            _write("Cook to", "clock", wide),
            _write("Temperature before fragrance", degree, wide, f"below {cool} (common practice)"),
        ]
    return _step("Bring fats and lye together", found)


def _ending(view: Worksheet, wide: float) -> list[Flowable]:
    """What is written down last, and room for what went wrong."""
    unit = _scale(view)
    if view.process == "infusion":
        title, asked = "Strain", [("Strained on", "date"), ("Oil strained off", unit)]
    elif view.process == "blend":
        title, asked = "Fill off", [("Filled off on", "date"), ("What came of it", unit)]
    elif not view.gives_bars:
        title, asked = "Divide at trace", [("Divided at", "clock"), ("Dough in all", unit)]
    else:
        title = "Pour and cut"
        asked = [("Poured at", "clock"), ("Cut on", "date"), ("Bars", ""), ("All bars", unit), ("Offcuts", unit)]
    boxes = box_pairs([*asked, ("Made by", "")], TYPE.body, wide)
    return [
        KeepTogether(_step(title, [boxes])[1:]),
        Spacer(1, 2 * mm),
        Notes(TYPE.body, "What went wrong, and what was done about it"),
    ]
