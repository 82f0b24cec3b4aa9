"""A lower limit beside an upper, a cook in two stages, and a trace in words; figures by hand."""

import json
from typing import Any

import pytest
from making import planned
from shop import PLAIN_BAR, Shop

from ledger.domain.recipe.figures import figures_text, recipe_from
from ledger.domain.recipe.reader import read_recipe
from ledger.domain.tools.bounds import Limits
from ledger.domain.tools.limits import Read, limit_of, outside
from ledger.errors import BadInput
from ledger.operations.bench.readings import read_reading
from ledger.operations.recipe.recipes import add_recipe

HOT = PLAIN_BAR.replace('"cold"', '"hot"').replace("plain-bar", "warm").replace("Plain Bar", "Warm")


def limits(line: str, text: str = HOT) -> Limits:
    return read_recipe(f"{text}\n[limits]\n{line}\n", file="w.toml").limits


def found(of: Limits, units: str = "metric", **figures: list[int]) -> list[str]:
    read = Read(figures={what.replace("_", " "): values for what, values in figures.items()})
    return [one.found.replace("\u00a0", " ") for one in outside(of, read, units)]


@pytest.mark.parametrize("what", ["lye temperature", "fragrance temperature"])
@pytest.mark.parametrize(
    ("milli_c", "off"),
    [(40_000, ""), (39_900, "39.9 °C, 0.1 °C under 40.0 °C"), (55_000, ""), (55_100, "55.1 °C, 0.1 °C over 55.0 °C")],
)
def test_a_temperature_lies_between_two(what: str, milli_c: int, off: str) -> None:
    key = what.replace(" ", "_")
    of = limits(f'{key} = ["40 C", "55 C"]')
    assert found(of, **{key: [milli_c]}) == ([f"{what} {off}"] if off else [])
    assert (limit_of(of, what, "metric") or "").replace("\u00a0", " ").endswith("40.0 °C to 55.0 °C")


@pytest.mark.parametrize("key", ["lye_temperature", "fragrance_temperature"])
def test_an_upper_one_alone_is_as_it_was(key: str) -> None:
    of = limits(f'{key} = "55 C"')
    what = key.replace("_", " ")
    assert found(of, **{key: [1_000]}) == []
    assert found(of, **{key: [55_001]}) == [f"{what} 55.0 °C, 0.0 °C over 55.0 °C"]
    assert (limit_of(of, what, "metric") or "").replace("\u00a0", " ").endswith("at most 55.0 °C")


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ('lye_temperature = ["55 C", "40 C"]', "lye_temperature runs from the lower to the higher"),
        ('lye_temperature = ["40 C"]', "lye_temperature is a range, from and to"),
        ("fragrance_temperature = [40, 55]", "fragrance_temperature is a word, in quotes"),
        ('fragrance_temperature = ["40", "55 C"]', "40 degrees of which kind?"),
    ],
)
def test_what_is_no_range_is_said(line: str, says: str) -> None:
    with pytest.raises(BadInput) as caught:
        limits(line)
    assert says in str(caught.value)
    assert str(caught.value).startswith("w.toml, line ")


def test_the_lower_ones_are_kept() -> None:
    recipe = read_recipe(f'{HOT}\n[limits]\nlye_temperature = ["40 C", "55 C"]\n', file="w.toml")
    again = recipe_from(figures_text(recipe), name=recipe.name, code=recipe.code, process=recipe.process)
    assert again.limits == recipe.limits
    assert (again.limits.lye_least_milli_c, again.limits.lye_milli_c) == (40_000, 55_000)


def cooked(read: Read) -> list[str]:
    return [one.found for one in outside(Limits(cook_minutes=(60, 120)), read, "metric")]


FIRST = {"cook start": "10:00", "cook end": "10:40"}


@pytest.mark.parametrize(
    ("start", "end", "said"),
    [
        ("11:00", "11:20", []),  # 40 and 20 are 60
        ("11:00", "11:19", ["cooked 59 min, 1 min under 60 min"]),
        ("23:30", "00:50", []),  # 40 and 80 are 120
        ("23:30", "00:51", ["cooked 121 min, 1 min over 120 min"]),
    ],
)
def test_two_stages_of_a_cook_count_together(start: str, end: str, said: list[str]) -> None:
    assert cooked(Read(clocks={**FIRST, "second cook start": start, "second cook end": end})) == said


def test_while_the_second_stage_is_to_come_the_cook_is_not_judged() -> None:
    assert cooked(Read(clocks=FIRST)) == ["cooked 40 min, 20 min under 60 min"]
    assert cooked(Read(clocks=FIRST, second_cook=True)) == []
    assert cooked(Read(clocks={**FIRST, "second cook start": "11:00"})) == []


def test_a_recipe_with_a_second_stage_waits_for_it(shop: Shop, run: Any) -> None:
    stages = "".join(
        f'[[step]]\ntext = "Second stage, {way}"\nwhen = "in the cook"\nreading = "second cook {way}"\n'
        for way in ("start", "end")
    )
    add_recipe(shop.book, f"{HOT}\n[limits]\ncook_minutes = [60, 120]\n{stages}", file="w.toml")
    code = planned(shop.book, "warm")
    run("batch", "log", code, "--reading", "cook start=10:00", "--reading", "cook end=10:40")
    deviations = lambda: json.loads(run("batch", "show", code, "--json").stdout)["deviations"]  # noqa: E731
    assert deviations() == []
    run("batch", "log", code, "--reading", "second cook start=11:00", "--reading", "second cook end=11:10")
    assert [one["found"] for one in deviations()] == ["cooked 50 min, 10 min under 60 min"]


@pytest.mark.parametrize("word", ["light", "Medium", "THICK"])
def test_a_trace_is_light_medium_or_thick(word: str) -> None:
    assert read_reading(f"trace thickness={word}").text == word.casefold()


def test_any_other_trace_is_asked_again() -> None:
    with pytest.raises(BadInput, match="'thin' is not a trace thickness; write light or medium or thick"):
        read_reading("trace thickness=thin")
    assert read_reading("trace thickness=-").text == "not read"


def test_the_temperature_when_moulded_is_a_temperature() -> None:
    assert read_reading("moulding temperature=104 F").value == 40_000  # (104 - 32) x 5 / 9
    with pytest.raises(BadInput, match="cannot be"):
        read_reading("moulding temperature=400 C")
