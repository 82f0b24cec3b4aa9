"""The day of what happened: today and any day since it could have happened, never one that has not come."""

import shutil
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing
from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest
from making import planned
from shop import NOW, SETUP, Shop, fill, work_a_shop
from test_commands import COMMANDS

from ledger.operations.house.setup import set_up
from ledger.storage.book import Book

pytestmark = pytest.mark.usefixtures("frozen")  # today is 1 Jun 2026
Run = Callable[..., Any]
TODAY, TOMORROW = "2026-06-01", "2026-06-02"

# These look ahead or back: what is planned, what will be due, what would hold on a day of supply.
ANY_DAY = {"batch plan", "demo", "equipment list", "label check", "price list", "stall pack", "upkeep list"}
BEING_MADE = {"batch correct"}
BATCH = "26-001-4"  # made on 1 Apr 2026, cut on 2 Apr, passed and released on 4 May
WORDS: dict[str, tuple[str, ...]] = {
    "receive": ("tarnlow", "--line", "olive oil; 1 kg; lot 9; 5"),
    "pass": (BATCH,),
    "release": (BATCH, "--anyway", "a trial", "--bare", "a trial"),
    "samples": (),
    "reject": (BATCH, "--reason", "soft"),
    "rework": (BATCH, "600 g"),
    "dispatch": ("person-1", f"{BATCH}=1"),
    "return": (f"{BATCH}=1", "--stall", "Quay market"),
    "resell": (f"{BATCH}=1", "--by", "Nuala", "--reason", "unopened"),
    "gift": (f"{BATCH}=1",),
    "shelf keep": (f"{BATCH}=1", "--by", "Nuala", "--reason", "a complaint is open"),
    "shelf waste": (f"{BATCH}=1", "--by", "Nuala", "--reason", "torn"),
    "sale list": (),
    "sale pay": ("1", "1.00", "--cash"),
    "sale fee": ("pitch", "15"),
    "sale credit": ("1", "1.00", "--reason", "late"),
    "equipment check": ("scale", "500 g"),
    "recipe assessment": ("plain-bar",),
    "lot accept": ("L1-X",),
    "lot reject": ("L1-X", "--reason", "rancid"),
    "lot hold": ("L1-X", "--reason", "cloudy"),
    "lot count": ("L1-X", "4400 g"),
    "lot waste": ("L1-X", "1 g", "--reason", "spilt"),
    "lot combine": ("L1-X", "L2-8", "--yes"),
    "batch log": (BATCH, "--reading", "bar weight=100 g"),
    "batch divide": (BATCH,),
    "batch cut": (BATCH, "10"),
    "batch strain": (BATCH, "500 g"),
    "batch fill": (BATCH, "500 g"),
    "batch note": (BATCH, "a crack"),
    "batch work": (BATCH, "45"),
    "worth": (),
    "batch decide": (BATCH, "1", "accept", "--reason", "only the looks"),
    "batch discard": (BATCH, "--reason", "spilt"),
    "cure list": (),
    "cure weigh": (BATCH, "A=100g"),
    "cure show": (BATCH,),
    "cure calendar": ("-o", "rack.ics"),
    "label band": ("L2-8", "band.txt"),
    "label block": (BATCH, "--market", "eu", "-o", "block.svg"),
    "label print": (BATCH, "--market", "eu", "-o", "labels.pdf"),
    "label reprint": ("1", "--count", "1", "-o", "labels.pdf"),
    "label approve": (BATCH, "--market", "eu"),
    "label count": ("1", "--returned", "0"),
    "label bare": ("plain-bar", "--stall", "quay", "--notice", "notice-shelf", "--code-on", "tray", "--reason", "so"),
    "material means": ("linaloolo", "--no-entry", "--reason", "their letter"),
    "recipe word": ("plain-bar", "KAOLIN", "--up-to", "2 %", "--by", "R. Lund", "--text", "yes"),
    "stall out": ("Quay market", f"{BATCH}=1"),
    "stall back": ("Quay market", f"{BATCH}=0"),
    "stall takings": ("Quay market", "--card", "5"),
    "stall ticked": ("Quay market",),
    "complaint add": ("itched",),
    "complaint note": ("1", "rang"),
    "complaint close": ("1", "bar replaced"),
    "recall open": ("4471/2", "--reason", "theirs is bad"),
    "recall note": ("R1", "rang them"),
    "recall close": ("R1", "--conclusion", "all back"),
    "recall rehearse": ("4471/2",),
    "upkeep add": ("cleaning", "pots"),
    "customer terms": ("person-1", "--pay-in", "14"),
    "order add": ("person-1", "plain-bar=1", "--due", "2026-06-03"),
    "order end": ("1", "--by", "Nuala", "--reason", "closed"),
    "consignment count": ("person-1", "plain-bar=1"),
    "consignment back": ("person-1", "plain-bar=1"),
    "invoice make": ("person-1", "--yes"),
    "invoice credit": ("1",),
}


def entries(shop: Shop) -> int:
    with closing(sqlite3.connect(shop.book.path)) as raw:
        return int(raw.execute("SELECT count(*) FROM entry").fetchone()[0])


@pytest.fixture(scope="module")
def refusing(built: Any, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Shop]:
    """The worked shop with a row in every table, one for all that refuse: a test that wrote in it fails."""
    path, made = built("shop", work_a_shop, built("book", lambda new: set_up(new, SETUP))[0])
    ledger = tmp_path_factory.mktemp("refusing") / "soap.db"
    shutil.copyfile(built("full", lambda book: fill(book, made), path)[0], ledger)
    book = Book(ledger, who="Nuala", now=lambda: NOW)
    yield replace(made, book=book)
    book.close()


