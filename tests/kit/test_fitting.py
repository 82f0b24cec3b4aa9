"""Breaking lines and shrinking type."""

import io

import pytest
from hypothesis import given
from hypothesis import strategies as st
from reportlab.pdfgen.canvas import Canvas

from ledger.documents.kit.fitting import Room, Wanted
from ledger.documents.kit.fonts import BOLD, REGULAR, register, width
from ledger.documents.kit.lines import break_lines
from ledger.documents.label.flowing import fit

register()
NAMES = st.lists(st.sampled_from(["AQUA", "COCOS NUCIFERA OIL", "MEL", "CERA ALBA", "KAOLIN"]), min_size=1, max_size=20)


@given(NAMES, st.floats(60, 300))
def test_a_name_that_fits_a_line_is_never_torn_and_no_line_is_too_wide(names: list[str], wide: float) -> None:
    lines = break_lines(", ".join(names), REGULAR, 8, wide)
    assert lines is not None
    assert " ".join(lines) == ", ".join(names)
    assert all(width(line, REGULAR, 8) <= wide for line in lines)
    if wide > width("COCOS NUCIFERA OIL,", REGULAR, 8):
        assert all(line.rstrip(",").split(", ")[0] in names for line in lines)


def test_a_word_too_wide_has_no_lines() -> None:
    assert break_lines("BUTYROSPERMUM", REGULAR, 8, 20) is None


def test_panels_shrink_together_so_that_the_small_type_has_one_size() -> None:
    long = Wanted("ingredients", "AQUA, MEL, KAOLIN, " * 12, REGULAR, 9, 6)
    short = Wanted("best_before", "April 2028", REGULAR, 9, 6)
    filled = fit((Room("a", 120, 60, (long,), ()), Room("b", 120, 60, (), (short,))), gap=3, remedies=dict)
    assert len({line.size for lines in filled for line in lines.lines}) == 1


def test_what_stands_on_the_foot_ends_at_the_foot() -> None:
    short = Wanted("best_before", "April 2028", REGULAR, 10, 6)
    (lines,) = fit((Room("b", 120, 60, (), (short,)),), gap=3, remedies=dict)
    # one line of 10 points takes 11.6; its base line is 9.2 below its top: 60 - 11.6 + 9.2 = 57.6
    assert lines.lines[0].base == pytest.approx(57.6)


def test_type_shrinks_before_a_name_of_a_list_is_torn() -> None:
    """At 9 points the name is wider than the panel, at 7 it is not."""
    wide = width("CALENDULA OFFICINALIS FLOWER", REGULAR, 7)
    listed = Wanted("ingredients", "AQUA, CALENDULA OFFICINALIS FLOWER", REGULAR, 9, 6, names=True)
    (filled,) = fit((Room("a", wide, 60, (listed,), ()),), gap=3, remedies=dict)
    assert [line.text for line in filled.lines] == ["AQUA,", "CALENDULA OFFICINALIS FLOWER"]
    assert 6 <= filled.lines[0].size <= 7


def test_a_name_wider_than_the_panel_at_the_smallest_type_is_torn_at_a_space() -> None:
    wide = width("CALENDULA OFFICINALIS", REGULAR, 6.5)
    listed = Wanted("ingredients", "AQUA, CALENDULA OFFICINALIS FLOWER", REGULAR, 9, 6, names=True)
    (filled,) = fit((Room("a", wide, 60, (listed,), ()),), gap=3, remedies=dict)
    assert " ".join(line.text for line in filled.lines) == listed.text
    assert not any("-" in line.text for line in filled.lines)


@pytest.mark.parametrize(
    ("above", "below"), [("Ålesundşğ", "Ůnětice"), ("Ģirts Șç", "ÅŘŽŐ"), ("gjpqy", "Soap"), ("Żółć ąę", "Śniegórź")]
)
def test_no_accent_reaches_into_the_line_above(read, above: str, below: str) -> None:
    out = io.BytesIO()
    canvas = Canvas(out, pagesize=(400, 200))
    text = Wanted("product", f"{above} {below}", BOLD, 40, 40)
    (filled,) = fit(
        (Room("a", width(max(above, below, key=len), BOLD, 40) + 40, 200, (text,), ()),), gap=3, remedies=dict
    )
    for line in filled.lines:
        canvas.setFont(line.face, line.size)
        canvas.drawString(10, 200 - line.base, line.text)
    canvas.save()
    glyphs = read(out.getvalue()).glyphs()
    first, second = glyphs[: len(above.replace(" ", ""))], glyphs[len(above.replace(" ", "")) :]
    assert len(filled.lines) == 2
    assert min(one.top for one in glyphs) >= 0
    assert max(one.bottom for one in first) <= min(one.top for one in second)
