"""The sample season: it plays on any day, holds what was promised of it, and ends in a sound ledger."""

import csv
import json
from typing import Any

import pytest
from freezegun import freeze_time

from ledger.reference.shipped import sample_data


def table(name: str) -> list[dict[str, str]]:
    """One table of the season."""
    with (sample_data() / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_the_season_is_as_large_as_it_was_promised() -> None:
    assert len(table("suppliers.csv")) >= 6
    assert sum(row["own"] == "yes" for row in table("suppliers.csv")) == 1
    assert len(table("materials.csv")) >= 25
    deliveries = table("deliveries.csv")
    assert len(deliveries) >= 45
    assert sum(row["lot"] == "unknown" for row in deliveries) == 1
    assert len(list((sample_data() / "recipes").glob("*.toml"))) >= 6


# an ordinary day, and a leap day with a new year in the middle of the season
@pytest.mark.parametrize("day", ["2026-11-25", "2028-02-29"])
def test_the_demo_does_the_main_job_and_leaves_a_sound_ledger(day: str, play: Any, run: Any) -> None:
    with freeze_time(f"{day} 12:00:00"):
        season = play(day)
        ledger = ("--ledger", str(season.folder / "soap.db"))
        answer = json.loads(run(*ledger, "recall", "lot", "lot ot 4471/2", "--json").stdout)
        assert "nothing is wrong" in run(*ledger, "check").stdout
        batches = json.loads(run(*ledger, "batch", "list", "--json").stdout)
        calendula = [one["batch"]["code"] for one in batches if one["batch"]["recipe_code"] == "calendula"]
        beside = [
            json.loads(run(*ledger, "recipe", "assessment", "calendula", *which, "--json").stdout)
            for which in ((), *(("--batch", code) for code in calendula))
        ]
        lots = [
            line["lot"] for one in json.loads(run(*ledger, "stock", "--all", "--json").stdout) for line in one["lots"]
        ]
        runs = json.loads(run(*ledger, "label", "runs", "--json").stdout)
        records = [
            json.loads(run(*ledger, "batch", "show", one["batch"]["code"], "--json").stdout)
            for one in batches
            if one["status"] == "released"
        ]
    why = " ".join(one["reason"] or "" for record in records for one in record["decisions"])
    assert "released bare" not in why
    assert "all the same" not in why
    assert all(record["labels"] for record in records)
    twice = [one["batch_code"] for one in runs if one["market"] == "eu"]
    # 120 days before 25 November 2026 is 28 July: what was labelled then and left in August is labelled anew
    assert (len(twice) > len(set(twice))) is (day == "2026-11-25")
    for name in ("worksheet.pdf", "batch-record.pdf", "labels.pdf", "recall.pdf"):
        assert (season.folder / name).read_bytes().startswith(b"%PDF")
        assert name in season.shown
    assert (season.folder / "whom-to-call.csv").exists()
    totals = answer["totals"]
    assert totals["made"] == sum(one["bars_made"] for one in answer["batches"])
    assert totals["made"] == sum(count for place, count in totals.items() if place != "made")
    assert totals["unexplained"] == 0
    assert (
        max(one["steps"] for one in answer["batches"]) >= 5
    )  # drum to batch to lot to batch to lot to batch: at least two steps between
    assert len(batches) >= 24
    assert len(calendula) == 4
    assert {(one["outside"], one["silent"]) for one in beside} == {(0, 0)}  # as written, and each batch as weighed
    statuses = {one["status"] for one in batches}
    assert {"planned", "curing", "released", "rejected", "strained", "combined"} <= statuses
    assert any(lot["status"] == "on hold" for lot in lots)
