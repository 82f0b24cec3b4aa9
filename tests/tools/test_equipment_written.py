"""What a scale, a thermometer and a pH meter are tried against, and which batches a failed check touches."""

from datetime import date
from typing import Any

import pytest

from ledger.errors import BadInput, Refused
from ledger.operations.keep.undo import undo
from ledger.operations.tools.checks import add_check, check_equipment
from ledger.operations.tools.equipment import EquipmentDetails, add_equipment, revise_equipment
from ledger.rows.equipment import checks_of, due, equipment_by_code, equipment_list, sole

TODAY = date(2026, 6, 1)
SCALE = EquipmentDetails("bench scale", every_days=30, expected=500_000, tolerance=1000)


def add(shop: Any, details: EquipmentDetails = SCALE, kind: str = "scale") -> str:
    return add_equipment(shop.book, kind, details, on=TODAY)


def tried(shop: Any, found: int, on: date = TODAY, **more: Any) -> bool:
    return check_equipment(shop.book, "bench", found, on=on, by="Nuala", **more)


def test_it_passes_at_its_tolerance_and_fails_beyond_it(shop: Any) -> None:
    assert add(shop) == "bench-scale"
    assert tried(shop, 501_000)  # off by 1 g, as far as it may
    assert tried(shop, 499_000)
    assert not tried(shop, 501_001)
    assert tried(shop, 100_200, expected=100_000, tolerance=200)  # another weight, this once
    item = equipment_by_code(shop.rows(), "bench scale", TODAY)
    assert [one.passed for one in checks_of(shop.rows(), item.id)] == [True, True, False, True]
    assert item.last is not None
    assert (item.last.expected, item.last.found) == (100_000, 100_200)


def test_the_bench_may_add_a_check_to_its_own_entry(shop: Any) -> None:
    add(shop)
    item = equipment_by_code(shop.rows(), "bench", TODAY)
    with shop.book.write("batch log") as tx:
        assert add_check(tx, item.id, TODAY, "Nuala", 500_100)
        tx.say("Tried the scale.")
    assert [one.found for one in checks_of(shop.rows(), item.id)] == [500_100]


def test_what_it_is_tried_against_must_be_known(shop: Any) -> None:
    add(shop, EquipmentDetails("bench scale"))
    with pytest.raises(BadInput, match="--against"):
        tried(shop, 500_000)
    with pytest.raises(BadInput, match="--tolerance"):
        tried(shop, 500_000, expected=500_000)
    with pytest.raises(BadInput, match="equipment list"):
        add(shop)
    with pytest.raises(BadInput, match="1 or more"):
        add(shop, EquipmentDetails("other", every_days=0))


def test_a_retired_one_is_neither_due_nor_tried(shop: Any) -> None:
    add(shop)
    assert [one.why_due for one in due(shop.rows(), TODAY)] == ["never tried"]
    revise_equipment(shop.book, "bench", SCALE, on=TODAY, retired=True)
    assert due(shop.rows(), TODAY) == ()
    with pytest.raises(Refused, match="--in-use"):
        tried(shop, 500_000)


def test_a_check_taken_back_counts_no_more(shop: Any) -> None:
    add(shop)
    tried(shop, 400_000)
    undo(shop.book, shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0])
    assert [one.last for one in equipment_list(shop.rows(), TODAY)] == [None]


@pytest.mark.parametrize(
    ("last", "due_on"),
    [
        (date(2026, 1, 31), date(2026, 3, 2)),  # 28 days of February and 2 of March make 30
        (date(2028, 1, 31), date(2028, 3, 1)),  # a leap year: 29 and 1
        (date(2026, 4, 30), date(2026, 5, 30)),
    ],
)
def test_it_is_due_so_many_days_later(shop: Any, last: date, due_on: date) -> None:
    add(shop)
    tried(shop, 500_000, on=last)
    eve = date.fromordinal(due_on.toordinal() - 1)
    after = date.fromordinal(due_on.toordinal() + 1)
    assert due(shop.rows(), eve) == ()
    assert [one.why_due for one in due(shop.rows(), due_on)] == ["due today"]
    assert [(one.why_due, one.next_on) for one in due(shop.rows(), after)] == [("overdue", due_on)]


def test_a_failed_one_is_due_at_once(shop: Any) -> None:
    add(shop)
    tried(shop, 490_000)
    assert [(one.why_due, one.next_on) for one in due(shop.rows(), TODAY)] == [("failed its last check", None)]


def test_the_only_one_of_a_kind_is_found_where_there_is_no_choice(shop: Any) -> None:
    assert sole(shop.rows(), "scale", TODAY) is None
    add(shop)
    found = sole(shop.rows(), "scale", date(2026, 4, 1))  # entered on 1 Jun, and taken to have been there before
    assert found is not None
    assert found.code == "bench-scale"
    add(shop, EquipmentDetails("pocket scale"))
    assert sole(shop.rows(), "scale", TODAY) is None
    revise_equipment(shop.book, "pocket", EquipmentDetails("pocket scale"), on=TODAY, retired=True)
    assert sole(shop.rows(), "scale", TODAY) is not None
    assert sole(shop.rows(), "pH meter", TODAY) is None
