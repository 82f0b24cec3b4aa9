"""Random weeks with a shop on sale or return, held to a tally kept apart: no bar and no coin is lost."""

import shutil
from collections import Counter
from contextlib import suppress
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from market import bake
from shop import NOW, Shop, work_a_shop

from ledger.errors import BadInput, Refused
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.shop.back import back_from_shop
from ledger.operations.shop.count import count_shop
from ledger.operations.shop.invoices import make_invoice
from ledger.operations.shop.terms import Agreed, agree
from ledger.rows.history import last_entry
from ledger.rows.opened import open_rows
from ledger.storage.book import Book
from ledger.views.shop.owed import invoices_listed, owed_by

START = date(2026, 4, 20)
PRICE, SHARE = 650, 30  # of a bar, and what the shop keeps in a hundred
STEPS = st.lists(
    st.tuples(
        st.sampled_from(["bring", "bring", "count", "count", "back", "undo", "invoice"]),
        st.integers(0, 1),
        st.integers(0, 12),
        st.integers(0, 3),
    ),
    max_size=10,
)


@pytest.fixture
def town(shop: Shop, built: Any) -> tuple[Path, list[str]]:
    """Two batches of ten of one product, and a shop."""
    shop.book.close()

    def made(book: Book) -> list[str]:
        codes = bake(book, {"Rosemary": 2})["Rosemary"]
        add_customer(book, CustomerDetails("Tern Hall"), kind="shop", code="tern-hall")
        agree(book, "tern-hall", Agreed(True, SHARE * 10_000), on=START - timedelta(5))
        return codes

    path, codes = built("two batches there", made, built("shop", work_a_shop)[0])
    return path, codes


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(steps=STEPS)
def test_bars_and_money_come_to_the_tally(town: tuple[Path, list[str]], tmp_path: Path, steps: list[Any]) -> None:
    source, codes = town
    path = tmp_path / "random.db"
    shutil.copyfile(source, path)
    book = Book(path, who="Nuala", now=lambda: NOW)
    tally: Counter[str] = Counter({"workshop": 20})
    money: list[int] = []  # what each count is worth, less the commission of that count
    done: list[tuple[Counter[str], list[int]]] = []  # how it stood before each step
    for turn, (what, which, number, lost) in enumerate(steps):
        day, before = START + timedelta(turn), (Counter(tally), list(money))
        with suppress(Refused, BadInput):
            if what == "bring" and number:
                dispatch(book, "tern-hall", {codes[which]: number}, on=day, price_minor=None, note=None)
                tally.update({"workshop": -number, "there": number})
            elif what == "count" and tally["there"]:
                missing = min(lost, tally["there"])
                count_shop(
                    book, "tern-hall", {"rosemary": number}, on=day, missing={"rosemary": missing}, price_minor=PRICE
                )
                sold = tally["there"] - number - missing
                assert sold >= 0
                tally.update({"there": -sold - missing, "sold": sold, "missing": missing})
                if sold:
                    money.append(sold * PRICE - (sold * PRICE * SHARE + 50) // 100)
            elif what == "back" and number:
                back_from_shop(book, "tern-hall", {codes[which]: number}, on=day)
                tally.update({"there": -number, "shelf": number})
            elif what == "invoice":
                make_invoice(book, "tern-hall", on=day)
                done.clear()
                continue
            elif what == "undo" and done:
                with book.look() as rows:
                    last = last_entry(rows)
                undo(book, last)
                was, earned = done.pop()
                tally, money = Counter(was), list(earned)
                continue
            else:
                continue
            done.append(before)
    rows = open_rows(path)
    places = dict(
        rows.execute(
            "SELECT p.kind, sum(v.quantity) FROM movement v JOIN place p ON p.id = v.place_id "
            "JOIN lot l ON l.id = v.lot_id WHERE l.code IN (?, ?) GROUP BY p.id",
            codes,
        ).fetchall()
    )
    assert [places.get(kind, 0) for kind in ("workshop", "consignment", "returns")] == [
        tally[word] for word in ("workshop", "there", "shelf")
    ]
    assert rows.execute("SELECT coalesce(sum(bars), 0) FROM live_sale_line").fetchone()[0] == tally["sold"]
    assert owed_by(rows, 1, invoices_listed(rows, START, 1)).owed_minor == sum(money)
    assert check(rows).findings == ()
    rows.close()
    book.close()
