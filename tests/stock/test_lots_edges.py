"""What of a lot may be planned with, and what is said of it, on the day, the day before and the day after."""

from datetime import date

import pytest
from bare_ledger import BareLedger

from ledger.rows.codes import came_before
from ledger.rows.lot import available, lot_by_id, on_hand_at, planned_use
from ledger.units.codes import batch_code

OIL, SOAP, BAND, WORKSHOP = 1, 3, 5, 1


def free(ledger: BareLedger, on: str, **more: int) -> list[tuple[int, int]]:
    """(lot, what is free of it), the first to be taken first."""
    found = available(ledger.rows, OIL, on=date.fromisoformat(on), **more)
    return [(one.lot.id, one.free) for one in found]


def meant(ledger: BareLedger, lot: int, target: int, *, batch: int | None = None, material: int = OIL) -> int:
    """A line of a batch that means to take so much of a lot; returns the batch."""
    if batch is None:
        batch = ledger.add("batch", code=batch_code(2026, 900), process="cold", material_id=SOAP, on="2026-03-02")
    bounds = {"target": target, "low": target, "high": target}
    ledger.add(
        "plan_line",
        batch_id=batch,
        number=1,
        role="fat",
        material_id=material,
        lot_id=lot,
        stage="in the fats",
        **bounds,
    )
    return batch


@pytest.mark.parametrize(("on", "there"), [("2026-03-01", False), ("2026-03-02", True), ("2026-03-03", True)])
def test_a_lot_is_there_from_the_day_it_came(on: str, there: bool) -> None:
    ledger = BareLedger()
    lot = ledger.buy("A")
    assert free(ledger, on) == ([(lot, 1_000_000)] if there else [])


@pytest.mark.parametrize(("on", "there"), [("2026-03-02", False), ("2026-03-03", True)])
def test_a_lot_with_papers_dated_before_it_came_is_there_no_sooner(on: str, there: bool) -> None:
    """A lot of 3 March whose receipt and acceptance were booked for the 2nd."""
    ledger = BareLedger()
    lot = ledger.add("lot", code="L1-X", material_id=OIL, on="2026-03-03", supplier_id=1)
    ledger.decide(lot, "accepted", on="2026-03-02")
    ledger.move(lot, 1_000_000, "received", on="2026-03-02")
    assert free(ledger, on) == ([(lot, 1_000_000)] if there else [])


@pytest.mark.parametrize(("on", "good"), [("2026-03-09", True), ("2026-03-10", True), ("2026-03-11", False)])
def test_a_lot_is_good_on_the_day_it_is_best_before(on: str, good: bool) -> None:
    ledger = BareLedger()
    ledger.buy("A", best_before="2026-03-10")
    assert bool(free(ledger, on)) is good


@pytest.mark.parametrize(
    ("on", "status"),
    [
        ("2026-03-01", "quarantine"),
        ("2026-03-02", "accepted"),
        ("2026-03-09", "accepted"),
        ("2026-03-10", "on hold"),
        ("2026-03-11", "on hold"),
        ("2026-03-12", "accepted"),
        (None, "accepted"),
    ],
)
def test_the_latest_decision_up_to_a_day_is_the_status_on_it(on: str | None, status: str) -> None:
    ledger = BareLedger()
    lot = ledger.buy("A")
    ledger.decide(lot, "on hold", on="2026-03-10")
    ledger.decide(lot, "accepted", on="2026-03-12")
    assert lot_by_id(ledger.rows, lot, on=date.fromisoformat(on) if on else None).status == status


@pytest.mark.parametrize("on", ["2026-03-09", "2026-03-10", "2026-03-11"])
def test_what_is_held_now_is_not_planned_with_for_an_earlier_day_either(on: str) -> None:
    ledger = BareLedger()
    ledger.decide(ledger.buy("A"), "on hold", on="2026-03-10")
    assert free(ledger, on) == []


