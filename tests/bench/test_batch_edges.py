"""Where a batch stands, and what its record says of what was corrected, taken back or superseded."""

from datetime import date

import pytest
from making import MADE, planned, weighed
from shop import Shop

from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.keep.undo import undo
from ledger.operations.stock.lots import decide_lots
from ledger.rows.batch import BatchRow, PlanLineRow, find_batch
from ledger.views.record.record import batch_record

LINE = PlanLineRow(1, 1, "fat", 1, "oil", "oil", None, "fat", 1, 100, 90, 110, "in the fats", 1, 100, True)


def batch(shop: Shop, code: str) -> BatchRow:
    with shop.book.look() as rows:
        return find_batch(rows, code)


def last_entry(shop: Shop) -> int:
    return int(shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0])


@pytest.mark.parametrize(("used", "outside"), [(89, True), (90, False), (110, False), (111, True)])
def test_a_weight_at_its_limit_is_inside(used: int, outside: bool) -> None:
    assert LINE._replace(used=used).outside is outside


def test_a_batch_was_made_on_the_day_of_its_first_weighing(shop: Shop) -> None:
    code = planned(shop.book)
    for line, day in ((1, 7), (2, 8)):
        weigh(shop.book, code, {line: [Weighed(500_000)]}, on=date(2026, 5, day), by="Nuala")
    assert batch(shop, code).made_on == date(2026, 5, 7)


def test_a_line_whose_weighing_was_taken_back_is_open_again(shop: Shop) -> None:
    """Two oils, lye and water are four lines."""
    code = planned(shop.book)
    weigh(shop.book, code, {1: [Weighed(600_000)]}, on=MADE, by="Nuala")
    assert batch(shop, code).open_lines == 3
    undo(shop.book, last_entry(shop))
    assert (batch(shop, code).open_lines, batch(shop, code).status) == (4, "planned")


def test_a_pour_that_was_taken_back_is_none(shop: Shop) -> None:
    code = weighed(shop.book, planned(shop.book))
    assert batch(shop, code).poured
    undo(shop.book, last_entry(shop))
    assert not batch(shop, code).poured


def test_the_latest_decision_is_where_the_bars_stand_and_supersedes_those_before(shop: Shop) -> None:
    """A release does not supersede that they were passed; a hold supersedes both."""

    def bars() -> list[tuple[str, bool]]:
        with shop.book.look() as rows:
            found = batch_record(rows, shop.batch, program="test").decided.decisions
        return [(one.what, one.superseded) for one in found if one.subject == "bars"]

    assert batch(shop, shop.batch).lot_status == "released"
    assert bars() == [("passed for packing", False), ("released", False)]
    decide_lots(shop.book, [shop.batch], verdict="on hold", on=date(2026, 6, 1), by="Nuala", reason="a doubt")
    assert batch(shop, shop.batch).lot_status == "on hold"
    assert bars() == [("passed for packing", True), ("released", True), ("on hold", False)]


def test_the_record_keeps_what_a_corrected_line_was_logged_as(shop: Shop) -> None:
    code = planned(shop.book)
    weigh(shop.book, code, {1: [Weighed(610_000)]}, on=MADE, by="Nuala")
    entry = last_entry(shop)
    weigh(shop.book, code, {1: [Weighed(601_000)]}, on=MADE, by="Nuala", correct=True)
    with shop.book.look() as rows:
        (said,) = batch_record(rows, code, program="test").went_in.corrections
    assert said == (
        f"Line 1, olive oil: logged as 610 g of lot {shop.olive} by Nuala (entry {entry}), corrected since."
    )
