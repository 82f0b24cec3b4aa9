"""The recipe sheet: one page to work from and to hang up, with the soap it makes and its fatty acids."""

from collections.abc import Sequence
from itertools import accumulate, chain, groupby

from reportlab.lib.colors import black
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Paragraph, Spacer, Table

from ledger.documents.kit.blocks import caution, facts, grid
from ledger.documents.kit.fonts import REGULAR, width
from ledger.documents.kit.page import (
    GREY,
    HAIR,
    Sheet,
    Type,
    build,
    build_on_one_page,
    escape,
    marked_up,
    para,
    plain,
    style,
)
from ledger.documents.kit.range_chart import RangeChart
from ledger.documents.recipe.recipe_words import (
    amount_words,
    lye_facts,
    note_words,
    pot_facts,
    process_words,
    source_words,
    superfat_words,
)
from ledger.domain.bench.steps import in_order
from ledger.reference.cautions import Cautions
from ledger.units.quantity import show_masses, show_share, whole
from ledger.units.words import Units
from ledger.views.recipe.composition import Stages
from ledger.views.recipe.recipe_page import PageLine, PageStep, RecipePage

# From the roomiest to the least: large for the name and the amounts, head for all else that is read at the bench,
# body for the foot, the notes and the sources. The first that keeps to one page is taken. Below the last nothing
# is read at arm's length any more, so then the sheet runs on to a second page: with its sources alone if it can.
TYPES = (Type(20, 12.5, 9.5), Type(18, 11.5, 9), Type(16.5, 11, 8.5), Type(16.5, 10.5, 8.5), Type(14, 10.5, 8.5))
_LEADING = 1.18
_SOURCES = "Sources of the figures"
_KINDS = ("soap", "glycerol", "fat", "water")  # first in the table, in this order; the others follow


def draw_recipe_sheet(view: RecipePage, *, cautions: Cautions, paper: str = "A4") -> bytes:
    """The recipe as a PDF, in the largest type that keeps to one page."""
    code = f"{view.code}, version {view.version}"

    def sheet(size: Type) -> Sheet:
        return Sheet(paper, code, "Recipe", view.business, view.printed_from, size)

    def story(size: Type, *, sources: bool = True, warn_early: bool = False) -> list[Flowable]:
        wide = sheet(size).width
        told = _work(view, cautions, size, wide)
        warned = _warnings(view, size)
        rest = [
            *_small(note_words(view), "Notes", size),
            *(_small(source_words(view), _SOURCES, size) if sources else []),
        ]
        if warn_early:
            told += [KeepTogether(one) for one in warned]
        return [*told, *_soap(view, rest if warn_early else [*warned, *rest], size, wide)]

    for size in TYPES:
        if data := build_on_one_page(story(size), sheet(size)):
            return data
    alone = build_on_one_page(story(TYPES[-1], sources=False), sheet(TYPES[-1])) is not None
    return build(story(TYPES[-1], warn_early=not alone), sheet(TYPES[-1]))


def _work(view: RecipePage, cautions: Cautions, size: Type, wide: float) -> list[Flowable]:
    """What is done at the bench: the recipe's name, its key facts, the cautions, and what goes in when."""
    lye = any(line.caustic for line in view.lines)
    before = view.lye.before_addition if view.lye else None
    gap = Spacer(1, 0.4 * size.head)
    start = " ".join((cautions.first, *(cautions.by_step.get("start", ()) if lye else ())))
    aid = [f"First aid. {text}" for text in cautions.by_step.get("first aid", ()) if lye]
    story: list[Flowable] = [
        _head(view, size, wide),
        gap,
        _key_facts(view, size, wide),
        gap,
        *caution([start, *aid], size.head, wide, leading=_LEADING),
        _lines(view, cautions, size, wide),
    ]
    if before:
        words = f"Superfat in the pot, before the fat held back goes in: {superfat_words(before)}."
        story += [gap, para(words, size.head, bold=True)]
    return story


def _head(view: RecipePage, size: Type, wide: float) -> Table:
    """The name, and at the right edge which recipe it is."""
    words = f"{view.code}, version {view.version}, {process_words(view)}"
    room = width(words, REGULAR, size.head) + 1
    name = para(view.name, size.large, bold=True, leading=1.1)
    which = para(words, size.head, right=True)
    table = Table([[name, which]], colWidths=[wide - room, room])
    table.setStyle(
        plain(("TOPPADDING", (1, 0), (1, 0), 0.8 * (size.large - size.head)), ("RIGHTPADDING", (0, 0), (0, 0), 8))
    )
    return table


