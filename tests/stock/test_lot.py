"""lot at the command line: show, decide, count, waste, combine."""

import json
from datetime import date
from typing import Any

import pytest

from ledger.operations.bench.plan import PlanRequest, plan_batch
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, receive

pytestmark = pytest.mark.usefixtures("frozen")


def plain(text: str) -> str:
    """What stands there, its unbreakable spaces as any other."""
    return text.replace("\xa0", " ")


def test_show_answers_in_the_first_line_and_tells_the_rest(full: Any, run: Any) -> None:
    plan_batch(full.book, PlanRequest("plain-bar", date(2026, 6, 1)))
    shown = plain(run("lot", "show", full.olive).stdout)
    assert shown.startswith(f"olive oil, lot {full.olive}: 4 400 g on hand, accepted.\n")
    for text in ("Tarnlow Oils, their number 4471/2", "D-118", "end Aug 2027", "32.50 EUR", "coa-4471.txt (CoA)"):
        assert text in shown
    assert "set aside for  batch 26-002" in shown
    assert f"consumed    −600 g  workshop  {full.batch}" in shown


def test_show_as_json(shop: Any, run: Any) -> None:
    card = json.loads(run("lot", "show", shop.olive, "--json").stdout)
    assert (card["lot"]["on_hand"], card["lot"]["best_before"]) == (4_400_000, "2027-08-31")
    assert [one["what"] for one in card["movements"]] == ["received", "consumed"]


def test_accept_hold_and_reject_say_what_the_lot_is_now(shop: Any, run: Any) -> None:
    assert run("lot", "accept", shop.olive).stdout == "That lot is accepted already; nothing to do.\n"
    held = run("--as", "Orla", "lot", "hold", shop.olive, shop.coconut, "--reason", "smells").stdout
    assert plain(held).splitlines()[0] == f"Lot {shop.olive} (olive oil, 4 400 g on hand) is on hold."
    assert "say why" in run("lot", "accept", shop.olive, code=2).stderr
    run("lot", "reject", shop.olive, "--reason", "rancid")
    shown = run("lot", "show", shop.olive).stdout
    assert "rejected." in shown.splitlines()[0]
    assert "Orla" in shown


def test_a_count_says_what_is_missing_or_more(shop: Any, run: Any) -> None:
    missing = run("lot", "count", shop.olive, "4382.5 g").stdout
    assert plain(missing) == f"Lot {shop.olive}: 17.5 g missing, now booked as counted.\n"
    assert "is as the ledger says" in run("lot", "count", shop.olive, "4382.5 g").stdout
    assert "2 more than expected" in run("lot", "count", shop.batch, "12").stdout


@pytest.mark.parametrize("found", ["4400", "4400 gs", "twelve", "-3 g", "1 dl"])
def test_a_count_that_cannot_be_read_is_bad_input(shop: Any, run: Any, found: str) -> None:
    run("lot", "count", shop.olive, "--", found, code=2)


def test_waste_says_what_is_left_and_refuses_more_than_there_is(shop: Any, run: Any) -> None:
    done = plain(run("lot", "waste", shop.olive, "400 g", "--reason", "spilt").stdout)
    assert done == f"400 g of lot {shop.olive} is booked as waste: spilt. 4 000 g is left in all.\n"
    error = plain(run("lot", "waste", shop.olive, "5 kg", "--reason", "spilt", code=1).stderr)
    assert "holds 4 000 g in the workshop, and 5 000 g was asked for; nothing was written." in error


def test_pouring_together_asks_and_warns_of_a_batch_that_counts_on_a_lot(shop: Any, run: Any) -> None:
    line = DeliveryLine("olive oil", 2_000_000, "4598/1", 1300)
    note = DeliveryNote("tarnlow", date(2026, 5, 20), (line,), accepted_by="Nuala")
    (topping,) = (one.code for one in receive(shop.book, note))
    plan_batch(shop.book, PlanRequest("plain-bar", date(2026, 6, 1)))
    words = ("lot", "combine", shop.olive, topping, "--into", "drum 2")
    stopped = run(*words, input="n\n", code=1)
    assert f"Lot {shop.olive} is set aside for batch 26-002" in stopped.stderr
    done = plain(run(*words, "--yes").stdout)
    # the sixth lot: 6 x 2 = 12, 12 mod 11 = 1, 12 - 1 = 11, 11 mod 11 = 0
    assert done == "2 lots poured together: lot L6-0, olive oil, 6 400 g. Write the new code on the drum.\n"
    assert "drum 2" in run("lot", "show", "L6-0").stdout


def test_codes_that_are_none_are_named(shop: Any, run: Any) -> None:
    assert "not a lot code" in run("lot", "show", "olive", code=2).stderr
    assert f"it would be {shop.olive}" in run("lot", "show", shop.olive[:-1] + "5", code=1).stderr


@pytest.mark.parametrize(
    ("found", "asked"),
    # 4400 g are there; a tenth to each side of a thousandth of it: 3.96 to 4.84 g
    [("4.4 g", True), ("3.96 g", True), ("3.95 g", False), ("4.84 g", True), ("4.85 g", False), ("4400 kg", True)],
)
def test_a_count_a_thousand_times_off_is_asked_about(shop: Any, run: Any, found: str, asked: bool) -> None:
    done = run("lot", "count", shop.olive, found, input="n\n", code=1 if asked else 0)
    assert (f"Lot {shop.olive} should hold" in done.stderr) is asked
    if asked:
        assert "a thousand times" in done.stderr
        assert "booked as counted" in run("lot", "count", shop.olive, found, "--yes").stdout
