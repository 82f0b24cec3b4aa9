"""Deviations of a batch: opened by a figure outside its limit or by what she reports, decided by a person."""

from datetime import date

from ledger.domain.bench.steps import outside_steps
from ledger.domain.tools.limits import outside
from ledger.errors import BadInput, Refused
from ledger.rows.batch import BatchRow, find_batch
from ledger.rows.decision import deviations
from ledger.rows.recipe import recipe_of
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.tables.reading import Deviation, DeviationDecision
from ledger.storage.transaction import Transaction
from ledger.units.dates import show_date
from ledger.units.words import DeviationVerdict
from ledger.views.bench.bench import read_so_far

REPORTED = "seen"  # the subject of what she reports herself
AT_RELEASE = "at the release"  # of a point of the checklist that was not good
VERDICTS: dict[str, DeviationVerdict] = {"accept": "accepted", "rework": "rework", "reject": "reject"}


CORRECTED = "what was logged first was corrected; both stay to be read"
WAY_OUT = "not weighed again: the way out that was taken set another target for it"


def settle_deviations(tx: Transaction, code: str, *, on: date, by: str, why: str = CORRECTED) -> None:
    """Open a deviation for each figure now outside its limit; close those inside it since, and say `why` they are.

    Called by every operation that books what a recipe sets limits for. What was decided stays decided as long as
    the figure is the same.
    """
    batch = find_batch(tx.rows, code)
    recipe = recipe_of(tx.rows, batch)
    if recipe is None:
        return
    units = settings(tx.rows).units
    read = read_so_far(tx.rows, batch)
    beyond = (*outside(recipe.limits, read, units), *outside_steps(recipe.steps, read.last, units))
    now = {one.subject: one.found for one in beyond}
    latest = {one.subject: one for one in deviations(tx.rows, batch.id) if one.subject not in (REPORTED, AT_RELEASE)}
    for subject, known in latest.items():
        if known.verdict != "corrected" and now.get(subject) == known.found:
            del now[subject]
        elif known.open:
            tx.add(
                DeviationDecision(
                    deviation_id=known.id,
                    verdict="corrected",
                    on=on,
                    by=by,
                    reason=why,
                )
            )
    for subject, found in now.items():
        tx.add(Deviation(batch_id=batch.id, on=on, subject=subject, found=found))


def report_deviation(book: Book, code: str, words: str, *, on: date, done: str | None = None) -> int:
    """Book what went wrong as a deviation, open until it is decided; returns its number within the batch.

    Raises BadInput without words or for a day before the batch.
    """
    if not words.strip():
        raise BadInput("Write what went wrong, in quotes.")
    with book.write("deviation") as tx:
        batch = find_batch(tx.rows, code)
        not_before_planned(batch, on)
        tx.add(Deviation(batch_id=batch.id, on=on, subject=REPORTED, found=words.strip(), done=done))
        number = len(deviations(tx.rows, batch.id))
        tx.say(f"Deviation {number} of batch {batch.code}: {words.strip()}.")
    return number


def decide_deviation(
    book: Book, code: str, number: int, verdict: str, *, on: date, by: str, reason: str, done: str | None = None
) -> None:
    """Decide about a deviation: accept it with the reason, rework the batch, or reject it.

    A later decision supersedes an earlier one. Raises BadInput for an unknown number or verdict, for no reason, or
    for a day before it was found; Refused for one that a correction closed.
    """
    if verdict not in VERDICTS:
        raise BadInput(f"'{verdict}' is no decision here; write accept, rework or reject.")
    if not reason.strip():
        raise BadInput('Say why, so that it can be read later: --reason "…".')
    with book.write("deviation decide") as tx:
        batch = find_batch(tx.rows, code)
        known = {one.number: one for one in deviations(tx.rows, batch.id)}
        if number not in known:
            shown = "it has none" if not known else f"its deviations are 1 to {len(known)}"
            raise BadInput(f"Batch {batch.code} has no deviation {number}; {shown}.")
        one = known[number]
        if one.verdict == "corrected":
            raise Refused(f"Deviation {number} of batch {batch.code} was closed when the figure was corrected.")
        if on < one.on:
            raise BadInput(f"Deviation {number} was found on {show_date(one.on)}; look at --on.")
        tx.add(
            DeviationDecision(
                deviation_id=one.id, verdict=VERDICTS[verdict], on=on, by=by, reason=reason.strip(), done=done
            )
        )
        tx.say(f"Decided deviation {number} of batch {batch.code}: {VERDICTS[verdict]}, {reason.strip()}.")


def not_before_planned(batch: BatchRow, on: date) -> None:
    """Raise BadInput for a day before the one a batch was planned for."""
    if on < batch.planned_on:
        raise BadInput(f"Batch {batch.code} was planned for {show_date(batch.planned_on)}; look at --on.")
