"""A sale from its booking to its last payment: what it is made of, what is owed of it, and where it is found."""

import json
import re
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from once import once
from shop import Shop

from ledger.documents.keep.pages import write_pages
from ledger.operations.keep.check import check
from ledger.rows.lot import on_hand_at, place_of_kind
from ledger.rows.people import had_by_customers
from ledger.rows.sell.sale import taken_for
from ledger.views.keep.everything import Everything

ONE, SECOND = "26-001-4", "26-002-2"  # batches of the plain bar


@pytest.fixture
def four(selling: Shop, run: Any) -> Shop:
    """Four bars were sold to the shop at 4.50, and nothing is paid."""
    once(sell_four)(selling, run)
    return selling


def sell_four(_: Shop, run: Any) -> None:
    run("dispatch", "tern", f"{ONE}=4", "--price", "4.50")


def figures(run: Any, number: int) -> dict[str, Any]:
    """The sale as JSON."""
    found: dict[str, Any] = json.loads(run("sale", "show", str(number), "--json").stdout)
    return found


def amounts(found: dict[str, Any]) -> list[tuple[int, int | None, int | None]]:
    """Of each line: bars, amount, tax."""
    return [(one["line"]["bars"], one["amount_minor"], one["line"]["tax_minor"]) for one in found["lines"]]


def test_a_dispatch_books_price_reduction_tax_and_payment(selling: Shop, run: Any) -> None:
    """4 bars at 4.50 are 18.00, 6 are 27.00; 5.00 off is 2.00 and 3.00; a fifth on top is a sixth within.

    16.00 / 6 = 2.67, 24.00 / 6 = 4.00.
    """
    run("tax", "set", "20%", "--name", "VAT", "--from", "2026-05-01")
    said = run("dispatch", "tern", f"{ONE}=4", f"{SECOND}=6", "--price", "€4.50", "--reduction", "5", "--paid", "10",
               "--bank").stdout  # fmt: skip
    assert " ".join(said.split()) == (
        f"Sale 1: 4 bars of Plain Bar {ONE} at 4.00 EUR, 6 bars of Plain Bar {SECOND} at 4.00 EUR dispatched to Tern "
        "Hall. Together 40.00 EUR, 6.67 EUR of it tax; 30.00 EUR is owed. When it is paid: soapledger sale pay 1 30.00 "
        "--cash Its delivery note: soapledger delivery-note 1 -o note.pdf"
    )
    found = figures(run, 1)
    assert amounts(found) == [(4, 1600, 267), (6, 2400, 400)]
    assert (found["owed_minor"], found["tax_minor"]) == (3000, 667)
    assert [(one["way"], one["amount_minor"]) for one in found["payments"]] == [("bank", 1000)]
    assert check(selling.rows()).findings == ()


def test_a_way_alone_pays_all_of_it(selling: Shop, run: Any) -> None:
    assert "; paid." in run("dispatch", "tern", f"{ONE}=2", "--price", "4.50", "--card").stdout
    assert figures(run, 1)["owed_minor"] == 0
    said = run("dispatch", "tern", f"{ONE}=1", "--price", "4.50", "--paid", "1", code=2).stderr
    assert said.strip() == "How was it paid? Add --cash, --card or --bank."
    assert "say two ways" in run("dispatch", "tern", f"{ONE}=1", "--cash", "--bank", code=2).stderr
    assert check(selling.rows()).findings == ()


def test_the_tax_on_top_of_a_price(selling: Shop, run: Any) -> None:
    """3 bars at 4.50 are 13.50 net; 7 % of that is 0.945, which is 0.95."""
    assert "No tax is set" in run("dispatch", "tern", f"{ONE}=3", "--price", "4.50", "--tax-on-top", code=2).stderr
    run("tax", "set", "7%", "--name", "sales tax")
    run("dispatch", "tern", f"{ONE}=3", "--price", "4.50", "--tax-on-top")
    assert amounts(figures(run, 1)) == [(3, 1445, 95)]
    assert selling.batch == ONE


