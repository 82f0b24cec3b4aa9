"""Every shipped layout on its sheets, measured on the printed page."""

from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from math import ceil, floor
from typing import Any

import drawn
import pytest
import zxingcpp

from ledger.documents.kit.layout import LabelLayout, sheet_layout, shipped
from ledger.documents.label.choosing import shipped_layout
from ledger.documents.label.labels import draw_labels
from ledger.views.label.parcel import ParcelText

SHEETS = {
    "small": ("a4-24", "letter-21", "roll"),
    "band": ("a4-6", "letter-5"),
    "box": ("a4-8", "letter-8"),
    "card": ("a4-2", "letter-2"),
    "tag": ("a4-6-tag", "letter-6-tag"),
    "round": ("a4-6-tag", "letter-6-tag"),
    "wrap": ("a4-2", "letter-2"),
    "leaf-band": ("a4-6", "letter-5"),
    "leaf-box": ("a4-8", "letter-8"),
    "leaf-tag": ("a4-6-tag", "letter-6-tag"),
    "leaf-round": ("a4-6-tag", "letter-6-tag"),
    "leaf-wrap": ("a4-2", "letter-2"),
    "notice-shelf": ("a4-2", "letter-2"),
    "sticker-small": ("a4-65", "letter-30", "roll"),
    "sticker-large": ("a4-24", "letter-21", "roll"),
    "sticker-band": ("a4-6", "letter-5"),
    "ticket-price": ("a4-24", "letter-21", "roll"),
    "ticket-shelf": ("a4-8", "letter-8"),
    "ticket-stall": ("a4-2", "letter-2"),
    "card-rack": ("a4-8", "letter-8"),
    "lot-jar": ("a4-24", "letter-21", "roll"),
    "lot-drum": ("a4-8", "letter-8"),
    "parcel-label": ("a4-8", "letter-8"),
}
BARS = [name for name in SHEETS if shipped_layout(name).purpose == "bar"]
SCALE = 6  # dots: 432 an inch, 17 a millimetre
DOTS = SCALE * 72 / 25.4
PARCEL = ParcelText(
    ("The Tern Hall", "2 Weir Row", "Port Emmer", "Ireland"), ("Tidewrack Soaps", "3 Vixen Lane"), "sale 12"
)
DATED = "Best used before the end of April 2028"
PLAIN, ACCENTED = "Calendula & Lavender", "Źdźbło Žluťoučké Gülağacı Blåbærgrød"
# A sheet only places what is drawn once: every layout on each of its sheets, and on the first with either name.
PRINTS = [
    (layout, sheet, name)
    for layout, sheets in SHEETS.items()
    for sheet in sheets
    for name in ((PLAIN, ACCENTED) if sheet == sheets[0] else (ACCENTED,))
]


def view(layout: str, **more: Any) -> Any:
    """What is printed on a layout: with marks, origin and precautions, and nothing left out."""
    purpose = shipped_layout(layout).purpose
    bar, small = drawn.label(), layout == "small"
    if purpose == "bar":
        bar = replace(
            bar,
            best_before=None,
            after_opening_months=12,
            origin=None if small else "Made in Ireland",
            precautions=() if small else ("Keep out of eyes.",),
        )
    elif purpose == "sticker":
        bar = replace(bar, best_before="Best used before the end of November 2028")
    one = {"ticket": drawn.ticket(), "rack": drawn.rack(), "lot": drawn.jar(), "parcel": PARCEL}.get(purpose, bar)
    if "product" in more and purpose == "lot":
        more["material"] = more.pop("product")
    if "product" in more and one is PARCEL:
        more["to"] = (more.pop("product"), *PARCEL.to[1:])
    return replace(one, **more)


@cache
def draw(layout: str, sheet: str, *, marked: bool = False, **more: Any) -> Any:
    """One label on its sheet, drawn and read once for all that is asked of it."""
    page = sheet_layout(sheet)
    page = replace(page, cut_marks=page.cut_marks and marked)
    return drawn.Read(draw_labels(view(layout, **more), shipped_layout(layout), page, count=1))


