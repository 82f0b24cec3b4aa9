"""No statement of a recall or a trace reads a whole table of what happens: what is reached alone is read."""

from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from making import MADE, cut, planned
from once import once

from ledger.domain.recall.question import Question, Start
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.tools.checks import check_equipment
from ledger.operations.tools.equipment import EquipmentDetails, add_equipment
from ledger.rows.batch import batch_by_id, find_batch
from ledger.rows.lot import find_lot
from ledger.rows.opened import Rows, as_known, open_rows
from ledger.views.recall.reach import Starts
from ledger.views.recall.recall_answer import recall_answer
from ledger.views.recall.recall_kinds import asked_about_anything
from ledger.views.recall.recall_way import way_to
from ledger.views.recall.trace import trace

pytestmark = pytest.mark.usefixtures("frozen")
GROWING = ("movement", "plan_line", "reading", "decision")  # with the years, for every batch


def scanned(rows: Rows, ask: Callable[[], object]) -> list[str]:
    """The growing tables that are looked through from an end, by the programs of every statement that asking runs.

    A program opens a table, or an index of it, by its root page, and what begins at an end of it reads all of it, or
    all that was known by an entry; so no name that a view gives a table hides it.
    """
    said: list[str] = []
    rows.set_trace_callback(said.append)
    ask()
    rows.set_trace_callback(None)
    of_page = {
        row[0]: (row[1], row[2]) for row in rows.execute("SELECT rootpage, tbl_name, name FROM main.sqlite_schema")
    }
    found = []
    for sql in dict.fromkeys(one for one in said if one.lstrip().upper().startswith(("SELECT", "WITH"))):
        steps = rows.execute(f"EXPLAIN {sql}").fetchall()
        opened = {row["p1"]: of_page[row["p2"]] for row in steps if row["opcode"] == "OpenRead" and row["p3"] == 0}
        for row in steps:
            table, name = opened.get(row["p1"], ("", ""))
            if row["opcode"] in ("Rewind", "Last") and table in GROWING:
                found.append(f"{name} in {' '.join(sql.split())[:90]}")
    return found


@pytest.fixture(params=["now", "as of"])
def rows(request: pytest.FixtureRequest, shop: Any) -> Rows:
    """It as it stands, or as it was known at its last entry."""
    once(weighed_on_a_scale)(shop)
    found = open_rows(Path(shop.book.path))
    if request.param == "as of":
        as_known(found, found.execute("SELECT max(id) FROM entry").fetchone()[0])
    return found


def weighed_on_a_scale(shop: Any) -> None:
    """The worked shop with a second batch.

    Its scale failed after a good check and before any; in a third batch something was weighed for another material.
    """
    cut(shop.book)
    scale = add_equipment(shop.book, "scale", EquipmentDetails("bench scale", 30, 500_000, 1_000), on=MADE)
    for found, on in ((490_000, date(2026, 4, 1)), (500_000, date(2026, 4, 20)), (490_000, date(2026, 5, 20))):
        check_equipment(shop.book, scale, found, on=on, by="Nuala")
    wrong = {1: [Weighed(600_000, shop.coconut)]}
    weigh(shop.book, planned(shop.book), wrong, on=MADE, by="Nuala", instead=True)


def test_a_scan_is_seen(rows: Rows) -> None:
    assert scanned(rows, lambda: rows.execute("SELECT sum(v.quantity) FROM movement v").fetchall())


def test_the_answer_and_the_way_to_a_batch_scan_nothing(rows: Rows) -> None:
    lot, batch = find_lot(rows, "L1-X"), find_batch(rows, "26-001-4")
    assert scanned(rows, lambda: recall_answer(rows, [lot], asked=["A"], program="test")) == []
    assert scanned(rows, lambda: recall_answer(rows, [], bars_of=[batch], asked=["A"], program="test")) == []
    assert scanned(rows, lambda: recall_answer(rows, [], labelled=[batch], asked=["A"], program="test")) == []
    assert scanned(rows, lambda: way_to(rows, Starts((lot,)), batch_by_id(rows, batch.id))) == []


@pytest.mark.parametrize(
    "question",
    [
        Question((Start("number", "4471/2"), Start("bar", "26-001-4"))),
        Question(supplier="tarnlow", material="olive oil"),
        Question((Start("product", "plain bar"),)),
        Question((Start("recipe", "plain-bar@1"),)),
        Question((Start("tool", "bench scale"),)),
        Question((Start("instead", "coconut oil"),)),
    ],
)
def test_finding_what_a_question_means_scans_nothing(rows: Rows, question: Question) -> None:
    assert scanned(rows, lambda: asked_about_anything(rows, question, on=date(2026, 6, 1))) == []


@pytest.mark.parametrize("forward", [False, True])
def test_a_trace_scans_nothing(rows: Rows, forward: bool) -> None:
    assert scanned(rows, lambda: trace(rows, "26-001-4", forward=forward)) == []
