"""Starting a ledger by flags or by prompts, and changing what it knows of her."""

from dataclasses import replace
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

import pytest
from once import once
from shop import SETUP

from ledger.operations.house.setup import set_up
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, receive
from ledger.rows.opened import open_rows
from ledger.rows.settings import Responsible, settings
from ledger.storage.book import Book

FLAGS = ["--business", "Tidewrack Soaps", "--country", "ie", "--currency", "eur", "--units", "metric"]
FLAGS += ["--time-zone", "Europe/Dublin", "--maker", "Nuala Quill"]
FLAGS += ["--market", "eu=Nuala Quill; 3 Slip Lane, Port Emmer"]


def test_by_flags(run: Any, tmp_path: Path) -> None:
    done = run(
        "init", *FLAGS, "--market", "gb=Jo Tarn; 4 Mill St, Aberwen", "--phone", "020 910 0142", "--labour", "15"
    )
    assert "The ledger of Tidewrack Soaps is started in soap.db." in done.stdout
    assert "Next: soapledger supplier add" in done.stdout
    known = settings(open_rows(tmp_path / "soap.db"))
    assert (known.country, known.currency, known.units, known.phone) == ("IE", "EUR", "metric", "020 910 0142")
    assert known.labour_minor_per_hour == 1500
    assert known.addresses == {
        "eu": Responsible("Nuala Quill", "3 Slip Lane, Port Emmer"),
        "gb": Responsible("Jo Tarn", "4 Mill St, Aberwen"),
    }


def test_by_prompts_enter_takes_what_is_proposed(run: Any, tmp_path: Path) -> None:
    answers = "Tidewrack Soaps\nNuala Quill\nIE\n\n\n\neu\nNuala Quill\n3 Slip Lane, Port Emmer\n1 g\n"
    run("init", input=answers)
    known = settings(open_rows(tmp_path / "soap.db"))
    assert (known.business, known.currency, known.units) == ("Tidewrack Soaps", "EUR", "metric")
    assert known.scale_step_mg == 1000
    assert known.addresses == {"eu": Responsible("Nuala Quill", "3 Slip Lane, Port Emmer")}


def test_again_changes_only_what_is_given(run: Any, tmp_path: Path) -> None:
    run("init", *FLAGS)
    assert run("init", "--business", "Emmer Soaps").stdout.strip() == "The settings of Emmer Soaps are changed."
    rows = open_rows(tmp_path / "soap.db")
    assert settings(rows).business == "Emmer Soaps"
    assert settings(rows).addresses["eu"].name == "Nuala Quill"
    assert rows.execute("SELECT count(*) FROM live_place").fetchone()[0] == 3  # made once
    assert rows.execute("SELECT count(*) FROM settings_revision").fetchone()[0] == 2  # both stay to be read


@pytest.mark.parametrize(
    ("flag", "value", "words"),
    [
        ("--currency", "EURO", "EURO"),
        ("--units", "imperial", "write metric or us"),
        ("--time-zone", "Dublin", "Europe/Dublin"),
        ("--country", "Ireland", "two letters"),
        ("--business", " ", "--business is empty"),
        ("--market", "mars=A; B", "choose from"),
        ("--market", "eu=Nuala Quill", "eu=Name; street, town"),
        ("--labour", "a lot", "hour"),
    ],
)
def test_what_cannot_be_read_leaves_no_file(run: Any, tmp_path: Path, flag: str, value: str, words: str) -> None:
    done = run("init", *FLAGS, flag, value, code=2)
    assert words in done.stderr
    assert done.stderr.count("\n") == 1
    assert list(tmp_path.iterdir()) == []


def test_stopping_at_a_prompt_leaves_no_file(run: Any, tmp_path: Path) -> None:
    run("init", input="Tidewrack Soaps\n", code=1)
    assert list(tmp_path.iterdir()) == []


