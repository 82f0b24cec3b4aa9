"""Bars that come back take their money from the sale they were of, or say why not; credits take it without bars."""

import json
import sqlite3
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from once import once
from shop import Shop

from ledger.errors import Refused
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.rows.history import last_entry
from ledger.rows.sell.sale import lines_of, sales, taken_for

ONE, SECOND = "26-001-4", "26-002-2"


def taken(shop: Shop, sale: int) -> list[tuple[int, int | None, int | None, int | None]]:
    """Of each line of a return or a credit: bars, amount, tax, and the line it takes from."""
    lines = lines_of(shop.rows(), [sale])[sale]
    return [(one.bars, one.amount_minor, one.tax_minor, one.of_line_id) for one in lines]


def owed(run: Any, sale: int) -> int:
    found: int = json.loads(run("sale", "show", str(sale), "--json").stdout)["owed_minor"]
    return found


@pytest.fixture
def sold(selling: Shop, run: Any) -> Shop:
    once(sell)(selling, run)
    return selling


def sell(_: Shop, run: Any) -> None:
    """Two sales to a shop: 4 bars at 4.50 on 10 May (line 1), and 3 at 5.00 with 4 of another batch on 12 May."""
    run("dispatch", "tern", f"{ONE}=4", "--price", "4.50", "--on", "2026-05-10")
    run("dispatch", "tern", f"{ONE}=3", f"{SECOND}=4", "--price", "5.00", "--on", "2026-05-12", "--cash")


def test_the_latest_sale_is_taken_from_first(sold: Shop, run: Any) -> None:
    """4 back on 20 May: 3 of the sale of 12 May at 5.00, 1 of that of 10 May at 4.50; 15.00 of it was paid."""
    said = run("return", f"{ONE}=4", "--from", "tern", "--on", "2026-05-20").stdout
    assert "Return 3 of sale 1." in said
    assert "Return 4 of sale 2." in said
    assert "19.50 EUR is taken back." in said
    assert (
        "15.00 EUR is still to be paid back of sale 2. When it is:\n  soapledger sale pay 2 15.00 --back --cash" in said
    )
    assert (taken(sold, 3), taken(sold, 4)) == ([(-1, -450, None, 1)], [(-3, -1500, None, 2)])
    assert (owed(run, 1), owed(run, 2)) == (1350, -1500)
    run("sale", "pay", "2", "15.00", "--back", "--cash")
    assert owed(run, 2) == 0
    assert check(sold.rows()).findings == ()


@pytest.mark.usefixtures("sold")
def test_each_sale_of_which_something_is_to_be_paid_back_is_named_with_its_own(run: Any) -> None:
    """4 back of two paid sales: 15.00 of the second and 4.50 of the first; what is said to type does it, unasked."""
    run("sale", "pay", "1", "18.00", "--bank")
    said = " ".join(run("return", f"{ONE}=4", "--from", "tern", "--on", "2026-05-20").stdout.split())
    pay = ("sale pay 1 4.50 --back --cash", "sale pay 2 15.00 --back --cash")
    for sale, money, command in zip((1, 2), ("4.50", "15.00"), pay, strict=True):
        told = f"{money} EUR is still to be paid back of sale {sale}. When it is: soapledger {command}"
        assert told in said
        run(*command.split())
        assert owed(run, sale) == 0


def test_only_sales_of_that_day_and_before_are_taken_from(sold: Shop, run: Any) -> None:
    run("return", f"{ONE}=2", "--from", "tern", "--on", "2026-05-11")
    assert taken(sold, 3) == [(-2, -900, None, 1)]


def test_a_sale_that_is_named_is_taken_from(sold: Shop, run: Any) -> None:
    said = run("return", f"{ONE}=2", "--sale", "1").stdout
    assert said.startswith(f"2 bars of Plain Bar {ONE} at 4.50 EUR from Tern Hall, on the returns shelf.")
    assert taken(sold, 3) == [(-2, -900, None, 1)]
    said = run("return", f"{ONE}=3", "--sale", "1", code=1).stderr
    assert "Of sale 1, 2 bars of batch 26-001-4 may still come back by 1 Jun 2026; 3 cannot." in said
    assert "Of sale 1, 0 bars of batch 26-002-2" in run("return", f"{SECOND}=1", "--sale", "1", code=1).stderr
    assert "There is no sale 99" in run("return", f"{ONE}=1", "--sale", "99", code=2).stderr
    assert "not two of them" in run("return", f"{ONE}=1", "--sale", "1", "--from", "tern", code=2).stderr
    assert check(sold.rows()).findings == ()


