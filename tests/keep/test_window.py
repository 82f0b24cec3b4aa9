"""A list that grows for ever shows its last fifty, says how to see more, and shows as many as are asked for."""

import json
import shutil
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from ledger.cli.keep import history
from ledger.cli.kit.window import WINDOW, latest
from ledger.operations.bench.plan import PlanRequest, plan_batch
from ledger.operations.tools.upkeep import UpkeepNote, add_upkeep
from ledger.storage.book import Book
from ledger.storage.tables.release import RetainedSample

pytestmark = pytest.mark.usefixtures("frozen")


def note(book: Book, times: int = 35) -> None:
    for _ in range(times):
        add_upkeep(book, UpkeepNote("cleaning", "shelves", date(2026, 6, 1), "Nuala"))


@pytest.fixture
def noted(shop: Any, built: Any) -> Book:
    """The shop has 14 entries; a note a time until there are 49."""
    shutil.copyfile(built("noted to 49", note, shop.book.path)[0], shop.book.path)
    book: Book = shop.book
    return book


@pytest.mark.parametrize(("entries", "first", "said"), [(49, 1, "49 entries"), (50, 1, "50 entries"),
                                                        (51, 2, "The last 50 entries")])  # fmt: skip
def test_history_shows_fifty(noted: Book, run: Any, entries: int, first: int, said: str) -> None:
    note(noted, entries - 49)
    lines = run("history").stdout.splitlines()
    assert lines[0] == f"{said}, the latest last."
    assert lines[2].split()[0] == str(first)
    assert (lines[-1] == "Earlier ones: soapledger history --all") == (entries > 50)
    shown = run("history", "--json")
    assert [one["entry"] for one in json.loads(shown.stdout)] == [*range(first, entries + 1)]
    assert (shown.stderr == "Earlier ones: soapledger history --all\n") == (entries > 50)
    assert len(json.loads(run("history", "--all", "--json").stdout)) == entries
    assert [one["entry"] for one in json.loads(run("history", "--last", "1", "--json").stdout)] == [entries]


def retain_two(shop: Any) -> None:
    """Two samples more, kept until 2030 and 2031."""
    with shop.book.write("release") as tx:
        lot = tx.rows.execute("SELECT id FROM lot WHERE code = ?", (shop.batch,)).fetchone()[0]
        for year in (2030, 2031):
            tx.add(RetainedSample(lot_id=lot, bars=1, on=date(2026, 6, 1), kept_at="tin", keep_until=date(year, 6, 1)))
        tx.say("Set two samples aside.")


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
def test_an_open_complaint_never_drops_out_of_sight(run: Any) -> None:
    for day in ("01", "02", "03", "04"):
        run("complaint", "add", f"itched on {day}", "--on", f"2026-05-{day}")
    for number in ("2", "3", "4"):
        run("complaint", "close", number, "bar replaced")
    lines = run("complaint", "list", "--last", "1").stdout.splitlines()
    assert lines[0] == "4 complaints, 1 open."
    assert [line.split()[0] for line in lines[2:4]] == ["1", "4"]  # the open one, and the last that is closed
    assert lines[4:] == ["Earlier ones: soapledger complaint list --all"]
    shown = run("complaint", "list", "--last", "2", "--json")
    assert [one["number"] for one in json.loads(shown.stdout)] == [1, 3, 4]
    assert shown.stderr == "Earlier ones: soapledger complaint list --all\n"
    assert run("complaint", "list", "--last", "3").stdout == run("complaint", "list").stdout


@pytest.mark.usefixtures("shop")
def test_upkeep_that_waits_never_drops_out_of_sight(run: Any) -> None:
    run("upkeep", "add", "cleaning", "pots", "--on", "2026-05-01", "--next", "2026-05-08")
    for day in ("02", "03", "04"):
        run("upkeep", "add", "cleaning", f"shelf {day}", "--on", f"2026-05-{day}")
    lines = run("upkeep", "list", "--last", "1", "--kind", "cleaning").stdout.splitlines()
    assert lines[0].startswith("4 notes, 1 due on ")
    assert lines[2].startswith("  overdue")
    assert "shelf 04" in lines[3]
    assert lines[4:] == ["Earlier ones: soapledger upkeep list --kind cleaning --all"]
    shown = json.loads(run("upkeep", "list", "--last", "2", "--json").stdout)
    assert [one["what"] for one in shown] == ["pots", "shelf 04", "shelf 03"]  # the latest first


def test_samples_and_papers_show_the_last(full: Any, run: Any) -> None:
    retain_two(full)
    lines = run("samples", "--last", "1").stdout.splitlines()
    assert lines[0].startswith("3 bars kept as samples; ")
    assert lines[2].split()[0] == full.batch
    assert "1 Jun 2031" in lines[2]
    assert lines[3:] == ["Earlier ones: soapledger samples --all"]
    assert len(json.loads(run("samples", "--last", "2", "--json").stdout)) == 2
    for number in (1, 2):
        Path(f"{number}.txt").write_text(f"a note {number}", encoding="utf-8")
        run("attach", f"{number}.txt", "--to", full.olive)
    lines = run("attachments", full.olive, "--last", "1").stdout.splitlines()
    assert "2.txt" in lines[2]
    assert lines[-1] == f"Earlier ones: soapledger attachments {full.olive} --all"


@pytest.mark.usefixtures("shop")
def test_costs_are_of_the_last_batches(run: Any) -> None:
    assert run("cost", "--last", "1").stdout.startswith("1 batch with bars.\n")
    run("batch", "plan", "plain-bar", "--on", "2026-05-09")
    run("batch", "log", "26-002-2", "--as-planned", "--line", "4=146.8 g", "--on", "2026-05-09")
    run("batch", "log", "26-002-2", "--reading", "poured=14:05", "--on", "2026-05-09")
    run("batch", "cut", "26-002-2", "10", "--on", "2026-05-10")
    lines = run("cost", "--last", "1").stdout.splitlines()
    assert lines[0] == "The last batch with bars."
    assert lines[2].split()[0] == "26-002-2"
    assert lines[3:] == ["Earlier ones: soapledger cost --all"]


@pytest.mark.usefixtures("shop")
def test_what_cannot_be_meant_is_said(run: Any) -> None:
    lists = ("history", "batch list", "label runs", "samples", "complaint list", "upkeep list", "attachments", "cost")
    for words in (one.split() for one in lists):
        assert "leave one of them out" in run(*words, "--last", "3", "--all", code=2).stderr
        assert "above zero" in run(*words, "--last", "0", code=2).stderr


def test_none_one_and_the_window() -> None:
    assert latest((), WINDOW) == ((), False)
    assert latest((1, 2), 2) == ((1, 2), False)
    assert latest((1, 2, 3), 2) == ((2, 3), True)
    assert latest((1, 2, 3), None) == ((1, 2, 3), False)
    assert latest((1, 2, 3), 1, always=lambda one: one == 1) == ((1, 3), True)
    assert latest((1, 2, 3), 2, always=lambda one: one == 1) == ((1, 2, 3), False)


def test_a_long_entry_goes_on_below_itself_where_it_is_read_and_stays_whole_where_it_is_searched(
    run: Any, shop: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    add_upkeep(shop.book, UpkeepNote("cleaning", "the shelves of the curing room " * 5, date(2026, 6, 1), "Nuala"))
    assert max(map(len, run("history").stdout.splitlines())) > 80
    monkeypatch.setattr(history, "on_screen", lambda: True)
    assert max(map(len, run("history").stdout.splitlines())) <= 80
