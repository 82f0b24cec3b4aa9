"""The views and guards have a revision that rises with their text, and nothing of hers is taken out with them."""

import hashlib
import json
import sqlite3
from contextlib import closing
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from making import bring_up_to_date

from ledger.errors import Refused
from ledger.fileformat import LAID_REVISION, SCHEMA_VERSION, laid_revision_view
from ledger.rows.opened import open_rows
from ledger.storage import migrations
from ledger.storage.book import Book
from ledger.storage.migrations import laid_revision, migrate
from ledger.storage.verify import verify

# The digest of every view, guard and index of each revision. A text that differs takes a new revision, at the end.
REVISIONS = json.loads((Path(__file__).parent / "laid_revisions.json").read_text(encoding="utf-8"))


@cache
def new() -> sqlite3.Connection:
    """A new file in memory, only read."""
    raw = sqlite3.connect(":memory:", isolation_level=None)
    migrate(raw)
    return raw


def laid_digest() -> str:
    """SHA-256 over all that is laid into a new file, in the order of names."""
    found = (
        new()
        .execute("SELECT type, name, sql FROM sqlite_schema WHERE type <> 'table' AND sql IS NOT NULL ORDER BY name")
        .fetchall()
    )
    return hashlib.sha256(json.dumps([row for row in found if row[1] != "laid_revision"]).encode()).hexdigest()


def test_the_text_of_a_revision_never_changes() -> None:
    assert REVISIONS[str(LAID_REVISION)] == laid_digest(), (
        "what is laid differs: raise LAID_REVISION in fileformat.py and add its digest to laid_revisions.json"
    )


def set_revision(path: Path, revision: int) -> None:
    """As if a program of another revision had laid the file, with another view of what counts."""
    raw = sqlite3.connect(path, isolation_level=None)
    raw.execute("DROP VIEW laid_revision")
    raw.execute(laid_revision_view(revision))
    raw.execute("DROP VIEW live_lot")
    raw.execute("CREATE VIEW live_lot AS SELECT * FROM lot WHERE 0")
    raw.close()


def lots_seen(path: Path) -> int:
    rows = open_rows(path)
    try:
        return int(rows.execute("SELECT count(*) FROM live_lot").fetchone()[0])
    finally:
        rows.close()


@pytest.mark.parametrize("revision", [LAID_REVISION - 1, LAID_REVISION + 1])
def test_reading_goes_by_this_programs_views_whatever_the_file_holds(shop: Any, revision: int) -> None:
    seen = lots_seen(shop.book.path)
    set_revision(shop.book.path, revision)
    before = shop.book.path.read_bytes()
    assert seen == lots_seen(shop.book.path) == 5  # four delivered, and the bars
    assert shop.book.path.read_bytes() == before


def test_a_program_that_knows_less_refuses_to_write(shop: Any) -> None:
    set_revision(shop.book.path, LAID_REVISION + 1)
    before = shop.book.path.read_bytes()
    with pytest.raises(Refused, match="newer soapledger"):
        Book(shop.book.path, who="Nuala", now=shop.book._now)
    assert shop.book.path.read_bytes() == before


def test_a_check_finds_nothing_wrong_with_what_an_earlier_program_laid(shop: Any) -> None:
    """Its views, guards and indexes are laid anew before the next entry; its tables must be ours even so."""
    raw = sqlite3.connect(shop.book.path, isolation_level=None)
    raw.execute("DROP VIEW laid_revision")
    raw.execute(laid_revision_view(LAID_REVISION - 1))
    raw.execute("DROP INDEX lot_batch")
    with closing(open_rows(shop.book.path)) as rows:
        assert verify(rows) == ()
    raw.execute("ALTER TABLE lot ADD COLUMN extra TEXT")
    raw.execute("CREATE TRIGGER sly AFTER INSERT ON lot BEGIN SELECT 1; END")
    raw.close()
    with closing(open_rows(shop.book.path, any_schema=True)) as rows:
        found = {one.what for one in verify(rows)}
    assert {"the table lot was changed", "the trigger sly is not ours"} <= found


def test_a_program_that_knows_more_lays_its_own_before_it_writes(shop: Any) -> None:
    set_revision(shop.book.path, LAID_REVISION - 1)
    assert bring_up_to_date(shop.book.path) is None  # no row is touched, so no copy is made
    raw = sqlite3.connect(shop.book.path)
    assert laid_revision(raw) == LAID_REVISION
    assert raw.execute("SELECT count(*) FROM live_lot").fetchone()[0] == 5


