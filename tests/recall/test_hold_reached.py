"""Everything a recall reaches and that is still here goes on hold, at once or not at all."""

from datetime import date
from typing import Any

import pytest

from ledger.errors import Refused
from ledger.operations.recall.hold_reached import hold_reached
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.sell.gift import gift
from ledger.operations.sell.stall_back import stall_back
from ledger.operations.sell.stall_out import stall_out
from ledger.operations.stock.lots import decide_lots
from ledger.rows.lot import find_lot
from ledger.views.recall.recall import RecallAnswer

ON = date(2026, 6, 1)


def hold(shop: Any) -> RecallAnswer:
    named = [find_lot(shop.rows(), shop.olive)]
    return hold_reached(shop.book, named, asked=["4471/2"], on=ON, by="Nuala", reason="rancid")


def decisions(shop: Any) -> int:
    return int(shop.rows().execute("SELECT count(*) FROM decision WHERE verdict = 'on hold'").fetchone()[0])


def test_the_drum_and_the_bars_are_held_and_the_rest_is_not(shop: Any) -> None:
    answer = hold(shop)
    rows = shop.rows()
    assert answer.held
    assert [one.status for one in answer.lots] == ["on hold"]  # read after the hold, in the same transaction
    assert [one.status for one in answer.batches] == ["on hold"]
    assert find_lot(rows, shop.batch).status == "on hold"
    assert find_lot(rows, shop.coconut).status == "accepted"
    with pytest.raises(Refused, match="on hold"):
        gift(shop.book, {shop.batch: 1}, to="a neighbour", on=ON)


def test_the_answer_names_the_entry_that_holds(shop: Any) -> None:
    last = shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0]
    answer = hold(shop)
    entry = shop.rows().execute("SELECT id, recorded_at, said FROM entry ORDER BY id DESC LIMIT 1").fetchone()
    assert (answer.printed_from.entry, answer.printed_from.recorded_at) == (last + 1, entry["recorded_at"])
    assert entry["said"] == f"Recall of 4471/2: put {shop.olive}, {shop.batch} on hold."


def test_what_is_on_hold_or_rejected_already_stays_as_it_is(shop: Any) -> None:
    decide_lots(shop.book, [shop.olive], verdict="rejected", on=ON, by="Nuala", reason="smells")
    hold(shop)
    assert decisions(shop) == 1
    hold(shop)
    assert decisions(shop) == 1
    assert find_lot(shop.rows(), shop.olive).status == "rejected"


def test_bars_that_all_stand_at_a_stall_are_held(shop: Any) -> None:
    add_stall(shop.book, "quay")
    stall_out(shop.book, "quay", {shop.batch: 10}, on=date(2026, 5, 9))
    hold(shop)
    assert find_lot(shop.rows(), shop.batch).status == "on hold"


def test_bars_that_are_all_sold_are_named_and_not_held(shop: Any) -> None:
    add_stall(shop.book, "quay")
    stall_out(shop.book, "quay", {shop.batch: 10}, on=date(2026, 5, 9))
    stall_back(shop.book, "quay", {shop.batch: 0}, on=date(2026, 5, 9), takings_minor=4500)
    answer = hold(shop)
    assert (answer.totals.sold, answer.totals.on_hand) == (10, 0)
    assert find_lot(shop.rows(), shop.batch).status == "released"
