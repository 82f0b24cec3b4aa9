"""What lies outside a recipe's limits, by figures worked by hand."""

import pytest

from ledger.domain.recipe.reader import read_recipe
from ledger.domain.tools.bounds import Limits
from ledger.domain.tools.limits import LineRead, Read, cook_length, limit_of, outside
from ledger.errors import BadInput
from ledger.units.quantity import parse_temperature


def words(limits: Limits, read: Read, units: str = "metric") -> dict[str, str]:
    return {one.subject: one.found.replace("\u00a0", " ") for one in outside(limits, read, units)}


# The usual limits are round in the ledger's own unit: 10 °F apart is 5.5556 °C, 175 °F is 79.4444 °C.
@pytest.mark.parametrize(
    ("units", "lye", "fats", "found"),
    [
        ("metric", "49 C", "44 C", None),
        ("metric", "44 C", "49 C", None),
        ("metric", "49.1 C", "44 C", "lye 49.1 °C, fats 44.0 °C: 5.1 °C apart, limit 5.0 °C"),
        ("us", "120 F", "110 F", None),
        ("us", "119 F", "109 F", None),
        ("us", "121 F", "110 F", "lye 121.0 °F, fats 110.0 °F: 11 °F apart, limit 10 °F"),
        ("us", "109 F", "120 F", "lye 109.0 °F, fats 120.0 °F: 11 °F apart, limit 10 °F"),
    ],
)
def test_lye_and_fats_may_be_five_celsius_or_ten_fahrenheit_apart(
    units: str, lye: str, fats: str, found: str | None
) -> None:
    figures = {"lye temperature": [parse_temperature(lye)], "fats temperature": [parse_temperature(fats)]}
    assert words(Limits(), Read(figures=figures), units).get("lye and fats apart") == found


@pytest.mark.parametrize(
    ("units", "typed", "found"),
    [
        ("metric", "80 C", None),
        ("metric", "80.1 C", "fragrance temperature 80.1 °C, 0.1 °C over 80.0 °C"),
        ("us", "175 F", None),
        ("us", "176 F", "fragrance temperature 176.0 °F, 1 °F over 175.0 °F"),
    ],
)
def test_the_fragrance_goes_in_at_eighty_celsius_or_175_fahrenheit(units: str, typed: str, found: str | None) -> None:
    read = Read(figures={"fragrance temperature": [parse_temperature(typed)]})
    assert words(Limits(), read, units).get("fragrance temperature") == found


def test_the_usual_limits_are_said_in_the_unit_of_the_ledger() -> None:
    said = {
        units: [
            (limit_of(Limits(), f"{what} temperature", units) or "").replace("\u00a0", " ")
            for what in ("fats", "fragrance")
        ]
        for units in ("metric", "us")
    }
    assert said == {
        "metric": ["within 5.0 °C of each other", "at most 80.0 °C"],
        "us": ["within 10 °F of each other", "at most 175.0 °F"],
    }


def test_what_a_recipe_writes_itself_holds_in_either_unit() -> None:
    text = RECIPE + 'lye_fats_apart = "10 F"\nfragrance_temperature = "82 C"\n'
    limits = read_recipe(text, file="bar.toml").limits
    for units in ("metric", "us"):
        for apart, fragrance, said in (
            (5_556, 82_000, set()),
            (5_557, 82_001, {"lye and fats apart", "fragrance temperature"}),
        ):
            read = Read(
                figures={
                    "lye temperature": [50_000 + apart],
                    "fats temperature": [50_000],
                    "fragrance temperature": [fragrance],
                }
            )
            assert set(words(limits, read, units)) == said


def test_a_difference_in_fahrenheit_has_no_offset() -> None:
    # 20 °C apart is 36 °F apart, not 68
    over = Read(figures={"lye temperature": [60_000], "fats temperature": [40_000]})
    assert words(Limits(), over, "us") == {
        "lye and fats apart": "lye 140.0 °F, fats 104.0 °F: 36 °F apart, limit 10 °F"
    }


