"""Decisions about a lot, counts and waste."""

from datetime import date
from typing import Any

import pytest

from ledger.errors import BadInput, Refused
from ledger.operations.bench.plan import PlanRequest, plan_batch
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.sell.stall_out import stall_out
from ledger.operations.stock.lots import count_lot, decide_lots, waste_lot
from ledger.rows.lot import find_lot, whereabouts

ON = date(2026, 6, 1)


def decide(shop: Any, verdict: str, *codes: str, on: date = ON, reason: str | None = "smells") -> list[str]:
    lots = decide_lots(shop.book, codes or [shop.olive], verdict=verdict, on=on, by="Nuala", reason=reason)
    return [lot.code for lot in lots]


def entries(shop: Any) -> int:
    return int(shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0])


def last_said(shop: Any) -> str:
    return str(shop.rows().execute("SELECT said FROM entry ORDER BY id DESC LIMIT 1").fetchone()[0])


def test_a_lot_on_hold_is_not_planned_with_until_it_is_accepted_again(shop: Any) -> None:
    decide(shop, "on hold")
    with pytest.raises(Refused, match="olive oil"):
        plan_batch(shop.book, PlanRequest("plain-bar", ON))
    decide(shop, "accepted", reason="the smell was the cupboard")
    assert plan_batch(shop.book, PlanRequest("plain-bar", ON))


def test_bars_are_held_by_their_batch_code_and_released_not_accepted(shop: Any) -> None:
    decide(shop, "on hold", shop.batch)
    assert find_lot(shop.rows(), shop.batch).status == "on hold"
    with pytest.raises(Refused, match=f"soapledger release {shop.batch}"):
        decide(shop, "accepted", shop.batch)


@pytest.mark.parametrize("verdict", ["rejected", "on hold"])
def test_a_verdict_against_a_lot_needs_a_reason(shop: Any, verdict: str) -> None:
    with pytest.raises(BadInput, match="--reason"):
        decide(shop, verdict, reason=None)


@pytest.mark.parametrize("verdict", ["rejected", "on hold"])
def test_accepting_it_all_the_same_needs_one_too(shop: Any, verdict: str) -> None:
    decide(shop, verdict)
    with pytest.raises(BadInput, match=f"is {verdict}; to accept it all the same, say why"):
        decide(shop, "accepted", reason=None)


def test_what_is_accepted_already_is_left_as_it_is(shop: Any) -> None:
    before = entries(shop)
    assert decide(shop, "accepted", reason=None) == []
    assert entries(shop) == before
    decide(shop, "on hold", shop.coconut)
    assert decide(shop, "accepted", shop.olive, shop.coconut) == [shop.coconut]


def test_one_bad_code_among_several_decides_nothing(shop: Any) -> None:
    # MOD 11-2 over 99: (9 x 2 + 9) x 2 = 54, 54 mod 11 = 10, 12 - 10 = 2; well formed, and not there
    with pytest.raises(BadInput, match="no lot L99-2"):
        decide(shop, "on hold", shop.olive, "L99-2")
    assert find_lot(shop.rows(), shop.olive).status == "accepted"


def test_no_decision_is_dated_before_the_lot_came(shop: Any) -> None:
    with pytest.raises(BadInput, match="not there before 2 Mar 2026"):
        decide(shop, "on hold", on=date(2026, 3, 1))


def test_an_older_date_does_not_lift_a_newer_hold_unseen(shop: Any) -> None:
    decide(shop, "on hold", on=date(2026, 5, 20))
    with pytest.raises(Refused, match="on hold since 20 May 2026"):
        decide(shop, "accepted", on=date(2026, 5, 19))
    assert decide(shop, "accepted", on=date(2026, 5, 20)) == [shop.olive]


def test_a_count_books_the_difference_either_way(shop: Any) -> None:
    # 5 000 g came and 600 g went into the batch: 4 400 g are booked
    assert count_lot(shop.book, shop.olive, 4_382_500, place=None, on=ON, note=None) == -17_500
    assert last_said(shop) == f"Counted lot {shop.olive} in the workshop: 17.5 g missing."
    assert count_lot(shop.book, shop.olive, 4_392_500, place=None, on=ON, note="found the jug") == 10_000
    assert find_lot(shop.rows(), shop.olive).on_hand == 4_392_500