def test_without_a_price_the_one_that_was_set_holds_and_else_none_is_claimed(selling: Shop, run: Any) -> None:
    said = run("dispatch", "tern", f"{ONE}=2").stdout
    assert "what they brought is not known" in said
    assert figures(run, 1)["owed_minor"] == 0
    assert "never told" in run("sale", "show", "1").stdout
    run("price", "set", "plain", "6.50")
    run("dispatch", "tern", f"{ONE}=3")
    assert amounts(figures(run, 2)) == [(3, 1950, None)]
    run("dispatch", "tern", f"{ONE}=1", "--price", "0")  # a price of nothing is a price
    assert amounts(figures(run, 3)) == [(1, 0, None)]
    assert selling.batch == ONE


def test_more_off_than_it_costs_is_refused_and_nothing_is_booked(selling: Shop, run: Any) -> None:
    said = run("dispatch", "tern", f"{ONE}=2", "--price", "4.50", "--reduction", "9.01", code=2).stderr
    assert said.strip() == "That is more off than the bars cost together; look at --reduction and --price."
    assert run("sale", "list").stdout.startswith("No sale yet.")
    run("dispatch", "tern", f"{ONE}=2", "--price", "4.50", "--reduction", "9.00")
    assert amounts(figures(run, 1)) == [(2, 0, None)]
    assert check(selling.rows()).findings == ()


@pytest.mark.parametrize("text", ["$4.50", "4.50 GBP", "£4.50"])
def test_another_currency_gets_one_line(selling: Shop, run: Any, text: str) -> None:
    said = run("dispatch", "tern", f"{ONE}=2", "--price", text, code=2).stderr
    assert said.strip() == f"The price '{text}' is not in EUR, the money of this ledger; write it in EUR."
    assert selling.batch == ONE


def test_payments_lessen_what_is_owed_and_more_than_that_is_asked_about(four: Shop, run: Any) -> None:
    assert "13.00 EUR is still owed" in run("sale", "pay", "sale 1", "5", "--bank").stdout
    asked = run("sale", "pay", "1", "13.01", "--cash", input="n\n", code=1)
    assert "13.00 EUR is owed of sale 1, not 13.01 EUR." in asked.stderr
    assert "Nothing is owed." in run("sale", "pay", "1", "13", "--cash", "--on", "2026-05-30").stdout
    assert "1.00 EUR is to be paid back" in run("sale", "pay", "1", "1", "--cash", "--yes").stdout
    run("sale", "pay", "1", "1", "--cash", "--back")
    assert figures(run, 1)["owed_minor"] == 0
    assert "0.00 EUR is to be paid back of sale 1" in run("sale", "pay", "1", "1", "--cash", "--back", code=1).stderr
    assert "Add --cash, --card or --bank" in run("sale", "pay", "1", "1", code=2).stderr
    assert "There is no sale 9" in run("sale", "pay", "9", "1", "--cash", code=2).stderr
    assert "number of a sale is a whole number" in run("sale", "pay", "nine", "1", "--cash", code=2).stderr
    assert "Nothing was paid" in run("sale", "pay", "1", "0", "--cash", code=2).stderr
    assert check(four.rows()).findings == ()


def test_fees_of_a_sale_an_outlet_or_none(four: Shop, run: Any) -> None:
    run("sale", "fee", "post", "6.20", "--sale", "1", "--note", "two parcels")
    run("sale", "fee", "pitch", "15", "--at", "quay")
    run("sale", "fee", "other", "3")
    assert "Fee, 1 Jun 2026: post, 6.20 EUR (two parcels)" in run("sale", "show", "1").stdout
    rows = four.rows().execute("SELECT sale_id, place_id IS NULL, customer_id, amount_minor FROM fee").fetchall()
    customer = four.rows().execute("SELECT id FROM customer WHERE code = 'tern-hall'").fetchone()[0]
    assert [tuple(row) for row in rows] == [(1, 1, customer, 620), (None, 0, None, 1500), (None, 1, None, 300)]
    assert "is not a kind of fee" in run("sale", "fee", "rent", "3", code=2).stderr
    assert "A fee of nothing" in run("sale", "fee", "card", "0", code=2).stderr
    assert "not both" in run("sale", "fee", "card", "1", "--sale", "1", "--at", "quay", code=2).stderr
    said = run("sale", "fee", "pitch", "15", "--at", "quey", code=2).stderr
    assert "No stall or customer is called 'quey'. Did you mean Quay market?" in said
    assert run("undo", "--yes").stdout.startswith("Entry")  # nothing stands on a fee


