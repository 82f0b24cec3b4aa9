"""Which numbered lines stand on which worksheet, from what was taken for each line; worked out by hand."""

from fractions import Fraction

import pytest
from shop import PLAIN_BAR

from ledger.domain.bench.worksheet import (
    Filled,
    SheetLine,
    Taken,
    bars_of_portions,
    lines_of_batch,
    sheets_of_portions,
)
from ledger.domain.recipe.reader import read_recipe
from ledger.domain.recipe.recipe import Portion, Recipe, RecipeLine
from ledger.units.scale import Scale

GRAM = 1_000
WHOLE = read_recipe(PLAIN_BAR, file="plain.toml")  # 1000 g of fats, 10 bars
PORTIONS = (Portion("plain", 600_000, None), Portion("slate", 400_000, None))
DIVIDED = WHOLE._replace(portions=PORTIONS)
OIL, CLAY = RecipeLine("fat", "oil", "in the fats"), RecipeLine("additive", "clay", "at trace", portion="slate")
BAND = RecipeLine("packaging", "band", "packing", per_bar=2)
FILLED: Filled = [
    (OIL, [Taken(1, "fat", 11, 600 * GRAM), Taken(1, "fat", 12, 400 * GRAM)]),
    (CLAY, [Taken(2, "additive", 21, 12 * GRAM)]),
    (BAND, [Taken(3, "packaging", 31, 20)]),
]


def test_a_line_filled_from_two_lots_is_two_lines_numbered_on() -> None:
    """OK to 1 % of a fat, 5 % of clay, and no band more or less."""
    assert lines_of_batch(
        WHOLE, [FILLED[0], (CLAY._replace(portion=None), FILLED[1][1]), FILLED[2]], scale=Scale(GRAM)
    ) == (
        SheetLine(1, "fat", 1, 11, 600 * GRAM, 594 * GRAM, 606 * GRAM, "in the fats"),
        SheetLine(2, "fat", 1, 12, 400 * GRAM, 396 * GRAM, 404 * GRAM, "in the fats"),
        SheetLine(3, "additive", 2, 21, 12 * GRAM, 11 * GRAM, 13 * GRAM, "at trace"),  # no closer than the scale
        SheetLine(4, "packaging", 3, 31, 20, 20, 20, "packing"),
    )


def test_what_goes_into_a_portion_alone_is_not_on_the_sheet_of_the_dough() -> None:
    assert [line.lot_id for line in lines_of_batch(DIVIDED, FILLED, scale=Scale(GRAM))] == [11, 12]


@pytest.mark.parametrize(
    ("line", "in_demand"),
    [
        (OIL, None),
        (OIL._replace(in_demand=False), 0),
        (CLAY._replace(portion=None), None),
        (CLAY._replace(portion=None, add_alkali=True), None),
        (CLAY._replace(portion=None, add_alkali=False), 0),
    ],
)
def test_a_line_says_where_the_lye_is_not_reckoned_for_it(line: RecipeLine, in_demand: int | None) -> None:
    (one,) = lines_of_batch(WHOLE, [(line, [Taken(1, "fat", 11, 100 * GRAM)])], scale=Scale(GRAM))
    assert one.in_demand == in_demand


def test_a_part_of_a_blend_goes_by_what_it_is() -> None:
    part = OIL._replace(role="part")
    lines = lines_of_batch(WHOLE, [(part, [Taken(1, "alkali", 11, 100 * GRAM)])], scale=Scale(GRAM))
    assert [(one.role, one.low, one.high) for one in lines] == [("alkali", 99 * GRAM, 101 * GRAM)]


def test_each_portion_takes_its_share_of_the_dough_its_own_and_its_wrapping() -> None:
    """1000 g of dough: 600 and 400; ten bars: six and four, of two bands each."""
    plain, slate = sheets_of_portions(DIVIDED, FILLED, 10, dough_id=9, scale=Scale(GRAM))
    assert (plain.bars, slate.bars) == (6, 4)
    assert plain.lines == (
        SheetLine(1, "dough", 9, None, 600 * GRAM, 570 * GRAM, 630 * GRAM, "at trace"),
        SheetLine(2, "packaging", 3, 31, 12, 12, 12, "packing"),
    )
    assert [(one.role, one.lot_id, one.target) for one in slate.lines] == [
        ("dough", None, 400 * GRAM),
        ("additive", 21, 12 * GRAM),
        ("packaging", 31, 8),
    ]


def test_no_portion_no_sheet_and_no_band_no_line() -> None:
    assert sheets_of_portions(WHOLE, FILLED, 10, dough_id=9, scale=Scale(GRAM)) == ()
    bare = sheets_of_portions(DIVIDED, [FILLED[0], (BAND, [])], 10, dough_id=9, scale=Scale(GRAM))
    assert [[line.role for line in one.lines] for one in bare] == [["dough"], ["dough"]]
    no_bars = sheets_of_portions(DIVIDED, FILLED, None, dough_id=9, scale=Scale(GRAM))
    assert [(one.bars, [line.role for line in one.lines]) for one in no_bars] == [
        (0, ["dough"]),
        (0, ["dough", "additive"]),
    ]


def written(*bars: int | None) -> Recipe:
    shares = (600_000, 300_000, 100_000)
    return WHOLE._replace(portions=tuple(Portion(f"p{n}", shares[n], one) for n, one in enumerate(bars)))


@pytest.mark.parametrize(
    ("recipe", "planned", "scale", "bars"),
    [
        (written(6, 3, 1), 10, Fraction(1), [6, 3, 1]),
        (written(6, 3, 1), 20, Fraction(2), [12, 6, 2]),
        (written(4, None, None), 12, Fraction(1), [4, 6, 2]),  # the rest of 8 by 3 to 1
        (written(4, None, None), 4, Fraction(1), [4, 0, 0]),
        (written(4, None, None), 3, Fraction(1), [4, 0, 0]),  # no fewer than none
        (written(4, None, None), None, Fraction(1, 2), [2, 0, 0]),
    ],
)
def test_bars_as_written_and_the_rest_by_the_dough(
    recipe: Recipe, planned: int | None, scale: Fraction, bars: list[int]
) -> None:
    assert bars_of_portions(recipe, planned, scale) == bars
