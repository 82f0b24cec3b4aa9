"""How texts are wrapped on the screen."""

import sys

import pytest

from ledger.cli.kit.show import say_next, say_wrapped, table, warn_of
from ledger.errors import BadInput


def test_a_number_stays_on_the_line_of_its_unit_and_loses_no_figure(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "40")
    say_wrapped("The lye of the batch takes in all 100 g of water and 287.5 g of fat, a superfat of 5.00 %.")
    shown = capsys.readouterr().out
    assert " ".join(shown.split()) == (
        "The lye of the batch takes in all 100 g of water and 287.5 g of fat, a superfat of 5.00 %."
    )
    assert all(not line.rstrip()[-1].isdigit() for line in shown.splitlines())


def test_where_nobody_can_be_asked_a_doubt_is_refused_with_what_to_type(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stdin", None)  # it was closed
    warn_of((), yes=False)
    warn_of(("The recipe gives 10 bars, and 1 were cut.",), yes=True)
    with pytest.raises(BadInput, match="Say so with --yes"):
        warn_of(("The recipe gives 10 bars, and 1 were cut.",), yes=False)


def test_a_table_wider_than_the_screen_goes_on_below_in_the_columns_that_may(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """48 - 2 - 8 - 2 - 2 - 4 = 30 signs are left to it; no number is torn from what it counts, nothing is lost."""
    monkeypatch.setenv("COLUMNS", "48")
    rows = [("26-001-4", "12 of 14; 1 specimen and 11 that were spoiled by rain", "3"), ("26-002-2", "none", "4")]
    table(("batch", "what became of them", "bars"), rows, right=(2,), wraps=(1,))
    shown = capsys.readouterr().out.splitlines()
    assert all(len(line) <= 48 for line in shown)
    assert shown[1:] == [
        f"  26-001-4  {'12 of 14; 1 specimen and':30}     3",
        "            11 that were spoiled by rain",
        f"  26-002-2  {'none':30}     4",
    ]


def test_a_table_that_fits_is_left_as_it_is(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "100")
    table(("batch", "why"), [("26-001-4", "a reason of some length that goes on for a while")], wraps=(1,))
    assert capsys.readouterr().out.splitlines()[1] == "  26-001-4  a reason of some length that goes on for a while"


def test_a_command_to_copy_is_not_broken(capsys: pytest.CaptureFixture[str]) -> None:
    """80 columns: a line of 80 stays one, of 81 the command goes below; each line of a text is told by itself."""
    for long in (0, 1):
        before = f"{'Seventeen bars. ' * 3}Next: {'x' * long}"
        command = f"soapledger stall out {'y' * (80 - 54 - 21)}"
        say_next(f"Nothing yet.\n{before}{command}")
        told = capsys.readouterr().out.splitlines()
        assert len(before + command) == 80 + long
        assert told == ["Nothing yet.", *([f"{before}{command}"] if not long else [before.strip(), f"  {command}"])]