def test_less_is_taken_back_and_paid_by_the_way_that_is_said(sold: Shop, run: Any) -> None:
    """7.00 for bars of 5.00 and 5.00, 4.50: the shares of 3.4483, 3.4483 and 3.1034, cumulative, half up."""
    said = run("return", f"{ONE}=1", f"{SECOND}=1", "--from", "tern", "--refund", "7", "--card").stdout
    assert "7.00 EUR is taken back, 7.00 EUR paid back." in said
    assert taken(sold, 3) == [(-1, -350, None, 2), (-1, -350, None, 3)]
    assert owed(run, 2) == 0
    over = run("return", f"{ONE}=1", "--from", "tern", "--refund", "5.01", code=1).stderr
    assert over.strip() == "Those bars were sold for 5.00 EUR; 5.01 EUR cannot be taken back for them."
    assert check(sold.rows()).findings == ()


def test_nothing_is_taken_back_and_why(sold: Shop, run: Any) -> None:
    said = run("return", f"{ONE}=1", "--from", "tern", "--no-refund", "dropped in the shop").stdout
    assert f"1 bar of Plain Bar {ONE} from Tern Hall, on the returns shelf." in said
    assert "Nothing is taken back: dropped in the shop." in said
    assert taken(sold, 3) == [(-1, 0, None, 2)]
    assert "dropped in the shop" in run("sale", "show", "3").stdout
    assert owed(run, 2) == 0
    both = run("return", f"{ONE}=1", "--from", "tern", "--no-refund", "so", "--refund", "1", code=2).stderr
    assert "--no-refund says that no money went back" in both
    assert check(sold.rows()).findings == ()


def test_shares_of_an_odd_amount_add_up_to_it_with_its_tax(selling: Shop, run: Any) -> None:
    """3 bars at 3.34 less 0.02 are 10.00: 3.33, 3.34, 3.33 by cumulative rounding; a sixth of 10.00 is 1.67 tax."""
    run("tax", "set", "20%", "--from", "2026-05-01")
    run("dispatch", "tern", f"{ONE}=3", "--price", "3.34", "--reduction", "0.02", "--on", "2026-05-10")
    for _ in range(3):
        run("return", f"{ONE}=1", "--from", "tern")
    back = [taken(selling, number)[0] for number in (2, 3, 4)]
    assert [one[1] for one in back] == [-333, -334, -333]
    assert sum(one[2] or 0 for one in back) == -167
    assert owed(run, 1) == 0
    assert "0 bars of batch" in run("return", f"{ONE}=1", "--from", "tern", code=1).stderr
    assert check(selling.rows()).findings == ()


def test_the_last_of_a_line_takes_the_rest_of_its_tax(selling: Shop, run: Any) -> None:
    """A sixth of 4.00 is 0.67; of 2.00 it is 0.33, so the second of the two takes 0.34, by a return or a credit."""
    run("tax", "set", "20%", "--from", "2026-05-01")
    for day in ("2026-05-10", "2026-05-11"):
        run("dispatch", "tern", f"{ONE}=2", "--price", "2", "--on", day)
    run("return", f"{ONE}=1", "--sale", "1")
    run("return", f"{ONE}=1", "--sale", "1")
    run("sale", "credit", "2", "2", "--reason", "late")
    run("sale", "credit", "2", "--reason", "the rest")
    assert [taken(selling, number)[0][2] for number in (3, 4, 5, 6)] == [-33, -34, -33, -34]


def test_a_return_to_a_stall_takes_from_its_day(selling: Shop, run: Any) -> None:
    """5 bars out, 1 home: 4 sold for 26.00, so one is 6.50."""
    run("stall", "out", "quay", f"{ONE}=5", "--on", "2026-05-16")
    run("stall", "back", "quay", f"{ONE}=1", "--takings", "26", "--on", "2026-05-16")
    said = run("return", f"{ONE}=1", "--stall", "quay", "--cash", "--reason", "a rash").stdout
    assert "6.50 EUR is taken back, 6.50 EUR paid back." in said
    assert taken(selling, 2) == [(-1, -650, None, 1)]
    assert "from Quay market" in said
    lot = selling.rows().execute("SELECT id FROM lot WHERE code = ?", (ONE,)).fetchone()[0]
    assert sum(one.money_minor for one in taken_for(selling.rows(), [lot])) == 2600 - 650
    run("return", f"{ONE}=1", "--cash")  # from whoever is not on the books
    assert owed(run, 1) == 0
    assert check(selling.rows()).findings == ()


