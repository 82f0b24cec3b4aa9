"""The bench worksheet: numbered lines in the order of work, with boxes to write in."""

from itertools import groupby

from reportlab.lib.units import mm
from reportlab.platypus import CondPageBreak, Flowable, KeepTogether, Spacer, Table

from ledger.documents.kit.blocks import caution, facts, titled
from ledger.documents.kit.boxes import BOX_WIDTH, TICK_WIDTH, Box, Notes, box_pairs, box_row
from ledger.documents.kit.page import Sheet, Type, build, escape, marked_up, para, plain, style
from ledger.domain.bench.steps import SEEN, Step, in_order
from ledger.domain.recipe.recipe import WITH_THE_LYE
from ledger.domain.tools.readings import COOK, MIX, POUR, READINGS, SET, START
from ledger.reference.cautions import Cautions
from ledger.units.dates import show_date
from ledger.units.measures import scale_unit
from ledger.units.quantity import show_mass, show_share
from ledger.views.bench.worksheet import WeighLine, Worksheet, acid_in_jug

TYPE = Type(large=28, head=14, body=11)  # read at a metre with goggles on
_NUMBER_WIDTH, _TARGET_WIDTH = 9 * mm, 43 * mm
_STEPS = {
    "in the fats": "Weigh the fats",
    "with the lye": "Make the lye",
    "at trace": "At trace",
    "after the cook": "After the cook",
    "in the pot": "Into the pot",
    START: "Before you begin",
    MIX: "Bring fats and lye together",
    COOK: "Cook",
    POUR: "Pour",
    SET: "Unmould",
}
_CAUTIONS = {"with the lye": "lye", MIX: "mix"}  # which cautions stand beside which step


def draw_worksheet(view: Worksheet, *, cautions: Cautions, paper: str = "A4") -> bytes:
    """The worksheet as a PDF."""
    sheet = Sheet(paper, f"Batch {view.batch_code}", "Worksheet", view.business, view.printed_from, TYPE)
    wide = sheet.width
    story: list[Flowable] = [_head(view, sheet), Spacer(1, 3 * mm)]
    story += [para(f"• {note}", TYPE.body, bold=True) for note in view.notes]
    story.append(Spacer(1, 2.5 * mm if view.notes else 0))
    if view.caustic:
        story += caution((cautions.first, *cautions.by_step.get("start", ())), TYPE.body, wide)
        story += caution([f"First aid. {text}" for text in cautions.by_step.get("first aid", ())], TYPE.body, wide)
    things: list[WeighLine | Step] = [*view.lines, *view.steps]
    for title, group in groupby(in_order(things, _when), key=lambda one: _title(_when(one))):
        shown = [one for one in group if not (isinstance(one, WeighLine) and one.pieces)]
        if not shown:
            continue
        before: list[Flowable] = []
        for when in dict.fromkeys(map(_when, shown)):
            before += caution(cautions.by_step.get(_CAUTIONS.get(when, ""), ()), TYPE.body, wide)
            if when == WITH_THE_LYE and acid_in_jug(view.lines):
                before += caution(cautions.by_step.get("acid", ()), TYPE.body, wide)
        drawn = [_line(one, view, wide) if isinstance(one, WeighLine) else _read(one, view, wide) for one in shown]
        step = _step(title, [*before, *drawn])
        # the alkali is never turned to without what goes into the jug before it, and the cautions
        story += [KeepTogether(step[1:])] if any(_when(one) == WITH_THE_LYE for one in shown) else step
    story += _ending(view, wide)
    return build(story, sheet)


def _when(one: WeighLine | Step) -> str:
    return one.when if isinstance(one, Step) else one.stage


def _title(when: str) -> str:
    return _STEPS.get(when, when.capitalize())


def _box(view: Worksheet) -> Box:
    return Box(TYPE.body, scale_unit(view.units))


