"""upkeep at the command line, and the approval on a supplier's card."""

import json
from collections.abc import Callable
from typing import Any

import pytest

pytestmark = pytest.mark.usefixtures("frozen", "shop")


def test_what_is_due_on_a_coming_day_is_listed_first(run: Callable[..., Any], frozen: Any) -> None:
    frozen.move_to("2028-02-29 09:30:00")
    assert "Due again on 28 Feb 2029." in run("upkeep", "add", "self", "shelves and drains").stdout
    run("upkeep", "add", "cleaning", "moulds", "--by", "Orla")
    assert run("upkeep", "list").stdout.startswith("2 notes, none due on 29 Feb 2028.")
    shown = run("upkeep", "list", "--on", "2029-02-28").stdout.splitlines()
    assert shown[0] == "2 notes, 1 due on 28 Feb 2029."
    assert "due today" in shown[2]
    frozen.move_to("2029-03-01 09:30:00")
    assert "overdue" in run("upkeep", "list", "--kind", "self").stdout
    assert [one["by"] for one in json.loads(run("upkeep", "list", "--kind", "cl", "--json").stdout)] == ["Orla"]


def test_a_supplier_shows_its_latest_approval(run: Callable[..., Any]) -> None:
    assert "no approval was noted" in run("supplier", "show", "tarnlow").stdout
    run("upkeep", "add", "supplier approval", "papers seen", "--supplier", "tarnlow", "--next", "2027-06-01")
    assert (
        "approved 1 Jun 2026 by Nuala: papers seen; again on 1 Jun 2027, coming"
        in run("supplier", "show", "tarnlow").stdout
    )
    assert json.loads(run("supplier", "show", "tarnlow", "--json").stdout)["approval"]["what"] == "papers seen"


def test_what_cannot_be_is_said_in_one_line(run: Callable[..., Any]) -> None:
    assert "not a kind of upkeep" in run("upkeep", "add", "painting", "door", code=2).stderr
    assert "Which supplier" in run("upkeep", "add", "supplier", "door", code=2).stderr
    assert "has not come yet" in run("upkeep", "add", "cleaning", "door", "--on", "2026-06-02", code=2).stderr