def test_bars_without_a_price_come_back_without_one(selling: Shop, run: Any) -> None:
    run("dispatch", "tern", f"{ONE}=2")
    refused = run("return", f"{ONE}=1", "--from", "tern", "--refund", "4.50", code=1).stderr
    assert "was never booked, so nothing can be taken back" in refused
    said = run("return", f"{ONE}=1", "--from", "tern").stdout
    assert "taken back" not in said
    assert taken(selling, 2) == [(-1, None, None, 1)]
    assert check(selling.rows()).findings == ()


def test_a_gift_that_comes_back_is_no_sale(selling: Shop, run: Any) -> None:
    run("gift", f"{ONE}=2", "--to", "tern-hall")
    said = run("return", f"{ONE}=1", "--from", "tern").stdout
    assert "Return" not in said
    assert sales(selling.rows()) == []
    run("dispatch", "tern", f"{ONE}=1", "--price", "4.50")
    run("return", f"{ONE}=2", "--from", "tern")  # the one that was sold, and the other gift
    assert taken(selling, 2) == [(-1, -450, None, 1)]
    assert check(selling.rows()).findings == ()


@pytest.mark.parametrize("dump", ["01-5cc9b5a", "08-dab2513", "10-98a69b6"])
def test_bars_sold_before_sales_were_kept_take_back_what_their_movement_brought(
    run: Any, tmp_path: Path, dump: str
) -> None:
    """Each earlier program sold 3 bars at a stall for 15.00, and sent 2 to a shop at no price."""
    raw = sqlite3.connect(tmp_path / "soap.db")
    raw.executescript((Path(__file__).parents[1] / "storage" / "formats" / f"{dump}.sql").read_text(encoding="utf-8"))
    sold = "SELECT l.code, -v.quantity, v.money_minor FROM movement v JOIN lot l ON l.id = v.lot_id WHERE v.kind = ?"
    assert [row[1:] for row in raw.execute(sold, ("sold",))] == [(3, 1500)]
    code = raw.execute(sold, ("sold",)).fetchone()[0]
    raw.close()
    said = run("return", f"{code}=1", "--stall", "quay", "--cash").stdout
    assert "5.00 EUR is taken back, 5.00 EUR paid back." in said
    assert "Return 1, sold before sales were kept." in said
    said = run("return", f"{code}=2", "--stall", "quay").stdout
    assert "10.00 EUR is taken back." in said
    assert "10.00 EUR is still to be paid back of sale 2. When it is:\n  soapledger sale pay 2 10.00 --back" in said
    run("sale", "pay", "2", "10.00", "--back", "--bank")
    run("return", f"{code}=1", "--stall", "quay", code=1)
    run("return", f"{code}=1", "--from", "harrow")
    shown = json.loads(run("sale", "list", "--json").stdout)
    assert [(one["kind"], one["bars"], one["amount_minor"]) for one in shown] == [
        ("return", -1, -500),
        ("return", -2, -1000),
        ("return", -1, None),
    ]
    assert run("check").exit_code == 0


def test_a_credit_takes_money_of_a_line_of_bars_or_of_all_and_no_more_than_is_left(sold: Shop, run: Any) -> None:
    """Sale 2 is 15.00 and 20.00: 7.00 over both is 3.00 and 4.00; a bar of the second then brought 5.00."""
    said = run("sale", "credit", "2", "7", "--reason", "came late").stdout
    assert said.startswith("Credit 3 of sale 2: 7.00 EUR.")
    assert taken(sold, 3) == [(0, -300, None, 2), (0, -400, None, 3)]
    run("sale", "credit", "2", "--bars", f"{SECOND}=1", "--reason", "arrived broken", "--cash")
    assert taken(sold, 4) == [(0, -500, None, 3)]
    run("sale", "credit", "2", "--of-line", "1", "--reason", "all of it")
    assert taken(sold, 5) == [(0, -1200, None, 2)]
    over = run("sale", "credit", "2", "11.01", "--reason", "so", code=1).stderr
    assert over.startswith("11.00 EUR is left of sale 2; 11.01 EUR cannot be taken back.")
    assert owed(run, 2) == 3500 - 700 - 500 - 1200 - (3500 - 500)  # less what was paid, and paid back
    run("sale", "credit", "2", "--reason", "the rest")
    assert "Nothing is left of sale 2" in run("sale", "credit", "2", "--reason", "more", code=2).stderr
    assert check(sold.rows()).findings == ()


