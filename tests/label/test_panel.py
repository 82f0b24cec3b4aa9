"""The height of the figures on a US label hangs on the area of its front."""

from fractions import Fraction

import pytest

from ledger.domain.label.panel import panel_area_cm2, read_front
from ledger.errors import BadInput
from ledger.markets import market


def test_the_front_of_a_box_is_its_height_by_its_width() -> None:
    assert panel_area_cm2("rectangle", height_um=80_000, across_um=55_000) == 44  # 8 cm x 5.5 cm


def test_of_a_round_bar_or_tin_two_fifths_of_the_side_count() -> None:
    assert panel_area_cm2("cylinder", height_um=30_000, across_um=200_000) == 24  # 0.4 x 3 cm x 20 cm


def test_of_any_other_shape_two_fifths_of_the_surface_count() -> None:
    assert panel_area_cm2("other", surface_cm2=Fraction("120.5")) == Fraction("48.2")


@pytest.mark.parametrize(
    ("shape", "missing"),
    [("rectangle", "height and width"), ("cylinder", "height and circumference"), ("other", "whole surface")],
)
def test_a_missing_measure_is_asked_for(shape: str, missing: str) -> None:
    with pytest.raises(BadInput, match=missing):
        panel_area_cm2(shape, height_um=30_000)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("typed", "cm2"),
    [
        ("55 x 80 mm", 44), ("5.5 cm × 80 mm", 44), ("cylinder 3 x 20 cm", 24), ("surface 120.5 cm2", "48.2"),
        ("surface 100 sq in", "258.064"), ("2 x 2.5 in", "32.258"),
    ],
)  # fmt: skip
def test_a_side_is_read_as_it_is_typed(typed: str, cm2: int | str) -> None:
    """100 square inches are 645.16 cm², two fifths of them 258.064."""
    assert read_front(typed).cm2 == Fraction(cm2)


def test_of_a_round_or_oval_pack_the_whole_top_counts() -> None:
    """Pi times 3 cm squared, and pi times 2.5 by 3.5 cm."""
    assert float(read_front("round 60 mm").cm2) == pytest.approx(28.2743, abs=1e-4)
    assert float(read_front("oval 50 x 70 mm").cm2) == pytest.approx(27.4889, abs=1e-4)


@pytest.mark.parametrize("typed", ["", "55 mm", "55 x 80", "1 x 2 x 3 mm", "surface 12 mm", "round", "square 3 in"])
def test_what_is_no_side_says_how_one_is_written(typed: str) -> None:
    with pytest.raises(BadInput, match=r"write|Write"):
        read_front(typed)


# 5, 25, 100 and 400 square inches of 6.4516 cm² are 32.258, 161.29, 645.16 and 2580.64 cm².
@pytest.mark.parametrize(
    ("cm2", "mm"),
    [
        ("32.258", 1.5875), ("32.259", 3.175), ("161.29", 3.175), ("161.3", 4.7625), ("645.16", 4.7625),
        ("645.17", 6.35), ("2580.64", 6.35), ("2580.65", 12.7),
    ],
)  # fmt: skip
def test_each_band_has_its_height(cm2: str, mm: float) -> None:
    assert market("us-soap").figure_height(0, Fraction(cm2)) == mm


# Consumer Packaging and Labelling Regulations, sec 14(2): 32, 258, 645 and 2580 cm².
@pytest.mark.parametrize(
    ("cm2", "mm"),
    [("32", 1.6), ("32.1", 3.2), ("258", 3.2), ("258.1", 6.4), ("645", 6.4), ("645.1", 9.5), ("2580", 9.5),
     ("2581", 12.7)],
)  # fmt: skip
def test_canada_has_heights_of_its_own(cm2: str, mm: float) -> None:
    assert market("ca").figure_height(100_000, Fraction(cm2)) == mm
    assert market("ca").figure_height(100_000) is None  # while the panel is not known