def test_a_ledger_started_and_never_set_up_can_be_set_up(run: Any, tmp_path: Path) -> None:
    Book.create(tmp_path / "soap.db", who="Nuala", now=lambda: datetime.now(UTC)).close()
    assert "soapledger init" in run("stock", code=2).stderr
    run("init", *FLAGS)
    assert settings(open_rows(tmp_path / "soap.db")).business == "Tidewrack Soaps"


def test_the_currency_stays_once_something_was_booked(shop: Any, run: Any) -> None:
    note = DeliveryNote("tarnlow", date(2026, 6, 1), (DeliveryLine("water", 1000, "W", 100),))
    receive(shop.book, note)
    assert "another ledger" in run("init", "--currency", "GBP", code=1).stderr
    run("init", "--currency", "EUR", "--phone", "020 910 0100")


def test_the_ledger_goes_where_it_is_told(run: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    run("--ledger", "other.db", "init", *FLAGS)
    monkeypatch.setenv("SOAPLEDGER", str(tmp_path / "third.db"))
    run("init", *FLAGS)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["other.db", "third.db"]


DECISIONS = (
    ("pass", "26-001-4"), ("release", "26-001-4", "--anyway", "x", "--bare", "x"),
    ("reject", "26-001-4", "--reason", "x"), ("rework", "26-001-4", "1 kg"),
    ("lot", "accept", "L1-X"), ("lot", "reject", "L1-X"), ("lot", "hold", "L1-X", "--reason", "x"),
    ("label", "approve", "26-001-4", "--market", "eu"),
    ("batch", "decide", "26-001-4", "1", "accept", "--reason", "x"), ("batch", "discard", "26-001-4", "--reason", "x"),
    ("receive", "tarnlow", "--accept", "--line", "olive oil; 1 kg; lot unknown"), ("receive", "tarnlow"),
    ("recall", "lot", "L1-X", "--hold", "--reason", "x"), ("upkeep", "add", "supplier approval", "seen"),
)  # fmt: skip


@once
def nameless(shop: Any) -> None:
    """A ledger of an earlier format has no maker."""
    set_up(shop.book, replace(SETUP, maker=None))


@pytest.mark.parametrize("words", DECISIONS, ids=lambda words: " ".join(words[:2]))
def test_nobody_decides_without_a_name_and_nothing_is_written(shop: Any, run: Any, words: tuple[str, ...]) -> None:
    """The user of the computer is nobody's name."""
    nameless(shop)
    before = shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0]
    said = run(*words, code=1).stderr
    assert said == (
        "A decision is booked by name, and this ledger does not know yours yet. Give it once: soapledger init --maker "
        "NAME. Or name whoever decides this time: soapledger --as NAME and the command.\n"
    )
    assert shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0] == before


def test_the_name_given_at_init_decides_and_another_one_where_it_is_said(shop: Any, run: Any) -> None:
    nameless(shop)
    run("init", "--maker", "Nuala Quill")
    run("lot", "hold", "L1-X", "--reason", "looked at")
    run("--as", "Jo Tarn", "lot", "accept", "L1-X", "--reason", "as ordered")
    found = shop.rows().execute("SELECT by FROM decision ORDER BY id DESC LIMIT 2").fetchall()
    assert [row[0] for row in found] == ["Jo Tarn", "Nuala Quill"]
    assert shop.rows().execute("SELECT who FROM entry ORDER BY id DESC LIMIT 1").fetchone()[0] == "Jo Tarn"
    run("init", "--phone", "020 910 0100")  # keeps the name
    assert settings(shop.rows()).maker == "Nuala Quill"


def test_what_is_no_decision_needs_no_name(shop: Any, run: Any) -> None:
    nameless(shop)
    run("batch", "note", shop.batch, "soda ash")
    run("upkeep", "add", "cleaning", "moulds")
    assert shop.rows().execute("SELECT who FROM entry ORDER BY id DESC LIMIT 1").fetchone()[0] == "Nuala"  # of USER
