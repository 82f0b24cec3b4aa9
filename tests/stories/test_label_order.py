"""Labels in their order through the command line: checked, approved, printed, counted; and what is refused."""

import json
from typing import Any

import pytest
from freezegun import freeze_time
from making import CHECKED, cut, lines_of
from once import once
from shop import Shop

from ledger.domain.release.bars import Passing
from ledger.operations.material.skin import state_contents
from ledger.operations.release.release import pass_bars

pytestmark = pytest.mark.usefixtures("frozen")


@pytest.fixture
@once
def passed(shop: Shop) -> str:
    """A batch of ten bars made on 6 May and passed for packing today, 1 June."""
    from datetime import date

    code = cut(shop.book)
    pass_bars(shop.book, code, Passing(on=date(2026, 6, 3), by="Nuala"))
    return code


def entries(shop: Shop) -> int:
    """How many entries the ledger has."""
    return int(shop.rows().execute("SELECT count(*) FROM entry").fetchone()[0])


@pytest.fixture
def ready(passed: str) -> Any:
    """The day after, when the labels are made."""
    with freeze_time("2026-06-04 09:00:00"):
        yield passed


def test_nothing_is_printed_that_nobody_approved_and_nothing_released_that_nobody_counted(
    shop: Shop, ready: str, run: Any
) -> None:
    before = entries(shop)
    assert "Nobody approved" in run("label", "print", ready, "-o", "l.pdf", code=1).stderr
    assert entries(shop) == before
    run("--as", "Orla", "label", "approve", ready)
    assert "approved already, by Orla on 4 Jun 2026" in run("label", "approve", ready, code=1).stderr
    run("label", "print", ready, "-o", "l.pdf", "--count", "12")
    number = json.loads(run("label", "runs", ready, "--json").stdout)[0]["number"]
    refused = run("release", ready, "--anyway", "a trial", *CHECKED, code=1).stderr
    assert f"Run {number} of labels for batch {ready} is not counted yet" in refused
    assert (
        "are more than that" in run("label", "count", str(number), "--spoiled", "9", "--returned", "4", code=2).stderr
    )
    counted = run("label", "count", str(number), "--spoiled", "1", "--returned", "1").stdout
    assert "12 issued = 10 used + 1 spoiled + 1 returned" in counted
    run("release", ready, "--anyway", "a trial", *CHECKED)


def test_a_text_changed_after_its_approval_needs_another(ready: str, run: Any) -> None:
    run("label", "approve", ready)
    assert "Nobody approved" in run("label", "print", ready, "--net", "98 g", "-o", "l.pdf", code=1).stderr
    run("label", "approve", ready, "--net", "98 g")
    run("label", "print", ready, "--net", "98 g", "-o", "l.pdf")


def test_a_reprint_is_the_same_bytes(ready: str, run: Any, tmp_path: Any) -> None:
    run("label", "approve", ready)
    run("label", "print", ready, "-o", "first.pdf", "--count", "4")
    number = json.loads(run("label", "runs", ready, "--json").stdout)[0]["number"]
    run("label", "reprint", str(number), "--count", "4", "-o", "again.pdf")
    assert (tmp_path / "first.pdf").read_bytes() == (tmp_path / "again.pdf").read_bytes()
    runs = json.loads(run("label", "runs", ready, "--json").stdout)
    assert [one["reprint_of"] for one in runs] == [None, number]


@pytest.mark.parametrize(
    ("words", "code", "says"),
    [
        (("--market", "mars"), 2, "Choose from ca, eu, gb, us-cosmetic, us-soap"),
        (("--market", "us-soap"), 2, "no responsible person for United States (as soap)"),
        (("--layout", "bandage"), 2, "Choose from"),
        (("--start", "99"), 2, "positions 1 to"),
        (("--count", "0"), 2, "How many labels"),
    ],
)
def test_what_cannot_be_printed_is_one_line_and_nothing_booked(
    shop: Shop, ready: str, run: Any, tmp_path: Any, words: tuple[str, ...], code: int, says: str
) -> None:
    run("label", "approve", ready)
    before = entries(shop)
    refused = run("label", "print", ready, "-o", "l.pdf", *words, code=code).stderr
    assert says in refused
    assert len(refused.strip().splitlines()) == 1
    assert not (tmp_path / "l.pdf").exists()
    assert entries(shop) == before


def test_a_draft_is_printed_at_any_time_and_not_booked(shop: Shop, run: Any, tmp_path: Any) -> None:
    code = cut(shop.book)
    before = entries(shop)
    run("label", "print", code, "--draft", "-o", "d.pdf")
    assert (tmp_path / "d.pdf").read_bytes().startswith(b"%PDF")
    assert entries(shop) == before


def test_the_declaration_is_in_the_order_of_mass_as_added(ready: str, run: Any, shop: Shop) -> None:
    # 600 g olive, 400 g coconut, 293.652 g water, 146.826 g sodium hydroxide: 1440.478 g
    assert [round(line.target / 1000, 3) for line in lines_of(shop.book, ready)] == [600, 400, 293.652, 146.826]
    found = json.loads(run("label", "check", ready, "--json").stdout)["label"]
    assert [(one["inci"], one["mass_mg"]) for one in found["declared"]] == [
        ("OLEA EUROPAEA FRUIT OIL", 600_000),
        ("COCOS NUCIFERA OIL", 400_000),
        ("AQUA", 293_652),
        ("SODIUM HYDROXIDE", 146_826),
    ]
    assert sum(one["mass_mg"] for one in found["declared"]) == 1_440_478
    assert found["declared"][0]["share_ppm"] == 416_528  # 600 / 1440.478


def test_the_same_bar_before_and_after_the_change_of_the_list(shop: Shop, ready: str, run: Any) -> None:
    """Regulation (EU) 2023/1545: the first list up to 31 July 2026, the long one after; over 0.01 % of the bar."""
    state_contents(shop.book, "olive oil", {"linalool": 1_000, "Camphor": 1_000}, source="a statement made up")
    # 600 g x 0.1 % = 0.6 g in the bars at their driest, some 1.2 kg: 0.05 %, over 0.01 %
    before = json.loads(run("label", "check", ready, "--on", "2026-07-31", "--json").stdout)["label"]["allergens"]
    after = json.loads(run("label", "check", ready, "--on", "2026-08-01", "--json").stdout)["label"]["allergens"]
    assert before["declared"] == ["Linalool"]
    assert after["declared"] == ["Camphor", "Linalool"]  # camphor is on the long list alone
    gb = json.loads(run("label", "check", ready, "--market", "gb", "--on", "2026-08-01", "--json").stdout)
    assert gb["label"]["allergens"]["declared"] == ["Linalool"]  # no instrument found that adds the long list
