"""recall bar: a batch code read from a bar is a question, and answered for that batch and what was made from it."""

import csv
import json
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pypdf
import pytest
from making import cut, deliver, lines_of, planned, weighed
from shop import PLAIN_BAR

from ledger.operations.bench.cut import cut_batch
from ledger.operations.bench.portions import divide_batch
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.release.release import reject_bars
from ledger.operations.release.rework import rework_bars
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.batch import find_batch, portions_of
from ledger.rows.lot import find_lot

pytestmark = pytest.mark.usefixtures("frozen")
TWICE_ROUND = """
name = "Twice Round"
code = "twice-round"
process = "rebatch"
[[rework]]
material = "offcuts"
grams = 90
[water]
material = "water"
grams = 10
[mould]
bars = 1
"""
TWO_TONES = """
[[portion]]
name = "pale"
percent = 50
bars = 5
[[portion]]
name = "dark"
percent = 50
bars = 5
"""


def answer(run: Callable[..., Any], *words: str) -> Any:
    return json.loads(run("recall", *words, "--json").stdout)


def test_the_answer_is_that_batch_alone_and_not_what_shares_its_lots(shop: Any, run: Callable[..., Any]) -> None:
    """A second batch of ten bars comes of the same drums; only the ten of the code that was read are asked for."""
    cut(shop.book)
    shown = run("recall", "bar", shop.batch).stdout
    assert " ".join(shown.split("\n\n")[0].split()) == (
        f"Plain Bar, batch {shop.batch}: 1 batch, 10 bars. 10 here, 0 at a stall, 0 retained, 0 returned, 0 sold, "
        "0 dispatched, 0 given away, 0 thrown away, 0 unexplained."
    )
    answered, look_next = shown.split("Look at next")
    assert "26-002" not in answered
    # both batches are of the same four lots, each in two batches of bars; the oils come first by their number
    assert f"26-002-2  Plain Bar  {shop.olive}  " in look_next
    assert f"To take one in: soapledger recall of --bar {shop.batch} --bar 26-002-2" in look_next
    assert f"Hold 10 bars now? soapledger recall bar {shop.batch} --hold" in look_next
    found = answer(run, "bar", shop.batch)
    assert ([one["batch_code"] for one in found["batches"]], found["lots"]) == ([shop.batch], [])
    assert answer(run, "lot", "4471/2")["totals"]["made"] == 20


def test_what_was_made_from_it_belongs_to_the_answer(shop: Any, run: Callable[..., Any]) -> None:
    """Ten bars on hold are booked in by weight, 90 g of them become one new bar: 10 reworked + 1 here = 11 made."""
    first = cut(shop.book)
    reject_bars(shop.book, first, on=date(2026, 5, 20), by="Nuala", reason="orange spots")
    lot = rework_bars(shop.book, first, 90_000, on=date(2026, 5, 21), by="Nuala").lot
    run("lot", "accept", lot, "--reason", "sound")
    add_recipe(shop.book, TWICE_ROUND, file="second.toml")
    second = weighed(shop.book, planned(shop.book, "twice-round", on=date(2026, 6, 1)), on=date(2026, 6, 1))
    cut_batch(shop.book, second, bars=1, on=date(2026, 6, 1), by="Nuala", bars_mg=95_000)
    shown = run("recall", "bar", first).stdout
    assert f"Plain Bar, batch {first}, and what was made of it: 2 batches, 11 bars. 1 here" in shown.splitlines()[0]
    by_code = {one["batch_code"]: one for one in answer(run, "bar", first)["batches"]}
    reworked = next(code for code in by_code if code not in (first, second))
    way = [by_code[second][key] for key in ("first", "last", "after", "steps")]
    assert way == [first, lot, reworked, 3]  # the bars have the code of their batch
    assert by_code[first]["used"] is None
    totals = answer(run, "bar", first)["totals"]
    assert (totals["made"], totals["reworked"], totals["on_hand"], totals["unexplained"]) == (11, 10, 1, 0)
    assert "1 batch, 1 bar." in run("recall", "bar", second).stdout.splitlines()[0]


@pytest.fixture
def two_tones(shop: Any) -> tuple[str, str, str]:
    """A dough divided in two, five bars cut of each: the codes of the whole and of its portions."""
    recipe = PLAIN_BAR.replace("plain-bar", "tide").replace("Plain Bar", "Tide")
    add_recipe(shop.book, recipe + TWO_TONES, file="tide.toml")
    on = date(2026, 5, 6)
    whole = planned(shop.book, "tide", on=on)
    dough = {line.number: [Weighed(line.target)] for line in lines_of(shop.book, whole)}
    weigh(shop.book, whole, dough, on=on, by="Nuala")
    parts = [child.code for child in portions_of(shop.rows(), find_batch(shop.rows(), whole).id)]
    divide_batch(shop.book, whole, {}, on=on, by="Nuala")
    for part in parts:
        weighed(shop.book, part, on=on)
        cut_batch(shop.book, part, bars=5, on=date(2026, 5, 7), by="Nuala", bars_mg=600_000)
    return whole, parts[0], parts[1]


