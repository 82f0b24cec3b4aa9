"""Cleaning, training, approvals and self-inspections, and when each is due."""

from datetime import date
from typing import Any

import pytest

from ledger.errors import BadInput
from ledger.operations.tools.upkeep import UpkeepNote, add_upkeep
from ledger.rows.equipment import latest_approval, upkeep_list

ON = date(2026, 5, 31)


def note(shop: Any, kind: str, what: str = "all", on: date = ON, **more: Any) -> date | None:
    return add_upkeep(shop.book, UpkeepNote(kind, what, on, "Nuala", **more))


@pytest.mark.parametrize(
    ("on", "again"),
    [
        (date(2028, 2, 29), date(2029, 2, 28)),  # no 29 February in 2029
        (date(2027, 2, 28), date(2028, 2, 28)),
        (date(2026, 5, 31), date(2027, 5, 31)),
    ],
)
def test_a_self_inspection_is_due_a_year_later(shop: Any, on: date, again: date) -> None:
    assert note(shop, "self-inspection", on=on) == again


def test_she_may_say_another_day_and_cleaning_has_none_of_itself(shop: Any) -> None:
    assert note(shop, "self-inspection", next_on=date(2026, 11, 30)) == date(2026, 11, 30)
    assert note(shop, "cleaning") is None
    with pytest.raises(BadInput, match="after 31 May 2026"):
        note(shop, "cleaning", next_on=ON)


def test_what_is_due_comes_first_and_the_next_of_a_kind_settles_it(shop: Any) -> None:
    note(shop, "cleaning", "moulds", date(2026, 5, 1), next_on=date(2026, 5, 29))
    note(shop, "cleaning", "shelves", date(2026, 5, 2), next_on=ON)
    note(shop, "training", "lye", date(2026, 5, 3), next_on=date(2026, 6, 30))
    listed = [(one.what, one.state) for one in upkeep_list(shop.rows(), ON)]
    assert listed == [("moulds", "overdue"), ("shelves", "due today"), ("lye", "coming")]
    note(shop, "cleaning", "Moulds", ON)
    listed = [(one.what, one.state) for one in upkeep_list(shop.rows(), ON, kind="cleaning")]
    assert listed == [("shelves", "due today"), ("Moulds", "done"), ("moulds", "done again since")]
    assert [one.what for one in upkeep_list(shop.rows(), date(2026, 5, 2))] == ["shelves", "moulds"]


def test_an_approval_has_a_supplier_and_nothing_else_has(shop: Any) -> None:
    with pytest.raises(BadInput, match="--supplier CODE"):
        note(shop, "supplier approval")
    with pytest.raises(BadInput, match="Only an approval"):
        note(shop, "training", supplier="tarnlow")
    with pytest.raises(BadInput, match="No supplier"):
        note(shop, "supplier approval", supplier="nobody")
    with pytest.raises(BadInput, match="Write what was done"):
        note(shop, "training", " ")
    note(shop, "supplier approval", "papers seen", date(2026, 3, 1), supplier="tarnlow")
    note(shop, "supplier approval", "papers seen again", ON, supplier="tarnlow", next_on=date(2027, 5, 31))
    found = latest_approval(shop.rows(), "tarnlow", ON)
    assert found is not None
    assert (found.what, found.on, found.next_on) == ("papers seen again", ON, date(2027, 5, 31))
    assert latest_approval(shop.rows(), "tarnlow", date(2026, 2, 28)) is None
