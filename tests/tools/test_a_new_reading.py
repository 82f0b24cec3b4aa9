"""A new reading is one row of the table: everything that tells of readings knows it then, and nothing without it."""

import json
from typing import Any

import pytest
from making import MADE, planned
from shop import Shop

from ledger.documents.bench.worksheet import draw_worksheet
from ledger.domain.tools.readings import DEGREES, READINGS, START, BenchReading
from ledger.errors import BadInput
from ledger.operations.bench.readings import read_reading
from ledger.operations.tools.equipment import EquipmentDetails, add_equipment
from ledger.reference.cautions import cautions
from ledger.rows.batch import find_batch
from ledger.views.bench.bench import steps_of
from ledger.views.bench.worksheet import worksheet

ROOM = BenchReading("room temperature", DEGREES, START, "Room temperature", "by the bench", at_most=lambda *_: 30_000)


@pytest.fixture
def room(monkeypatch: pytest.MonkeyPatch) -> None:
    """The table with one more row, for as long as the test runs."""
    monkeypatch.setitem(READINGS, ROOM.what, ROOM)


def on_record(run: Any, code: str) -> list[tuple[str, str, str, str]]:
    found = json.loads(run("batch", "show", code, "--json").stdout)["readings"]
    return [(one["what"], one["value"], one["limit"], one["tool"]) for one in found]


@pytest.mark.usefixtures("room")
def test_it_is_read_by_its_name_and_by_its_letter_and_stands_on_the_record(shop: Shop, run: Any) -> None:
    tool = add_equipment(shop.book, "thermometer", EquipmentDetails("probe"), on=MADE)
    code = planned(shop.book)
    run("batch", "log", code, "--reading", "Room temperature=68 F")  # (68 - 32) x 5 / 9 = 20
    assert on_record(run, code) == [("room temperature", "20.0 °C", "at most 30.0 °C", tool)]
    assert "room temperature  20.0 °C" in run("batch", "show", code).stdout
    other = planned(shop.book)
    run("batch", "log", other, "--line", "c=21 C")
    assert on_record(run, other) == [("room temperature", "21.0 °C", "at most 30.0 °C", tool)]
    said = run("batch", "log", other, "--reading", "room temperature=22 C", code=1)
    assert "room temperature of batch" in said.stderr


@pytest.mark.usefixtures("room")
def test_it_is_asked_at_the_prompt_among_what_comes_first(shop: Shop, run: Any) -> None:
    code = planned(shop.book)
    said = run("batch", "log", code, input="s\ns\n21\n21 C\nq\n").stderr
    asked = "c. Room temperature (with its unit, C or F; Enter: still open)"
    assert said.index("b. Scale reads the test weight") < said.index(asked) < said.index("1. olive oil")
    assert "21 degrees of which kind? Write 21 C or 21 F." in said
    assert [one[:2] for one in on_record(run, code)] == [("room temperature", "21.0 °C")]


@pytest.mark.usefixtures("room")
def test_it_stands_on_the_worksheet_and_what_was_not_read_is_said(shop: Shop, run: Any, read: Any) -> None:
    code = planned(shop.book)
    drawn = read(draw_worksheet(worksheet(shop.rows(), code, program=""), cautions=cautions())).text()
    assert "c Room temperature by the bench; at most 30.0 °C °C" in drawn
    assert "Room temperature" in json.loads(run("batch", "show", code, "--json").stdout)["not_logged"]


@pytest.mark.usefixtures("room")
@pytest.mark.parametrize(
    ("read", "outside"), [("30 C", []), ("30.1 C", ["room temperature 30.1 °C, 0.1 °C over 30.0 °C"])]
)
def test_above_its_limit_it_is_a_deviation(shop: Shop, run: Any, read: str, outside: list[str]) -> None:
    code = planned(shop.book)
    run("batch", "log", code, "--reading", f"room temperature={read}")
    assert [one["found"] for one in json.loads(run("batch", "show", code, "--json").stdout)["deviations"]] == outside


@pytest.mark.usefixtures("room")
def test_a_thermometer_that_fails_throws_doubt_on_it(shop: Shop, run: Any) -> None:
    tool = add_equipment(shop.book, "thermometer", EquipmentDetails("probe", None, 0, 500), on=MADE)
    code = planned(shop.book)
    run("batch", "log", code, "--reading", "room temperature=20 C")
    touched = json.loads(run("equipment", "check", tool, "2 C", "--json").stdout)["touched"]["batches"]
    assert [(one["code"], one["readings"]) for one in touched] == [(code, ["room temperature"])]


def test_without_its_row_nothing_knows_it(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    batch = find_batch(shop.rows(), planned(shop.book))
    with monkeypatch.context() as table:
        table.setitem(READINGS, ROOM.what, ROOM)
        assert [one.what for one in steps_of(shop.rows(), batch)][:3] == ["clean", "scale test", "room temperature"]
        assert read_reading("room temperature=20 C").value == 20_000
    assert ROOM.what not in [one.what for one in steps_of(shop.rows(), batch)]
    with pytest.raises(BadInput, match="'room temperature' is not something read at the bench"):
        read_reading("room temperature=20 C")
