"""Nudges, cut marks, clear space and the test sheet, measured on the page."""

from dataclasses import replace

import pytest

from ledger.documents.kit.layout import label_layout, sheet_layout
from ledger.documents.kit.places import check_nudge
from ledger.documents.label.labels import draw_labels, draw_test_sheet
from ledger.errors import BadInput

DOTS = 4 * 72 / 25.4


def draw(view, layout: str, sheet: str, *, marked: bool = True, **more) -> bytes:
    page = sheet_layout(sheet)
    page = replace(page, cut_marks=page.cut_marks and marked)
    return draw_labels(view, label_layout(layout), page, **{"count": 1, **more})


def test_a_nudge_moves_all_that_is_printed_right_and_down(label, read) -> None:
    still = read(draw(label, "small", "a4-24", count=25)).glyphs
    moved = read(draw(label, "small", "a4-24", count=25, nudge_mm=(1.5, -0.7))).glyphs
    for page in (0, 1):
        for one, other in zip(still(page), moved(page), strict=True):
            assert other.left - one.left == pytest.approx(1.5, abs=0.01)
            assert other.top - one.top == pytest.approx(-0.7, abs=0.01)


@pytest.mark.parametrize("nudge", [(5.1, 0), (0, -5.1), (float("nan"), 0)])
def test_a_nudge_beyond_5_mm_is_refused(label, nudge) -> None:
    with pytest.raises(BadInput, match="is more than 5 mm"):
        draw(label, "small", "a4-24", nudge_mm=nudge)


@pytest.mark.parametrize("nudge", [(5.0, -5.0), (-5.0, 5.0)])
def test_a_nudge_of_5_mm_is_taken(nudge) -> None:
    assert check_nudge(nudge) == nudge


def inked(read, data: bytes, box_mm: tuple[float, float, float, float]) -> bool:
    picture = read(data).image(scale=4).convert("L").crop([round(side * DOTS) for side in box_mm])
    return picture.getextrema()[0] < 200


def test_cut_marks_are_as_the_sheet_says_unless_it_is_overridden(label, read) -> None:
    """Pairs on A4 begin 9 mm from the left and 18.5 mm from the top; the cut between the two is at 46 mm."""
    corner, cut = (8.0, 14.0, 10.0, 17.4), (54.0, 14.0, 56.0, 17.4)
    for box in (corner, cut):
        assert inked(read, draw(label, "box", "a4-8"), box)
        assert not inked(read, draw(label, "box", "a4-8", marked=False), box)


def test_folds_of_the_wrap_are_marked_at_the_head_and_at_the_side(label, read) -> None:
    """The wrap begins 20 mm from the left and 38.5 mm from the top; it folds at 55 mm and at 15 mm."""
    data = draw(label, "wrap", "a4-2")
    assert inked(read, data, (74.0, 34.0, 76.0, 37.4))
    assert inked(read, data, (15.5, 52.5, 18.9, 54.5))


def test_clear_space_round_a_net_quantity_in_two_lines(label, read) -> None:
    """16 CFR 500.18, from memory: the height of the letters above and below; twice the width of an N at the sides."""
    layout = label_layout("box")
    tight = replace(
        layout,
        panels=tuple(
            replace(
                p, y_mm=16, height_mm=44, fields=("product", "net_quantity", "function"), foot_fields=(), bare_mm=None
            )
            if p.name == "what"
            else p
            for p in layout.panels
            if p.name in ("what", "back")
        ),
    )
    view = replace(label, net_quantity="Net Wt 3.52 oz (100 g)", figure_height_mm=3.1)
    glyphs = read(draw_labels(view, tight, sheet_layout("a4-8"), count=1)).glyphs()
    front = [one for one in glyphs if one.left < 9 + 46]
    joined = "".join(one.sign for one in front)
    at, end = joined.index("NetWt"), joined.index("Soap")
    net, before, after = front[at:end], front[:at], front[end:]
    high = net[0].bottom - net[0].top  # the N
    assert min(one.top for one in net) - max(one.bottom for one in before) >= high - 0.05
    assert min(one.top for one in after) - max(one.bottom for one in net) >= high - 0.05
    back = min(one.left for one in glyphs if one.left > 9 + 46)
    assert back - max(one.right for one in net) >= 2 * (net[0].right - net[0].left)


@pytest.mark.parametrize("sheet", ["a4-24", "letter-8", "a4-2", "roll"])
def test_the_test_sheet_numbers_every_place_and_prints_the_nudge(read, sheet: str) -> None:
    page = sheet_layout(sheet)
    drawn = read(draw_test_sheet(page, nudge_mm=(0.5, -1)))
    said = drawn.text()
    assert said.count("nudged 0.5 mm right, 1 mm up") == page.places
    assert page.file in said
    numbers = said.split()
    assert all(str(number) in numbers for number in range(1, page.places + 1))


def test_a_test_sheet_without_a_nudge_says_so(read) -> None:
    assert read(draw_test_sheet(sheet_layout("letter-5"))).text().count("not nudged") == 5


def test_the_outlines_of_the_test_sheet_lie_where_the_labels_do(read) -> None:
    """Pairs on A4: the first place from 9 to 105 mm and from 18.5 to 83.5 mm; nudged by 2 and 1 mm."""
    data = draw_test_sheet(sheet_layout("a4-8"), nudge_mm=(2, 1))
    for x0, y0, x1, y1 in ((10.8, 40, 11.2, 41), (106.8, 40, 107.2, 41), (50, 19.3, 51, 19.7), (50, 84.3, 51, 84.7)):
        assert inked(read, data, (x0, y0, x1, y1))
    with pytest.raises(BadInput, match="more than 5 mm"):
        draw_test_sheet(sheet_layout("a4-8"), nudge_mm=(6, 0))
