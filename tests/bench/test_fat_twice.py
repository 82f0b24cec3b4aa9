"""One fat at two times, part in the base and part held back: one tub and one lot, two lines of the worksheet."""

import json
from pathlib import Path
from typing import Any

import pytest
from making import MADE, cut, lines_of, lots_of, planned, weighed
from shop import PLAIN_BAR, Shop

from ledger.domain.recipe.reader import read_recipe
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.recipe.recipes import add_recipe
from ledger.rows.batch import find_batch, portions_of
from ledger.views.lye.lye_check import alkali_wanted, lye_check
from ledger.views.record.record import batch_record


def twice(process: str, when: str, in_demand: str, *, base: int = 50, late: int = 10) -> str:
    """The plain bar with its olive oil in two parts, in percent."""
    text = PLAIN_BAR.replace("plain-bar", "twice").replace("Plain Bar", "Twice").replace('"cold"', f'"{process}"')
    text = text.replace("percent = 60", f"percent = {base}")
    part = f'[[fat]]\nmaterial = "olive oil"\npercent = {late}\nwhen = "{when}"\nin_demand = {in_demand}\n'
    return text.replace("[mould]", f"{part}\n[mould]")


def code_id(shop: Shop, code: str) -> int:
    return find_batch(shop.rows(), code).id


def flat(text: str) -> str:
    return " ".join(text.replace("\u00a0", " ").split())


@pytest.mark.parametrize(
    ("process", "when", "in_demand", "late", "soda"),
    [
        # 600 x 0.190 + 400 x 0.257 = 216.8 g KOH, x 0.95 x 39.997/56.106 (0.71288755) = 146.826 g of NaOH
        ("cold", "at trace", "true", 10, 146_826),
        ("hot", "at trace", "true", 10, 146_826),
        ("hot", "after the cook", "true", 2, 146_826),
        # 500 x 0.190 + 400 x 0.257 = 197.8, x 0.95 x 0.71288755 = 133.959 g
        ("cold", "at trace", "false", 10, 133_959),
        ("hot", "after the cook", "false", 10, 133_959),
    ],
)
def test_two_lines_of_one_lot_and_the_lye_for_those_it_is_reckoned_for(
    shop: Shop, process: str, when: str, in_demand: str, late: int, soda: int
) -> None:
    add_recipe(shop.book, twice(process, when, in_demand, base=60 - late, late=late), file="t.toml")
    code = planned(shop.book, "twice")
    assert [one for one in lots_of(shop.book, code) if one[0] != "water"] == [
        ("olive oil", shop.olive, 600_000 - 10_000 * late),
        ("coconut oil", shop.coconut, 400_000),
        ("sodium hydroxide", shop.lye, soda),
        ("olive oil", shop.olive, 10_000 * late),
    ]
    # once the base is weighed, the lye asked for is that of the plan
    fats = {one.number: [Weighed(one.target)] for one in lines_of(shop.book, code) if one.stage == "in the fats"}
    weigh(shop.book, code, fats, on=MADE, by="Nuala")
    rows = shop.rows()
    assert [one.wanted_mg for one in alkali_wanted(rows, find_batch(rows, code))] == [soda]


def test_the_superfat_of_the_bar_counts_both_and_that_of_the_pot_the_base(shop: Shop) -> None:
    add_recipe(shop.book, twice("hot", "after the cook", "false"), file="t.toml")
    code = weighed(shop.book, planned(shop.book, "twice"))
    found = lye_check(shop.rows(), find_batch(shop.rows(), code).id)
    assert found.before_addition is not None
    assert abs(found.before_addition.nominal_ppm - 50_000) <= 10
    # 197.8 x 0.95 = 187.91 of 216.8 g KOH: 13.3256 %
    assert abs((found.superfat_ppm or 0) - 133_256) <= 10
    assert found.fats_mg == 1_000_000


def test_it_is_declared_once_with_all_of_it(shop: Shop, run: Any) -> None:
    """More olive (350 + 250 g) than coconut (400 g), though the line in the base is less."""
    add_recipe(shop.book, twice("cold", "at trace", "true", base=35, late=25), file="t.toml")
    code = cut(shop.book, "twice")
    said = run("label", "check", code, "--market", "eu", "--json").stdout
    declared = json.loads(said)["label"]["ingredients"].upper()
    assert declared.startswith("OLEA EUROPAEA FRUIT OIL, ")
    assert declared.count("OLEA") == 1


