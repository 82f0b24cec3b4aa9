"""What must be settled before bars go: deviations decided, the checklist answered, samples written down."""

from datetime import date
from typing import Any

import pytest
from making import LOOKED_GOOD, MADE, cut

from ledger.domain.release_checks import Check, read_check
from ledger.errors import BadInput, Refused
from ledger.operations.deviations import decide_deviation, report_deviation
from ledger.operations.readings import log_readings, read_reading
from ledger.operations.release import pass_bars, release_bars
from ledger.views.samples import samples

PACKED = date(2026, 6, 10)


def passed(shop: Any) -> str:
    code = cut(shop.book)
    pass_bars(shop.book, code, on=PACKED, by="Nuala")
    return code


def release(shop: Any, code: str, checks: Any = LOOKED_GOOD, **more: Any) -> int:
    return release_bars(shop.book, code, on=PACKED, by="Nuala", checks=checks, **more)


def test_neither_passed_nor_released_while_a_deviation_is_open(shop: Any) -> None:
    code = cut(shop.book)
    report_deviation(shop.book, code, "rancid spots", on=MADE)
    with pytest.raises(Refused, match=rf"open deviation \(rancid spots\).*batch decide {code} 1 accept"):
        pass_bars(shop.book, code, on=PACKED, by="Nuala")
    decide_deviation(shop.book, code, 1, "rework", on=MADE, by="Nuala", reason="spots")
    with pytest.raises(Refused, match="was decided: rework, by Nuala"):
        pass_bars(shop.book, code, on=PACKED, by="Nuala")
    decide_deviation(shop.book, code, 1, "accept", on=MADE, by="Nuala", reason="only colour")
    pass_bars(shop.book, code, on=PACKED, by="Nuala")
    report_deviation(shop.book, code, "soft in the middle", on=PACKED)
    with pytest.raises(Refused, match="soft in the middle"):
        release(shop, code, anyway="a trial")


def test_every_point_of_the_checklist_is_looked_at(shop: Any) -> None:
    code = passed(shop)
    with pytest.raises(Refused, match="Nobody looked at the pH, smell, weight"):
        release(shop, code, [Check("look", "good", True)], anyway="a trial")
    log_readings(shop.book, code, [read_reading("pH=9.6; 1 % in water")], on=PACKED)
    bad = [Check("look", "good", True), Check("smell", "rancid", False), Check("weight", "good", True)]
    with pytest.raises(Refused, match=r"Batch \S+ is not good in smell: rancid"):
        release(shop, code, bad)
    assert release(shop, code, bad, anyway="sold as seconds") == 10
    with shop.book.look() as rows:
        found = rows.execute("SELECT what, found, good FROM finished_check WHERE entry_id > 12 ORDER BY id").fetchall()
        reason = rows.execute("SELECT reason FROM decision ORDER BY id DESC LIMIT 1").fetchone()[0]
    assert ("pH", "9.6; 1 % in water", 1) in [tuple(row) for row in found]
    assert ("smell", "rancid", 0) in [tuple(row) for row in found]
    assert reason.startswith("not good in smell: rancid; released all the same: sold as seconds")


@pytest.mark.parametrize(
    ("what", "typed", "found", "good"),
    [
        ("look", "good", "good", True),
        ("look", "!cracked", "cracked", False),
        ("pH", "10.5; 1 % in water", "10.5; 1 % in water", True),
        ("pH", "10.6", "10.6; over 10.5", False),
        ("pH", "8.9; strips", "8.9; strips", True),
        ("free alkali", "0.05 %", "0.05 %", True),  # IS 2888:2004: at most 0.05 % as NaOH
        ("free alkali", "0.06 %", "0.06 %; over 0.05 % as NaOH", False),
    ],
)
def test_a_point_as_typed(what: str, typed: str, found: str, good: bool) -> None:
    assert read_check(what, typed, ph_at_most=10_500) == Check(what, found, good)


@pytest.mark.parametrize(("what", "typed"), [("look", "!"), ("pH", "good"), ("pH", "8.9"), ("pH", "15"), ("look", " ")])
def test_a_point_that_cannot_be_read(what: str, typed: str) -> None:
    with pytest.raises(BadInput):
        read_check(what, typed, ph_at_most=10_500)


def test_samples_have_a_place_and_a_day(shop: Any) -> None:
    code = passed(shop)
    release(shop, code, retain=2, kept_at="shelf 2", anyway="a trial")
    with shop.book.look() as rows:
        (found,) = samples(rows)
    # made 6 May 2026, best before in 24 months, and 12 more
    assert (found.batch_code, found.bars, found.kept_at, found.keep_until) == (code, 2, "shelf 2", date(2029, 5, 6))
