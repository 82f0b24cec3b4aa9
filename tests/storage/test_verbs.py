"""Lots come to be, move and change places: whole sets in one statement a table, as if written row by row."""

import shutil
from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import Engine, event

from ledger.errors import Refused
from ledger.rows.lot import find_lot, place_of_kind
from ledger.storage.book import Book
from ledger.storage.tables.customer import Customer
from ledger.storage.tables.decision import Decision
from ledger.storage.tables.stock import Delivery, Lot, Movement, Place
from ledger.storage.transaction import Transaction
from ledger.storage.verbs import FirstDecision, LotFigures, Moved, NewLot

ON = date(2026, 5, 20)
LAST = 5  # the worked shop has four lots that came and one of bars
MOVED = """
SELECT lot_id, place_id, "on", quantity, kind, batch_id, plan_line_id, customer_id, money_minor, note FROM movement
"""


@pytest.fixture
def inserts() -> Iterator[list[str]]:
    """Every INSERT handed to the file, as the table that it names, but for what is drawn by lot for each entry."""
    seen: list[str] = []

    def note(_c: Any, _cursor: Any, statement: str, *_: Any) -> None:
        if statement.startswith("INSERT INTO ") and statement.split()[2] != "entry_salt":
            seen.append(statement.split()[2])

    event.listen(Engine, "before_cursor_execute", note)
    yield seen
    event.remove(Engine, "before_cursor_execute", note)


def written(shop: Any, do: Callable[[Transaction], object]) -> int:
    """Run it as one entry; returns the last movement there was before."""
    last = int(shop.rows().execute("SELECT max(id) FROM movement").fetchone()[0])
    with shop.book.write("try") as tx:
        do(tx)
        tx.say("Tried.")
    return last


def moved_after(shop: Any, last: int) -> list[tuple[Any, ...]]:
    return [tuple(row) for row in shop.rows().execute(f"{MOVED} WHERE id > ? ORDER BY id", (last,))]


def test_what_a_delivery_brought_is_there_with_its_movement_and_its_decision(shop: Any) -> None:
    oil = NewLot("L7-9", 1, 900_000, "LOT 44-72", date(2027, 5, 1), 700, figures=LotFigures(188_000, 190_000))
    lye = NewLot("L8-7", 3, 500_000, decided=FirstDecision("on hold", "Nuala", "bag torn"), note="by the door")
    numbers: list[int] = []
    last = written(
        shop, lambda tx: numbers.extend(tx.open_lots([oil, lye], place_id=1, on=ON, delivery_id=1, supplier_id=1))
    )
    assert numbers == [LAST + 1, LAST + 2]
    plain = (None,) * 4
    assert moved_after(shop, last) == [
        (LAST + 1, 1, "2026-05-20", 900_000, "received", *plain, None),
        (LAST + 2, 1, "2026-05-20", 500_000, "received", *plain, "by the door"),
    ]
    rows = shop.rows()
    first, second = find_lot(rows, "L7-9"), find_lot(rows, "L8-7")
    assert (first.status, first.on_hand, first.cost_minor, first.supplier) == (
        "quarantine",
        900_000,
        700,
        "Tarnlow Oils",
    )
    assert (first.sap_low_mg_per_kg, first.sap_high_mg_per_kg, first.best_before) == (
        188_000,
        190_000,
        date(2027, 5, 1),
    )
    assert (second.status, second.on_hand, second.cost_minor) == ("on hold", 500_000, None)
    keys = rows.execute("SELECT supplier_number_key FROM lot WHERE id > ? ORDER BY id", (LAST,))
    assert [row[0] for row in keys] == ["4472", None]  # as quoted by telephone; none where the number is not known
    decided = rows.execute('SELECT lot_id, verdict, "on", by, reason FROM decision WHERE lot_id > ?', (LAST,))
    assert [tuple(row) for row in decided] == [(LAST + 2, "on hold", "2026-05-20", "Nuala", "bag torn")]


def test_what_a_batch_gave_is_a_yield_of_that_batch(shop: Any) -> None:
    last = written(shop, lambda tx: tx.open_lots([NewLot("L7-9", 1, 40_000)], place_id=1, on=ON, batch_id=1))
    assert moved_after(shop, last) == [(LAST + 1, 1, "2026-05-20", 40_000, "yielded", 1, None, None, None, None)]
    assert find_lot(shop.rows(), "L7-9").batch_code == shop.batch


def test_what_moves_keeps_its_order_and_what_it_is_for(shop: Any) -> None:
    olive, bars = find_lot(shop.rows(), shop.olive).id, find_lot(shop.rows(), shop.batch).id
    gone = [Moved(olive, -20_000, batch_id=1, plan_line_id=2), Moved(bars, -3, money_minor=1800, note="a wedding")]

    def do(tx: Transaction) -> None:
        tx.add(Customer(code="orla", kind="person"))
        tx.move([Moved(bars, -1, customer_id=1)], "given", place_id=1, on=ON)
        tx.move(gone, "wasted", place_id=1, on=ON)

    assert moved_after(shop, written(shop, do)) == [
        (bars, 1, "2026-05-20", -1, "given", None, None, 1, None, None),
        (olive, 1, "2026-05-20", -20_000, "wasted", 1, 2, None, None, None),
        (bars, 1, "2026-05-20", -3, "wasted", None, None, None, 1800, "a wedding"),
    ]


