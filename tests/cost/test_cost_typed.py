"""cost, worth, rates and batch work as they are typed."""

import json
from datetime import date
from typing import Any

import pytest

from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.sell.dispatch import dispatch
from ledger.views.cost.cost import batch_cost

pytestmark = pytest.mark.usefixtures("frozen")


def said(result: Any) -> str:
    return " ".join(result.stdout.split())


def test_a_batch_and_a_recipe_that_tell_of_no_work_say_so(shop: Any, run: Any) -> None:
    # 600 of 5000 g at 32.50, 400 of 3000 g at 18.00, lye and water of 9.00 and 1.00 a kilogram and five
    done = run("cost", shop.batch)
    assert "none told" in done.stdout
    assert f"soapledger batch work {shop.batch} MINUTES --stage making" in said(done)


def test_work_by_stage_counts_and_what_was_read_does_not(shop: Any, run: Any) -> None:
    run("batch", "work", shop.batch, "45", "--stage", "making", "--on", "2026-04-01")
    done = run("batch", "work", shop.batch, "15", "--stage", "wrapping", "--on", "2026-05-04")
    assert said(done) == f"Work on batch {shop.batch}: 60 minutes (making 45, wrapping 15)."
    found = batch_cost(shop.rows(), shop.batch)
    assert (found.labour_minutes, found.labour_minor) == (60, 1500)
    assert "Your work as booked by stage: making 45 min, wrapping 15 min." in said(run("cost", shop.batch))
    recorded = run("batch", "show", shop.batch)
    assert "Work booked: making 45 min, wrapping 15 min; 60 min in all." in said(recorded)
    run("undo", str(shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0]), "--yes")
    assert batch_cost(shop.rows(), shop.batch).labour_minutes == 45


def test_minutes_read_at_the_bench_are_not_added(shop: Any, run: Any) -> None:
    run("batch", "log", shop.batch, "--reading", "labour=30 min", "--on", "2026-04-01")
    assert "Your work as read at the bench." in run("cost", shop.batch).stdout
    done = run("batch", "work", shop.batch, "45", "--on", "2026-04-01")
    assert "The 30 minutes read at the bench do not count beside it; book here whatever is not in it yet." in said(done)
    assert "the 30 min read at the bench do not count beside it" in said(run("cost", shop.batch))
    assert batch_cost(shop.rows(), shop.batch).labour_minor == 1125  # 45 minutes at 15.00


@pytest.mark.parametrize(
    ("words", "code", "error"),
    [
        (("45", "--stage", "stirring"), 2, "'stirring' is not a stage of the work; write making or cutting"),
        (("0",), 2, "How many minutes was it?"),
        (("an hour",), 2, "The number of minutes is a whole number"),
        (("1441",), 2, "more than a day has"),
        (("45", "--on", "2026-03-31"), 2, "was planned for 1 Apr 2026; look at --on"),
    ],
)
def test_work_that_cannot_be(shop: Any, run: Any, words: tuple[str, ...], code: int, error: str) -> None:
    assert error in " ".join(run("batch", "work", shop.batch, *words, code=code).stderr.split())


