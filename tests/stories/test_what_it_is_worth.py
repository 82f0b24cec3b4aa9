"""The sample season to the cent: what its papers say was paid is somewhere, at the end of every week of it."""

import csv
import json
from datetime import date, timedelta
from typing import Any

from freezegun import freeze_time

from ledger.reference.shipped import sample_data


def paid_by_the_papers() -> int:
    """What the deliveries of the season cost, as its own file says, in cents; it tells of no carriage."""
    with (sample_data() / "deliveries.csv").open(encoding="utf-8", newline="") as file:
        return sum(round(float(row["cost"] or 0) * 100) for row in csv.DictReader(file))


def test_the_season_is_worth_what_was_paid_for_it(play: Any, run: Any) -> None:
    with freeze_time("2026-11-25 12:00:00"):
        ledger = ("--ledger", str(play("2026-11-25").folder / "soap.db"))

        def worth(*on: str) -> Any:
            return json.loads(run(*ledger, "worth", "--json", *on).stdout)

        found = worth()
        assert (found["goods_minor"], found["carriage_minor"]) == (paid_by_the_papers(), 0)
        before = 0
        for weeks in range(52, -1, -1):
            on = date(2026, 11, 25) - timedelta(weeks=weeks)
            then = worth("--on", on.isoformat())
            assert then["differs_minor"] == 0
            assert sum(then["goods"].values()) == then["goods_minor"] + then["carriage_minor"] >= before
            assert sum(then["work"].values()) == then["work_minor"] + then["house_minor"]
            before = then["goods_minor"] + then["carriage_minor"]
        assert then == found
        # what each bar bears and what is written off come to what all bars of a batch bear
        costs = json.loads(run(*ledger, "cost", "--all", "--json").stdout)
        assert len(costs) > 20
        assert all(sum(one["per_bar_minor"]) + one["written_off_minor"] == one["to_bars_minor"] for one in costs)