def test_a_transfer_is_two_movements_a_lot_that_cancel_out(shop: Any) -> None:
    rows = shop.rows()
    olive, bars = find_lot(rows, shop.olive).id, find_lot(rows, shop.batch).id
    there = place_of_kind(rows, "retained").id
    last = written(
        shop, lambda tx: tx.transfer([(bars, 2), (olive, 50)], source_id=1, target_id=there, on=ON, note="kept")
    )
    assert [row[:5] for row in moved_after(shop, last)] == [
        (bars, 1, "2026-05-20", -2, "moved"),
        (bars, there, "2026-05-20", 2, "moved"),
        (olive, 1, "2026-05-20", -50, "moved"),
        (olive, there, "2026-05-20", 50, "moved"),
    ]
    assert {row[-1] for row in moved_after(shop, last)} == {"kept"}


def test_of_nothing_nothing_is_written(shop: Any, inserts: list[str]) -> None:
    def do(tx: Transaction) -> None:
        assert list(tx.open_lots([], place_id=1, on=ON, delivery_id=1)) == []
        tx.move([], "sold", place_id=1, on=ON)
        tx.transfer([], source_id=1, target_id=2, on=ON)

    assert moved_after(shop, written(shop, do)) == []
    assert inserts == ["entry"]


def test_where_one_of_a_set_may_not_go_none_of_it_went(shop: Any) -> None:
    rows = shop.rows()
    olive, coconut = find_lot(rows, shop.olive), find_lot(rows, shop.coconut)
    too_much = [Moved(olive.id, -1), Moved(coconut.id, -coconut.on_hand - 1)]
    with pytest.raises(Refused, match="more than was on hand"):
        written(shop, lambda tx: tx.move(too_much, "wasted", place_id=1, on=ON))
    assert find_lot(shop.rows(), shop.olive).on_hand == olive.on_hand


def test_many_lots_are_one_statement_a_table(shop: Any, inserts: list[str]) -> None:
    decided = FirstDecision("accepted", "Nuala")
    lots = [NewLot(f"L{n}-0", 1, 1000, decided=decided) for n in range(100, 400)]
    written(shop, lambda tx: tx.open_lots(lots, place_id=1, on=ON, delivery_id=1, supplier_id=1))
    assert inserts == ["lot", "movement", "decision", "entry"]
    assert shop.rows().execute("SELECT count(*), max(id) FROM lot").fetchone()[:] == (LAST + 300, LAST + 300)


def test_several_rows_are_handed_over_together_and_keep_their_order(book: Book, inserts: list[str]) -> None:
    with book.write("stall add") as tx:
        tx.add_all(Place(code=f"stall-{n}", name="Quay", kind="stall") for n in range(9, 0, -1))
        known = tx.rows.execute("SELECT code FROM place WHERE kind = 'stall' ORDER BY id")
        assert [row[0] for row in known] == [f"stall-{n}" for n in range(9, 0, -1)]
        tx.say("Added nine stalls.")
    assert inserts == ["place", "entry"]


def test_a_set_is_written_as_the_same_rows_one_by_one(
    shop: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("ledger.storage.transaction.secrets.token_hex", lambda _: "the same lot")
    shutil.copyfile(shop.book.path, tmp_path / "by-hand.db")
    by_hand = Book(tmp_path / "by-hand.db", who=shop.book.who, now=shop.book._now)
    with shop.book.write("receive") as tx:
        came = tx.add(Delivery(supplier_id=1, on=ON)).id
        lot = NewLot("L7-9", 1, 10_000, "A 7", decided=FirstDecision("accepted", "Nuala"))
        numbers = tx.open_lots([lot], place_id=1, on=ON, delivery_id=came, supplier_id=1)
        tx.move([Moved(numbers[0], -4_000, note="spilt")], "wasted", place_id=1, on=ON)
        tx.say("Received.")
    with by_hand.write("receive") as tx:
        came = tx.add(Delivery(supplier_id=1, on=ON)).id
        new = tx.add(
            Lot(
                code="L7-9",
                material_id=1,
                on=ON,
                delivery_id=came,
                supplier_id=1,
                supplier_number="A 7",
                supplier_number_key="a7",
            )
        )
        assert new.id is not None
        tx.add(Movement(lot_id=new.id, place_id=1, on=ON, quantity=10_000, kind="received"))
        tx.add(Decision(lot_id=new.id, verdict="accepted", on=ON, by="Nuala"))
        tx.add(Movement(lot_id=new.id, place_id=1, on=ON, quantity=-4_000, kind="wasted", note="spilt"))
        tx.say("Received.")
    by_hand.close()
    assert shop.book.handed_over[-1] == by_hand.handed_over[-1]  # the number and the digest over all rows
