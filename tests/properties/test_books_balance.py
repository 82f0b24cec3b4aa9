"""Whatever is booked and taken back, in whatever order, the ledger passes its check and the bars add up."""

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
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.gift import gift
from ledger.operations.sell.stall_back import stall_back
from ledger.operations.sell.stall_out import stall_out
from ledger.operations.sell.take_back import take_back
from ledger.operations.stock.lots import count_lot, waste_lot
from ledger.rows.bars import bar_counts
from ledger.rows.lot import find_lot
from ledger.rows.opened import Rows, open_rows
from ledger.storage.book import Book

RELEASED = date(2026, 5, 4)
STEPS = st.lists(
    st.tuples(
        st.sampled_from(["out", "back", "dispatch", "gift", "return", "waste", "count", "undo", "undo"]),
        st.integers(0, 6),  # bars
        st.integers(0, 28),  # days after the release
        st.integers(0, 8),  # how many entries before the last an undo goes for
    ),
    max_size=14,
)


def step(book: Book, rows: Rows, batch: str, what: str, bars: int, days: int, back: int) -> None:
    """One thing she might type, sensible or not."""
    on = RELEASED + timedelta(days=days)
    if what == "out":
        stall_out(book, "quay", {batch: bars}, on=on)
    elif what == "back":
        stall_back(book, "quay", {batch: bars}, on=on, takings_minor=bars * 100)
    elif what == "dispatch":
        dispatch(book, "ropewalk", {batch: bars}, on=on, price_minor=450, note=None)
    elif what == "gift":
        gift(book, {batch: bars}, to="a neighbour", on=on)
    elif what == "return":
        take_back(book, {batch: bars}, customer="ropewalk", stall=None, on=on, reason=None)
    elif what == "waste":
        waste_lot(book, batch, bars, place=None, on=on, reason="chipped")
    elif what == "count":
        count_lot(book, batch, bars, place=None, on=on, note=None)
    else:
        last = rows.execute("SELECT max(id) FROM entry").fetchone()[0]
        undo(book, last - back)


@pytest.fixture
def base(shop: Any) -> tuple[bytes, str]:
    """The worked shop with a stall and a shop to sell to, as bytes to start each run from."""
    add_stall(shop.book, "quay")
    add_customer(shop.book, CustomerDetails("The Ropewalk"), kind="shop", code="ropewalk")
    shop.book.close()
    return shop.book.path.read_bytes(), shop.batch


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(steps=STEPS)
def test_any_sequence_leaves_a_sound_ledger(base: tuple[bytes, str], steps: list[tuple[str, int, int, int]]) -> None:
    start, batch = base
    with TemporaryDirectory() as folder:
        path = Path(folder) / "soap.db"
        path.write_bytes(start)
        book = Book(path, who="Nuala", now=lambda: datetime(2026, 6, 1, 9, 30, tzinfo=UTC))
        rows = open_rows(path)
        for what, bars, days, back in steps:
            before = path.read_bytes()
            try:
                step(book, rows, batch, what, bars, days, back)
            except (Refused, BadInput):
                assert path.read_bytes() == before  # a refusal writes nothing at all
        book.close()
        assert check(rows).findings == ()
        # Ten bars were cut, and every one of them is somewhere: here, gone, or missing at a count.
        lot = find_lot(rows, batch)
        assert sum(one.count for one in bar_counts(rows, [lot.id])) == 10
        rows.close()