def test_a_bar_of_a_portion_asks_for_its_portion_and_names_the_others_of_the_dough(
    two_tones: tuple[str, str, str], run: Callable[..., Any]
) -> None:
    whole, pale, dark = two_tones
    shown = run("recall", "bar", pale).stdout
    assert shown.startswith(f"Tide, pale, batch {pale}: 1 batch, 5 bars.")
    doubts = shown.split("Cannot be excluded:")[1]
    assert f"batch {dark}, Tide, dark: cut from the same dough as {pale}" in doubts
    assert f"soapledger recall bar {whole}" in doubts
    of_all = answer(run, "bar", whole)
    assert of_all["totals"]["made"] == 10
    assert {one["batch_code"] for one in of_all["batches"] if one["yields_bars"]} == {pale, dark}
    assert of_all["cannot_exclude"] == []


def test_several_codes_are_one_answer(shop: Any, run: Callable[..., Any]) -> None:
    other = cut(shop.book)
    assert answer(run, "bar", shop.batch, other)["totals"]["made"] == 20
    shown = run("recall", "bar", shop.batch, other).stdout
    assert shown.startswith(f"Plain Bar, batches {shop.batch} and {other}: 2 batches, 20 bars.")


def test_a_code_typed_after_recall_lot_is_answered_too(shop: Any, run: Callable[..., Any]) -> None:
    typed = shop.batch.replace("-", "")
    assert run("recall", "lot", typed).stdout == run("recall", "bar", shop.batch).stdout
    assert "No lot with the number" in run("recall", "lot", typed, "--supplier", "tarnlow", code=2).stderr


def test_a_supplier_s_number_that_is_also_a_code_of_ours_stays_a_lot_and_the_bars_are_named(
    shop: Any, run: Callable[..., Any]
) -> None:
    deliver(shop.book, DeliveryLine("olive oil", 1_000_000, shop.batch.replace("-", ""), 900))
    shown = " ".join(run("recall", "lot", shop.batch).stdout.split())
    assert ": 0 batches, 0 bars. " in shown
    assert f"is the code of a batch of ours too; for its bars: soapledger recall bar {shop.batch}" in shown


def test_a_slip_is_caught_and_the_codes_near_it_are_offered(shop: Any, run: Callable[..., Any]) -> None:
    """26-001-4 is the worked batch. Another check character, a wrong digit, two neighbours swapped."""
    assert shop.batch == "26-001-4"
    said = run("recall", "bar", "26-001-5", code=1).stderr
    assert "its last character does not fit" in said
    assert "Near it here: 26-001-4." in said
    assert "Near it here: 26-001-4." in run("recall", "bar", "26-801-4", code=1).stderr
    assert "Near it here: 26-001-4." in run("recall", "bar", "26-010-4", code=1).stderr
    assert "26-001-4" in run("recall", "lot", "26-001-5", code=2).stderr
    assert "Near it here: 26-001-4." in run("trace", "26-010-4", code=1).stderr
    assert "is not a batch code" in run("recall", "bar", "green soap", code=2).stderr
    for words in (("26-001-5",), ("26-010-4",), ("green soap",)):
        assert len(run("recall", "bar", *words, code=2 if " " in words[0] else 1).stderr.splitlines()) == 1


def test_a_batch_that_is_not_cut_yet_is_one_clear_line(shop: Any, run: Callable[..., Any]) -> None:
    code = weighed(shop.book, planned(shop.book))
    said = run("recall", "bar", code, code=1).stderr
    assert said == f"Batch {code} (Plain Bar) is poured; no bars were cut of it, so nobody has any.\n"


def test_hold_stops_that_batch_alone(shop: Any, run: Callable[..., Any]) -> None:
    other = cut(shop.book)
    shown = run("recall", "bar", shop.batch, "--hold", "--reason", "lye pockets").stdout
    assert "Everything of it that is here is on hold." in shown
    rows = shop.rows()
    assert find_lot(rows, shop.batch).status == "on hold"
    assert find_lot(rows, other).status == "curing"
    assert find_lot(rows, shop.olive).status == "accepted"
    again = run("recall", "bar", shop.batch).stdout
    assert "All of it that is here is on hold already." in again
    assert "--hold" not in again


@pytest.mark.usefixtures("shop")
def test_the_report_and_the_contacts_are_written(run: Callable[..., Any]) -> None:
    run("customer", "add", "Tern Hall", "--shop", "--phone", "020 910 0177")
    run("dispatch", "tern-hall", "26-001-4=3", "--on", "2026-05-12")
    run("recall", "bar", "26-001-4", "--exercise", "-o", "bar.pdf", "--csv", "bar.csv")
    first = pypdf.PdfReader("bar.pdf").pages[0].extract_text()
    for words in ("26-001-4", "Plain Bar", "EXERCISE", "020 910 0177"):
        assert words in first
    with Path("bar.csv").open(encoding="utf-8", newline="") as file:
        assert [(line["name"], line["bars"]) for line in csv.DictReader(file)] == [("Tern Hall", "3")]


def test_what_is_rejected_is_not_called_on_hold(shop: Any, run: Callable[..., Any]) -> None:
    """The ten bars are rejected; nothing of the batch is left to be stopped, whether it is asked or told."""
    run("reject", shop.batch, "--reason", "orange spots")
    assert "All of it that is here is rejected already." in run("recall", "bar", shop.batch).stdout
    assert "All of it that is here is rejected already." in run("recall", "bar", shop.batch, "--hold").stdout
    run("recall", "lot", "4471/2", "--hold")
    shown = run("recall", "lot", "4471/2").stdout  # the oil on hold, the bars rejected
    assert "All of it that is here is on hold or rejected already." in shown
