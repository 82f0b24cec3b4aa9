"""Grams with degrees Fahrenheit, or ounces with Celsius: the thermometer has a setting of its own."""

from pathlib import Path
from typing import Any

import pytest
from making import planned
from pypdf import PdfReader
from shop import Shop

from ledger.rows.opened import open_rows
from ledger.rows.settings import settings
from ledger.units.measures import typed_otherwise, with_degrees
from ledger.units.quantity import show_mass, show_temperature
from ledger.units.words import Units

START = ["init", "--business", "Tidewrack Soaps", "--country", "ie", "--currency", "eur", "--maker", "Nuala"]
START += ["--time-zone", "Europe/Dublin", "--market", "eu=Nuala; 3 Slip Lane", "--scale-step", "1 g"]


def units(folder: Path) -> Units:
    return settings(open_rows(folder / "soap.db")).units


@pytest.mark.parametrize(
    ("system", "typed", "mass", "degrees"),
    [
        ("metric", "F", "182.4 g", "120.0 °F"),
        ("metric", "°F", "182.4 g", "120.0 °F"),
        ("metric", "fahrenheit", "182.4 g", "120.0 °F"),
        ("metric", "C", "182.4 g", "48.9 °C"),  # (120 - 32) x 5/9 = 48.889
        ("metric", None, "182.4 g", "48.9 °C"),
        ("us", "C", "6.43 oz", "48.9 °C"),  # 182.4 / 28.349523 = 6.434
        ("us", "f", "6.43 oz", "120.0 °F"),
        ("us", None, "6.43 oz", "120.0 °F"),
    ],
)
def test_weights_and_degrees_are_set_apart(system: Units, typed: str | None, mass: str, degrees: str) -> None:
    both = with_degrees(system, typed)
    assert (show_mass(182_400, both), show_temperature(48_889, both)) == (mass, degrees)


def test_the_degrees_are_set_beside_the_units_and_stay_until_others_are_said(run: Any, tmp_path: Path) -> None:
    run(*START, "--units", "metric", "--temperature", "F")
    assert units(tmp_path) == "metric F"
    run("init", "--labour", "15")
    assert units(tmp_path) == "metric F"
    run("init", "--units", "us")
    assert units(tmp_path) == "us"
    run("init", "--temperature", "C")
    assert units(tmp_path) == "us C"
    run("init", "--units", "metric")
    assert units(tmp_path) == "metric"


def test_other_degrees_are_refused(run: Any, tmp_path: Path) -> None:
    run(*START, "--units", "metric")
    assert "'K' is not a scale of temperatures; write F or C." in run("init", "--temperature", "K", code=2).stderr
    assert "write metric or us" in run("init", "--units", "metric F", code=2).stderr
    assert units(tmp_path) == "metric"


@pytest.mark.parametrize(
    ("text", "ours", "other"),
    [
        ("120 F", "metric F", "metric"),
        ("49 °C", "metric", "metric F"),
        ("1 lb 2 oz", "us", "metric"),
        ("5 g", "metric", "us"),
    ],
)
def test_what_was_typed_is_kept_only_where_it_differs(text: str, ours: Units, other: Units) -> None:
    assert (typed_otherwise(text, ours), typed_otherwise(text, other)) == (False, True)


def test_everything_that_is_shown_is_in_her_degrees_and_the_record_keeps_what_was_typed(
    shop: Shop, run: Any, tmp_path: Path
) -> None:
    run("init", "--temperature", "F")
    code = planned(shop.book)
    run("batch", "show", code, "--worksheet", "-o", "w.pdf")
    sheet = " ".join(page.extract_text() for page in PdfReader(tmp_path / "w.pdf").pages)
    assert "within 10 °F of each other" in sheet  # the usual limit in round figures of her own degrees
    assert "°C" not in sheet
    run("batch", "log", code, "--as-planned", "--line", "4=146.8 g")
    run("batch", "log", code, "--reading", "lye temperature=120 F", "--reading", "fats temperature=43 C")
    shown = run("batch", "show", code).stdout
    assert "lye temperature   120.0 °F" in shown
    assert "109.4 °F (typed 43 C)" in shown  # 43 x 9/5 + 32
    # 120 F are 48.889 C, 5.889 from 43: 10.6 F, more than 10
    assert "lye 120.0 °F, fats 109.4 °F: 11 °F apart, limit 10 °F" in " ".join(shown.split())
