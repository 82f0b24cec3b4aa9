"""What bars stand on is not taken back under them: labels, assessments, limits, statements, readings."""

import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from shop import PLAIN_BAR

pytestmark = pytest.mark.usefixtures("frozen")

ASSESSED = """
assessor = "R. Lund"
reference = "QR-114"
on = 2026-03-03
process = ["cold"]
markets = ["eu"]

[[ingredient]]
inci = "OLEA EUROPAEA FRUIT OIL"
highest_percent = 60
[[ingredient]]
inci = "COCOS NUCIFERA OIL"
highest_percent = 60
[[ingredient]]
inci = "SODIUM HYDROXIDE"
highest_percent = 60
[[ingredient]]
inci = "AQUA"
highest_percent = 60
"""


@pytest.fixture
def last(shop: Any) -> Callable[[str], int]:
    """The number of the last entry of a verb."""

    def number(verb: str) -> int:
        query = "SELECT max(id) FROM entry WHERE verb = ?"
        return int(shop.rows().execute(query, (verb,)).fetchone()[0])

    return number


def label(shop: Any, run: Any, *ledger: str) -> None:
    """Labels of the shop's batch, approved, printed and counted."""
    run(*ledger, "label", "approve", shop.batch, "--market", "eu")
    run(*ledger, "label", "print", shop.batch, "--market", "eu", "--count", "12", "-o", "labels.pdf")
    run(*ledger, "label", "count", "1")


@pytest.fixture
def labelled(shop: Any, built: Any, run: Any) -> Any:
    """The shop with such labels."""
    path, _ = built("counted labels", lambda book: label(shop, run, "--ledger", str(book.path)), shop.book.path)
    shutil.copyfile(path, shop.book.path)
    return shop


@pytest.mark.usefixtures("labelled")
def test_an_approval_that_was_printed_from(run: Any, last: Any) -> None:
    told = run("undo", str(last("label approve")), "--yes", code=1).stderr
    assert f"entry {last('label print')} (Printed" in told
    assert "depends on it. Take that back first" in told
    run("undo", str(last("label count")), "--yes")
    run("undo", str(last("label print")), "--yes")
    run("undo", str(last("label approve")), "--yes")
    assert "nothing is wrong" in run("check").stdout


def test_a_count_behind_a_release(labelled: Any, run: Any, last: Any) -> None:
    counted = last("label count")
    run("lot", "hold", labelled.batch, "--reason", "smells off")
    run("release", labelled.batch, "--reason", "aired", "--anyway", "a trial", *checks())
    told = run("undo", str(counted), "--yes", code=1).stderr
    assert f"entry {last('release')} (" in told
    assert "A decision is not taken back" in told


def checks() -> list[str]:
    return [word for point in ("pH=9.6", "look=good", "smell=good", "weight=130 g") for word in ("--check", point)]


@pytest.mark.parametrize("later", [False, True])
def test_an_assessment_that_bars_left_by(shop: Any, run: Any, last: Any, later: bool) -> None:
    Path("report.toml").write_text(ASSESSED, encoding="utf-8")
    run("recipe", "assess", "plain-bar", "report.toml")
    first = last("recipe assess")
    if later:
        run("recipe", "assess", "plain-bar", "report.toml")
    run("lot", "hold", shop.batch, "--reason", "smells off")
    run("release", shop.batch, "--reason", "aired", "--anyway", "t", "--bare", "t", *checks())
    if later:
        run("undo", str(first), "--yes")  # the latest counts, and this one was not it
        first = last("recipe assess")
    assert f"entry {last('release')} (" in run("undo", str(first), "--yes", code=1).stderr


@pytest.mark.parametrize("of", [["lavender oil"], ["--constituent", "linalool"]])
def test_a_skin_limit_that_a_batch_was_planned_by(run: Any, last: Any, of: list[str]) -> None:
    run("material", "add", "lavender oil", "--kind", "fragrance")
    run("material", "contains", "lavender oil", "linalool=33", "--source", "statement 3")
    run("receive", "tarnlow", "--accept", "--line", "lavender oil; 100 g; lot LV; 14")
    scented = PLAIN_BAR + '\n[[fragrance]]\nmaterial = "lavender oil"\npercent_of_fats = 1\n'
    Path("scented.toml").write_text(scented, encoding="utf-8")
    run("recipe", "revise", "plain-bar", "scented.toml")
    limit = ("material", "limit", *of, "50", "--certificate", "LV-1", "--category", "9", "--dated", "2026-03-02")
    run(*limit)
    run("undo", "--yes")
    run(*limit)
    limited = last("material limit")
    run("batch", "plan", "plain-bar")
    assert f"entry {last('batch plan')} (" in run("undo", str(limited), "--yes", code=1).stderr


def test_a_statement_of_contents_behind_printed_labels(shop: Any, run: Any, last: Any) -> None:
    run("material", "contains", "coconut oil", "limonene=0.05", "--source", "statement 3")
    stated = last("material contains")
    label(shop, run)
    told = run("undo", str(stated), "--yes", code=1).stderr
    assert f"entry {last('label approve')} (" in told
    assert f"entry {last('label print')} (" in told


def test_a_pH_of_the_bars_behind_a_release(shop: Any, run: Any, last: Any) -> None:
    run("batch", "log", shop.batch, "--reading", "pH=9.6")
    read = shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0]
    run("lot", "hold", shop.batch, "--reason", "smells off")
    run("release", shop.batch, "--reason", "aired", "--anyway", "t", "--bare", "t", *checks())
    assert f"entry {last('release')} (" in run("undo", str(read), "--yes", code=1).stderr