@pytest.fixture(scope="module", autouse=True)
def _let_go() -> Iterator[None]:
    yield
    draw.cache_clear()


def corner(layout: str, sheet: str) -> tuple[float, float]:
    form, page = shipped_layout(layout), sheet_layout(sheet)
    return page.corner_mm(0, form.width_mm, form.height_mm)


def label_alone(page: Any, form: LabelLayout, at: tuple[float, float]) -> Any:
    """The printed label as a picture: 255 where a dot has ink in it, else 0."""
    left, top = (round(side * DOTS) for side in at)
    area = (left, top, left + round(form.width_mm * DOTS), top + round(form.height_mm * DOTS))
    return page.part(area, scale=SCALE).point(lambda shade: 255 * (shade < 128))


def ink(picture: Any) -> Iterator[tuple[int, int]]:
    """Every dot with ink in it, from the label's left and top."""
    for index, shade in enumerate(picture.tobytes()):
        if shade:
            yield index % picture.width, index // picture.width


def test_every_shipped_layout_has_a_sheet_on_a4_and_on_letter() -> None:
    assert set(SHEETS) == set(shipped("label"))
    for sheets in SHEETS.values():
        assert {sheet_layout(sheet).paper for sheet in sheets} >= {"A4", "Letter"}
    assert {sheet for sheets in SHEETS.values() for sheet in sheets} == set(shipped("sheet"))


@pytest.mark.parametrize(("layout", "sheet", "name"), PRINTS)
def test_all_ink_of_letters_marks_and_codes_lies_within_a_panel(layout: str, sheet: str, name: str) -> None:
    form = shipped_layout(layout)
    page = draw(layout, sheet, product=name)
    slack = 0.2 * DOTS  # the side of a letter that stands at the very edge, and the edge of a dot
    rules = [(left, left + long, top - 2.5, top + 1) for left, top, long in form.rules_mm]
    bare = [panel.edges_mm for panel in form.without_picture().panels]
    panels = [[edge * DOTS for edge in edges] for edges in (*bare, *rules)]
    picture = label_alone(page, form, corner(layout, sheet))
    assert picture.histogram()[255] > 1000
    for left, right, top, foot in panels:  # dots from the first within the edges to the last
        within = (ceil(left - slack), ceil(top - slack), floor(right + slack) + 1, floor(foot + slack) + 1)
        picture.paste(0, within)
    assert picture.getbbox() is None, [edge / DOTS for edge in picture.getbbox()]


@pytest.mark.parametrize("layout", SHEETS)
def test_no_letter_lies_over_another(layout: str) -> None:
    glyphs = sorted(draw(layout, SHEETS[layout][0], product=ACCENTED).glyphs(), key=lambda one: one.left)
    for index, one in enumerate(glyphs):
        for other in glyphs[index + 1 :]:
            if other.left >= one.right:
                break
            wide = min(one.right, other.right) - max(one.left, other.left)
            high = min(one.bottom, other.bottom) - max(one.top, other.top)
            # neighbours such as ť and o stand that close by design of the face
            assert min(wide, high) < 0.03 * one.size / (72 / 25.4), (one, other)


@pytest.mark.parametrize("layout", SHEETS)
def test_small_letters_are_as_high_as_the_layout_says(layout: str) -> None:
    least = shipped_layout(layout).law_min_x_height_mm
    glyphs = [one for one in draw(layout, SHEETS[layout][0], product=PLAIN).glyphs() if one.sign in "vxz"]
    assert glyphs
    assert all(one.bottom - one.top >= least - 0.03 for one in glyphs)