def test_a_rate_holds_from_its_day_and_says_which_batches_it_costs(shop: Any, run: Any) -> None:
    run("batch", "work", shop.batch, "60", "--on", "2026-04-01")
    assert "An hour: 15.00 EUR (soapledger init --labour)." in said(run("rates", "list"))
    done = run("rates", "set", "hour", "20", "--from", "2026-04-02")
    assert said(done) == "An hour of work costs 20.00 EUR from 2 Apr 2026 on. Before that it is 15.00 EUR."
    assert batch_cost(shop.rows(), shop.batch).labour_minor == 1500
    done = run("rates", "set", "hour", "18", "--from", "2026-04-01")
    assert "1 batch begun since then is costed by it; those before keep theirs." in said(done)
    assert batch_cost(shop.rows(), shop.batch).labour_minor == 1800
    run("rates", "set", "batch", "2.50", "--from", "2026-01-01")
    assert batch_cost(shop.rows(), shop.batch).overhead_minor == 250
    assert "the house" in run("cost", shop.batch).stdout
    listed = json.loads(run("rates", "list", "--json").stdout)
    assert [(one["kind"], one["on"], one["minor"]) for one in listed] == [
        ("batch", "2026-01-01", 250),
        ("hour", "2026-04-01", 1800),
        ("hour", "2026-04-02", 2000),
    ]


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize(
    ("words", "error"),
    [
        (("week", "20"), "'week' is not a rate; write hour or batch."),
        (("hour", "--", "-1"), "The rate cannot be below zero"),
        (("hour", "1.005"), "more decimals than EUR has"),
        (("hour", "20", "--from", "soon"), "soon"),
    ],
)
def test_a_rate_that_cannot_be(run: Any, words: tuple[str, ...], error: str) -> None:
    assert error in run("rates", "set", *words, code=2).stderr


@pytest.mark.usefixtures("shop")
def test_worth_adds_up_and_says_what_is_missing(run: Any) -> None:
    """32.50 + 18.00 + 9.00 + 1.00 were paid; the water's lot number is unknown, its cost is not."""
    found = json.loads(run("worth", "--json").stdout)
    assert (found["goods_minor"], found["differs_minor"], found["unknown"]) == (6050, 0, [])
    assert sum(found["goods"].values()) == 6050
    assert found["without_work"] == ["26-001-4"]
    shown = said(run("worth"))
    assert shown.startswith("By 1 Jun 2026 you had paid 60.50 EUR for goods; 60.50 EUR of it is still with you.")
    assert "Of 1 batch (26-001-4) no work was told" in shown
    assert all(len(line) <= 80 for line in run("worth").stdout.splitlines())
    assert json.loads(run("worth", "--on", "2026-03-01", "--json").stdout)["goods_minor"] == 0
    assert json.loads(run("worth", "--on", "2026-04-01", "--json").stdout)["goods"]["in work"] == 768
    run("receive", "tarnlow", "--line", "olive oil; 1 kg; lot 7", "--accept")
    shown = said(run("worth"))
    assert "Of unknown cost, and in none of these figures: lot material came on hand L5-" in shown


def test_bars_all_rejected_show_no_cost_for_each(shop: Any, run: Any) -> None:
    run("init", "--rejected-bars", "written off")
    assert "written off, and load no others" in said(run("worth"))
    add_customer(shop.book, CustomerDetails("The Ropewalk"), kind="shop", code="ropewalk")
    dispatch(shop.book, "ropewalk", {shop.batch: 4}, on=date(2026, 5, 10), price_minor=450, note=None)
    assert "is gained on each of 4 bars sold, before your work" in said(run("cost", shop.batch))
    run("reject", shop.batch, "--reason", "soft", "--on", "2026-05-20")
    shown = said(run("cost", shop.batch))
    assert "6 bars rejected and still here; they bear 4.61 EUR of it." in shown
    # 7.68 over ten bars: 0.768 each, so 0.77 and 0.76; six of them are not good
    assert "for each of 4 good bars" in shown
    run("init", "--rejected-bars", "load the good")
    shown = said(run("cost", shop.batch))
    assert "7.68 EUR, 1.92 EUR for each of 4 good bars" in shown
    assert "6 bars rejected and still here; the others bear their cost." in shown
    assert "'burnt' is not what becomes of their cost; write load the good or written off." in " ".join(
        run("init", "--rejected-bars", "burnt", code=2).stderr.split()
    )


def test_all_bars_rejected(shop: Any, run: Any) -> None:
    run("reject", shop.batch, "--reason", "soft", "--on", "2026-05-20")
    shown = said(run("cost", shop.batch))
    assert shown.startswith(f"Batch {shop.batch}, Plain Bar: 7.68 EUR. ")
    assert "10 bars rejected and still here; they bear 7.68 EUR of it. None is good." in shown
    assert "for each" not in shown
