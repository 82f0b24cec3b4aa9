"""Book work on a batch, by what was done."""

from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput, Refused
from ledger.operations.bench.deviations import not_before_planned
from ledger.rows.batch import find_batch
from ledger.rows.reading import minutes_worked, work_of
from ledger.rows.recipe import recipe_of
from ledger.storage.book import Book
from ledger.storage.tables.bench import Work
from ledger.units.wording import count
from ledger.units.words import WorkStage

LONGEST = 24 * 60  # minutes of one day


class WorkBooked(NamedTuple):
    """The work of a batch as it stands now, and the minutes that do not count beside it."""

    batch: str
    stages: tuple[tuple[WorkStage, int], ...]
    read_too: int  # at the bench
    recipe_too: int


def book_work(book: Book, code: str, minutes: int, *, stage: WorkStage, on: date, by: str) -> WorkBooked:
    """Book minutes of work on a batch.

    Raises BadInput for none, for more than a day has, or for a day before the batch was planned; Refused for a batch
    that was given up.
    """
    if minutes <= 0:
        raise BadInput("How many minutes was it? Write a number above zero, such as 45.")
    if minutes > LONGEST:
        raise BadInput(f"{minutes} minutes are more than a day has; write those of one day, such as 45.")
    with book.write("batch work") as tx:
        batch = find_batch(tx.rows, code)
        not_before_planned(batch, on)
        if batch.discarded:
            raise Refused(f"Batch {batch.code} was discarded; book what was done before by its day, or leave it out.")
        tx.add(Work(batch_id=batch.id, on=on, stage=stage, minutes=minutes, by=by))
        tx.say(f"Booked {count(minutes, 'minute')} of {stage} on batch {batch.code}.")
        stages, read = tuple(work_of(tx.rows, batch.id).items()), minutes_worked(tx.rows, [batch.id])
        recipe = None if batch.part_of else recipe_of(tx.rows, batch)
        told = recipe.work_minutes if recipe else None
        return WorkBooked(batch.code, stages, read.get(batch.id, 0), told or 0)