@pytest.mark.parametrize(
    ("on", "held"), [("2026-03-09", 1_000_000), ("2026-03-10", 999_000), ("2026-03-11", 999_000), (None, 999_000)]
)
def test_what_goes_on_a_day_is_gone_on_that_day(on: str | None, held: int) -> None:
    ledger = BareLedger()
    lot = ledger.buy("A")
    ledger.move(lot, -1000, "wasted", on="2026-03-10")
    day = date.fromisoformat(on) if on else None
    assert lot_by_id(ledger.rows, lot, on=day).on_hand == held
    assert on_hand_at(ledger.rows, lot, WORKSHOP, on=day) == held


def test_what_went_later_is_not_free_for_an_earlier_day() -> None:
    ledger = BareLedger()
    lot = ledger.buy("A")
    ledger.move(lot, -1000, "wasted", on="2026-03-20")
    assert free(ledger, "2026-03-10") == [(lot, 999_000)]


def test_what_a_batch_means_to_take_is_free_to_that_batch_alone() -> None:
    ledger = BareLedger()
    lot = ledger.buy("A")
    batch = meant(ledger, lot, 400_000)
    assert free(ledger, "2026-03-02") == [(lot, 600_000)]
    assert free(ledger, "2026-03-02", but_batch=batch) == [(lot, 1_000_000)]
    assert free(ledger, "2026-03-02", but_batch=batch + 1) == [(lot, 600_000)]


@pytest.mark.parametrize(("target", "left"), [(999_999, [1]), (1_000_000, []), (1_000_001, [])])
def test_a_lot_of_which_nothing_is_free_is_left_out(target: int, left: list[int]) -> None:
    ledger = BareLedger()
    meant(ledger, ledger.buy("A"), target)
    assert [quantity for _, quantity in free(ledger, "2026-03-02")] == left


def test_the_first_to_expire_goes_first_and_what_has_no_date_last() -> None:
    ledger = BareLedger()
    undated, late, soon = (
        ledger.buy("A"),
        ledger.buy("B", best_before="2026-12-31"),
        ledger.buy("C", best_before="2026-06-30"),
    )
    assert [lot for lot, _ in free(ledger, "2026-03-02")] == [soon, late, undated]


@pytest.mark.parametrize(("verdict", "still"), [("on hold", 20), ("passed", 0), ("rejected", 0)])
def test_wrapping_is_meant_until_the_bars_are_passed_bare_or_rejected(verdict: str, still: int) -> None:
    ledger = BareLedger()
    bands = ledger.buy("W", quantity=100, material="band")
    batch, (bars,) = ledger.make("cold", [ledger.buy("A")])
    meant(ledger, bands, 20, batch=batch, material=BAND)
    ledger.decide(bars, verdict)
    assert planned_use(ledger.rows, [bands]).get(bands, 0) == still


def test_a_batch_given_up_means_to_take_nothing() -> None:
    ledger = BareLedger()
    lot = ledger.buy("A")
    batch = meant(ledger, lot, 400_000)
    ledger.add("decision", batch_id=batch, verdict="discarded", on="2026-03-02", by="Nuala")
    assert planned_use(ledger.rows, [lot]).get(lot, 0) == 0


def test_a_line_whose_weighing_was_taken_back_is_meant_again() -> None:
    ledger = BareLedger()
    lot = ledger.buy("A")
    batch = meant(ledger, lot, 400_000)
    ledger.close()
    ledger.move(lot, -400_000, "consumed", batch_id=batch, plan_line_id=1)
    assert planned_use(ledger.rows, [lot]).get(lot, 0) == 0
    ledger.undo()
    assert planned_use(ledger.rows, [lot])[lot] == 400_000


def test_a_lot_goes_by_the_latest_name_of_its_material() -> None:
    ledger = BareLedger()
    lot = ledger.buy("A")
    ledger.add("material_revision", material_id=OIL, name="olive oil")
    assert lot_by_id(ledger.rows, lot).material == "olive oil"


def test_a_delivery_that_was_taken_back_did_not_come_before() -> None:
    ledger = BareLedger()
    ledger.close()
    ledger.buy("4471/2")
    assert came_before(ledger.rows, 1, "oil", "lot 4471-2") == ("L1-X",)
    ledger.undo()
    assert came_before(ledger.rows, 1, "oil", "lot 4471-2") == ()
