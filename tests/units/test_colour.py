"""Colours as they are written, and how far they stand out; the ratios are those that WCAG's own texts work out."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.errors import BadInput
from ledger.units.colour import BLACK, TEXT_CONTRAST, WHITE, contrast, ink_on, read_colour


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        (BLACK, WHITE, 21.0),  # (1 + 0.05) / (0 + 0.05)
        (WHITE, WHITE, 1.0),
        ("#777777", WHITE, 4.48),  # known as the grey that just fails 4.5
        ("#767676", WHITE, 4.54),  # and its neighbour that passes
        ("#ff0000", WHITE, 4.00),  # 1.05 / (0.2126 + 0.05)
    ],
)
def test_two_colours_stand_out_by_the_formula(one: str, other: str, ratio: float) -> None:
    assert contrast(one, other) == pytest.approx(ratio, abs=0.005)
    assert contrast(other, one) == contrast(one, other)


@given(st.integers(0, 0xFFFFFF))
def test_black_or_white_is_read_on_any_colour(number: int) -> None:
    colour = f"#{number:06x}"
    assert contrast(ink_on(colour), colour) >= TEXT_CONTRAST


def test_words_on_a_pale_colour_are_black_and_on_a_dark_one_white() -> None:
    assert (ink_on("#f4eec0"), ink_on("#5b6f4e"), ink_on(WHITE), ink_on(BLACK)) == (BLACK, WHITE, BLACK, WHITE)


def test_a_colour_is_six_figures_or_three() -> None:
    assert [read_colour(text) for text in ("#5B6F4E", "5b6f4e", " #abc ")] == ["#5b6f4e", "#5b6f4e", "#aabbcc"]


@pytest.mark.parametrize("text", ["green", "#12345", "#1234567", "#12345g", ""])
def test_what_is_no_colour_is_told_how_to_write_one(text: str) -> None:
    with pytest.raises(BadInput, match="is not a colour; write red, green and blue in six figures"):
        read_colour(text)
