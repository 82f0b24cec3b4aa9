"""Sales, returns, credits, payments and undos in any order agree with a tally kept by itself in this file."""

from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from ledger.errors import BadInput, Refused
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.sale.credit import credit
from ledger.operations.sale.pay import pay
from ledger.operations.sale.set_tax import RateSet, set_tax
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.gift import gift
from ledger.operations.sell.resell import resell
from ledger.operations.sell.shelf import keep_returned, throw_away_returned
from ledger.operations.sell.take_back import Refund, take_back
from ledger.rows.lot import find_lot
from ledger.rows.opened import Rows, open_rows
from ledger.rows.sell.paid import balances
from ledger.rows.sell.sale import lines_of, sales, taken_for
from ledger.storage.book import Book

RELEASED = date(2026, 5, 4)
WHAT = (
    *("sell", "sell", "return", "return", "return of", "refund", "no refund", "credit", "pay", "gift", "resell"),
    *("keep", "throw away", "undo"),
)
STEPS = st.lists(
    st.tuples(
        st.sampled_from(WHAT),
        st.integers(0, 5),  # bars
        st.integers(0, 6),  # days after the release
        st.integers(0, 700),  # an amount, or a price
    ),
    max_size=16,
)


@dataclass
class Tally:
    """What happened, entry by entry: (sale, bars, money, paid) that it adds to a sale; below zero: takes from it."""

    effects: dict[int, list[tuple[int, int, int, int]]] = field(default_factory=dict)
    prices: dict[int, tuple[date, int, int]] = field(default_factory=dict)  # of a sale: its day, bars, price of one

    def stands(self) -> dict[int, tuple[int, int, int]]:
        """Bars, money and what was paid of each sale, by now."""
        found: dict[int, list[int]] = defaultdict(lambda: [0, 0, 0])
        for effects in self.effects.values():
            for sale, *more in effects:
                for place, one in enumerate(more):
                    found[sale][place] += one
        return {sale: (one[0], one[1], one[2]) for sale, one in found.items()}

    def back(self, number: int, on: date, only: int | None = None) -> list[tuple[int, int, int]]:
        """From which sales so many bars come back, the latest day first, and what was paid for them."""
        parts = []
        for sale, (left, money, _) in sorted(
            self.stands().items(), key=lambda one: (self.prices[one[0]][0], one[0]), reverse=True
        ):
            if self.prices[sale][0] <= on and only in (None, sale) and (taken := min(left, number)):
                parts.append((sale, taken, min(taken * self.prices[sale][2], money)))
                number -= taken
        return parts


