"""What must be settled before bars are passed or released: deviations decided, the checklist answered."""

from collections.abc import Iterable, Sequence
from datetime import date

from ledger.domain.tools.bar_checks import Check, missing, read_check
from ledger.errors import Refused
from ledger.operations.bench.deviations import AT_RELEASE
from ledger.rows.batch import BatchRow, find_batch, recipe_of
from ledger.rows.decision import Doubt, deviations, list_words, still_open
from ledger.rows.opened import Rows
from ledger.rows.reading import read_of_the_bars
from ledger.storage.book import Book
from ledger.storage.tables.reading import Deviation
from ledger.storage.tables.release import FinishedCheck, RetainedSample
from ledger.storage.transaction import Transaction
from ledger.units.dates import add_months

SAMPLE_MONTHS = 12  # a retained sample is kept so long after the bars' best before; common practice, no source


def deviations_decided(rows: Rows, batch: BatchRow, *, on: date | None = None) -> None:
    """Raise Refused while a deviation of the batch, or of the batch it was divided from, waits for its decision.

    With `on`, only what had been found by that day.
    """
    for one in (batch, *([find_batch(rows, batch.part_of)] if batch.part_of else [])):
        for found in deviations(rows, one.id):
            if on is not None and found.on > on:
                continue
            if found.open:
                raise Refused(
                    f"Batch {one.code} has an open deviation ({found.found}). Decide it first: soapledger batch decide "
                    f'{one.code} {found.number} accept --reason "…"'
                )
            if found.verdict in ("reject", "rework"):
                raise Refused(
                    f"Deviation {found.number} of batch {one.code} ({found.found}) was decided: {found.verdict}, by "
                    f'{found.by}. Go by that: soapledger reject {batch.code} --reason "deviation {found.number}", or '
                    f"decide it anew: soapledger batch decide {one.code} {found.number} accept --reason …"
                )


def open_checks(rows: Rows, batch: BatchRow) -> list[str]:
    """The points of the recipe's checklist that a reading does not answer yet."""
    recipe = recipe_of(rows, batch)
    return missing(recipe.release_checks, known_checks(rows, batch)) if recipe else []


def known_checks(rows: Rows, batch: BatchRow) -> list[Check]:
    """The points that what was read already answers: a pH that was read of the bars; one of the dough is none."""
    recipe = recipe_of(rows, batch)
    if recipe is None or "pH" not in recipe.release_checks:
        return []
    read = [row for row in read_of_the_bars(rows, batch, "pH") if row["value"] is not None]
    if not read:
        return []
    words = f"{read[-1]['value'] / 1000:g}; {read[-1]['method'] or 'method not stated'}"
    return [read_check("pH", words, ph_at_most=recipe.limits.ph_thousandths)]


def keep_bad_checks(book: Book, code: str, checks: Sequence[Check], *, on: date) -> list[str]:
    """Open a deviation for each point that is not good, so that a refusal leaves its trace; returns them in words.

    One that was found the same before is not opened twice.
    """
    with book.look() as rows:
        batch = find_batch(rows, code)
        known = {one.found for one in deviations(rows, batch.id) if one.subject == AT_RELEASE}
        new = [one.words for one in _bad(rows, batch, checks) if one.words not in known]
    if not new:
        return []
    with book.write("release check") as tx:
        batch = find_batch(tx.rows, code)
        for one in new:
            tx.add(Deviation(batch_id=batch.id, on=on, subject=AT_RELEASE, found=one))
        tx.say(f"Not good of batch {batch.code}: {'; '.join(new)}.")
    return new


def _bad(rows: Rows, batch: BatchRow, checks: Iterable[Check]) -> tuple[Doubt, ...]:
    """What is not good, as far as it was not decided at a release before."""
    bad = (Doubt("check", f"{one.what}: {one.found}") for one in checks if not one.good)
    return still_open(rows, bad, lot_id=batch.yield_lot_id)


def book_checks(
    tx: Transaction, batch: BatchRow, lot_id: int, checks: Sequence[Check], *, on: date, by: str, anyway: str | None
) -> list[Doubt]:
    """Keep what was looked at; returns what is not good.

    Raises Refused for a point nobody looked at, and for one that is not good (unless `anyway` gives a reason).
    """
    known = {one.what: one for one in (*known_checks(tx.rows, batch), *checks)}
    recipe = recipe_of(tx.rows, batch)
    wanted = recipe.release_checks if recipe else ()
    if left := missing(wanted, list(known.values())):
        raise Refused(
            f"Nobody looked at the {', '.join(left)} of batch {batch.code} yet; say what was found: "
            f"soapledger release {batch.code} --check '{left[0]}=…'"
        )
    decided = {one.found for one in deviations(tx.rows, batch.id) if one.verdict == "accepted"}
    bad = [one for one in _bad(tx.rows, batch, known.values()) if one.words not in decided]
    if bad and not anyway:
        raise Refused(
            f"Batch {batch.code} is not good in {list_words(bad)}. To release it all the same, add --anyway REASON."
        )
    for one in known.values():
        tx.add(FinishedCheck(lot_id=lot_id, on=on, by=by, what=one.what, found=one.found, good=int(one.good)))
    return bad


def keep_samples(
    tx: Transaction, batch: BatchRow, lot_id: int, bars: int, *, on: date, kept_at: str, until: date | None
) -> None:
    """Write down where the retained samples are and until when they are kept."""
    recipe = recipe_of(tx.rows, batch)
    months = (recipe.best_before_months if recipe else 0) + SAMPLE_MONTHS
    keep_until = until or add_months(batch.on, months)
    tx.add(RetainedSample(lot_id=lot_id, on=on, bars=bars, kept_at=kept_at, keep_until=keep_until))
