"""Weighings of marked bars on the rack."""

import re
from collections.abc import Mapping
from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput, Refused
from ledger.operations.bench.readings import ReadingValue, add_readings
from ledger.rows.batch import BatchRow, find_batch
from ledger.storage.book import Book
from ledger.units.dates import show_date
from ledger.units.wording import count


class Together(NamedTuple):
    """Several bars on the scale at once."""

    bars: int
    mass_mg: int


def weigh_bars(
    book: Book, code: str, weights_mg: Mapping[str, int], *, on: date, together: Together | None = None
) -> None:
    """Book what the marked bars of a batch weigh on a day, and what several of them weigh together, in one entry.

    A mark is one to six letters and digits. Raises Refused before the cut and for more bars together than were cut,
    BadInput for a mark that is none, for no weight, a weight of nothing, fewer than two together, or a day before the
    cut.
    """
    with book.write("cure weigh") as tx:
        batch = find_batch(tx.rows, code)
        on_the_rack(batch, on)
        if not (weights_mg or together) or not all(weights_mg.values()):
            raise BadInput("Write each marked bar with its weight, such as A=101.2g B=99.8g.")
        for mark in weights_mg:
            if not re.fullmatch("[A-Za-z0-9]{1,6}", mark):
                raise BadInput(f"'{mark}' is not a mark for a bar; write one to six letters and digits, such as A.")
        found = [ReadingValue("bar weight", mass, "mg", mark=mark) for mark, mass in weights_mg.items()]
        if together:
            _likely(batch, together)
            found.append(ReadingValue("bar weight", together.mass_mg, "mg", bars=together.bars))
        add_readings(tx, batch, found, on)
        names = [*weights_mg, *([f"{together.bars} bars together"] if together else [])]
        tx.say(f"Weighed {', '.join(names)} of batch {batch.code}.")


def _likely(batch: BatchRow, together: Together) -> None:
    if together.bars < 2 or not together.mass_mg:
        raise BadInput("Write what two bars or more weigh together, such as --total 1042g --bars 10.")
    if together.bars > batch.made:
        raise Refused(f"Batch {batch.code} was cut into {count(batch.made, 'bar')}; {together.bars} cannot be weighed.")


def on_the_rack(batch: BatchRow, on: date) -> None:
    """Raise Refused for a batch without bars, BadInput for a day before they were cut."""
    if batch.yielded_on is None or not batch.soap:
        raise Refused(f"Batch {batch.code} is {batch.status}; it has no bars on the rack to weigh.")
    if on < batch.yielded_on:
        raise BadInput(f"Batch {batch.code} was cut on {show_date(batch.yielded_on)}; look at --on.")
