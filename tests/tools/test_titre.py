"""Free alkali from a titre, by the standard's formula and a published worked example; and how a pH was measured."""

from datetime import date
from typing import Any

import pytest
from freezegun import freeze_time
from making import cut
from shop import PLAIN_BAR, Shop

from ledger.domain.tools.bar_checks import Check, read_check
from ledger.domain.tools.titre import Measured, free_alkali, measured
from ledger.errors import BadInput
from ledger.operations.bench.readings import log_readings, read_reading
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.release.release_checks import open_checks
from ledger.rows.batch import find_batch


def test_a_published_worked_example() -> None:
    """Simmons and Appleton, The Handbook of Soap Manufacture, 1908: 5.100 g of soap took 8.50 mL of N/10 acid.

    They find 0.0264 g Na2O, 0.52 %; as NaOH, 0.0264 x 79.994 / 61.979 = 0.0341 g of 5.100 g is 0.667 %.
    """
    assert free_alkali("8.50 mL of 0.1 N HCl on 5.100 g").ppm == pytest.approx(6_670, abs=5)


@pytest.mark.parametrize(
    ("typed", "ppm"),
    [
        ("2.1 mL of 0.1 N HCl on 5 g", 1_680),  # ISO 456: 2.1 x 0.1 x 4.000 / 5 = 0.168 %
        ("2.1 ml of 0.1 M hcl on 5 g in ethanol", 1_680),
        ("2.1 mL of 0.05 M H2SO4 on 5 g", 1_680),  # two each
        ("2.1 mL of 0.1 N H2SO4 on 5 g", 1_680),
        ("0.0625 mL of 0.1 N HCl on 5 g", 50),
        ("0 mL of 0.1 N HCl on 5 g", 0),
        ("0.05 %", 500), ("0.05", 500), ("0.05 %; by the laboratory", 500),
    ],
)  # fmt: skip
def test_a_titre_becomes_percent_as_naoh(typed: str, ppm: int) -> None:
    assert free_alkali(typed).ppm == ppm


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("2.1 mL of 0.1 N HCl on 5 g in water", "says nothing of free alkali"),
        ("2.1 mL of 0.1 N HCl on 0 g", "How much soap"),
        ("2.1 mL of HCl on 5 g", "is no titre"),
        ("2.1 mL of 0.1 N citric on 5 g", "is no titre"),
        ("2000 mL of 10 N HCl on 5 g", "more alkali than soap"),
        ("some", "free alkali"),
    ],
)
def test_what_is_no_titre(typed: str, says: str) -> None:
    with pytest.raises(BadInput, match=says):
        free_alkali(typed)


@pytest.mark.parametrize(
    ("method", "found"),
    [
        ("1 % in water, meter set at 7 and 10", Measured("meter", 10_000)),
        ("strips", Measured("strip", None)),
        ("pH paper on the wet bar", Measured("strip", None)),
        ("meter, 0.5 %", Measured("meter", 5_000)),
        (None, Measured(None, None)),
        ("method not stated", Measured(None, None)),
    ],
)
def test_how_a_ph_was_measured(method: str | None, found: Measured) -> None:
    assert measured(method) == found


@pytest.mark.parametrize(
    ("typed", "found", "good"),
    [
        ("9.0; meter", "9.0; meter", True), ("8.9; meter", "8.9; meter; under 9.0", False),
        ("10.5", "10.5", True), ("10.6", "10.6; over 10.5", False),
    ],
)  # fmt: skip
def test_a_ph_has_a_low_limit_too(typed: str, found: str, good: bool) -> None:
    assert read_check("pH", typed, ph=(9_000, 10_500)) == Check("pH", found, good)


@freeze_time("2026-06-10 09:00:00")
@pytest.mark.parametrize(
    ("reading", "deviation"),
    [
        ("pH=9.2", None), ("pH=9.1; meter, 1 % in water", "pH 9.1, 0.1 under 9.2"), ("pH=10.5", None),
        ("pH=10.6", "pH 10.6, 0.1 over 10.5"), ("free alkali=0.05 %", None),
        ("free alkali=2.1 mL of 0.1 N HCl on 5 g",
         "free alkali 0.168 % as NaOH, 0.118 % as NaOH over 0.050 % as NaOH"),
    ],
)  # fmt: skip
def test_what_lies_outside_opens_a_deviation(shop: Shop, run: Any, reading: str, deviation: str | None) -> None:
    add_recipe(shop.book, PLAIN_BAR.replace("plain-bar", "narrow") + "\n[limits]\npH = [9.2, 10.5]\n", file="n")
    code = cut(shop.book, "narrow")
    run("batch", "log", code, "--reading", reading)
    found = shop.rows().execute("SELECT found FROM deviation").fetchall()
    assert [row[0] for row in found] == ([deviation] if deviation else [])


def test_a_titre_of_usable_bars_answers_the_checklist(shop: Shop) -> None:
    checks = '\n[release]\nchecks = ["free alkali", "look"]\n'
    add_recipe(shop.book, PLAIN_BAR.replace("plain-bar", "titred") + checks, file="t")
    code = cut(shop.book, "titred")
    for on, left in ((date(2026, 6, 2), ["free alkali", "look"]), (date(2026, 6, 3), ["look"])):
        log_readings(shop.book, code, [read_reading("free alkali=0.3 mL of 0.1 N HCl on 5 g")], on=on)
        with shop.book.look() as rows:
            assert open_checks(rows, find_batch(rows, code)) == left
