"""The points looked at before bars are released, and the samples kept of them."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from ledger.domain.release.releasing import Releasing, may_release, not_good
from ledger.domain.tools.bar_checks import Check, missing
from ledger.operations.bench.deviations import AT_RELEASE
from ledger.operations.release.facts import bars_of, finished_of, known_checks, supply_of
from ledger.operations.release.first_supply import FirstSupplied, before_of
from ledger.rows.batch import BatchRow, find_batch
from ledger.rows.lot import place_of_kind
from ledger.rows.opened import Rows
from ledger.rows.recipe import recipe_of
from ledger.storage.book import Book
from ledger.storage.tables.reading import Deviation
from ledger.storage.tables.release import RetainedSample
from ledger.storage.transaction import Transaction
from ledger.units.dates import add_months

SAMPLE_MONTHS = 12  # a retained sample is kept so long after the bars' best before; common practice, no source


def open_checks(rows: Rows, batch: BatchRow) -> list[str]:
    """The points of the recipe's checklist that a reading does not answer yet."""
    recipe = recipe_of(rows, batch)
    return missing(recipe.release_checks, known_checks(rows, batch)) if recipe else []


def refused_anyway(
    rows: Rows, batch: BatchRow, asked: Releasing, first: FirstSupplied | None, *, counted: bool
) -> None:
    """Raise what a release is refused with whatever is found at its points, before anyone is asked for them.

    Before runs of labels are `counted`, whatever that will find too.
    """
    bars, lot_id = bars_of(rows, batch, asked.on)
    finished = replace(finished_of(rows, batch, asked.on), known=())
    if not counted and finished.labels.uncounted is not None:
        finished = replace(finished, labels=finished.labels._replace(uncounted=None, on_bars=bars.here))
    good = [Check(what, "", True) for what in finished.checklist]
    asked = replace(asked, checks=good, before=before_of(rows, lot_id, first))
    may_release(bars, supply_of(rows, batch, asked.on), finished, asked)


def keep_bad_checks(book: Book, code: str, checks: Sequence[Check], *, on: date) -> list[str]:
    """Open a deviation for each point that is not good, so that a refusal leaves its trace; returns them in words.

    One that was found the same before is not opened twice.
    """
    if all(one.good for one in checks):
        return []
    with book.look() as rows:
        bars, _ = bars_of(rows, find_batch(rows, code), on)
        known = {one.found for of, one in bars.deviations if of == bars.batch and one.subject == AT_RELEASE}
        new = [one.words for one in not_good(bars, checks) if one.words not in known]
    if not new:
        return []
    with book.write("release check") as tx:
        batch = find_batch(tx.rows, code)
        for one in new:
            tx.add(Deviation(batch_id=batch.id, on=on, subject=AT_RELEASE, found=one))
        tx.say(f"Not good of batch {batch.code}: {'; '.join(new)}.")
    return new


def keep_samples(tx: Transaction, batch: BatchRow, lot_id: int, asked: Releasing) -> None:
    """Set retained samples aside, and write down where they are and until when they are kept."""
    recipe = recipe_of(tx.rows, batch)
    months = (recipe.best_before_months if recipe else 0) + SAMPLE_MONTHS
    until = asked.keep_until or add_months(batch.on, months)
    tx.add(RetainedSample(lot_id=lot_id, on=asked.on, bars=asked.retain, kept_at=asked.kept_at, keep_until=until))
    workshop, shelf = (place_of_kind(tx.rows, kind).id for kind in ("workshop", "retained"))
    tx.transfer([(lot_id, asked.retain)], source_id=workshop, target_id=shelf, on=asked.on, note="retained sample")