def test_a_credit_takes_nothing_from_a_difference_below_zero(selling: Shop, run: Any) -> None:
    """2 bars of 6.50 are 13.00, and 10.00 was taken: 10.00 is left of the sale, all of it of the bars."""
    run("price", "set", "plain", "6.50", "--from", "2026-05-01")
    run("stall", "out", "quay", f"{ONE}=2", "--on", "2026-05-16")
    run("stall", "back", "quay", f"{ONE}=0", "--takings", "10", "--on", "2026-05-16")
    assert "10.00 EUR is left" in run("sale", "credit", "1", "10.01", "--reason", "so", code=1).stderr
    assert "10.00 EUR is left" in run("sale", "credit", "1", "11", "--of-line", "1", "--reason", "so", code=1).stderr
    run("sale", "credit", "1", "--reason", "all of it")
    assert taken(selling, 2) == [(0, -1000, None, 1)]
    assert owed(run, 1) == -1000
    assert check(selling.rows()).findings == ()


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("9", "--reason", "so"), 2, "There is no sale 9"),
        (("2", "--of-line", "3", "--reason", "so"), 2, "Sale 2 has 2 lines; --of-line takes one of 1 to 2."),
        (("2", "--bars", f"{ONE}=4", "--reason", "so"), 1, "Sale 2 has 3 bars of batch 26-001-4 with a price, not 4"),
        (("2", "--bars", f"{ONE}=0", "--reason", "so"), 2, "Write a number above zero"),
        (("2", "0", "--reason", "so"), 2, "Nothing"),
        (("2", "1", "--bars", f"{ONE}=1", "--of-line", "1", "--reason", "so"), 2, "not both"),
    ],
)
def test_a_credit_that_cannot_be_is_one_line(sold: Shop, run: Any, words: Any, code: int, said: str) -> None:
    before = last_entry(sold.rows())
    error = run("sale", "credit", *words, code=code).stderr
    assert said in " ".join(error.split())
    assert last_entry(sold.rows()) == before


def test_a_return_is_not_credited_and_not_paid(sold: Shop, run: Any) -> None:
    run("return", f"{ONE}=1", "--from", "tern")
    assert "3 is a return; a credit is of a sale." in run("sale", "credit", "3", "--reason", "so", code=2).stderr
    assert "3 is a return of sale 2" in run("sale", "pay", "3", "1", "--cash", code=2).stderr
    assert sold.batch == ONE


@pytest.mark.parametrize(
    "later",
    [
        ("sale", "pay", "1", "4.50", "--cash"),
        ("return", f"{ONE}=1", "--sale", "1"),
        ("sale", "credit", "1", "2", "--reason", "late"),
    ],
)
def test_a_sale_with_something_later_is_credited_and_not_undone(sold: Shop, run: Any, later: tuple[str, ...]) -> None:
    entry = sales(sold.rows())[0].entry
    run(*later)
    with pytest.raises(Refused, match="Of sale 1 something was paid or taken back since") as refused:
        undo(sold.book, entry)
    assert 'soapledger sale credit 1 --reason "…"' in str(refused.value)
    undo(sold.book, last_entry(sold.rows()))
    undo(sold.book, entry)
    assert [one.id for one in sales(sold.rows())] == [2]
    assert check(sold.rows()).findings == ()


def test_a_taken_back_return_leaves_the_line_whole(sold: Shop, run: Any) -> None:
    run("return", f"{ONE}=3", "--sale", "2")
    run("undo", "--yes")
    run("return", f"{ONE}=3", "--sale", "2")
    assert taken(sold, 4) == [(-3, -1500, None, 2)]
    assert check(sold.rows()).findings == ()


def test_erasing_a_person_keeps_the_sale(selling: Shop, run: Any, tmp_path: Path) -> None:
    run("dispatch", "ida", f"{ONE}=2", "--price", "6.50", "--cash", "--on", "2026-05-20")
    run("sale", "fee", "post", "4", "--sale", "1", "--note", "parcel to Ida Marsh")
    run("return", f"{ONE}=1", "--from", "ida", "--no-refund", "Ida Marsh dropped it")
    run("sale", "credit", "1", "1", "--reason", "for Ida Marsh, late")
    with selling.book.write("sale") as tx:
        tx.add_rows(
            "sale", [{"on": date(2026, 5, 21), "kind": "sale", "whom": "Ida Marsh", "terms": "as ida marsh said"}]
        )
        tx.say("Sold to Ida Marsh.")
    before = json.loads(run("sale", "list", "--json").stdout)
    run("customer", "erase", "person-2", "--reason", "asked by letter", "--yes")
    assert b"Marsh" not in (tmp_path / "soap.db").read_bytes()
    assert b"Gorse Hill" not in (tmp_path / "soap.db").read_bytes()
    after = json.loads(run("sale", "list", "--json").stdout)
    assert [(one["sale"], one["bars"], one["amount_minor"]) for one in after] == [
        (one["sale"], one["bars"], one["amount_minor"]) for one in before
    ]
    assert after[0]["to"] == "person-2"
    run("sale", "show", "1")
    assert run("check").exit_code == 0
