"""Deviations: opened by a figure outside its limit, closed by a correction or decided by a person."""

from datetime import date
from typing import Any

import pytest
from making import MADE, POURED, planned, weighed

from ledger.errors import BadInput, Refused
from ledger.operations.bench.cut import cut_batch
from ledger.operations.bench.deviations import decide_deviation, report_deviation
from ledger.operations.bench.readings import ReadingValue, log_readings, read_reading
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.keep.undo import undo
from ledger.rows.batch import find_batch
from ledger.rows.decision import deviations, open_deviations


def of(shop: Any, code: str) -> list[tuple[int, str, str, str | None]]:
    with shop.book.look() as rows:
        return [
            (d.number, d.subject, d.found.replace("\u00a0", " "), d.verdict)
            for d in deviations(rows, find_batch(rows, code).id)
        ]


def read(shop: Any, code: str, *texts: str, correct: bool = False) -> None:
    log_readings(shop.book, code, [read_reading(text) for text in texts], on=MADE, correct=correct)


APART = "lye 61.0 °C, fats 47.0 °C: 14.0 °C apart, limit 5.0 °C"


def test_a_reading_outside_opens_one_deviation_and_only_one(shop: Any) -> None:
    code = planned(shop.book)
    read(shop, code, "lye temperature=61 C")
    assert of(shop, code) == []
    read(shop, code, "fats temperature=47 C")
    read(shop, code, "trace=8 min")
    assert of(shop, code) == [(1, "lye and fats apart", APART, None)]


def test_a_correction_closes_it_and_both_stay(shop: Any) -> None:
    code = planned(shop.book)
    read(shop, code, "lye temperature=61 C", "fats temperature=47 C")
    with pytest.raises(Refused, match="add --correct"):
        read(shop, code, "lye temperature=51 C")
    read(shop, code, "lye temperature=51 C", correct=True)
    assert of(shop, code) == [(1, "lye and fats apart", APART, "corrected")]
    read(shop, code, "lye temperature=61 C", correct=True)  # and wrong again: a new one
    assert [(one[0], one[3]) for one in of(shop, code)] == [(1, "corrected"), (2, None)]
    with pytest.raises(Refused, match="closed when the figure was corrected"):
        decide_deviation(shop.book, code, 1, "accept", on=MADE, by="Nuala", reason="no")


def test_what_was_decided_is_not_opened_again_by_the_next_reading(shop: Any) -> None:
    code = planned(shop.book)
    read(shop, code, "lye temperature=61 C", "fats temperature=47 C")
    decide_deviation(shop.book, code, 1, "accept", on=MADE, by="Nuala", reason="trace was even")
    read(shop, code, "trace=8 min")
    assert of(shop, code) == [(1, "lye and fats apart", APART, "accepted")]
    decide_deviation(shop.book, code, 1, "reject", on=MADE, by="Nuala", reason="it split")
    assert of(shop, code)[0][3] == "reject"


def test_a_weight_outside_and_its_undo(shop: Any) -> None:
    code = planned(shop.book)
    weigh(shop.book, code, {1: [Weighed(610_000)]}, on=MADE, by="Nuala")
    assert of(shop, code) == [(1, "line 1", "olive oil 610 g, 4 g over (OK 594 g to 606 g)", None)]
    with shop.book.look() as rows:
        last = rows.execute("SELECT max(id) FROM entry").fetchone()[0]
    undo(shop.book, last)
    assert of(shop, code) == []


def test_the_cut_weighs_bars_and_waste(shop: Any) -> None:
    code = weighed(shop.book, planned(shop.book))
    # 1440.478 g in; 10 bars of 120 g, 50 g offcuts, 20 g waste: 170.478 g or 11.8 % not accounted for, limit 10 %
    balance = cut_batch(
        shop.book, code, bars=10, on=MADE, by="Nuala", offcuts_mg=50_000, waste_mg=20_000, weights_mg=[120_000] * 10
    )
    assert (balance.out_mg, balance.loss_mg, balance.loss_ppm) == (1_200_000, 170_478, 118_348)
    found = "170.5 g (11.8 %) of what went in is not accounted for, limit 10.0 %"
    assert of(shop, code) == [(1, "loss", found, None)]


@pytest.mark.parametrize(
    ("told", "words"),
    [
        ({"bars": 15}, "15 bars of 100 g would weigh 1.500 g, and only 1.440.5 g went in"),
        ({"bars": 12, "weights_mg": [121_000]}, "12 bars of 121 g would weigh 1.452 g"),
        ({"bars": 1, "weights_mg": [100_000, 99_000]}, "2 weights are too many for 1 bar;"),
    ],
)
def test_more_bars_than_the_mass_allows_are_refused(shop: Any, told: dict[str, Any], words: str) -> None:
    code = weighed(shop.book, planned(shop.book))
    with pytest.raises((Refused, BadInput), match=words.replace("(", r"\(")):
        cut_batch(shop.book, code, on=MADE, by="Nuala", **told)


def test_the_water_lost_in_the_cook_is_no_loss(shop: Any) -> None:
    code = planned(shop.book)
    weighed(shop.book, code)
    read(shop, code, "pot before cook=2640 g", "pot after cook=2560 g")
    balance = cut_batch(shop.book, code, bars=10, on=MADE, by="Nuala", bars_mg=1_300_000)
    assert (balance.cooked_off_mg, balance.loss_mg) == (80_000, 60_478)  # 1440.478 - 80 - 1300


def test_what_she_reports_is_open_until_she_decides(shop: Any) -> None:
    code = planned(shop.book)
    assert report_deviation(shop.book, code, "seized at trace", on=MADE, done="beat it smooth") == 1
    with shop.book.look() as rows:
        assert [one.done for one in open_deviations(rows, find_batch(rows, code).id)] == ["beat it smooth"]
    for told, error in (
        ((9, "accept", "so"), "its deviations are 1 to 1"),
        ((1, "fine", "so"), "write accept, rework or reject"),
        ((1, "accept", " "), "Say why"),
    ):
        with pytest.raises(BadInput, match=error):
            decide_deviation(shop.book, code, told[0], told[1], on=MADE, by="Nuala", reason=told[2])
    with pytest.raises(BadInput, match="was found on"):
        decide_deviation(shop.book, code, 1, "accept", on=date(2026, 5, 1), by="Nuala", reason="so")
    decide_deviation(shop.book, code, 1, "accept", on=MADE, by="Orla", reason="smooth again")
    assert of(shop, code) == [(1, "seen", "seized at trace", "accepted")]


def test_a_low_ph_asks_for_its_method_and_a_high_one_deviates(shop: Any) -> None:
    with pytest.raises(BadInput, match="so the method is in question"):
        read_reading("pH=8.6")
    low = read_reading("pH=8.6; 1 % in water, meter set at 7 and 10")
    assert (low.value, low.method) == (8_600, "1 % in water, meter set at 7 and 10")
    code = planned(shop.book)
    read(shop, code, "pH=10.6; 1 % in water")
    assert of(shop, code) == [(1, "pH", "pH 10.6, 0.1 over 10.5", None)]


def test_what_nobody_read_is_said(shop: Any) -> None:
    assert read_reading("lye temperature=-") == ReadingValue("lye temperature", text="not read")
    assert read_reading("trace=- the clock stopped").text == "not read: the clock stopped"
    code = planned(shop.book)
    read(shop, code, "lye temperature=- thermometer broke", "fats temperature=47 C")
    assert of(shop, code) == []
    assert POURED[0].what == "poured"
