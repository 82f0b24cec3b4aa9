"""Breaking lines and shrinking type."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.documents.fitting import Room, Wanted, break_lines, fit
from ledger.documents.fonts import REGULAR, register, width

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
