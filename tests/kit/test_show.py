"""How texts are wrapped on the screen."""

import sys

import pytest

from ledger.cli.kit.show import say_wrapped, warn_of
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
