"""Which readings count: of which day, and whether corrected, or corrected by one that was taken back."""

from datetime import date
from typing import Any

import pytest
from bare_ledger import BareLedger
from making import planned
from shop import Shop

from ledger.errors import Refused
from ledger.operations.bench.readings import ReadingValue, log_readings
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.keep.undo import undo
from ledger.rows.batch import batch_by_id, find_batch
from ledger.rows.equipment import checks_of
from ledger.rows.reading import current_readings
from ledger.storage.tables.reading import Reading
from ledger.views.bench.bench import read_so_far
from ledger.views.bench.correction import correction
from ledger.views.cure.drying import Drying
from ledger.views.cure.weighings import last_weighings
from ledger.views.recipe.density import own_density

BEFORE, CUT, AFTER = "2026-03-01", "2026-03-02", "2026-03-03"


def read(ledger: BareLedger, what: str, value: int, unit: str = "mg", *, on: str = CUT, **more: Any) -> int:
    """A reading of batch 1; returns its number."""
    return ledger.add("reading", batch_id=1, what=what, value=value, unit=unit, on=on, **more)


def test_a_corrected_reading_counts_no_more_unless_the_correction_was_taken_back() -> None:
    ledger = BareLedger()
    ledger.make("cold", [ledger.buy("A")])
    first = read(ledger, "lye temperature", 48_000, "milli-C")
    ledger.close()
    read(ledger, "lye temperature", 49_000, "milli-C", corrects=first)
    assert [row.value for row in current_readings(ledger.rows, 1)] == [49_000]
    ledger.undo()
    assert [row.value for row in current_readings(ledger.rows, 1)] == [48_000]


def test_a_check_whose_reading_was_corrected_is_none_unless_the_correction_was_taken_back() -> None:
    """The scale tried at the bench: the reading and the check are of one entry."""
    ledger = BareLedger()
    ledger.make("cold", [ledger.buy("A")])
    ledger.add("equipment", code="scale", kind="scale")
    ledger.close()
    figures = {"expected": 500_000, "found": 500_000, "tolerance": 1000, "passed": 1}
    ledger.add("equipment_check", equipment_id=1, on=CUT, by="Nuala", **figures)
    first = read(ledger, "scale test", 500_000, equipment_id=1)
    ledger.close()
    read(ledger, "scale test", 450_000, corrects=first)
    assert checks_of(ledger.rows, 1) == ()
    ledger.undo()
    assert [one.found for one in checks_of(ledger.rows, 1)] == [500_000]


@pytest.mark.parametrize(("on", "counts"), [(BEFORE, False), (CUT, True), (AFTER, False)])
def test_only_bars_weighed_on_the_day_of_the_cut_are_bars_at_the_cut(on: str, counts: bool) -> None:
    ledger = BareLedger()
    ledger.make("cold", [ledger.buy("A")])
    read(ledger, "bar weight", 130_000, on=on)
    batch = batch_by_id(ledger.rows, 1)
    assert read_so_far(ledger.rows, batch).bars_mg == ([130_000] if counts else [])
    assert Drying(ledger.rows, [batch]).cut_bar(batch) == (130_000 if counts else None)


def test_the_density_of_the_dough_is_by_its_latest_volume_and_without_the_wrapping() -> None:
    """1000 g in 1000 mL: 1000 mg per mL; the first reading, 1250 mL, was superseded; 100 000 bands weigh nothing."""
    ledger = BareLedger()
    ledger.add("recipe", code="plain", material_id=3)
    ledger.add("recipe_version", recipe_id=1, number=1, name="Plain", source="")
    batch, _ = ledger.make("cold", [], recipe_version_id=1)
    ledger.move(ledger.buy("A"), -1_000_000, "consumed", batch_id=batch)
    ledger.move(ledger.buy("W", material="band", quantity=100_000), -100_000, "consumed", batch_id=batch)
    read(ledger, "dough volume", 1_250_000, "uL")
    read(ledger, "dough volume", 1_000_000, "uL")
    assert own_density(ledger.rows, "plain") == 1000


def test_the_latest_day_that_has_weighings_counts_for_the_net_weight(shop: Shop) -> None:
    with shop.book.write("batch log") as tx:
        for on, value in ((date(2026, 5, 5), 131_000), (date(2026, 5, 6), 130_000), (date(2026, 5, 6), 129_000)):
            tx.add(Reading(batch_id=1, on=on, what="bar weight", value=value, unit="mg"))
        tx.say("Weighed.")
    with shop.book.look() as rows:
        found = last_weighings(rows, find_batch(rows, shop.batch))
    assert found is not None
    assert (found.on, found.weights_mg) == (date(2026, 5, 6), (130_000, 129_000))


def test_lye_and_fats_have_met_from_trace_on_unless_that_was_taken_back(shop: Shop) -> None:

    code = planned(shop.book)
    weigh(shop.book, code, {1: [Weighed(610_000)]}, on=date(2026, 5, 6), by="Nuala")
    log_readings(shop.book, code, (ReadingValue("trace", 9, "min"),), on=date(2026, 5, 6))
    with shop.book.look() as rows:
        with pytest.raises(Refused, match="have met \\('trace' is logged\\)"):
            correction(rows, find_batch(rows, code), 1, 615_000)
        last = rows.execute("SELECT max(id) FROM entry").fetchone()[0]
    undo(shop.book, last)
    with shop.book.look() as rows:
        assert correction(rows, find_batch(rows, code), 1, 615_000).actual_mg == 615_000