@pytest.mark.parametrize("version", range(1, SCHEMA_VERSION + 1))
def test_an_upgrade_gives_the_schema_of_a_new_file_and_leaves_views_guards_and_indexes_of_hers(version: int) -> None:
    raw = sqlite3.connect(":memory:", isolation_level=None)
    migrate(raw, to=version)
    raw.execute("CREATE VIEW my_stock AS SELECT lot_id, sum(quantity) AS left FROM movement GROUP BY lot_id")
    raw.execute("CREATE INDEX my_notes ON movement (note)")
    raw.execute("CREATE TRIGGER my_guard BEFORE INSERT ON movement BEGIN SELECT 1; END")
    migrate(raw)
    query = "SELECT type, name, sql FROM sqlite_schema ORDER BY name"
    found = raw.execute(query).fetchall()
    hers = [row for row in found if row[1].startswith("my_")]
    assert {row[1] for row in hers} == {"my_stock", "my_notes", "my_guard"}
    assert [row for row in found if row not in hers] == new().execute(query).fetchall()
    assert raw.execute("SELECT * FROM my_stock").fetchall() == []


def test_an_index_written_otherwise_is_laid_anew(monkeypatch: pytest.MonkeyPatch) -> None:
    raw = sqlite3.connect(":memory:", isolation_level=None)
    migrate(raw)
    anew = "CREATE INDEX lot_batch ON lot (batch_id, id)"
    monkeypatch.setitem(migrations._INDEXES, "lot_batch", anew)
    migrate(raw)
    assert raw.execute("SELECT sql FROM sqlite_schema WHERE name = 'lot_batch'").fetchone()[0] == anew


def finding(path: Path) -> list[str]:
    with closing(open_rows(path)) as rows:
        return [one.what for one in verify(rows)]


def test_a_view_to_read_that_was_changed_or_taken_out_is_found(shop: Any) -> None:
    raw = sqlite3.connect(shop.book.path, isolation_level=None)
    text = raw.execute("SELECT sql FROM sqlite_schema WHERE name = 'sales'").fetchone()[0]
    raw.execute("DROP VIEW sales")
    assert finding(shop.book.path) == ["the view sales is missing"]
    raw.execute(text.replace("-v.quantity AS bars", "-2 * v.quantity AS bars"))
    assert finding(shop.book.path) == ["the view sales was changed"]
    raw.close()


@pytest.mark.parametrize("hers", ["CREATE VIEW sales AS SELECT 1 AS hers", "CREATE TABLE sales (hers TEXT)"])
def test_what_she_had_under_the_name_of_a_view_to_read_stays(shop: Any, hers: str) -> None:
    raw = sqlite3.connect(shop.book.path, isolation_level=None)
    for view in ("sales", "stock_now", "bars_now", "batches_made", "deliveries"):
        raw.execute(f"DROP VIEW {view}")
    raw.execute(hers)
    raw.execute("DROP VIEW laid_revision")
    raw.execute(laid_revision_view(2))  # the last one without such views
    bring_up_to_date(shop.book.path)
    assert raw.execute("SELECT sql FROM sqlite_schema WHERE name = 'sales'").fetchone()[0] == hers
    assert raw.execute("SELECT count(*) FROM bars_now").fetchone()[0] > 0
    assert finding(shop.book.path) == []
    raw.close()


@pytest.mark.parametrize(("currency", "money"), [("JPY", 1500.0), ("EUR", 15.0), ("KWD", 1.5)])
def test_money_in_the_views_has_the_decimals_of_its_currency(shop: Any, currency: str, money: float) -> None:
    """1500 of the smallest coin: 1500 yen, 15.00 euro, 1.500 dinar (ISO 4217)."""
    raw = sqlite3.connect(shop.book.path, isolation_level=None)
    raw.execute("DROP TRIGGER settings_revision_never_changed")
    raw.execute("DROP TRIGGER lot_never_changed")
    raw.execute("UPDATE settings_revision SET currency = ?", (currency,))
    raw.execute("UPDATE lot SET cost_minor = 1500")
    assert set(raw.execute("SELECT cost, currency FROM deliveries")) == {(money, currency)}
    raw.close()