@pytest.mark.parametrize("layout", BARS)
def test_figures_of_the_net_quantity_are_as_high_as_the_law_asks(layout: str) -> None:
    """16 CFR 500.21, from memory: 1/8 in, 3.1 mm, on 5 to 25 square inches; a round top of 60 mm has 4.38."""
    high = 1.6 if "round" in layout else 3.1
    asked = {"product": "Lavender", "net_quantity": "Net Wt 3.52 oz (100 g)", "figure_height_mm": high}
    glyphs = draw(layout, SHEETS[layout][0], **asked).glyphs()
    joined = "".join(one.sign for one in glyphs)
    at = joined.index("3.52oz")
    assert "100g" in joined
    for one in glyphs[at : at + 4]:
        assert one.sign == "." or one.bottom - one.top >= high - 0.05


@pytest.mark.parametrize("layout", BARS)
def test_names_and_addresses_of_many_languages_are_read_back(layout: str) -> None:
    hers = {"responsible_name": "Işıl Ğül", "responsible_address": "Ørbæk, Åre 3, Þingey"}
    said = draw(layout, SHEETS[layout][0], product="Łąka Žluť", **hers).text()
    assert "Łąka Žluť" in said
    assert "Işıl Ğül, Ørbæk, Åre 3, Þingey" in said


@pytest.mark.parametrize("layout", BARS)
def test_the_open_jar_with_its_months_stands_where_there_is_no_date(layout: str) -> None:
    sheet = SHEETS[layout][0]
    assert "12M" in draw(layout, sheet, product=PLAIN).text()
    dated = draw(layout, sheet, best_before=DATED, after_opening_months=None).text()
    assert "12M" not in dated
    assert "April 2028" in dated


@pytest.mark.parametrize("sheet", SHEETS["round"])
def test_a_round_keeps_all_its_ink_and_the_tag_takes_the_rest(sheet: str) -> None:
    """The shipped round: name, what it is, weight, batch and the hand-with-book mark; 1 mm is left for the scissors."""
    form = shipped_layout("round")
    ((x, y, across), _hole) = form.rounds_mm
    page = draw("round", sheet, business="Tidewrack")
    for dot_x, dot_y in ink(label_alone(page, form, corner("round", sheet))):
        off = ((dot_x / DOTS - x) ** 2 + (dot_y / DOTS - y) ** 2) ** 0.5
        assert not across / 2 - 1 < off < across / 2
    left, top = corner("round", sheet)
    on_round = "".join(
        one.sign for one in page.glyphs() if one.left < left + x + across / 2 and one.bottom < top + y + across / 2
    )
    assert on_round.replace("Batch", "|Batch") == "TidewrackCalendula&LavenderSoap100g|Batch26-118-0"


@pytest.mark.parametrize(("layout", "sheet"), [("wrap", "a4-2"), ("card-rack", "letter-8")])
def test_the_printed_code_is_read_back(layout: str, sheet: str) -> None:
    page = draw(layout, sheet, marked=True)
    (found,) = zxingcpp.read_barcodes(label_alone(page, shipped_layout(layout), corner(layout, sheet)))
    assert found.text == "26-118-0"


def test_a_roll_has_one_label_to_a_page_as_long_as_the_label(label, read) -> None:
    roll = read(draw_labels(label, shipped_layout("small"), sheet_layout("roll"), count=3))
    assert [roll.size_mm(page) for page in range(len(roll.pages))] == [(80, 37)] * 3


@pytest.mark.parametrize(
    ("layout", "square_cm"),
    # by hand, the whole face: 66 × 46 mm; 46 × 65 mm; 55 × 80 mm; the square about the round: 50 × 50 mm
    [("band", 30.36), ("box", 29.9), ("wrap", 44.0), ("round", 25.0)],
)
def test_the_area_of_the_principal_display_panel(layout: str, square_cm: float) -> None:
    assert shipped_layout(layout).display_panel_cm2 == pytest.approx(square_cm)


def test_without_a_display_panel_the_largest_counts() -> None:
    # notice-shelf: 150 × 92 mm
    assert shipped_layout("notice-shelf").display_panel_cm2 == pytest.approx(138)
