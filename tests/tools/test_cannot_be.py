"""A weight with a unit a thousand times off, and a tick that says neither yes nor no, are refused, and not booked."""

from typing import Any

import pytest

from ledger.domain.tools.bar_checks import read_check
from ledger.errors import BadInput
from ledger.operations.bench.readings import read_reading


@pytest.mark.parametrize(
    ("typed", "value"),
    [
        ("poured weight=1433 g", 1_433_000),
        ("poured weight=200 kg", 200_000_000),
        ("bar weight=98.2 g", 98_200),
        ("bar weight=5 kg", 5_000_000),
        ("scale test=500 g", 500_000),
        ("scale test=0.01 g", 10),
    ],
)
def test_what_may_be_is_read(typed: str, value: int) -> None:
    assert read_reading(typed).value == value


@pytest.mark.parametrize(
    "typed",
    [
        "poured weight=1433 kg",
        "poured weight=200.001 kg",
        "bar weight=98.2 kg",
        "bar weight=5000.1 g",
        "scale test=500 kg",
    ],
)
def test_what_cannot_be_is_refused(typed: str) -> None:
    with pytest.raises(BadInput, match="cannot be; look at the number and the unit"):
        read_reading(typed)


@pytest.mark.parametrize(
    ("typed", "kept"), [("y", "yes"), ("YES", "yes"), ("n", "no"), ("n; the pot was wet", "no; the pot was wet")]
)
def test_a_tick_is_yes_or_no_with_a_note(typed: str, kept: str) -> None:
    assert read_reading(f"clean={typed}").text == kept


@pytest.mark.parametrize("typed", ["x", "500", "maybe", "; wet"])
def test_any_other_word_is_no_tick(typed: str) -> None:
    with pytest.raises(BadInput, match="neither yes nor no"):
        read_reading(f"clean={typed}")


@pytest.mark.parametrize(("typed", "good"), [("10 g", False), ("99.999 g", False), ("100 g", True), ("1 kg", True)])
def test_a_weight_at_a_release_is_that_of_a_bar(typed: str, good: bool) -> None:
    assert read_check("weight", typed, ph=(9_000, 10_500), net_mg=100_000).good is good


@pytest.mark.parametrize("typed", ["104 kg", "1000.001 g", "9.999 g", "104000 g"])
def test_a_weight_ten_times_off_is_asked_for_again(typed: str) -> None:
    with pytest.raises(BadInput, match="cannot be that of a bar of 100 g; look at the number and the unit"):
        read_check("weight", typed, ph=(9_000, 10_500), net_mg=100_000)


def test_nothing_is_booked_of_it(shop: Any, run: Any) -> None:
    before = shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0]
    for reading in ("bar weight=98.2 kg", "clean=maybe"):
        run("batch", "log", shop.batch, "--reading", reading, "--on", "2026-05-05", code=2)
    assert shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0] == before