@dataclass
class Run:
    """One run of steps on a ledger."""

    book: Book
    rows: Rows  # of its file, opened once
    batch: str
    tally: Tally
    first: int = 0  # the last entry before the steps

    def entry(self) -> int:
        return int(self.rows.execute("SELECT max(id) FROM entry").fetchone()[0])

    def step(self, what: str, bars: int, on: date, amount: int) -> None:
        """One thing she might type, sensible or not, and what it adds to the tally where it is booked."""
        one, done = {self.batch: bars}, self.tally.effects
        some = sorted(self.tally.stands())
        sale = some[amount % len(some)] if some else 99
        if what == "sell":
            sent = dispatch(self.book, "ropewalk", one, on=on, price_minor=amount, note=None, all_by="cash")
            self.tally.prices[sent.sale] = (on, bars, amount)
            done[self.entry()] = [(sent.sale, bars, bars * amount, bars * amount)]
        elif what in ("return", "return of", "refund", "no refund"):
            named = sale if what == "return of" else None
            parts = self.tally.back(bars, on, named)
            whole = sum(money for *_, money in parts)
            refund = Refund(way="cash")
            if what == "refund":
                refund = Refund(min(amount, whole), None, "cash")
            elif what == "no refund":
                refund = Refund(None, "dropped by her", None)
            whose = None if named else "ropewalk"
            came = take_back(self.book, one, customer=whose, stall=None, on=on, reason=None, sale=named, refund=refund)
            taken = 0 if what == "no refund" else min(amount, whole) if what == "refund" else whole
            assert (came.amount_minor or 0) == taken
            lines = lines_of(self.rows, [number for number, _ in came.returns])
            got = {of: -sum(line.amount_minor or 0 for line in lines[number]) for number, of in came.returns}
            assert set(got) == {number for number, *_ in parts}
            for number, _, money in parts:
                assert got[number] <= money
            assert sum(got.values()) == taken
            done[self.entry()] = [(number, -n, -got[number], -got[number]) for number, n, _ in parts]
            if what == "no refund":
                done[self.entry()] = [(number, -n, 0, 0) for number, n, _ in parts]
        elif what == "credit":
            left = self.tally.stands().get(sale, (0, 0, 0))[1]
            credit(self.book, sale, on=on, reason="late", amount_minor=amount)
            assert 0 < amount <= left
            done[self.entry()] = [(sale, 0, -amount, 0)]
        elif what == "pay":
            pay(self.book, sale, amount, "bank", on=on, back=bool(bars % 2))
            done[self.entry()] = [(sale, 0, 0, -amount if bars % 2 else amount)]
        elif what == "gift":
            gift(self.book, one, to="The Ropewalk", on=on, what_for="sample")
        elif what == "undo":
            number = self.entry() - bars
            if number <= self.first:
                return
            undo(self.book, number)
            done.pop(number, None)
            self.tally.prices = {s: p for s, p in self.tally.prices.items() if s in self.tally.stands()}
        else:
            shelf: dict[str, Callable[..., str]] = {
                "resell": resell,
                "keep": keep_returned,
                "throw away": throw_away_returned,
            }
            shelf[what](self.book, one, on=on, by="Orla", reason="looked at")


@pytest.fixture
def base(shop: Any) -> tuple[bytes, str]:
    """The worked shop with a shop to sell to and a tax of a fifth on top, as bytes to start each run from."""
    add_customer(shop.book, CustomerDetails("The Ropewalk"), kind="shop", code="ropewalk")
    set_tax(shop.book, RateSet(200_000, RELEASED, "VAT"), by="Nuala")
    shop.book.close()
    return shop.book.path.read_bytes(), shop.batch


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(steps=STEPS)
def test_any_sequence_agrees_with_the_tally(base: tuple[bytes, str], steps: list[tuple[str, int, int, int]]) -> None:
    start, batch = base
    with TemporaryDirectory() as folder:
        path = Path(folder) / "soap.db"
        path.write_bytes(start)
        book = Book(path, who="Nuala", now=lambda: datetime(2026, 6, 1, 9, 30, tzinfo=UTC))
        rows = open_rows(path)
        run = Run(book, rows, batch, Tally())
        run.first = run.entry()
        for what, bars, days, amount in steps:
            before = path.read_bytes()
            try:
                run.step(what, bars, RELEASED + timedelta(days=days), amount)
            except (Refused, BadInput):
                assert path.read_bytes() == before
        book.close()
        assert check(rows).findings == ()
        stands = run.tally.stands()
        found = balances(rows, sorted(stands))
        for sale, (bars, money, paid) in stands.items():
            one = found[sale]
            assert (one.bars - one.back, one.amount_minor - one.taken_back_minor) == (bars, money)
            assert one.owed_minor == money - paid
            assert one.tax_minor >= 0
            assert abs(6 * one.tax_minor - money) <= 6 * 16  # a sixth, each line rounded by itself
        assert sorted(one.id for one in sales(rows) if one.kind == "sale") == sorted(stands)
        lot = find_lot(rows, batch).id
        assert sum(one.money_minor for one in taken_for(rows, [lot])) == sum(money for _, money, _ in stands.values())
        rows.close()
