"""An entry is taken back by another one, unless something stands on it."""

from datetime import date
from typing import Any

import pytest
from shop import erase_customer

from ledger.errors import BadInput, Refused
from ledger.operations.house.setup import Setup, set_up
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.stall_back import stall_back
from ledger.operations.sell.stall_out import stall_out
from ledger.operations.sell.take_back import take_back
from ledger.operations.stock.lots import count_lot, decide_lots, waste_lot
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, receive
from ledger.rows.history import last_entry
from ledger.rows.lot import find_lot
from ledger.rows.opened import open_rows
from ledger.rows.settings import settings
from ledger.storage.book import Book

TODAY = date(2026, 6, 1)


def entry_of(book: Book, verb: str) -> int:
    """The latest entry of a verb that is no undo."""
    rows = open_rows(book.path)
    return int(rows.execute("SELECT max(id) FROM entry WHERE verb = ?", (verb,)).fetchone()[0])


def on_hand(book: Book, code: str) -> int:
    return find_lot(open_rows(book.path), code).on_hand


def clean(book: Book) -> bool:
    return check(open_rows(book.path)).findings == ()


def test_what_was_thrown_away_by_mistake_is_there_again(shop: Any) -> None:
    waste_lot(shop.book, shop.olive, 400_000, place=None, on=TODAY, reason="spilt")
    assert on_hand(shop.book, shop.olive) == 4_000_000  # 5 kg came, 600 g were used, 400 g spilt
    undone = undo(shop.book, entry_of(shop.book, "lot waste"))
    assert undone.said.startswith("Threw away")
    assert on_hand(shop.book, shop.olive) == 4_400_000
    assert clean(shop.book)


def test_both_entries_stay_to_be_read(shop: Any) -> None:
    waste_lot(shop.book, shop.olive, 400_000, place=None, on=TODAY, reason="spilt")
    number = entry_of(shop.book, "lot waste")
    undo(shop.book, number)
    rows = open_rows(shop.book.path)
    found = rows.execute("SELECT entry_id - ?, quantity FROM movement WHERE kind = 'wasted' ORDER BY id", (number,))
    assert [tuple(row) for row in found] == [(0, -400_000), (1, 400_000)]


def test_a_receipt_that_a_batch_used_is_not_undone_and_the_batch_is_named(shop: Any) -> None:
    before = shop.book.path.read_bytes()
    with pytest.raises(Refused, match=f"batch {shop.batch} depends on it"):
        undo(shop.book, entry_of(shop.book, "receive"))
    assert shop.book.path.read_bytes() == before


def test_a_receipt_that_was_only_accepted_can_be_undone(shop: Any) -> None:
    note = DeliveryNote("tarnlow", TODAY, (DeliveryLine("olive oil", 1_000_000, "X1", 700),))
    (lot,) = receive(shop.book, note)
    decide_lots(shop.book, [lot.code], verdict="accepted", on=TODAY, by="Nuala", reason=None)
    undo(shop.book, entry_of(shop.book, "receive"))
    assert clean(shop.book)
    with pytest.raises(BadInput, match=f"no lot {lot.code}"):
        find_lot(open_rows(shop.book.path), lot.code)


def test_a_lot_code_once_given_is_never_given_again(shop: Any) -> None:
    note = DeliveryNote("tarnlow", TODAY, (DeliveryLine("olive oil", 1_000_000, "X1", 700),))
    (first,) = receive(shop.book, note)
    undo(shop.book, entry_of(shop.book, "receive"))
    (second,) = receive(shop.book, note)
    assert second.code != first.code


def test_a_weighing_is_not_undone_once_the_bars_are_cut(shop: Any) -> None:
    with pytest.raises(Refused, match=f"lot {shop.batch}"):
        undo(shop.book, entry_of(shop.book, "batch log"))


def test_a_decision_is_followed_by_another_and_not_undone(shop: Any) -> None:
    decide_lots(shop.book, [shop.olive], verdict="on hold", on=TODAY, by="Nuala", reason="smells off")
    for verb in ("lot on hold", "pass", "release"):
        with pytest.raises(Refused, match="is a decision"):
            undo(shop.book, entry_of(shop.book, verb))


def test_the_cut_of_released_bars_is_not_undone(shop: Any) -> None:
    with pytest.raises(Refused, match="lot count"):
        undo(shop.book, entry_of(shop.book, "batch cut"))