def test_a_shop_keeps_its_commission_and_a_market_is_paid_it(four: Shop, run: Any) -> None:
    run("sale", "fee", "commission", "5.40", "--sale", "1")
    assert figures(run, 1)["owed_minor"] == 1800 - 540
    assert "5.40 EUR of it is kept as commission." in run("sale", "show", "1").stdout
    assert "12.60 EUR is owed" in run("customer", "show", "tern").stdout
    run("stall", "out", "quay", f"{ONE}=2")
    run("stall", "back", "quay", f"{ONE}=0", "--takings", "13")
    run("sale", "fee", "commission", "1.30", "--sale", "2")
    assert figures(run, 2)["owed_minor"] == 0
    assert four.batch == ONE


def test_the_list_is_by_outlet_and_day_with_the_latest_last(selling: Shop, run: Any) -> None:
    run("dispatch", "tern", f"{ONE}=2", "--price", "4.50", "--on", "2026-05-10")
    run("dispatch", "ida", f"{ONE}=1", "--price", "6.50", "--cash", "--on", "2026-05-12")
    run("stall", "out", "quay", f"{ONE}=3", "--on", "2026-05-16")
    run("stall", "back", "quay", f"{ONE}=1", "--takings", "13", "--on", "2026-05-16")
    run("return", f"{ONE}=1", "--from", "tern", "--on", "2026-05-20")

    def listed(*words: str) -> list[int]:
        return [one["sale"] for one in json.loads(run("sale", "list", *words, "--json").stdout)]

    assert listed() == [1, 2, 3, 4]
    assert listed("--at", "tern") == [1, 4]
    assert listed("--at", "quay market") == [3]
    assert listed("--on", "2026-05-12") == [2]
    assert listed("--since", "2026-05-12", "--until", "2026-05-16") == [2, 3]
    assert listed("--last", "2") == [3, 4]
    assert "No such sale." in run("sale", "list", "--on", "2026-05-11").stdout
    assert "--on is one day" in run("sale", "list", "--on", "2026-05-11", "--since", "2026-05-01", code=2).stderr
    said = run("sale", "list", "--at", "tarn", code=2).stderr
    assert "Did you mean Tern Hall?" in said
    lines = run("sale", "list").stdout.splitlines()
    assert [line.split() for line in lines[2:]][:4] == [
        ["1", "10", "May", "2026", "sale", "Tern", "Hall", "2", "9.00", "4.50"],
        ["2", "12", "May", "2026", "sale", "Ida", "Marsh", "1", "6.50"],
        ["3", "16", "May", "2026", "sale", "Quay", "market", "2", "13.00"],
        ["4", "20", "May", "2026", "return", "of", "1", "Tern", "Hall", "-1", "-4.50"],
    ]
    assert max(map(len, lines)) <= 80
    assert selling.batch == ONE


def test_a_list_of_many_shows_the_last_fifty(selling: Shop, run: Any) -> None:
    with selling.book.write("sale") as tx:
        tx.add_rows("sale", [{"on": date(2026, 5, 1), "kind": "sale", "whom": "a friend"} for _ in range(60)])
        tx.say("Sold.")
    assert run("sale", "list").stdout.startswith("The last 50 sales, the latest last.")
    assert len(json.loads(run("sale", "list", "--all", "--json").stdout)) == 60


