"""What a recall holds: taken back whole while nothing stands on it, and said where it is held no more."""

from collections.abc import Callable
from typing import Any

import pypdf
import pytest

from ledger.rows.decision import recalls
from ledger.rows.lot import find_lot

pytestmark = pytest.mark.usefixtures("frozen")
Run = Callable[..., Any]
OPEN = ("recall", "open", "4471/2", "--reason", "rancid, the supplier rang")


def status_of(shop: Any, code: str) -> str:
    return str(find_lot(shop.rows(), code).status)


@pytest.mark.parametrize("hold", [("recall", "lot", "4471/2", "--hold"), OPEN])
def test_a_hold_of_a_recall_is_not_taken_back_once_something_held_was_decided_about(
    shop: Any, run: Run, hold: tuple[str, ...]
) -> None:
    run(*hold)
    held = shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0]
    run("lot", "accept", shop.olive, "--reason", "the letter meant another")
    said = run("undo", str(held), "--yes", code=1).stderr
    assert f"entry {held + 1} (" in said
    assert "hold is decided anew" in said
    assert said.count("\n") == 1
    assert ("soapledger recall close R1" in said) is (hold == OPEN)
    assert status_of(shop, shop.batch) == "on hold"


def test_a_hold_of_a_look_up_is_taken_back_whole_and_one_by_hand_is_not(shop: Any, run: Run) -> None:
    run("recall", "lot", "4471/2", "--hold")
    run("undo", "--yes")
    assert (status_of(shop, shop.olive), status_of(shop, shop.batch)) == ("accepted", "released")
    run("lot", "hold", shop.olive, "--reason", "looks odd")
    assert "is a decision; it is not taken back but followed by another" in run("undo", "--yes", code=1).stderr
    run("check")


def test_a_hold_of_a_recall_is_not_taken_back_once_bars_on_hold_were_reworked(shop: Any, run: Run) -> None:
    run(*OPEN)
    opened = recalls(shop.rows())[0].entry
    run("rework", shop.batch, "1000 g")
    assert f"entry {opened + 1} (" in run("undo", str(opened), "--yes", code=1).stderr


def test_what_was_let_go_or_came_to_be_reached_since_is_said_not_to_be_on_hold(shop: Any, run: Run) -> None:
    """10 bars and 4400 g of the oil are here; the oil is accepted again, by whoever looked at the letter."""
    run(*OPEN)
    assert "Not on hold" not in run("recall", "show", "R1").stdout
    run("lot", "accept", shop.olive, "--reason", "the letter meant another")
    run("recall", "show", "R1", "-o", "R1.pdf")
    shown = " ".join(run("recall", "show", "R1").stdout.split())
    assert f"Not on hold: 1 lot: soapledger lot hold {shop.olive} --reason 'recall R1'" in shown
    first = " ".join(pypdf.PdfReader("R1.pdf").pages[0].extract_text().split())
    assert "Not on hold of what is here: 1 lot." in first
    run("lot", "hold", shop.olive, "--reason", "recall R1")
    run("recall", "show", "R1", "-o", "R1.pdf", "--force")
    assert "All of it that is here is on hold already." in pypdf.PdfReader("R1.pdf").pages[0].extract_text()
    run("recall", "rehearse", shop.olive)
    run("recall", "show", "R2", "-o", "R2.pdf")
    first = " ".join(pypdf.PdfReader("R2.pdf").pages[0].extract_text().split())
    assert f"EXERCISE R2 of {shop.olive}, 1 Jun 2026, by Nuala" in first
    assert "An exercise holds nothing." in first