def test_bars_taken_to_a_stall_come_back_on_the_undo_but_not_after_the_day_is_closed(shop: Any) -> None:
    add_stall(shop.book, "Quay market")
    stall_out(shop.book, "Quay market", {shop.batch: 6}, on=date(2026, 5, 9))
    out = entry_of(shop.book, "stall out")
    stall_back(shop.book, "Quay market", {shop.batch: 2}, on=date(2026, 5, 9), takings_minor=2200)
    back = entry_of(shop.book, "stall back")
    with pytest.raises(Refused, match=rf"entry {back} \(Sale 1: back from Quay market"):
        undo(shop.book, out)
    undo(shop.book, back)
    undo(shop.book, out)
    assert on_hand(shop.book, shop.batch) == 10
    assert clean(shop.book)


def test_a_dispatch_is_not_undone_while_its_bars_came_back(shop: Any) -> None:
    add_customer(shop.book, CustomerDetails("The Ropewalk"), kind="shop", code="ropewalk")
    dispatch(shop.book, "ropewalk", {shop.batch: 5}, on=date(2026, 5, 10), price_minor=450, note=None)
    sent = entry_of(shop.book, "dispatch")
    take_back(shop.book, {shop.batch: 1}, customer="ropewalk", stall=None, on=date(2026, 5, 20), reason="crumbled")
    returned = entry_of(shop.book, "return")
    with pytest.raises(Refused, match=f"entry {returned}"):
        undo(shop.book, sent)
    undo(shop.book, returned)
    undo(shop.book, sent)
    assert on_hand(shop.book, shop.batch) == 10
    assert clean(shop.book)


def test_money_is_taken_back_with_the_bars(shop: Any) -> None:
    add_customer(shop.book, CustomerDetails("The Ropewalk"), kind="shop", code="ropewalk")
    dispatch(shop.book, "ropewalk", {shop.batch: 5}, on=date(2026, 5, 10), price_minor=450, note=None)
    undo(shop.book, entry_of(shop.book, "dispatch"))
    rows = open_rows(shop.book.path)
    assert rows.execute("SELECT count(*) FROM sale_line WHERE gross_minor = 2250").fetchone()[0] == 1
    assert rows.execute("SELECT count(*) FROM live_sale_line").fetchone()[0] == 0


def test_a_count_that_found_more_is_not_undone_once_that_was_used(shop: Any) -> None:
    count_lot(shop.book, shop.olive, 4_500_000, place=None, on=TODAY, note=None)  # 100 g more than booked
    counted = entry_of(shop.book, "lot count")
    waste_lot(shop.book, shop.olive, 4_450_000, place=None, on=TODAY, reason="rancid")
    with pytest.raises(Refused, match="Threw away"):
        undo(shop.book, counted)


def test_an_undo_is_not_undone_and_nothing_is_undone_twice(shop: Any) -> None:
    waste_lot(shop.book, shop.olive, 1000, place=None, on=TODAY, reason="spilt")
    number = entry_of(shop.book, "lot waste")
    undo(shop.book, number)
    with pytest.raises(Refused, match="taken back already"):
        undo(shop.book, number)
    with pytest.raises(Refused, match="itself an undo"):
        undo(shop.book, number + 1)


def test_the_start_and_an_erasure_are_not_undone(shop: Any) -> None:
    with pytest.raises(Refused, match="soapledger init"):
        undo(shop.book, 1)
    add_customer(shop.book, CustomerDetails("Orla Fenn"), kind="person", code="orla")
    erase_customer(shop.book, "orla", reason="asked")
    with pytest.raises(Refused, match="for good"):
        undo(shop.book, entry_of(shop.book, "customer erase"))


def test_a_change_of_settings_is_undone_to_what_stood_before(book: Book) -> None:
    set_up(book, Setup("Other Name", "IE", "EUR", "metric", "Europe/Dublin", {}))
    undo(book, 2)
    assert settings(open_rows(book.path)).business == "Tidewrack Soaps"


def test_an_entry_that_is_not_there_cannot_be_undone(book: Book) -> None:
    with pytest.raises(BadInput, match="soapledger history"):
        undo(book, 77)


def test_the_last_entry_is_the_last_that_still_counts(shop: Any) -> None:
    before = last_entry(open_rows(shop.book.path))
    waste_lot(shop.book, shop.olive, 1000, place=None, on=TODAY, reason="spilt")
    assert last_entry(open_rows(shop.book.path)) == before + 1
    undo(shop.book, before + 1)
    assert last_entry(open_rows(shop.book.path)) == before
