"""The one error boundary: one line and an exit code for whatever goes wrong."""

from typing import Any

import pytest

from ledger import __version__
from ledger.cli.stock import stock as stock_command


def test_the_version(run: Any) -> None:
    assert run("--version").stdout == f"soapledger {__version__}\n"


def test_a_mistyped_command_is_told_with_what_was_meant(run: Any) -> None:
    error = run("recal", code=2).stderr
    assert "recal" in error
    assert error.count("\n") == 1


@pytest.mark.parametrize("words", [["stock", "--colour"], ["undo", "1", "2"], ["--nope"], ["lot", "shw"], ["receive"]])
def test_what_the_command_line_cannot_read_is_one_line_and_two(run: Any, words: list[str]) -> None:
    assert run(*words, code=2).stderr.count("\n") == 1


@pytest.mark.usefixtures("book", "frozen")
def test_a_fault_of_ours_is_told_without_a_traceback(run: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*_: Any, **__: Any) -> None:
        raise ZeroDivisionError("by a cake of soap")

    monkeypatch.setattr(stock_command, "stock", broken)
    error = run("stock", code=4).stderr
    assert "A fault in soapledger (ZeroDivisionError: by a cake of soap)" in error
    assert "--debug" in error


@pytest.mark.usefixtures("frozen")
def test_a_guard_of_the_file_is_a_refusal(shop: Any, run: Any) -> None:
    error = run("lot", "waste", shop.olive, "9 kg", "--reason", "spilt", code=1).stderr
    assert "4 400" in error.replace("\u202f", " ").replace("\u2009", " ").replace("\xa0", " ")
    assert error.count("\n") == 1


@pytest.mark.usefixtures("book")
def test_a_ledger_named_by_the_environment(run: Any, monkeypatch: pytest.MonkeyPatch, tmp_path: Any) -> None:
    monkeypatch.setenv("SOAPLEDGER", str(tmp_path / "elsewhere.db"))
    assert "elsewhere.db" in run("stock", code=2).stderr
    run("--ledger", str(tmp_path / "soap.db"), "stock")