def test_a_count_that_agrees_moves_nothing_and_is_remembered(shop: Any) -> None:
    assert count_lot(shop.book, shop.olive, 4_400_000, place=None, on=ON, note=None) == 0
    assert last_said(shop).endswith("as booked.")
    assert not shop.rows().execute("SELECT 1 FROM movement WHERE kind = 'counted'").fetchone()


def test_a_count_on_an_earlier_day_goes_by_what_was_there_then(shop: Any) -> None:
    # before the batch of 1 Apr there were 5 000 g
    assert count_lot(shop.book, shop.olive, 4_990_000, place=None, on=date(2026, 3, 31), note=None) == -10_000
    assert find_lot(shop.rows(), shop.olive).on_hand == 4_390_000


def test_nothing_is_counted_before_it_came(shop: Any) -> None:
    with pytest.raises(BadInput, match="not there before 2 Mar 2026"):
        count_lot(shop.book, shop.olive, 1000, place=None, on=date(2026, 3, 1), note=None)


def test_bars_at_a_stall_are_counted_there(shop: Any) -> None:
    add_stall(shop.book, "Quay market")
    stall_out(shop.book, "Quay market", {shop.batch: 4}, on=ON)
    assert count_lot(shop.book, shop.batch, 3, place="quay", on=ON, note=None) == -1
    rows = shop.rows()
    held = {place.name: number for place, number in whereabouts(rows, find_lot(rows, shop.batch).id)}
    assert held == {"workshop": 6, "Quay market": 3}


def test_waste_returns_the_lot_as_it_stands_after(shop: Any) -> None:
    lot = waste_lot(shop.book, shop.olive, 400_000, place=None, on=ON, reason="spilt")
    assert lot.on_hand == 4_000_000
    assert last_said(shop) == f"Threw away 400 g of lot {shop.olive}: spilt."


def test_more_than_is_there_is_refused_with_the_figures(shop: Any) -> None:
    with pytest.raises(Refused, match=r"holds 4.400 g in the workshop, and 4.400\.1 g was asked for"):
        waste_lot(shop.book, shop.olive, 4_400_100, place=None, on=ON, reason="spilt")
    with pytest.raises(Refused, match="holds 10 in the workshop, and 11 was asked for"):
        waste_lot(shop.book, shop.batch, 11, place=None, on=ON, reason="cracked")


def test_nothing_is_not_waste(shop: Any) -> None:
    with pytest.raises(BadInput, match="write how much"):
        waste_lot(shop.book, shop.olive, 0, place=None, on=ON, reason="spilt")


def test_an_unknown_place_is_bad_input(shop: Any) -> None:
    with pytest.raises(BadInput, match="No place is called 'attic'"):
        waste_lot(shop.book, shop.olive, 1000, place="attic", on=ON, reason="spilt")


def test_all_that_is_there_may_be_thrown_away_and_no_milligram_more(shop: Any) -> None:
    """Of 5 kg 600 g went into the batch."""
    with pytest.raises(Refused, match="nothing was written"):
        waste_lot(shop.book, shop.olive, 4_400_001, place=None, on=ON, reason="spilt")
    assert waste_lot(shop.book, shop.olive, 4_400_000, place=None, on=ON, reason="spilt").on_hand == 0


def test_a_lot_is_there_from_the_day_it_came(shop: Any) -> None:
    came, before = date(2026, 3, 2), date(2026, 3, 1)
    with pytest.raises(BadInput, match="not there before 2 Mar 2026"):
        waste_lot(shop.book, shop.olive, 1000, place=None, on=before, reason="spilt")
    with pytest.raises(BadInput, match="not there before 2 Mar 2026"):
        decide(shop, "accepted", shop.olive, on=before)
    waste_lot(shop.book, shop.olive, 1000, place=None, on=came, reason="spilt")
    assert decide(shop, "on hold", on=came) == [shop.olive]
