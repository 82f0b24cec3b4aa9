"""How texts are wrapped on the screen."""

import pytest

from ledger.cli.kit.show import say_wrapped


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
