"""What is due of equipment and upkeep the day before, on the day and the day after; what a failed check touches."""

from datetime import date
from typing import Any

import pytest
from bare_ledger import BareLedger

from ledger.rows.equipment import checks_of, equipment_list, sole, upkeep_list
from ledger.views.tools.equipment_doubts import touched_since_last_good


@pytest.fixture
def ledger() -> BareLedger:
    """A scale that is tried every 10 days, entered on 2 March."""
    found = BareLedger()
    found.add("equipment", code="scale", kind="scale")
    found.add(
        "equipment_revision", equipment_id=1, name="bench scale", every_days=10, expected=500, tolerance=1, retired=0
    )
    found.close()
    return found


def tried(ledger: BareLedger, on: str, *, good: bool = True) -> int:
    figures = {"expected": 500, "found": 500 if good else 400, "tolerance": 1, "passed": int(good)}
    return ledger.add("equipment_check", equipment_id=1, on=on, by="Nuala", **figures)


@pytest.mark.parametrize(
    ("on", "why"),
    [
        ("2026-03-01", "never tried"),
        ("2026-03-02", None),
        ("2026-03-11", None),
        ("2026-03-12", "due today"),
        ("2026-03-13", "overdue"),
    ],
)
def test_a_scale_is_due_ten_days_after_its_last_good_check(ledger: BareLedger, on: str, why: str | None) -> None:
    """Tried on 2 March; 10 days later is the 12th."""
    tried(ledger, "2026-03-02")
    (one,) = equipment_list(ledger.rows, date.fromisoformat(on))
    assert one.why_due == why


def test_the_check_of_the_latest_day_is_the_last_whatever_was_booked_last(ledger: BareLedger) -> None:
    tried(ledger, "2026-03-09", good=False)
    tried(ledger, "2026-03-05")
    assert [one.on.day for one in checks_of(ledger.rows, 1)] == [5, 9]
    (one,) = equipment_list(ledger.rows, date(2026, 3, 9))
    assert one.why_due == "failed its last check"


@pytest.mark.parametrize(("on", "there"), [("2026-03-01", True), ("2026-03-02", False), ("2026-03-03", False)])
def test_what_was_retired_on_a_day_is_gone_from_that_day_on(ledger: BareLedger, on: str, there: bool) -> None:
    """Entered and retired on 2 March; what was not entered yet counts from before it was."""
    ledger.add("equipment_revision", equipment_id=1, name="bench scale", retired=1)
    ledger.close()
    assert (sole(ledger.rows, "scale", date.fromisoformat(on)) is not None) is there


def touched(ledger: BareLedger, check: int) -> Any:
    (item,) = equipment_list(ledger.rows, date(2026, 3, 31))
    return touched_since_last_good(ledger.rows, item, next(one for one in checks_of(ledger.rows, 1) if one.id == check))


def line(ledger: BareLedger, batch: int, number: int, lot: int, *, role: str, on: str, quantity: int = 1000) -> None:
    """A line of a batch, weighed on a day."""
    bounds = {"target": quantity, "low": quantity, "high": quantity}
    row = ledger.add(
        "plan_line", batch_id=batch, number=number, role=role, material_id=1, lot_id=lot, stage="in the fats", **bounds
    )
    ledger.move(lot, -quantity, "consumed", on=on, batch_id=batch, plan_line_id=row)


@pytest.mark.parametrize(("on", "lines"), [("2026-03-08", ()), ("2026-03-09", (1,)), ("2026-03-10", (1,))])
def test_a_failed_check_touches_what_was_weighed_up_to_its_day(
    ledger: BareLedger, on: str, lines: tuple[int, ...]
) -> None:
    """Weighed on 9 March; the wrapping, which is counted, is no weighing."""
    batch, _ = ledger.make("cold", [])
    line(ledger, batch, 1, ledger.buy("A"), role="fat", on="2026-03-09")
    line(ledger, batch, 2, ledger.buy("W", material="band"), role="packaging", on="2026-03-09", quantity=10)
    found = touched(ledger, tried(ledger, on, good=False))
    assert tuple(number for one in found.batches for number in one.lines) == lines


def test_a_good_check_and_a_failed_one_of_one_day(ledger: BareLedger) -> None:
    """The good one was booked in the entry of the first weighing, so only the second stands after it."""
    oil = ledger.buy("A")
    batches = [ledger.make("cold", [])[0] for _ in range(2)]
    line(ledger, batches[0], 1, oil, role="fat", on="2026-03-09")
    tried(ledger, "2026-03-09")
    ledger.close()
    line(ledger, batches[1], 1, oil, role="fat", on="2026-03-09")
    found = touched(ledger, tried(ledger, "2026-03-09", good=False))
    assert found.since == date(2026, 3, 9)
    assert [one.code for one in found.batches] == [ledger.code("batch", batches[1])]


def test_a_reading_that_was_corrected_counts_as_corrected() -> None:
    """Read on 2 March, and corrected as read on the 20th, after the check of the 9th."""
    ledger = BareLedger()
    ledger.add("equipment", code="dial", kind="thermometer")
    ledger.add("equipment_revision", equipment_id=1, name="dial", retired=0)
    ledger.make("cold", [ledger.buy("A")])
    reading = {"batch_id": 1, "on": "2026-03-02", "unit": "milli-C", "equipment_id": 1}
    first = ledger.add("reading", what="lye temperature", value=48_000, **reading)
    ledger.close()
    check = tried(ledger, "2026-03-09", good=False)
    assert [one.readings for one in touched(ledger, check).batches] == [("lye temperature",)]
    ledger.add("reading", what="lye temperature", value=49_000, **{**reading, "on": "2026-03-20"}, corrects=first)
    assert touched(ledger, check).batches == ()


@pytest.mark.parametrize(
    ("on", "state"),
    [
        ("2026-03-01", None),
        ("2026-03-02", "coming"),
        ("2026-03-11", "coming"),
        ("2026-03-12", "due today"),
        ("2026-03-13", "overdue"),
    ],
)
def test_upkeep_is_noted_from_its_day_and_due_on_the_day_that_was_named(on: str, state: str | None) -> None:
    ledger = BareLedger()
    ledger.add("upkeep", kind="cleaning", on="2026-03-02", by="Nuala", what="moulds", next_on="2026-03-12")
    found = upkeep_list(ledger.rows, date.fromisoformat(on))
    assert [one.state for one in found] == ([state] if state else [])