@pytest.fixture
def untouched(refusing: Shop, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Its commands find that ledger, and leave it as it was."""
    monkeypatch.chdir(refusing.book.path.parent)
    before = refusing.book.path.read_bytes()
    yield
    assert refusing.book.path.read_bytes() == before


def test_every_command_that_takes_a_day_is_asked_here() -> None:
    with_a_day = {
        name.removeprefix("soapledger ")
        for name, command in COMMANDS.items()
        if any("--on" in option.opts for option in command.params)
    }
    assert with_a_day == {*WORDS} | ANY_DAY | BEING_MADE
    assert not {*WORDS} & ANY_DAY


@pytest.mark.parametrize("name", WORDS)
@pytest.mark.usefixtures("untouched")
def test_a_day_that_has_not_come_is_refused_and_nothing_is_written(run: Run, name: str) -> None:
    error = run(*name.split(), *WORDS[name], "--on", TOMORROW, code=2).stderr
    assert "2 Jun 2026 has not come yet; today is 1 Jun 2026" in " ".join(error.split())


@pytest.mark.parametrize("name", WORDS)
@pytest.mark.usefixtures("untouched")
def test_what_is_no_day_is_refused_and_nothing_is_written(run: Run, name: str) -> None:
    assert "next spring" in run(*name.split(), *WORDS[name], "--on", "next spring", code=2).stderr


@pytest.mark.usefixtures("untouched")
@pytest.mark.parametrize(
    "words", [("samples",), ("cure", "list"), ("cure", "show", BATCH), ("recipe", "assessment", "plain-bar")]
)
def test_an_answer_as_json_is_of_a_day_that_has_come(run: Run, words: tuple[str, ...]) -> None:
    for day in (TOMORROW, "next spring"):
        run(*words, "--json", "--on", day, code=2)


@pytest.mark.parametrize("words", [("samples",), ("cure", "list"), ("equipment", "list"), ("upkeep", "list")])
def test_where_nothing_is_listed_a_day_is_read_all_the_same(shop: Shop, run: Run, words: tuple[str, ...]) -> None:
    assert shop
    run(*words, "--on", "next spring", code=2)


def test_a_batch_being_made_is_not_corrected_on_a_day_that_has_not_come(shop: Shop, run: Run) -> None:
    code = planned(shop.book)
    for day in (TOMORROW, "next spring"):
        run("batch", "correct", code, "1=600 g", "--on", day, code=2)
    run("batch", "correct", code, "1=600 g", "--on", TODAY)


def test_a_batch_planned_for_tomorrow_is_neither_weighed_nor_corrected_today(shop: Shop, run: Run) -> None:
    code = planned(shop.book, on=date(2026, 6, 2))
    before = entries(shop)
    for words in (("log", code, "--as-planned"), ("correct", code, "1=600 g", "--take", "pour")):
        assert "was planned for 2 Jun 2026" in run("batch", *words, code=2).stderr
    assert entries(shop) == before


# The first day on which it may be, which is the day before today where nothing else limits it.
FIRST = {
    "reject": "2026-05-04",  # released that day
    "return": "2026-05-09",  # sold that day
    "lot reject": "2026-03-02",  # came that day
    "lot hold": "2026-03-02",
    "lot count": "2026-03-02",
    "lot waste": "2026-03-02",
    "batch note": "2026-04-01",  # made that day
    "batch log": "2026-04-02",  # a bar is weighed from the day of the cut
    "cure weigh": "2026-04-02",
    "complaint note": "2026-05-20",  # reported that day
    "complaint close": "2026-05-21",  # something was done about it that day still
    "label count": "2026-05-05",  # printed that day
}


REFUSED = {"reject": 1, "return": 1}  # by a rule; else the day cannot be


def day_before(day: str) -> str:
    return (date.fromisoformat(day) - timedelta(days=1)).isoformat()


@pytest.mark.parametrize("name", FIRST)
def test_a_day_before_it_could_be_is_refused_and_that_day_is_not(full: Shop, run: Run, name: str) -> None:
    words, before = (*name.split(), *WORDS[name]), entries(full)
    assert run(*words, "--on", day_before(FIRST[name]), code=REFUSED.get(name, 2)).stderr
    assert entries(full) == before
    run(*words, "--on", FIRST[name])
    assert entries(full) > before


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize("words", [("gift",), ("dispatch", "harrow"), ("stall", "out", "Quay market")])
def test_bars_leave_from_the_day_of_their_release(run: Run, words: tuple[str, ...]) -> None:
    run("customer", "add", "Harrow and Fenn", "--shop", "--code", "harrow")
    run("stall", "add", "Quay market")
    assert "only released bars leave" in run(*words, f"{BATCH}=1", "--on", "2026-05-03", code=1).stderr
    for day in ("2026-05-04", TODAY):
        run(*words, f"{BATCH}=1", "--on", day)


@pytest.mark.parametrize(
    ("words", "on", "says"),
    [
        (("lot", "combine", "L1-X", "L2-8"), TOMORROW, "has not come yet"),
        (("lot", "combine", "L1-X", "L2-8"), "2026-03-01", "was not there before 2 Mar 2026"),
        (("lot", "combine", "L1-X", "L1-X"), TODAY, "at least two"),
        (("cure", "weigh", BATCH, "A=900g"), "2026-04-01", "was cut on 2 Apr 2026"),
    ],
)
@pytest.mark.usefixtures("untouched")
def test_what_cannot_be_is_refused_before_a_question_is_asked(
    run: Run, words: tuple[str, ...], on: str, says: str
) -> None:
    said = run(*words, "--on", on, input="y\n", code=2).stderr
    assert says in said
    assert "?" not in said