def _key_facts(view: RecipePage, size: Type, wide: float) -> Table:
    """What stands in the lye at the left, what becomes of it at the right."""
    label, gap = 5 * size.head, 5 * mm
    left, right = 0.56 * wide, 0.44 * wide - gap
    cells = [
        facts(pairs, size.head, label_width=label, total=room) if any(value for _, value in pairs) else ""
        for pairs, room in ((lye_facts(view), left), (pot_facts(view), right))
    ]
    table = Table([cells if cells[0] else cells[::-1]], colWidths=[left + gap, right])
    table.setStyle(plain())
    return table


def _lines(view: RecipePage, cautions: Cautions, size: Type, wide: float) -> Table:
    """What goes in, by step of work, with the caution of the lye before the step of the lye."""
    text = size.head
    portions = any(line.portion for line in view.lines)
    shares = any(line.of_fats_ppm is not None for line in view.lines)
    columns = [("when", 7.2 * text), ("material", 0.0), ("portion", 8.5 * text * portions)]
    columns += [("amount", 9.5 * text), ("of the fats", 6.5 * text * shares)]
    rest = wide - sum(one for _, one in columns)
    kept = [(name, one or rest) for name, one in columns if one or name == "material"]
    number = {name: i for i, (name, _) in enumerate(kept)}
    right = ("amount", "of the fats")
    rows: list[list[Flowable | str]] = [[para(name, text, right=name in right) for name, _ in kept]]
    rules: list[tuple[object, ...]] = [("LINEBELOW", (0, 0), (-1, 0), 0.8, black)]
    told = False
    things: list[PageLine | PageStep] = in_order([*view.lines, *view.steps], lambda one: one.when)
    for _, group in groupby(things, key=lambda one: one.when):
        lines = list(group)
        if not told and any(isinstance(line, PageLine) and line.caustic for line in lines):
            told, row = True, len(rows)
            acid = cautions.by_step.get("acid", ()) if any(line.acid_in_jug for line in view.lines) else ()
            warned = caution([" ".join((*cautions.by_step.get("lye", ()), *acid))], text, wide, leading=_LEADING)[:1]
            rows.append([warned, *[""] * (len(kept) - 1)])
            rules += [("SPAN", (0, row), (-1, row)), ("TOPPADDING", (0, row), (-1, row), 0.4 * text)]
            rules += [("BOTTOMPADDING", (0, row), (-1, row), 0.3 * text)]
        for i, line in enumerate(lines):
            last = i == len(lines) - 1
            rules.append(("LINEBELOW", (0 if last else number["material"], len(rows)), (-1, len(rows)), HAIR, GREY))
            if isinstance(line, PageStep):
                rules.append(("SPAN", (number["material"], len(rows)), (-1, len(rows))))
            cells = _cells(line, view.units, size, first=i == 0)
            rows.append([cells.get(name, "") for name, _ in kept])
    table = Table(rows, colWidths=[one for _, one in kept], repeatRows=1, hAlign="LEFT")
    table.setStyle(
        plain(
            ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
            ("RIGHTPADDING", (0, 0), (-2, -1), 6),
            ("TOPPADDING", (0, 0), (-1, -1), 1.6),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 0.6),
            ("TOPPADDING", (number["amount"], 1), (number["amount"], -1), -0.1 * size.large),
            ("BOTTOMPADDING", (number["amount"], 1), (number["amount"], -1), 0.3 * size.large),
            *rules,
        )
    )
    return table


def _cells(line: PageLine | PageStep, units: Units, size: Type, *, first: bool) -> dict[str, Flowable | str]:
    """One row by its columns; what is done at a step runs across those of material and amount."""
    text = size.head
    if isinstance(line, PageStep):
        note = f" ({line.note})" if line.note else ""
        return {"when": para(line.time if first else "", text), "material": para(line.text + note, text)}
    share = show_share(line.of_fats_ppm) if line.of_fats_ppm is not None else ""
    amount = Paragraph(amount_words(line, units), style(size.large, bold=True, right=True, leading=1))
    return {
        "when": para(line.when if first else "", text),
        "material": para(line.material, text, bold=True),
        "portion": para(line.portion or "", text),
        "amount": amount,
        "of the fats": para(share, text, right=True),
    }


