"""Where bars are and went, when something was corrected, counted or taken back, and what a recall says of it."""

from datetime import date
from typing import Any

import pytest
from bare_ledger import BareLedger

from ledger.errors import BadInput
from ledger.rows.bars import back_on_sale, bar_counts
from ledger.rows.batch import batch_by_id
from ledger.rows.kept import samples
from ledger.rows.lot import lot_by_id
from ledger.rows.people import customer_list
from ledger.views.recall.recall import RecallAnswer
from ledger.views.recall.recall_answer import recall_answer
from ledger.views.recall.recall_search import Notice, lots_meant


def recall(ledger: BareLedger, lot: int) -> RecallAnswer:
    return recall_answer(ledger.rows, [lot_by_id(ledger.rows, lot)], asked=["A"], program="test")


def where(ledger: BareLedger, bars: int) -> list[tuple[str, int]]:
    return [(one.where, one.count) for one in bar_counts(ledger.rows, [bars])]


@pytest.fixture
def ledger() -> BareLedger:
    """A customer, and a batch of 20 bars from one lot; the entry is closed."""
    found = BareLedger()
    found.add("customer", code="heron", kind="shop")
    found.add("customer_revision", customer_id=1, name="The Heron")
    found.make("cold", [found.buy("A")])
    found.close()
    return found


OIL, BARS, BATCH = 1, 2, 1  # the lots and the batch of that ledger


@pytest.mark.parametrize("way", [{"kind": "dispatched", "customer_id": 1}, {"kind": "given", "note": "a neighbour"}])
def test_what_was_taken_back_never_went_and_nobody_is_called_for_it(ledger: BareLedger, way: dict[str, Any]) -> None:
    ledger.move(BARS, -3, **way)
    assert where(ledger, BARS) == [("on hand", 17), (way["kind"], 3)]
    assert [one.bars for one in recall(ledger, OIL).call] == [3]
    ledger.undo()
    assert where(ledger, BARS) == [("on hand", 20)]
    answer = recall(ledger, OIL)
    assert (answer.call, answer.totals.on_hand, answer.totals.unexplained) == ((), 20, 0)


def test_bars_booked_back_in_as_mass_are_reworked(ledger: BareLedger) -> None:
    ledger.decide(BARS, "rejected")
    rework = ledger.add("batch", code="26-900-X", process="rework", material_id=4, on="2026-03-02")
    ledger.move(BARS, -5, "consumed", batch_id=rework)
    assert where(ledger, BARS) == [("on hand", 15), ("reworked", 5)]
    assert recall(ledger, OIL).totals.reworked == 5


def test_as_many_bars_were_made_whatever_became_of_them(ledger: BareLedger) -> None:
    ledger.move(BARS, -2, "wasted")
    ledger.move(BARS, 1, "counted")
    assert batch_by_id(ledger.rows, BATCH).made == 20


def test_bars_back_on_sale_that_were_taken_back_are_not(ledger: BareLedger) -> None:
    ledger.move(BARS, -2, "dispatched", customer_id=1)
    ledger.move(BARS, 2, "returned", place="returns", customer_id=1)
    ledger.close()
    ledger.move(BARS, -1, "moved", place="returns", on="2026-03-09", note="back on sale, Nuala: seal unbroken")
    ledger.move(BARS, 1, "moved", on="2026-03-09", note="back on sale, Nuala: seal unbroken")
    (one,) = back_on_sale(ledger.rows, [BARS])
    assert (one.bars, one.on, one.why) == (1, date(2026, 3, 9), "Nuala: seal unbroken")
    ledger.undo()
    assert back_on_sale(ledger.rows, [BARS]) == ()


def test_a_customer_has_what_went_there_less_what_came_back(ledger: BareLedger) -> None:
    ledger.move(BARS, -4, "dispatched", customer_id=1)
    ledger.move(BARS, 1, "returned", place="returns", customer_id=1)
    assert [one.bars for one in customer_list(ledger.rows)] == [3]
    assert [one.bars for one in recall(ledger, OIL).call] == [3]


def test_what_came_in_is_what_was_received_and_no_correction(ledger: BareLedger) -> None:
    """1 000 000 mg came; 400 of the gram that went in were corrected, and 5 000 more were found at a count."""
    ledger.move(OIL, 400, "consumed", batch_id=BATCH)
    ledger.move(OIL, 5000, "counted")
    (lot,) = recall(ledger, OIL).lots
    assert (lot.received, lot.on_hand) == (1_000_000, 1_004_400)


def test_a_lot_of_which_nothing_is_left_in_the_batch_reaches_nothing(ledger: BareLedger) -> None:
    other = ledger.buy("B")
    ledger.take_back(other, BATCH)
    assert recall(ledger, other).batches == ()
    assert [one.batch_code for one in recall(ledger, OIL).batches] == [ledger.code("batch", BATCH)]


@pytest.mark.parametrize(("on", "named"), [("2026-03-01", False), ("2026-03-02", True), ("2026-03-03", True)])
def test_a_complaint_without_a_batch_is_in_doubt_from_the_day_of_the_cut(
    ledger: BareLedger, on: str, named: bool
) -> None:
    ledger.add("complaint", on=on, what="a rash")
    assert bool(recall(ledger, OIL).cannot_exclude) is named


@pytest.mark.parametrize(
    ("first", "last", "meant"),
    [
        ("2026-03-01", "2026-03-01", []),
        ("2026-03-01", "2026-03-02", [OIL]),
        ("2026-03-02", "2026-03-02", [OIL]),
        ("2026-03-02", "2026-03-03", [OIL]),
        ("2026-03-03", "2026-03-03", []),
    ],
)
def test_a_notice_means_what_came_on_its_first_and_last_day_too(
    ledger: BareLedger, first: str, last: str, meant: list[int]
) -> None:
    """A lot of another number and another day is there too, and is never meant."""
    ledger.buy("Z", on="2026-05-02")
    notice = Notice((), 1, 1, date.fromisoformat(first), date.fromisoformat(last))
    if meant:
        assert [lot.id for lot in lots_meant(ledger.rows, notice)] == meant
    else:
        with pytest.raises(BadInput, match="widen"):
            lots_meant(ledger.rows, notice)


def test_the_sample_to_be_given_up_first_stands_first(ledger: BareLedger) -> None:
    for until in ("2029-01-01", "2027-01-01"):
        ledger.add("retained_sample", lot_id=BARS, on="2026-03-02", bars=1, kept_at="tin 3", keep_until=until)
    assert [one.keep_until.year for one in samples(ledger.rows)] == [2027, 2029]