def _head(view: Worksheet, sheet: Sheet) -> Table:
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
        para(view.batch_code, TYPE.large, bold=True, leading=1.1),
        para(view.product, TYPE.head, bold=True),
        Spacer(1, 2 * mm),
        facts(pairs, TYPE.body, label_width=20 * mm, total=sheet.width - 29 * mm, columns=2),
    ]
    return titled(left, sheet, view.batch_code)


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
    lot = f"lot <b>{escape(line.lot_code, TYPE.body)}</b>" if line.lot_code else "lot not chosen; write it down"
    origin = ", ".join(word for word in (line.supplier, line.supplier_lot) if word)
    below = f"{lot} ({escape(origin, TYPE.body)})" if origin else lot
    target = [
        para(show_mass(line.target, view.units), TYPE.head, bold=True, right=True),
        para(f"OK {show_mass(line.low, view.units)} to {show_mass(line.high, view.units)}", TYPE.body, right=True),
    ]
    words = Table(
        [
            [
                para(str(line.number), TYPE.head, bold=True),
                [para(line.material, TYPE.head, bold=True), marked_up(below, style(TYPE.body))],
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


def _read(step: Step, view: Worksheet, wide: float) -> Table:
    """A lettered line: something to tick or to read, with its limit."""
    note = "; ".join(word for word in (step.note, view.limits.get(step.what)) if word)
    said: list[Flowable] = [para(step.label, TYPE.head, bold=True)] + ([para(note, TYPE.body)] if note else [])
    words = Table(
        [[para(step.letter, TYPE.head, bold=True), said]],
        colWidths=[_NUMBER_WIDTH, wide - BOX_WIDTH - TICK_WIDTH - 3 * mm - _NUMBER_WIDTH],
    )
    words.setStyle(plain(("VALIGN", (0, 0), (-1, -1), "MIDDLE")))
    return box_row([words], Box(TYPE.body, READINGS[step.what].answer.box(view.units)), wide)


def _ending(view: Worksheet, wide: float) -> list[Flowable]:
    """What is written down last, and room for what went wrong."""
    unit = scale_unit(view.units)
    if view.process == "infusion":
        title = f"Strain on {show_date(view.strain_on)}" if view.strain_on else "Strain"
        asked = [("Strained on", "date"), ("Oil strained off", unit), ("Spent solids", unit)]
    elif view.process == "blend":
        title, asked = "Fill off", [("Filled off on", "date"), ("What came of it", unit)]
    elif not view.gives_bars:
        title, asked = "Divide at trace", [("Divided at", "clock"), ("Dough in all", unit)]
    else:
        title = "Cut"
        asked = [("Cut on", "date"), ("Bars", ""), ("All bars", unit), ("Offcuts kept", unit), ("Thrown away", unit)]
    boxes = box_pairs([*asked, ("Made by", "")], TYPE.body, wide)
    seen: list[Flowable] = [KeepTogether([_ticks(wide)]), Spacer(1, 3 * mm)] if view.gives_bars else []
    return [
        KeepTogether(_step(title, [boxes])[1:]),
        Spacer(1, 2 * mm),
        *seen,
        Notes(TYPE.body, "What went wrong, and what was done about it"),
    ]


def _ticks(wide: float) -> Table:
    """The tick list of what was seen, two lines of boxes with their words."""
    half = -(-len(SEEN) // 2)
    rows: list[list[Flowable]] = []
    for words in (SEEN[:half], SEEN[half:]):
        cells: list[Flowable] = []
        for word in words:
            cells += [Box(TYPE.body, "", 5 * mm, 5 * mm), para(word, TYPE.body)]
        rows.append(cells)
    table = Table(rows, colWidths=[7 * mm, wide / half - 7 * mm] * half)
    table.setStyle(plain(("VALIGN", (0, 0), (-1, -1), "MIDDLE"), ("BOTTOMPADDING", (0, 0), (-1, -1), 2 * mm)))
    return table
