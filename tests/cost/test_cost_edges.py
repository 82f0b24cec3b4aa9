"""What a batch cost where something was corrected, moved, wasted or taken back; the oil cost 1000 for a kilogram."""

import pytest
from bare_ledger import BareLedger

from ledger.cli.cost.cost import each_of
from ledger.units.codes import batch_code
from ledger.views.cost.cost import BatchCost, batch_cost

KILOGRAM = 1_000_000


def cost(ledger: BareLedger, batch: int) -> BatchCost:
    return batch_cost(ledger.rows, ledger.code("batch", batch))


def soap(ledger: BareLedger, mass_mg: int = KILOGRAM, **more: object) -> tuple[int, int]:
    """A batch of 20 bars from so much of the oil; returns it and its bars."""
    oil = ledger.buy("A", cost_minor=1000)
    batch, lots = ledger.make("cold", [], **more)  # type: ignore[arg-type]
    ledger.move(oil, -mass_mg, "consumed", batch_id=batch)
    return batch, lots[0]


def test_a_correction_is_no_stock_that_came() -> None:
    """600 g, then 100 g less: 500 of 1000 g, and half of what they cost."""
    ledger = BareLedger()
    batch, _ = soap(ledger, 600_000)
    ledger.move(1, 100_000, "consumed", batch_id=batch)
    assert cost(ledger, batch).total_minor == 500


def test_what_was_taken_back_makes_the_lot_no_larger() -> None:
    """300 g were wasted in an entry that was taken back; 500 of 1000 g still cost 500."""
    ledger = BareLedger()
    batch, _ = soap(ledger, 500_000)
    ledger.close()
    ledger.move(1, -300_000, "wasted")
    ledger.undo()
    assert cost(ledger, batch).total_minor == 500


@pytest.mark.parametrize(("wasted", "good", "each"), [(0, 20, {50}), (1, 19, {52, 53}), (20, 0, set())])
def test_the_good_bars_bear_the_cost_of_those_thrown_away(wasted: int, good: int, each: set[int]) -> None:
    """1000 over 20 bars is 50; over 19 it is 52.63, so 52 or 53, and 1000 in all."""
    ledger = BareLedger()
    batch, bars = soap(ledger)
    if wasted:
        ledger.move(bars, -wasted, "wasted")
    found = cost(ledger, batch)
    assert (found.good_bars, set(found.per_bar_minor)) == (good, each)
    assert sum(found.per_bar_minor) == (1000 if good else 0)


def test_bars_that_only_moved_are_no_more_bars() -> None:
    """20 bars cost 1000; 5 went to the retained samples, 10 were reworked: half of it."""
    ledger = BareLedger()
    _, bars = soap(ledger)
    ledger.move(bars, -5, "moved")
    ledger.move(bars, 5, "moved", place="retained")
    ledger.decide(bars, "on hold")
    rework = ledger.add("batch", code=batch_code(2026, 900), process="rework", material_id=4, on="2026-03-02")
    ledger.move(bars, -10, "consumed", batch_id=rework)
    assert cost(ledger, rework).total_minor == 500


@pytest.mark.parametrize(
    ("wasted", "reworked", "good", "words"),
    [
        (0, 0, 20, "each of 20 good bars"),
        (0, 1, 19, "each of 19 good bars and 1 reworked"),
        (1, 18, 1, "each of 1 good bar and 18 reworked"),
        (0, 20, 0, "each of 20 reworked bars"),
        (19, 1, 0, "each of 1 reworked bar"),
    ],
)
def test_reworked_bars_bear_their_cost_and_are_not_good(wasted: int, reworked: int, good: int, words: str) -> None:
    """1000 over the bars that were not thrown away, of which those reworked take theirs along."""
    ledger = BareLedger()
    batch, bars = soap(ledger)
    if wasted:
        ledger.move(bars, -wasted, "wasted")
    rework = ledger.add("batch", code=batch_code(2026, 900), process="rework", material_id=4, on="2026-03-02")
    if reworked:
        ledger.decide(bars, "on hold")
        ledger.move(bars, -reworked, "consumed", batch_id=rework)
    found = cost(ledger, batch)
    assert (found.good_bars, found.reworked_bars, sum(found.per_bar_minor)) == (good, reworked, 1000)
    assert len(found.per_bar_minor) == good + reworked
    assert each_of(found) == words


def test_offcuts_bear_their_share_of_the_soap_and_none_of_the_wrapping() -> None:
    """Bars of 400 g and offcuts of 100 g: the offcuts bear a fifth of the 1000 of oil, and none of 200 of bands."""
    ledger = BareLedger()
    batch, _ = soap(ledger, offcuts=True, bars_mg=400_000)
    bands = ledger.buy("W", material="band", quantity=20, cost_minor=200)
    figures = {"number": 1, "target": 20, "low": 20, "high": 20}
    line = ledger.add(
        "plan_line", batch_id=batch, role="packaging", material_id=5, lot_id=bands, stage="packing", **figures
    )
    ledger.move(bands, -20, "consumed", batch_id=batch, plan_line_id=line)
    found = cost(ledger, batch)
    assert (found.total_minor, found.to_offcuts_minor, found.to_bars_minor) == (1200, 200, 1000)


def test_work_that_was_corrected_counts_once() -> None:
    """60 minutes, corrected to 30, and 10 more: 40 minutes at 600 an hour are 400, beside 1000 of oil."""
    ledger = BareLedger()
    batch, _ = soap(ledger)
    ledger.add(
        "settings_revision",
        business="Bare",
        country="IE",
        currency="EUR",
        units="metric",
        time_zone="UTC",
        labour_minor_per_hour=600,
    )
    work = {"batch_id": batch, "on": "2026-03-02", "what": "labour", "unit": "min"}
    first = ledger.add("reading", value=60, **work)
    ledger.add("reading", value=30, corrects=first, **work)
    ledger.add("reading", value=10, **work)
    found = cost(ledger, batch)
    assert (found.labour_minutes, found.labour_minor, found.total_minor) == (40, 400, 1400)