def test_a_list_takes_as_many_statements_for_many_sales_as_for_few(selling: Shop, run: Any) -> None:
    from ledger.rows.sell.sale import sales_found
    from ledger.views.sale.sale import listed

    def statements() -> int:
        rows, seen = selling.rows(), []
        rows.set_trace_callback(seen.append)
        listed(rows, sales_found(rows))
        return len(seen)

    run("dispatch", "tern", f"{ONE}=1", "--price", "4.50")
    few = statements()
    for day in range(1, 6):
        run("dispatch", "ida", f"{ONE}=1", "--price", "4.50", "--on", f"2026-05-2{day}")
    assert statements() == few


def test_what_a_customer_had_owes_and_brought_back(selling: Shop, run: Any) -> None:
    """Sold 4 + 2 at 4.50, 1 back: 5 × 4.50 = 22.50, of which 10.00 was paid; one given."""
    run("dispatch", "tern", f"{ONE}=4", "--price", "4.50", "--on", "2026-05-10")
    run("dispatch", "tern", f"{SECOND}=2", "--price", "4.50", "--on", "2026-05-11", "--paid", "9", "--cash")
    run("return", f"{ONE}=1", "--from", "tern", "--on", "2026-05-20")
    run("gift", f"{ONE}=1", "--to", "tern-hall", "--for", "sample")
    run("sale", "pay", "1", "1.00", "--cash")
    found = json.loads(run("customer", "show", "tern", "--json").stdout)
    assert found["had"] == [{"product": "Plain Bar", "sold": 6, "given": 1, "returned": 1}]
    assert (found["brought_minor"], found["owed_minor"], found["bars"]) == (2250, 1250, 6)
    said = run("customer", "show", "tern").stdout
    assert "2 sales brought 22.50 EUR; 12.50 EUR is owed." in said
    assert "sale" not in run("customer", "show", "ida").stdout
    had = {(one.batch, one.what): (one.bars, one.money_minor) for one in had_by_customers(selling.rows())}
    assert had == {
        (ONE, "dispatched"): (4, 1800),
        (SECOND, "dispatched"): (2, 900),
        (ONE, "returned"): (-1, -450),
        (ONE, "given"): (1, None),
    }
    view = [tuple(row) for row in selling.rows().execute("SELECT way, bars, money FROM sales ORDER BY day, batch")]
    assert view == [("dispatched", 4, 18.0), ("dispatched", 2, 9.0), ("returned", -1, -4.5), ("given", 1, None)]


def test_the_page_of_a_customer_in_an_archive_shows_the_sales(selling: Shop, run: Any, tmp_path: Path) -> None:
    run("dispatch", "tern", f"{ONE}=4", "--price", "4.50", "--on", "2026-05-10")
    run("return", f"{ONE}=1", "--from", "tern", "--on", "2026-05-20")
    write_pages(Everything(selling.rows(), program="test"), tmp_path, papers=False)
    page = (tmp_path / "pages" / "customer-tern-hall.html").read_text(encoding="utf-8")
    words = " ".join(re.sub(r"<[^>]+>", " ", page).split())
    assert "1 10 May 2026 sale 4 18.00 EUR 13.50 EUR" in words
    assert "2 20 May 2026 return of 1 -1 -4.50 EUR" in words
    assert f"20 May 2026 came back 1 {ONE} Plain Bar -4.50 EUR" in words


def test_a_gift_own_use_a_tester_and_a_sample_are_no_income(selling: Shop, run: Any) -> None:
    run("dispatch", "tern", f"{ONE}=1", "--price", "4.50")
    said = run("gift", f"{ONE}=1", "--for", "own use").stdout
    assert said == f"1 bar of Plain Bar {ONE} given away, as own use; it is no sale.\n"
    run("gift", f"{ONE}=1", "--for", "tester", "--to", "the fair")
    run("gift", f"{ONE}=1", "--to", "tern", "--for", "sample")
    run("gift", f"{ONE}=1")
    notes = [row[0] for row in selling.rows().execute("SELECT note FROM movement WHERE kind = 'given' ORDER BY id")]
    assert notes == ["own use", "the fair (tester)", "tern (sample)", None]
    lot = selling.rows().execute("SELECT id FROM lot WHERE code = ?", (ONE,)).fetchone()[0]
    assert [one.money_minor for one in taken_for(selling.rows(), [lot])] == [450]
    assert selling.rows().execute("SELECT count(*) FROM sale").fetchone()[0] == 1
    assert "own use" in run("lot", "show", ONE).stdout


