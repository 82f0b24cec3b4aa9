"""Short ways to deliver, make and cut in tests, through the same operations that commands call."""

from contextlib import closing
from datetime import date
from pathlib import Path

from once import once

from ledger.domain.tools.bar_checks import CHECKS, Check
from ledger.operations.bench.cut import cut_batch
from ledger.operations.bench.plan import PlanRequest, plan_batch
from ledger.operations.bench.readings import ReadingValue
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, receive
from ledger.rows.batch import BatchRow, PlanLineRow, find_batch, plan_lines
from ledger.storage import book as opened_book
from ledger.storage.book import Book

DELIVERED = date(2026, 3, 2)
MADE = date(2026, 5, 6)
# Every point of the checklist that a recipe has where it names none.
LOOKED_GOOD = [Check(what, "9.6; 1 % in water" if what == "pH" else "good", True) for what in CHECKS]
# The same at the command line.
CHECKED = tuple(word for one in ("pH=9.6", "look=good", "smell=good", "weight=130 g") for word in ("--check", one))
POURED = (ReadingValue("poured", at="14:05"),)


@once
def deliver(book: Book, line: DeliveryLine, *, accepted: bool = True, on: date = DELIVERED) -> str:
    """One lot from Tarnlow Oils; returns its code."""
    return receive(book, DeliveryNote("tarnlow", on, (line,), accepted_by="Nuala" if accepted else None))[0].code


def bring_up_to_date(path: Path) -> Path | None:
    """What opening a ledger of an earlier program does before anything is written; returns the copy of it."""
    with closing(opened_book.connect(path)) as raw:
        return opened_book.bring_up_to_date(path, raw)


def batch_of(book: Book, code: str) -> BatchRow:
    """The batch as it stands."""
    with book.look() as rows:
        return find_batch(rows, code)


def lines_of(book: Book, code: str) -> tuple[PlanLineRow, ...]:
    """The lines of a batch as they stand."""
    with book.look() as rows:
        return plan_lines(rows, find_batch(rows, code).id)


def lots_of(book: Book, code: str) -> list[tuple[str, str | None, int]]:
    """(material, lot, target) of every line of a batch."""
    with book.look() as rows:
        codes = dict(rows.execute("SELECT id, code FROM lot").fetchall())
        return [
            (line.material, codes.get(line.lot_id), line.target) for line in plan_lines(rows, find_batch(rows, code).id)
        ]


@once
def planned(book: Book, recipe: str = "plain-bar", *, on: date = MADE, **more: object) -> str:
    """A batch planned; returns its code."""
    return plan_batch(book, PlanRequest(recipe, on, **more))  # type: ignore[arg-type]


@once
def weighed(book: Book, code: str, *, on: date = MADE) -> str:
    """Every open line weighed at its target, and poured; returns the code."""
    targets = {
        line.number: [Weighed(line.target)]
        for line in lines_of(book, code)
        if line.role != "packaging" and not line.logged
    }
    weigh(book, code, targets, on=on, by="Nuala", readings=POURED)
    return code


@once
def cut(book: Book, recipe: str = "plain-bar", *, on: date = MADE, bars: int = 10) -> str:
    """A batch planned, weighed, poured and cut on one day; returns its code."""
    code = weighed(book, planned(book, recipe, on=on), on=on)
    cut_batch(book, code, bars=bars, on=on, by="Nuala", bars_mg=1_320_000)
    return code
