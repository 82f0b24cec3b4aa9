"""Every command of the sample season on screens that lack signs, and where its answer cannot be shown."""

import shutil
import sqlite3
from collections import Counter
from pathlib import Path
from typing import Any

import pytest
from benchmarks.commands import COMMANDS, Measured
from benchmarks.facts import Facts
from benchmarks.sizes import filled
from commands_run import note_run
from freezegun import freeze_time
from typer.testing import CliRunner, Result

from ledger.cli.kit import show
from ledger.cli.main import app

DAY = "2026-11-25"
SHOWN = [one for found in COMMANDS.values() for one in found if one.kind in ("list", "view")]
WRITES = [one for found in COMMANDS.values() for one in found if one.kind == "write"]


def typed(ledger: Path, words: list[str], coding: str = "utf-8") -> Result:
    """One command on a ledger, with an answer in some coding."""
    done = CliRunner(charset=coding).invoke(app, ["--ledger", str(ledger), *words])
    if done.exit_code == 0:
        note_run(app, words)
    return done


def words_of(template: str, facts: Facts) -> list[str]:
    """The words of a command for the season."""
    words = filled(template, facts)
    if words is None:
        pytest.skip("the season has no such thing")
    return words


def test_every_answer_is_shown_whole_on_a_screen_that_lacks_signs(play: Any, tmp_path: Path) -> None:
    """Line for line the answer of a screen with every sign; for each that it lacks, others stand."""
    ledger = play(DAY).folder / "soap.db"
    facts, compared = Facts(ledger, tmp_path), Counter[str]()
    with freeze_time(f"{DAY} 12:00:00"):
        for one in SHOWN:
            words = filled(one.words, facts)
            if words is None or "--json" in words:
                continue
            whole = typed(ledger, words)
            for coding in ("cp1252", "ascii"):
                plain = typed(ledger, words, coding)
                assert (whole.exit_code, plain.exit_code) == (0, 0), (coding, words)
                told, shown = whole.stdout.splitlines(), plain.stdout.splitlines()
                assert len(told) == len(shown), (coding, words)
                for line, other in zip(told, shown, strict=True):
                    assert line.count("?") == other.count("?")  # no sign is lost in one
                    assert not line.isascii() or other == line
                    compared[coding] += 1
                numbered = "[U+" in plain.stdout
                assert numbered == ("This screen lacks some signs" in plain.stderr), (coding, words)
    assert min(compared["cp1252"], compared["ascii"]) > 300


@pytest.mark.slow
@pytest.mark.parametrize("measured", WRITES, ids=lambda one: one.words)
def test_what_was_written_and_not_shown_is_said_to_stand(
    measured: Measured, play: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    ledger = tmp_path / "soap.db"
    shutil.copyfile(play(DAY).folder / "soap.db", ledger)
    facts = Facts(ledger, tmp_path)

    def full(text: str, *, file: Any = None, flush: bool) -> None:
        if file is None:
            raise OSError(28, "No space left on device")
        print(text, file=file, flush=flush)

    def entries() -> int:
        raw = sqlite3.connect(ledger)
        try:
            return int(raw.execute("SELECT count(*) FROM entry").fetchone()[0])
        finally:
            raw.close()

    with freeze_time(f"{DAY} 12:00:00"):
        for before in measured.before:
            done = typed(ledger, words_of(before, facts))
            assert done.exit_code == 0, done.output
        words = words_of(measured.words, facts)
        number = entries()
        monkeypatch.setattr(show, "print", full, raising=False)
        done = typed(ledger, words)
    assert done.exit_code == 5, done.stderr
    if " erase " in f" {measured.words} ":  # which shows first what it would erase, and then does not
        assert entries() == number
        assert "nothing was written in the ledger" in done.stderr
        return
    assert entries() == number + 1
    assert "The answer could not be shown to its end (No space left on device)." in done.stderr
    assert f"Entry {number + 1} stands in {ledger}: " in done.stderr
    assert "To see it again: soapledger --ledger" in done.stderr
    assert "othing was written" not in done.stderr