def _title(text: str, size: Type) -> list[Flowable]:
    return [para(text, size.head, bold=True), Spacer(1, 0.2 * size.head)]


def _soap(view: RecipePage, rest: Sequence[list[Flowable]], size: Type, wide: float) -> list[Flowable]:
    """The soap it makes at the left, the chart of its fatty acids at the right, and the rest beneath.

    As much of the rest stands beside the chart as makes the whole least high.
    """
    gap = 8 * mm
    right_wide = 0.44 * wide
    left_wide = wide - right_wide - gap
    left = _composition(view.stages, view.units, size, left_wide) if view.stages else []
    right = _acids(view, size, right_wide)
    space = Spacer(1, 0.7 * size.head)
    if not (left and right):
        alone = left or right
        return [*([space, KeepTogether(alone)] if alone else []), *(KeepTogether(one) for one in rest)]
    high, first = _height(right, right_wide), _height(left, left_wide)
    narrow = list(accumulate((_height(one, left_wide) for one in rest), initial=first))
    below = list(accumulate((_height(one, wide) for one in reversed(rest)), initial=0.0))
    beside = min(range(len(rest) + 1), key=lambda count: max(narrow[count], high) + below[len(rest) - count])
    table = Table([[[*left, *chain(*rest[:beside])], "", right]], colWidths=[left_wide, gap, right_wide])
    table.setStyle(plain())
    return [space, table, *(KeepTogether(one) for one in rest[beside:])]


def _height(parts: Sequence[Flowable], wide: float) -> float:
    return sum((float(one.wrap(wide, 10_000)[1]) + float(one.getSpaceAfter()) for one in parts), 0.0)


def _composition(stages: Stages, units: Units, size: Type, wide: float) -> list[Flowable]:
    """The masses by kind at each stage, in one unit."""
    each = (stages.before, stages.cut, stages.cured, stages.driest)
    found = dict.fromkeys(part.what for stage in each for part in stage.parts)
    kinds = [*(kind for kind in _KINDS if kind in found), *(kind for kind in found if kind not in _KINDS)]
    masses = [[stage.of(kind) for stage in each] for kind in kinds] + [[stage.mass_mg for stage in each]]
    unit, shown = show_masses([mass for row in masses for mass in row], units)
    rows = [(kind, *shown[4 * i : 4 * i + 4]) for i, kind in enumerate([*kinds, "in all"])]
    heads = ("", *(stage.stage for stage in each))
    table = grid(heads, rows, [wide * one for one in (0.28, 0.18, 0.18, 0.18, 0.18)], size.head, right=(1, 2, 3, 4))
    table.setStyle(
        plain(
            ("RIGHTPADDING", (0, 0), (-2, -1), 4),
            ("TOPPADDING", (0, 0), (-1, -1), 0),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 0.9),
            ("VALIGN", (0, 0), (-1, 0), "BOTTOM"),
            ("LINEBELOW", (0, -2), (-1, -2), 0.8, black),
        )
    )
    return [*_title(f"The soap it makes, in {unit}", size), table]


def _acids(view: RecipePage, size: Type, wide: float) -> list[Flowable]:
    """The chart, and beneath it the fats that no figures are published for."""
    names = ", ".join(view.no_profile)
    if not view.profile:
        return []
    missing = f"Without published figures, and not counted: {names}."
    return [
        *_title("Fatty acids of its fats, as published", size),
        RangeChart(view.profile, size.head, wide),
        *([para(missing, size.head)] if names else []),
    ]


def _warnings(view: RecipePage, size: Type) -> list[list[Flowable]]:
    return [
        [
            Spacer(1, 0.3 * size.head),
            para(_whole(f"• {one}"), size.head, bold=True, leading=_LEADING),
        ]
        for one in view.warnings
    ]


def _whole(text: str) -> str:
    """The text with no figure torn from its percent sign."""
    return text.replace(" %", whole(" %"))


def _small(texts: Sequence[str], title: str, size: Type) -> list[list[Flowable]]:
    """A paragraph in the smallest type."""
    if not texts:
        return []
    words = f"<b>{title}.</b> {_whole(' '.join(escape(text, size.body) for text in texts))}"
    return [[Spacer(1, 0.6 * size.body), marked_up(words, style(size.body, leading=_LEADING))]]
