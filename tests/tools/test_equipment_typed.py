"""equipment at the command line."""

import json
from collections.abc import Callable
from typing import Any

import pytest

pytestmark = pytest.mark.usefixtures("frozen", "shop")
SCALE = ("equipment", "add", "scale", "bench scale", "--every", "30", "--against", "500 g", "--tolerance", "1 g")


def test_a_failed_check_names_the_batches_at_once_and_later(shop: Any, run: Callable[..., Any]) -> None:
    assert "added as 'bench-scale'" in run(*SCALE).stdout
    assert "never tried" in run("equipment", "list").stdout
    shown = run("equipment", "check", "bench", "503 g", "--on", "2026-05-10", "--note", "dropped").stdout
    assert shown.startswith("bench scale showed 503 g against 500 g; it may be off by 1 g: failed.")
    for words in ("ever, for want of a good check", shop.batch, "weighed line 1, 2, 3, 4", "--retired"):
        assert words in shown
    assert "Where their bars are, and whom to call: soapledger recall of --tool bench-scale" in shown
    assert shop.batch in run("equipment", "show", "bench").stdout
    (touched,) = json.loads(run("equipment", "show", "bench", "--json").stdout)["touched"]
    assert [one["code"] for one in touched["batches"]] == [shop.batch]


def test_a_cold_thermometer_can_be_typed(run: Callable[..., Any]) -> None:
    run("equipment", "add", "thermometer", "dial", "--against", "0 C", "--tolerance", "0.5 C")
    assert (
        "−0.3 °C against 0.0 °C; it may be off by 0.5 °C: passed." in run("equipment", "check", "dial", "-0.3 C").stdout
    )


def test_what_is_due_is_listed_first_and_a_retired_one_last(run: Callable[..., Any]) -> None:
    run(*SCALE)
    run("equipment", "add", "ph", "meter", "--against", "7.00", "--tolerance", "0.05")
    run("equipment", "check", "bench", "500 g", "--on", "2026-05-02")  # due on 1 Jun, which is today
    listed = run("equipment", "list").stdout.splitlines()
    assert listed[0] == "2 items, 2 to be tried."
    run("equipment", "check", "bench", "500.2 g")
    assert [one["code"] for one in json.loads(run("equipment", "list", "--json").stdout)] == ["meter", "bench-scale"]
    run("equipment", "edit", "meter", "--retired")
    assert [one["code"] for one in json.loads(run("equipment", "list", "--json").stdout)] == ["bench-scale", "meter"]
    assert "retired" in run("equipment", "list").stdout


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("add", "sieve", "fine"), "not a kind of equipment"),
        (("add", "scale", "x", "--against", "500"), "unit"),
        (("add", "scale", "x", "--every", "9999"), "ten years"),
        (("check", "bench", "500 g"), "No scale, thermometer or pH meter is called"),
    ],
)
def test_what_cannot_be_is_said_in_one_line(run: Callable[..., Any], words: tuple[str, ...], message: str) -> None:
    said = run("equipment", *words, code=2).stderr
    assert message in said
    assert len(said.splitlines()) == 1
