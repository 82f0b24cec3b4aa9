"""Weights, figures, prices and numbers against values that the law, a standard or a reckoning by hand gives."""

from fractions import Fraction

import pytest

from ledger.domain.label.handbook_133 import maximum_allowable_variation
from ledger.domain.label.net_quantity import Net, dual, read_net
from ledger.domain.label.packers import Few, average_system, tolerable_negative_error
from ledger.domain.label.panel import panel_area_cm2
from ledger.domain.label.unit_price import per_kilogram, round_ni
from ledger.markets import market
from ledger.units.gs1 import check_digit


# Directive 76/211/EEC, annex I (read): the ends of its rows.
@pytest.mark.parametrize(
    ("nominal_g", "error_mg"), [(50, 4_500), (100, 4_500), (200, 9_000), (300, 9_000), (500, 15_000)]
)
def test_tolerable_errors_of_the_table(nominal_g: int, error_mg: int) -> None:
    assert tolerable_negative_error(nominal_g * 1000) == error_mg


# Percentages rounded up to the next 0.1 g (read): 4.5 % of 110 g are 4.95 g, 5.0 g; by hand, 9 % of 45 g are 4.05 g,
# and 4.5 % of 113, 120, 125 and 150 g are 5.085, 5.4, 5.625 and 6.75 g. 85 g lies in the row of 4.5 g.
@pytest.mark.parametrize(
    ("nominal_g", "error_mg"),
    [(110, 5_000), (45, 4_100), (85, 4_500), (113, 5_100), (120, 5_400), (125, 5_700), (150, 6_800)],
)
def test_tolerable_errors_rounded_up(nominal_g: int, error_mg: int) -> None:
    assert tolerable_negative_error(nominal_g * 1000) == error_mg


# 110 g: 110 - 5.0 = 105.0 g and 110 - 10.0 = 100.0 g; by the same rounding.
def test_the_limits_of_a_bar_of_110_g() -> None:
    _, few, none = average_system(110_000, [110_000], few=Few(25_000, "Great Britain", "SI 2006/659", "read")).rules
    assert "below 105 g" in few.clause
    assert "below 100 g" in none.clause


# 16 CFR 500.8, 500.9 and 500.19(b) (2015 edition, read) give each of these pairs.
@pytest.mark.parametrize(
    ("quantity", "unit", "figures", "said"),
    [
        ("15", "oz", 3, "Net Wt 15 oz (425 g)"),
        ("12", "oz", 3, "Net Wt 12 oz (340 g)"),
        ("1.5", "lb", 3, "Net Wt 1.5 lb (680 g)"),
        ("2.5", "oz", 3, "Net Wt 2.5 oz (70.8 g)"),
        ("2", "oz", 2, "Net Wt 2 oz (56 g)"),
        ("1", "lb", 3, "Net Wt 1 lb (453 g)"),
    ],
)
def test_us_weights_of_the_regulation(quantity: str, unit: str, figures: int, said: str) -> None:
    assert dual(read_net(f"{quantity} {unit}"), figures=figures) == said  # type: ignore[arg-type]


# By hand, at 28.3495 g to the ounce: 99.223, 113.398 and 127.573 g; 110 / 28.3495 = 3.8801.
def test_us_weights_cut_off() -> None:
    assert dual(read_net("3.5 oz"), figures=2) == "Net Wt 3.5 oz (99 g)"
    assert dual(read_net("4 oz")) == "Net Wt 4 oz (113 g)"
    assert dual(read_net("4.5 oz")) == "Net Wt 4.5 oz (127 g)"
    assert dual(Net(110_000)) == "Net Wt 3.88 oz (110 g)"


# NIST Handbook 133 (read for this weight).
def test_the_variation_allowed_for_113_g() -> None:
    assert maximum_allowable_variation(113_000).mg == 7_200


# 16 CFR 500.6-500.21 (2015 edition, read): bands of 5, 25 and 100 square inches; 1 in = 25.4 mm exactly.
@pytest.mark.parametrize(
    ("height_um", "width_um", "mm"),
    [
        (2 * 25_400, 63_500, 25.4 / 16),  # 2 x 2.5 in are 5 square inches: 1/16 in
        (2 * 25_400, 3 * 25_400, 25.4 / 8),  # 6: 1/8 in
        (5 * 25_400, 5 * 25_400, 25.4 / 8),  # 25: 1/8 in
        (129_540, 5 * 25_400, 25.4 * 3 / 16),  # 5.1 x 5 in are 25.5: 3/16 in
    ],
)
def test_heights_by_the_area_of_the_panel(height_um: int, width_um: int, mm: float) -> None:
    area = panel_area_cm2("rectangle", height_um=height_um, across_um=width_um)
    assert market("us-soap").figure_height(0, area) == pytest.approx(mm)


# Directive 76/211/EEC, annex I, and SI 2006/659 (read).
@pytest.mark.parametrize("code", ["eu", "gb"])
@pytest.mark.parametrize(("grams", "mm"), [(50, 2), (51, 3), (200, 3), (201, 4), (1000, 4), (1001, 6)])
def test_heights_by_the_nominal_weight(code: str, grams: int, mm: int) -> None:
    assert market(code).figure_height(grams * 1000) == mm


# GS1's own worked examples (read).
@pytest.mark.parametrize(("digits", "check"), [("629104150021", "3"), ("890400021003", "7"), ("730001100001", "7")])
def test_check_digits_of_gs1(digits: str, check: str) -> None:
    assert check_digit(digits) == check


# By hand: 6.50 / 0.110 = 59.0909 and 4.95 / 0.085 = 58.2353.
def test_prices_of_a_kilogram() -> None:
    assert per_kilogram(650, 110_000) == 5909
    assert per_kilogram(495, 85_000) == 5824


# SR 2004/368, article 13 (read): below one pound to the nearest 0.1p, half up.
def test_tenths_of_a_penny_in_northern_ireland() -> None:
    assert round_ni(Fraction("12.345")) == Fraction("12.3")
    assert round_ni(Fraction("12.35")) == Fraction("12.4")
