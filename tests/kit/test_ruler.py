"""The ruler at the edge of a sheet, measured on the printed page; and that it lies on no label."""

from dataclasses import replace
from io import BytesIO
from typing import Any

import pytest

from ledger.documents.kit.layout import label_layout, sheet_layout, shipped
from ledger.documents.kit.pdf import About, new_canvas
from ledger.documents.kit.places import draw_test_sheet
from ledger.documents.kit.ruler import draw_ruler
from ledger.documents.label.labels import draw_labels

DOTS = 6 * 72 / 25.4  # a mm of the picture
NO_EDGE = {"a4-24", "roll"}  # labels cut already from edge to edge, and a roll, which has none


def line(picture: Any, *, above_mm: float) -> tuple[float, float]:
    """Where the dark row begins and ends that lies so far above the foot of the page, in mm."""
    row = round(picture.height - above_mm * DOTS)
    band = picture.crop((0, row - 2, picture.width, row + 2)).convert("L").point(lambda light: 255 * (light < 128))
    left, _, right, _ = band.getbbox()
    return left / DOTS, right / DOTS


@pytest.mark.parametrize(("layout", "sheet", "ends", "words"), [
    ("band", "a4-6", 110.0, "This line is 100 mm long"),
    ("band", "letter-5", 111.6, "This line is 4 in (101.6 mm) long"),  # 4 × 25.4 = 101.6
])  # fmt: skip
@pytest.mark.parametrize("nudge", [(0.0, 0.0), (3.0, -2.0)])
def test_the_ruler_is_as_long_as_it_says_and_is_not_nudged(
    label, read, layout: str, sheet: str, ends: float, words: str, nudge: tuple[float, float]
) -> None:
    data = draw_labels(label, label_layout(layout), sheet_layout(sheet), count=1, nudge_mm=nudge)
    drawn = read(data)
    assert words in drawn.text()
    picture = drawn.image(scale=6)
    ruler = picture.crop((0, round(picture.height - 6.5 * DOTS), round((ends + 1.5) * DOTS), picture.height))
    begins, stops = line(ruler, above_mm=4.6)
    assert begins == pytest.approx(10.0, abs=0.15)
    assert stops == pytest.approx(ends, abs=0.15)


@pytest.mark.parametrize("sheet", shipped("sheet"))
def test_every_shipped_sheet_with_an_edge_has_one_on_every_page(label, read, sheet: str) -> None:
    page = sheet_layout(sheet)
    layout = next(one for one in ("wrap", "band", "box", "small", "sticker-small") if fits(one, page))
    drawn = read(draw_labels(label, label_layout(layout), page, count=page.places + 1))
    for number in (0, 1):
        assert ("This line is" in drawn.text(number)) == (sheet not in NO_EDGE)


def fits(layout: str, page: Any) -> bool:
    form = label_layout(layout)
    return form.width_mm <= page.width_mm and form.height_mm <= page.height_mm


@pytest.mark.parametrize("sheet", shipped("sheet"))
def test_a_test_sheet_has_one_wherever_there_is_paper(read, sheet: str) -> None:
    assert ("This line is" in read(draw_test_sheet(sheet_layout(sheet))).text()) == (sheet != "roll")


@pytest.mark.parametrize(("height", "stands"), [(278.3, True), (278.5, False)])
def test_an_edge_that_is_too_narrow_by_a_grain_has_none(height: float, stands: bool) -> None:
    """To the edge of the paper 4.6 mm, ticks 1.2, room 0.3, marks to cut along 3.5: 9.6 of 297 - 9 - height."""
    page = replace(sheet_layout("a4-2"), rows=1, top_mm=9.0, height_mm=height, pitch_y_mm=height)
    canvas = new_canvas(BytesIO(), (595, 842), About("", "", ""))
    assert draw_ruler(canvas, page, cut_marks=True) == stands
