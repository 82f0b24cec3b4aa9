"""A list that grows for ever shows its last fifty, says how to see more, and shows as many as are asked for."""

import json
from datetime import date
from typing import Any

import pytest

from ledger.cli.kit.window import WINDOW, latest
from ledger.operations.bench.plan import PlanRequest, plan_batch
from ledger.operations.tools.upkeep import UpkeepNote, add_upkeep

pytestmark = pytest.mark.usefixtures("frozen")


def noted_up_to(shop: Any, entry: int) -> None:
    """The shop has 14 entries; a note a time until there are so many."""
    for _ in range(entry - 14):
        add_upkeep(shop.book, UpkeepNote("cleaning", "shelves", date(2026, 6, 1), "Nuala"))


@pytest.mark.parametrize(("entries", "first", "said"), [(49, 1, "49 entries"), (50, 1, "50 entries"),
                                                        (51, 2, "The last 50 entries")])  # fmt: skip
def test_history_shows_fifty(shop: Any, run: Any, entries: int, first: int, said: str) -> None:
    noted_up_to(shop, entries)
    lines = run("history").stdout.splitlines()
    assert lines[0] == f"{said}, the latest last."
    assert lines[2].split()[0] == str(first)
    assert (lines[-1] == "Earlier ones: soapledger history --all") == (entries > 50)
    shown = run("history", "--json")
    assert [one["entry"] for one in json.loads(shown.stdout)] == [*range(first, entries + 1)]
    assert (shown.stderr == "Earlier ones: soapledger history --all\n") == (entries > 50)
    assert len(json.loads(run("history", "--all", "--json").stdout)) == entries
    assert [one["entry"] for one in json.loads(run("history", "--last", "1", "--json").stdout)] == [entries]


def test_batches_and_runs_show_the_last_by_day(shop: Any, run: Any) -> None:
    later, sooner = (plan_batch(shop.book, PlanRequest("plain-bar", date(2026, 5, day))) for day in (9, 8))
    lines = run("batch", "list", "--last", "2").stdout.splitlines()
    assert lines[0] == "The last 2 batches."
    assert [line.split()[0] for line in lines[2:4]] == [sooner, later]
    assert lines[4:] == ["Earlier ones: soapledger batch list --all"]
    assert run("batch", "list", "--all").stdout == run("batch", "list").stdout
    assert run("batch", "list").stdout.startswith("3 batches.\n")
    assert run("label", "runs", "--all").stdout.startswith("No labels were printed yet.")


@pytest.mark.usefixtures("shop")
def test_what_cannot_be_meant_is_said(run: Any) -> None:
    for words in (("history",), ("batch", "list"), ("label", "runs")):
        assert "leave one of them out" in run(*words, "--last", "3", "--all", code=2).stderr
        assert "above zero" in run(*words, "--last", "0", code=2).stderr


def test_none_one_and_the_window() -> None:
    assert latest((), WINDOW) == ((), False)
    assert latest((1, 2), 2) == ((1, 2), False)
    assert latest((1, 2, 3), 2) == ((2, 3), True)
    assert latest((1, 2, 3), None) == ((1, 2, 3), False)
