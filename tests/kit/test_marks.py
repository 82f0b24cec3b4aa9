"""The marks: drawn within their boxes, at the height they are asked for."""

import io

import pytest
from reportlab.pdfgen.canvas import Canvas

from ledger.documents.kit import marks
from ledger.documents.kit.fonts import register

MM = 72 / 25.4
DRAWN = {
    "jar": (lambda c, x, y, h: marks.open_jar(c, x, y, h, 12), lambda h: marks.jar_wide(12, h)),
    "jar of 36 months": (lambda c, x, y, h: marks.open_jar(c, x, y, h, 36), lambda h: marks.jar_wide(36, h)),
    "hourglass": (marks.hourglass, lambda h: marks.HOURGLASS_WIDE * h),
    "hand with a book": (marks.hand_with_book, lambda h: marks.BOOK_WIDE * h),
}


@pytest.mark.parametrize("high_mm", [5, 7, 12])
@pytest.mark.parametrize("name", list(DRAWN))
def test_a_mark_fills_its_box_and_stays_in_it(read, name: str, high_mm: int) -> None:
    """5 mm is the least: what is drawn is as high as it says, less the width of a hair."""
    register()
    draw, wide_of = DRAWN[name]
    out, high = io.BytesIO(), high_mm * MM
    canvas = Canvas(out, pagesize=(wide_of(high) + 20, high + 20))
    draw(canvas, 10, 10, high)
    canvas.save()
    picture = read(out.getvalue()).image(scale=10).convert("L").point(lambda shade: 255 if shade < 128 else 0)
    left, top, right, foot = (dot / 10 for dot in picture.getbbox())
    assert left >= 9.9
    assert right <= 10 + wide_of(high) + 0.1
    assert top >= 9.9
    assert foot <= 10 + high + 0.1
    assert foot - top >= 0.97 * high
    assert right - left >= 0.9 * wide_of(high)


@pytest.mark.parametrize(("high_mm", "beside"), [(5, True), (8, False)])
def test_the_months_stand_in_the_jar_or_beside_it_but_never_smaller_than_1_6_mm(read, high_mm, beside) -> None:
    """An x-height of 1.2 mm goes with capitals of 1.2 * 698 / 516 = 1.62 mm in this face."""
    register()
    out, high = io.BytesIO(), high_mm * MM
    canvas = Canvas(out, pagesize=(100, 100))
    marks.open_jar(canvas, 0, 0, high, 12)
    canvas.save()
    glyphs = read(out.getvalue()).glyphs()
    assert "".join(one.sign for one in glyphs) == "12M"
    assert all(one.bottom - one.top >= 1.6 for one in glyphs)
    assert (glyphs[0].left > 0.9 * high_mm) is beside
