"""Logged, skipped, stopped, corrected and resumed in any order, a batch has the same record."""

import shutil
import tempfile
from datetime import date
from pathlib import Path
from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from shop import NOW, PLAIN_BAR, SETUP

from ledger.operations.bench.plan import PlanRequest, plan_batch
from ledger.operations.bench.readings import log_readings, read_reading
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.house.setup import set_up
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.people.suppliers import SupplierDetails, add_supplier
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, receive
from ledger.rows.batch import find_batch, plan_lines
from ledger.rows.decision import open_deviations
from ledger.rows.reading import current_readings
from ledger.storage.book import Book
from ledger.storage.personal import PersonDetails
from ledger.views.bench.bench import mass_balance

MADE = date(2026, 5, 6)
WEIGHED = {1: 601_000, 2: 390_000, 3: 293_000, 4: 146_500}  # the second below its 396 g: a deviation
READ = {"lye temperature": "58 C", "fats temperature": "45 C", "trace": "9 min"}  # 13 degrees apart: another
THINGS = [*WEIGHED, *READ]


def to_weigh(book: Book) -> str:
    """A batch planned; returns its code."""
    set_up(book, SETUP)
    add_supplier(book, SupplierDetails("Tarnlow Oils", PersonDetails()), own=False, code="tarnlow")
    for facts, kind in (
        (MaterialFacts("olive oil", None, None, 190_000, 190_000, "certificate"), "fat"),
        (MaterialFacts("coconut oil", None, None, 257_000, 257_000, "certificate"), "fat"),
        (MaterialFacts("sodium hydroxide", alkali_kind="NaOH"), "alkali"),
        (MaterialFacts("water"), "liquid"),
    ):
        add_material(book, facts, kind=kind, code=None)
    add_recipe(book, PLAIN_BAR, file="plain-bar.toml")
    lines = tuple(
        DeliveryLine(name, 5_000_000, "N1", 100) for name in ("olive oil", "coconut oil", "sodium hydroxide", "water")
    )
    receive(book, DeliveryNote("tarnlow", date(2026, 3, 2), lines, accepted_by="Nuala"))
    return plan_batch(book, PlanRequest("plain-bar", MADE))


def record(book: Book, code: str) -> tuple[object, ...]:
    with book.look() as rows:
        batch = find_batch(rows, code)
        return (
            [(line.number, line.used) for line in plan_lines(rows, batch.id)],
            sorted((row.what, row.value) for row in current_readings(rows, batch.id)),
            sorted((one.subject, one.found) for one in open_deviations(rows, batch.id)),
            mass_balance(rows, batch),
        )


@settings(max_examples=12, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(order=st.permutations(THINGS), mistyped=st.sets(st.sampled_from(THINGS)))
def test_the_record_is_the_same_whatever_the_order(
    built: Any, order: list[int | str], mistyped: set[int | str]
) -> None:
    path, code = built("to weigh", to_weigh)
    with tempfile.TemporaryDirectory() as folder:
        book = Book(shutil.copyfile(path, Path(folder) / "soap.db"), who="Nuala", now=lambda: NOW)

        def log(thing: int | str, *, wrong: bool, correct: bool) -> None:
            if isinstance(thing, int):
                # 5 g less of water or fat, 0.4 g less of lye: wrong, but nothing that is refused
                off = (400 if thing == 4 else 5_000) if wrong else 0
                mass = [Weighed(WEIGHED[thing] - off)]
                weigh(book, code, {thing: mass}, on=MADE, by="Nuala", correct=correct, anyway="a trial")
            else:
                typed = {"trace": "4 min"}.get(thing, "47 C") if wrong else READ[thing]
                log_readings(book, code, [read_reading(f"{thing}={typed}")], on=MADE, correct=correct)

        for thing in order:
            log(thing, wrong=thing in mistyped, correct=False)
        for thing in sorted(mistyped, key=str):
            log(thing, wrong=False, correct=True)
        lines, readings, open_, balance = record(book, code)
        book.close()
    assert lines == list(WEIGHED.items())
    assert readings == [("fats temperature", 45_000), ("lye temperature", 58_000), ("trace", 9)]
    assert [subject for subject, _ in open_] == ["line 2", "lye and fats apart"]
    assert balance.put_in_mg == 1_430_500  # 601 + 390 + 293 + 146.5 g
