"""Whatever is counted by product, day after day, no bar of a batch is beyond what its recall names.

What really happened is drawn beside what is booked: which bars were taken, which came home, which were sold.
"""

from collections import Counter
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from market import bake
from shop import Shop, work_a_shop

from ledger.errors import BadInput, Refused
from ledger.operations.sell.stall_back import stall_back
from ledger.operations.sell.stall_out import stall_out
from ledger.rows.lot import find_lot
from ledger.rows.opened import Rows, open_rows
from ledger.storage.book import Book
from ledger.views.recall.recall_assumed import assumed_bars

START = date(2026, 5, 2)


@pytest.fixture
def base(shop: Shop, built: Any) -> tuple[bytes, list[str]]:
    """Three batches of one product and a stall."""
    assert shop  # what is built on
    path, made = built("three batches", lambda book: bake(book, {"Rosemary": 3}), built("shop", work_a_shop)[0])
    return path.read_bytes(), made["Rosemary"]


def drawn(data: st.DataObject, among: Counter[str], number: int) -> Counter[str]:
    """So many bars out of those, any of them."""
    bars = sorted(among.elements())
    picked = data.draw(st.permutations(bars))[:number] if bars else []
    return Counter(picked)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=25)
@given(data=st.data())
def test_no_bar_is_beyond_what_the_recall_of_its_batch_names(
    base: tuple[bytes, list[str]], data: st.DataObject
) -> None:
    start, codes = base
    with TemporaryDirectory() as folder:
        path = Path(folder) / "soap.db"
        path.write_bytes(start)
        book = Book(path, who="Nuala", now=lambda: datetime(2026, 7, 1, 9, 30, tzinfo=UTC))
        rows = open_rows(path)
        here, sold = Counter(dict.fromkeys(codes, 10)), Counter[str]()  # what really stands there and went
        for week in range(data.draw(st.integers(1, 3))):
            day = START + timedelta(7 * week)
            left = sum(here.values())
            if not left:
                break
            if data.draw(st.booleans()):  # by product
                number = data.draw(st.integers(1, left))
                stall_out(book, "saturday", {"rosemary": number}, on=day)
                out = drawn(data, here, number)
            else:  # by code, read from the bars; the books may think that there are fewer
                code = data.draw(st.sampled_from(sorted(here.keys())))
                number = data.draw(st.integers(1, max(1, here[code])))
                try:
                    stall_out(book, "saturday", {code: number}, on=day)
                except (Refused, BadInput):
                    continue
                out = Counter({code: number})
            home = drawn(data, out, data.draw(st.integers(0, sum(out.values()))))
            by_code = data.draw(st.booleans())
            try:
                told = _by_code(rows, out, home) if by_code else {"rosemary": sum(home.values())}
                stall_back(book, "saturday", told, on=day)
            except (Refused, BadInput):
                home = drawn(data, out, 0)
                stall_back(book, "saturday", {"rosemary": 0}, on=day)
            here = here - out + home
            sold += out - home
        book.close()
        for code in codes:
            lot = find_lot(rows, code).id
            booked = -rows.execute(
                "SELECT coalesce(sum(quantity), 0) FROM movement WHERE lot_id = ? AND kind = 'sold'", (lot,)
            ).fetchone()[0]
            named = sum(one.bars for one in assumed_bars(rows, [lot]) if one.on is not None)
            assert sold[code] <= booked + named, (code, sold, booked, named)
            held = rows.execute("SELECT coalesce(sum(quantity), 0) FROM movement WHERE lot_id = ?", (lot,)).fetchone()[
                0
            ]
            at_hand = sum(one.bars for one in assumed_bars(rows, [lot]) if one.on is None)
            assert here[code] <= held + at_hand
        rows.close()


def _by_code(rows: Rows, out: Counter[str], home: Counter[str]) -> dict[str, int]:
    """What came home, read from the bars; of every batch that is booked there a number."""
    standing = [
        row[0]
        for row in rows.execute(
            "SELECT l.code FROM movement v JOIN lot l ON l.id = v.lot_id JOIN place p ON p.id = v.place_id "
            "WHERE p.kind = 'stall' GROUP BY l.id HAVING sum(v.quantity) > 0"
        )
    ]
    return {code: home[code] for code in {*standing, *(code for code in out if home[code])}}
