"""The law of each market at its limits: the day, the day before and the day after; a limit and a grain to each side."""

from datetime import date

import pytest

from ledger.domain.label.market import Rule
from ledger.markets import market, market_codes


@pytest.mark.parametrize(
    ("on", "holds"),
    [(date(2026, 3, 1), False), (date(2026, 3, 2), True), (date(2026, 3, 5), True), (date(2026, 3, 6), False)],
)
def test_a_rule_holds_on_its_first_and_its_last_day(on: date, holds: bool) -> None:
    rule = Rule("function", "", "made up", "read", since=date(2026, 3, 2), until=date(2026, 3, 5))
    assert rule.holds(on) is holds
    assert Rule("function", "", "made up", "read").holds(on)


def test_a_market_asks_for_a_particular_while_a_rule_on_it_holds() -> None:
    rule = Rule("colour", "", "made up", "read", since=date(2026, 3, 2), until=date(2026, 3, 5))
    law = market("us-soap")._replace(rules=(rule,))
    assert [law.asks("colour", date(2026, 3, day)) for day in (1, 2, 5, 6)] == [False, True, True, False]
    assert not law.asks("function", date(2026, 3, 2))


# Of 110 g the tolerable error is 4.95 g, rounded up to 5.0 g (Directive 76/211/EEC): 104.9 g is light, 100 g too light.
@pytest.mark.parametrize(
    ("country", "bars", "holds"),
    [("IE", 40, True), ("IE", 39, False), ("DE", 50, True), ("DE", 49, False), ("FR", 40, True), ("FR", 39, False)],
)
def test_how_many_light_bars_a_packer_may_have(country: str, bars: int, holds: bool) -> None:
    """One in so many: 2.5 %, in Germany 2 %."""
    (rules,) = market("eu").packers_rules(country)
    assert rules.judge(110_000, [104_900] + [112_000] * (bars - 1)).holds is holds


def test_a_packer_in_great_britain_may_choose_between_two_systems() -> None:
    """SI 2006/659: the mean holds at 110 g with a bar of 109.9 g, and no bar below it is the other way."""
    light, exact = [109_900, 110_100], [110_000, 110_000]
    judged = [[one.judge(110_000, bars).holds for one in market("gb").packers_rules("GB")] for bars in (light, exact)]
    assert judged == [[True, False], [True, True]]


@pytest.mark.parametrize("code", ["eu", "gb"])
def test_a_date_stands_up_to_thirty_months(code: str) -> None:
    """Regulation (EC) 1223/2009, Art 19(1)(c)."""
    assert market(code).dated_months == 30


@pytest.mark.parametrize(
    ("code", "on", "names"),
    [
        # Regulation (EU) 2023/1545: the first list up to 31 July 2026, the long one from 1 August
        ("eu", date(2026, 7, 30), "first"),
        ("eu", date(2026, 7, 31), "first"),
        ("eu", date(2026, 8, 1), "long"),
        ("eu", date(2026, 8, 2), "long"),
        # no instrument was found that adds the list of 2023 in Great Britain
        ("gb", date(2026, 7, 31), "first"),
        ("gb", date(2026, 8, 1), "first"),
        # Canada: declared from 12 April 2026
        ("ca", date(2026, 4, 11), None),
        ("ca", date(2026, 4, 12), "first"),
        ("ca", date(2026, 4, 13), "first"),
        ("us-soap", date(2026, 8, 1), None),
    ],
)
def test_which_list_of_allergens_holds_for_bars_first_supplied_on_a_day(code: str, on: date, names: str | None) -> None:
    found = market(code).allergen_list(on)
    assert (found.names if found else None) == names
    assert found is None or found.threshold_ppm == 100  # 0.01 % of a rinse-off product


def test_bars_in_a_shop_by_then_may_be_sold_on_for_two_years() -> None:
    (first, *_) = market("eu").allergens
    assert (first.until, first.sold_on_until) == (date(2026, 7, 31), date(2028, 7, 31))
    (only,) = market("gb").allergens
    assert (only.until, only.sold_on_until) == (None, None)


@pytest.mark.parametrize(
    ("net_mg", "mm"),
    [(49_999, 2), (50_000, 2), (50_001, 3), (200_000, 3), (200_001, 4), (1_000_000, 4), (1_000_001, 6)],
)
def test_the_figures_are_as_high_as_the_weight_asks(net_mg: int, mm: float) -> None:
    """Directive 76/211/EEC, annex I: up to 50 g 2 mm, up to 200 g 3 mm, up to 1000 g 4 mm, above 6 mm."""
    assert [market(code).figure_height(net_mg) for code in ("eu", "gb")] == [mm, mm]


def test_what_each_market_asks_for() -> None:
    """1 %: EU and GB (Art 19(1)(g)) from memory; 21 CFR 701.3(f) in the US and s. 21.4(2) in Canada (read)."""
    day = date(2026, 6, 1)
    asked = {
        code: (law.declares_ingredients, law.asks("assessment", day))
        for code in market_codes()
        for law in [market(code)]
    }
    assert asked["eu"] == asked["gb"] == (True, True)
    assert asked["us-soap"] == (False, False)
    assert [market(code).floats for code in ("eu", "gb")] == ["below 1 %"] * 2
    assert market("ca").floats == "not more than 1 %"
    assert market("us-cosmetic").floats == "not more than 1 %"
