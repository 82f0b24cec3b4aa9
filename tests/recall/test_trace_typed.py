"""trace at the command line: a tree to be read from the bar down."""

import json
from collections.abc import Callable
from typing import Any

import pytest

from ledger.cli.recall.trace import lead

pytestmark = pytest.mark.usefixtures("frozen")


def test_a_bar_is_shown_with_the_drums_below_it(shop: Any, run: Callable[..., Any]) -> None:
    shown = run("trace", shop.batch).stdout
    lines = shown.replace("\n" + 7 * " ", " ").splitlines()  # so far in goes what did not fit the line
    assert lines[0] == f"Plain Bar (cold), {shop.batch}, goes back to 4 lots as received."
    assert lines[1] == f"Plain Bar (cold), batch {shop.batch}, made 1 Apr 2026, released"
    olive = f"olive oil, lot {shop.olive} from Tarnlow Oils, their number 4471/2, received 2 Mar 2026, accepted"
    assert f"   600 g  {olive}" in lines
    assert max(map(len, shown.splitlines())) <= 80
    assert any(f"lot {shop.water} from Tarnlow Oils, their number unknown, received" in line for line in lines)


def test_a_drum_is_shown_with_the_bars_below_it(shop: Any, run: Callable[..., Any]) -> None:
    lines = run("trace", shop.olive, "--forward").stdout.splitlines()
    assert lines[0] == f"olive oil, {shop.olive}, went into 1 batch."
    assert lines[-1] == f"      10  Plain Bar, lot {shop.batch}, made 2 Apr 2026, released"


def test_a_batch_is_not_said_to_have_gone_into_itself(shop: Any, run: Callable[..., Any]) -> None:
    said = run("trace", shop.batch, "--forward").stdout.splitlines()[0]
    assert said == f"Plain Bar (cold), {shop.batch}, went into no other batch."


def test_json_keeps_the_depth(shop: Any, run: Callable[..., Any]) -> None:
    found = json.loads(run("trace", shop.batch, "--json").stdout)
    assert [step["depth"] for step in found["steps"]] == [0, 1, 1, 1, 1]
    assert found["supplier_lots"] == [shop.olive, shop.coconut, shop.lye, shop.water]


def test_a_mistyped_code_is_refused_and_an_unknown_word_is_bad_input(shop: Any, run: Callable[..., Any]) -> None:
    wrong = shop.batch[:-1] + ("1" if shop.batch[-1] != "1" else "2")
    assert f"it would be {shop.batch}" in run("trace", wrong, code=1).stderr
    assert "not a lot code" in run("trace", "lavender", code=2).stderr


def test_a_step_far_down_is_numbered_and_keeps_to_the_screen() -> None:
    assert (lead(0), lead(2), lead(8)) == ("", " " * 6, " " * 24)
    assert lead(9) == " " * 24 + "step 9: "
    assert len(lead(180)) < 40