def test_the_last_reading_counts() -> None:
    read = Read(figures={"fragrance temperature": [91_000, 80_000]})
    assert words(Limits(), read) == {}
    assert words(Limits(), Read(figures={"fragrance temperature": [91_000]})) == {
        "fragrance temperature": "fragrance temperature 91.0 °C, 11.0 °C over 80.0 °C"
    }


@pytest.mark.parametrize(
    ("start", "end", "minutes"), [("10:00", "11:30", 90), ("23:30", "00:15", 45), ("09:05", "09:05", 0)]
)
def test_a_cook_may_run_over_midnight(start: str, end: str, minutes: int) -> None:
    assert cook_length(start, end) == minutes


def test_a_cook_too_short_says_by_how_much() -> None:
    limits = Limits(cook_minutes=(45, 120))
    assert words(limits, Read(clocks={"cook start": "10:00", "cook end": "10:40"})) == {
        "cook": "cooked 40 min, 5 min under 45 min"
    }
    assert words(limits, Read(clocks={"cook start": "10:00", "cook end": "10:45"})) == {}


def test_weights_outside_and_left_out() -> None:
    lines = (
        LineRead(1, "olive oil", 707_000, 693_000, 707_000, False),
        LineRead(2, "coconut oil", 245_000, 247_500, 252_500, False),
        LineRead(3, "oatmeal", 0, 19_000, 21_000, True),
    )
    found = words(Limits(), Read(lines=lines))
    assert found == {
        "line 2": "coconut oil 245 g, 2.5 g under (OK 247.5 g to 252.5 g)",
        "line 3": "oatmeal was left out (OK 19 g to 21 g)",
    }


def test_bars_at_the_cut_ph_and_loss() -> None:
    limits = Limits(bar_weight_mg=(95_000, 115_000), loss_ppm=80_000)
    read = Read(figures={"pH": [10_700]}, bars_mg=[95_000, 94_000], loss_ppm=81_000, loss_mg=116_000)
    assert words(limits, read) == {
        "bar weight": "bars of 94 g at the cut (limit 95 g to 115 g)",
        "pH": "pH 10.7, 0.2 over 10.5",
        "loss": "116 g (8.1 %) of what went in is not accounted for, limit 8.0 %",
    }
    assert limit_of(limits, "pH", "metric") == "at most 10.5 in 1 % solution"


RECIPE = """
name = "Bar"
code = "bar"
process = "hot"
superfat = 5
fats_total = "1000 g"
[alkali]
material = "lye"
kind = "NaOH"
[water]
material = "water"
per_alkali = 2
[[fat]]
material = "olive oil"
percent = 100
[limits]
"""


def test_a_recipe_writes_its_limits() -> None:
    text = RECIPE + (
        'lye_fats_apart = "9 F"\nlye_temperature = "140 F"\ncook_minutes = [45, 120]\nfragrance_temperature = "75 C"\n'
        'bar_weight = ["95 g", "115 g"]\npH = 10.2\nloss_percent = 8\n'
    )
    # 9 °F apart = 5 °C apart; 140 °F = 60 °C
    assert read_recipe(text, file="bar.toml").limits == Limits(
        5_000, 60_000, (45, 120), 75_000, (95_000, 115_000), 10_200, 80_000
    )
    assert read_recipe(RECIPE, file="bar.toml").limits == Limits(loss_ppm=150_000)


@pytest.mark.parametrize(
    ("line", "words_"),
    [
        ('lye_fats_apart = "5"', "difference with its unit"),
        ('lye_temperature = "60"', "line 17"),
        ("cook_minutes = 45", r"cook_minutes = \[45, 120\]"),
        ("cook_minutes = [120, 45]", "runs from the lower to the higher; write"),
        ('bar_weight = ["115 g", "95 g"]', "runs from the lower to the higher; write"),
        ("ph = 10", "did you mean pH"),
    ],
)
def test_a_limit_that_cannot_be_read_is_named(line: str, words_: str) -> None:
    with pytest.raises(BadInput, match=words_):
        read_recipe(RECIPE + line, file="bar.toml")