def test_the_lot_gives_both_and_the_bars_cost_both(shop: Shop, run: Any) -> None:
    add_recipe(shop.book, twice("cold", "at trace", "true"), file="t.toml")
    code = cut(shop.book, "twice")
    # 5 kg came for 32.50, 600 g went into the first batch and 500 + 100 g into this one: 3.90
    held = json.loads(run("stock", "olive oil", "--json").stdout)
    assert [one["free"] for one in held] == [3_800_000]
    costed = json.loads(run("cost", code, "--json").stdout)
    olive = [one for one in costed["lines"] if one["lot_code"] == shop.olive]
    assert [(one["quantity"], one["cost_minor"]) for one in olive] == [(600_000, 390)]
    record = json.loads(run("batch", "show", code, "--json").stdout)
    # the figure of the lot stands once under the lye
    figures = batch_record(shop.rows(), code, program="test").lye.figures
    assert [one[1] for one in figures] == ["olive oil", "coconut oil", "sodium hydroxide"]
    assert [one["used"] for one in record["materials"] if one["material"] == "olive oil"] == [500_000, 100_000]


def test_divided_into_portions_the_dough_holds_both(shop: Shop) -> None:
    halves = "".join(f'[[portion]]\nname = "{name}"\npercent = 50\nbars = 5\n' for name in ("one", "two"))
    text = twice("cold", "at trace", "true").replace("bars = 10\n", "").replace("[mould]", f"{halves}[mould]")
    add_recipe(shop.book, text, file="t.toml")
    code = planned(shop.book, "twice")
    # 500 + 400 + 100 g of fats, 146.826 g of NaOH and twice that of water: 1440.478 g, half of it 720.239 g
    doughs = [lines_of(shop.book, one.code)[0].target for one in portions_of(shop.rows(), code_id(shop, code))]
    assert doughs == [720_239, 720_239]


def test_scaled_to_the_stock_of_it_both_parts_count(shop: Shop, run: Any) -> None:
    """5 kg came and 600 g are gone; 4400 g are 60 % of 7333.333 g of fats."""
    add_recipe(shop.book, twice("cold", "at trace", "true"), file="t.toml")
    said = flat(run("recipe", "scale", "twice", "--stock", "olive oil").stdout)
    assert "--fats '7333.333 g'" in said


@pytest.mark.parametrize("when", ["", 'when = "at trace"\nin_demand = true\n'])
@pytest.mark.usefixtures("shop")
def test_at_one_time_it_is_written_once(run: Any, when: str) -> None:
    part = '[[fat]]\nmaterial = "{}"\npercent = 5\n' + when
    text = PLAIN_BAR.replace("plain-bar", "other").replace("percent = 60", "percent = 50")
    text = text.replace("[mould]", f"{part.format('olive oil')}\n{part.format('olive oil')}\n[mould]")
    error = add(run, text)
    assert "olive oil stands here a second time; write one [[fat]] for it, or another when for this part." in error


@pytest.mark.usefixtures("shop")
def test_at_one_time_it_is_written_once_in_whatever_words(run: Any) -> None:
    part = '[[fat]]\nmaterial = "olive"\npercent = 10\n'
    text = PLAIN_BAR.replace("plain-bar", "other").replace("percent = 60", "percent = 50")
    error = add(run, text.replace("[mould]", f"{part}\n[mould]"))
    assert "r.toml: olive oil stands twice under [[fat]], as 'olive oil' and 'olive'; write one [[fat]] for it" in error
    Path("p.toml").write_text(
        text.replace('"other"', '"plain-bar"').replace("[mould]", f"{part}\n[mould]"), encoding="utf-8"
    )
    assert "stands twice" in flat(run("recipe", "revise", "plain-bar", "p.toml", code=2).stderr)


def add(run: Any, text: str) -> str:
    """What is said to a file that is refused; one line."""
    Path("r.toml").write_text(text, encoding="utf-8")
    error = str(run("recipe", "add", "r.toml", code=2).stderr)
    assert error.count("\n") <= 2
    return flat(error)


def test_the_parts_still_come_to_all_of_the_fats() -> None:
    recipe = read_recipe(twice("hot", "after the cook", "true", base=59, late=1), file="t.toml")
    assert [(one.material, one.stage, one.share_ppm) for one in recipe.of_role("fat")] == [
        ("olive oil", "in the fats", 590_000),
        ("coconut oil", "in the fats", 400_000),
        ("olive oil", "after the cook", 10_000),
    ]


def test_more_of_the_fats_says_which_part_goes_in_later(shop: Shop, run: Any) -> None:
    add_recipe(shop.book, twice("hot", "after the cook", "false"), file="t.toml")
    code = planned(shop.book, "twice")
    soda = next(line.number for line in lines_of(shop.book, code) if line.role == "alkali")
    said = flat(run("batch", "correct", code, f"{soda}=147.355 g").stdout)
    # a tenth more lye than 133.959 g: a tenth more of each fat, 50 + 40 g into the pot and 10 g after the cook
    assert "Add 50 g of olive oil, 40 g of coconut oil, 10 g of olive oil after the cook;" in said
