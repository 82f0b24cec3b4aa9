"""What a general database viewer shows of the ledger is what the commands answer."""

import json
import sqlite3
from collections import Counter, defaultdict
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from commands_run import note_run
from typer.testing import CliRunner

from ledger.cli.main import app

DAY = "2026-11-25"  # which another story plays as well


class Viewed:
    """The season's ledger, by its views and by the commands."""

    def __init__(self, path: Path) -> None:
        self.path, self.raw = path, sqlite3.connect(f"{path.as_uri()}?mode=ro", uri=True)
        self.raw.row_factory = sqlite3.Row

    def view(self, name: str) -> list[dict[str, Any]]:
        return [dict(row) for row in self.raw.execute(f"SELECT * FROM {name}")]

    def answer(self, *words: str) -> Any:
        result = CliRunner().invoke(app, ["--ledger", str(self.path), *words, "--json"])
        assert result.exit_code == 0, result.output
        note_run(app, words)
        return json.loads(result.stdout)


@pytest.fixture(scope="module")
def season(play: Callable[[str], Any]) -> Iterator[Viewed]:
    found = Viewed(play(DAY).folder / "soap.db")
    yield found
    found.raw.close()


def stocked(season: Viewed, *, soap: bool) -> Iterator[tuple[Any, str, int]]:
    """What `stock` answers: a lot, a place, how much."""
    for material in season.answer("stock"):
        for line in material["lots"]:
            if (material["kind"] == "soap") == soap:
                yield from ((line["lot"], place, held) for place, held in line["here"])


def test_stock_now_is_what_stock_answers(season: Viewed) -> None:
    shown = {
        (row["lot"], row["place"], row["material"], row["supplier"], row["their_number"], row["best_before"],
         row["status"], row["grams"], row["pieces"])
        for row in season.view("stock_now")
    }  # fmt: skip
    asked = {
        (lot["code"], place, lot["material"], lot["supplier"], lot["supplier_number"], lot["best_before"],
         lot["status"], *((None, held) if lot["kind"] == "packaging" else (held / 1000, None)))
        for lot, place, held in stocked(season, soap=False)
    }  # fmt: skip
    assert len(shown) > 40
    assert shown == asked


def test_bars_now_are_the_bars_that_stock_answers(season: Viewed) -> None:
    shown = {tuple(row.values()) for row in season.view("bars_now")}
    asked = {
        (lot["code"], lot["material"], lot["on"], place, held, lot["status"])
        for lot, place, held in stocked(season, soap=True)
    }
    assert len(shown) > 20
    assert shown == asked


def test_batches_made_are_those_of_the_list(season: Viewed) -> None:
    made = [one["batch"] for one in season.answer("batch", "list", "--all")]
    asked = {
        one["code"]: (one["product"], one["recipe_code"], one["recipe_version"], one["process"], one["yielded_on"],
                      *((one["made"], None) if one["kind"] == "soap" else (None, one["made"] / 1000)))
        for one in made if one["yield_lot_id"]
    }  # fmt: skip
    shown = {row["batch"]: row for row in season.view("batches_made")}
    assert {
        code: (row["product"], row["recipe"], row["recipe_version"], row["process"], row["cut_on"], row["bars"],
               row["grams"])
        for code, row in shown.items() if row["cut_on"]
    } == asked  # fmt: skip
    assert len(asked) > 20
    assert {one["code"]: one["made_on"] for one in made if one["made_on"]}.items() <= {
        code: row["made_on"] for code, row in shown.items()
    }.items()
    held = Counter[str]()
    for lot, _, count in stocked(season, soap=True):
        held[lot["code"]] += count
    assert {code: row["bars_here"] for code, row in shown.items() if row["bars_here"]} == dict(held)
    released = {one["batch"]["code"] for one in season.answer("batch", "list", "--all") if one["status"] == "released"}
    assert {code for code, row in shown.items() if row["decided_last"] == "released"} == released != set()


def test_sales_are_where_the_records_say_the_bars_went(season: Viewed) -> None:
    shown: dict[str, Counter[tuple[str, str]]] = defaultdict(Counter)
    for row in season.view("sales"):
        shown[row["batch"]][row["way"], row["day"]] += row["bars"]
    for code in {row["batch"] for row in season.view("bars_now")}:
        asked = Counter[tuple[str, str]]()
        for one in season.answer("batch", "show", code)["whereabouts"]:
            if one["left"] and one["where"] in ("sold", "dispatched", "given", "returned"):
                asked[one["where"], one["on"]] += one["count"]
        assert shown.get(code, Counter()) == asked, code
    names = {card["name"] for card in season.answer("customer", "list")}
    assert names <= {row["who_or_where"] for row in season.view("sales")}


def test_the_takings_of_a_stall_day_are_shared_out_whole(season: Viewed) -> None:
    """110 days before, on 7 Aug 2026, the box held 88.00 EUR, as the diary of the season says."""
    day = [row for row in season.view("sales") if row["day"] == "2026-08-07"]
    assert {row["who_or_where"] for row in day} == {"Larkmere quay market"}
    assert (sum(row["money"] for row in day), {row["currency"] for row in day}) == (88.0, {"EUR"})


def test_deliveries_are_the_lots_of_suppliers(season: Viewed) -> None:
    lots = [line["lot"] for material in season.answer("stock", "--all") for line in material["lots"]]
    asked = {
        (lot["on"], lot["supplier"], lot["code"], lot["supplier_number"], lot["material"], lot["best_before"],
         None if lot["cost_minor"] is None else lot["cost_minor"] / 100)
        for lot in lots if lot["supplier"]
    }  # fmt: skip
    shown = season.view("deliveries")
    columns = ("came_on", "supplier", "lot", "their_number", "material", "best_before", "cost")
    assert {tuple(row[one] for one in columns) for row in shown} == asked
    assert len(asked) > 40
    by_lot = {row["lot"]: row for row in shown}
    for code in ("L1-X", "L20-4", "L21-2"):
        first = season.answer("lot", "show", code)["movements"][0]
        assert first["what"] == "received"
        counted = by_lot[code]["pieces"] is not None
        assert first["quantity"] == (by_lot[code]["pieces"] if counted else by_lot[code]["grams"] * 1000)


def test_a_person_who_was_erased_stands_in_sales_by_the_short_name(season: Viewed, tmp_path: Path) -> None:
    copy = tmp_path / "soap.db"
    copy.write_bytes(season.path.read_bytes())
    result = CliRunner().invoke(app, ["--ledger", str(copy), "customer", "erase", "aunt", "--reason", "asked", "--yes"])
    assert result.exit_code == 0, result.output
    later = Viewed(copy)
    before = {row["who_or_where"] for row in season.view("sales")}
    assert before - {row["who_or_where"] for row in later.view("sales")} == {"Bridie Penhallow"}
    assert "aunt" in {row["who_or_where"] for row in later.view("sales")}
    later.raw.close()