def test_a_day_at_a_stall_is_named_in_full(selling: Shop, run: Any) -> None:
    run("price", "set", "plain", "6.50")
    run("stall", "out", "quay", f"{ONE}=4", f"{SECOND}=2")
    assert f"Took 4 bars of Plain Bar {ONE}, 2 bars of Plain Bar {SECOND} to Quay market." in run("history").stdout
    said = run("stall", "back", "quay", f"{ONE}=1", f"{SECOND}=0", "--broken", f"{ONE}=1", "--takings", "26").stdout
    told = (
        f"sold: 2 bars of Plain Bar {ONE} at 6.50 EUR, 2 bars of Plain Bar {SECOND} at 6.50 EUR; came home: 1 bar of "
        f"Plain Bar {ONE}; stolen or broken: 1 bar of Plain Bar {ONE}."
    )
    assert told.capitalize()[:5] + told[5:] in " ".join(said.split())
    assert f"Sale 1: back from Quay market, {told}" in run("history").stdout
    assert max(map(len, said.splitlines())) <= 80
    assert selling.batch == ONE


def test_history_names_what_moved_in_full(selling: Shop, run: Any) -> None:
    run("dispatch", "tern", f"{ONE}=2", f"{SECOND}=1", "--price", "4.50", "--cash")
    run("return", f"{ONE}=1", "--from", "tern", "--reason", "too many", "--cash")
    run("resell", f"{ONE}=1", "--by", "Nuala", "--reason", "seal unbroken")
    run("dispatch", "ida", f"{ONE}=1", "--price", "6.50")
    said = run("history", "--last", "4").stdout
    for words in (
        f"Sale 1: dispatched 2 bars of Plain Bar {ONE} at 4.50 EUR, 1 bar of Plain Bar {SECOND} at 4.50 EUR to Tern "
        "Hall, 13.50 EUR paid.",
        f"Return 2 of sale 1: 1 bar of Plain Bar {ONE} at 4.50 EUR came back from Tern Hall, 4.50 EUR paid back.",
        f"Put 1 bar of Plain Bar {ONE} from the returns shelf back on sale, as Nuala decided: seal unbroken.",
        f"Sale 3: dispatched 1 bar of Plain Bar {ONE} at 6.50 EUR to person-2.",
    ):
        assert words in said
    assert "Ida" not in said  # a person stands in what is kept by the short name
    assert selling.batch == ONE


def test_a_product_goes_by_its_oldest_batches_once_somebody_looked_at_their_codes(selling: Shop, run: Any) -> None:
    """Each of two batches has bars here; more than the first has take the rest of the second."""
    first = held(selling, ONE)
    asked = run("dispatch", "tern", f"plain={first + 2}", "--price", "4.50", input="n\n", code=1)
    assert f"The oldest first: {ONE}={first}, {SECOND}=2" in asked.stdout
    assert held(selling, ONE) == first
    run("dispatch", "tern", f"plain={first + 2}", "--price", "4.50", "--yes")
    assert held(selling, ONE) == 0
    left = held(selling, SECOND)
    assert f"{left} bars of Plain Bar are ready; {left + 1} cannot go" in run(
        "dispatch", "tern", f"plain={left + 1}", "--yes", code=1
    ).stderr.replace("\n", " ")
    assert "above zero" in run("dispatch", "tern", "plain=0", code=2).stderr
    assert "No product is called" in run("dispatch", "tern", "rosy=1", code=2).stderr


def held(shop: Shop, code: str) -> int:
    rows = shop.rows()
    lot = rows.execute("SELECT id FROM lot WHERE code = ?", (code,)).fetchone()[0]
    return on_hand_at(rows, lot, place_of_kind(rows, "workshop").id)
