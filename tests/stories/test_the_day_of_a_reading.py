"""A reading stands on the day it was taken, and only what was read of the bars answers for them at the release."""

import json
from datetime import date
from typing import Any

import pytest
from freezegun import freeze_time
from making import MADE, cut, planned, weighed
from once import once
from shop import Shop

from ledger.domain.release.bars import Passing
from ledger.operations.bench.cut import cut_batch
from ledger.operations.bench.readings import ReadingValue, log_readings, read_reading
from ledger.operations.release.release import pass_bars
from ledger.operations.release.release_checks import open_checks
from ledger.rows.batch import find_batch
from ledger.rows.reading import read_of_the_bars
from ledger.views.cure.weighings import last_weighings


def read(run: Any, code: str) -> list[tuple[str, str, str]]:
    """(day, what, value) of every reading on the record."""
    found = json.loads(run("batch", "show", code, "--json").stdout)["readings"]
    return [(one["on"], one["what"], one["value"].replace("\u00a0", " ")) for one in found]


def asked(shop: Shop, code: str) -> list[str]:
    """The points of the checklist that nothing on the record answers."""
    with shop.book.look() as rows:
        return open_checks(rows, find_batch(rows, code))


@pytest.fixture
@once
def bars(shop: Shop) -> str:
    """Made on 6 May, cut on 7 May."""
    code = weighed(shop.book, planned(shop.book))
    cut_batch(shop.book, code, bars=10, on=date(2026, 5, 7), by="Nuala", bars_mg=1_320_000)
    return code


@freeze_time("2026-06-10 09:00:00")
def test_a_reading_after_the_pour_is_of_the_day_said_or_of_today(bars: str, run: Any) -> None:
    run("batch", "log", bars, "--reading", "pH=9.8", "--on", "2026-06-03")
    run("batch", "log", bars, "--reading", "pH=9.6")
    run(
        "batch", "log", bars, "--reading", "bar weight=131 g", "--reading", "observation=soda ash", "--on", "2026-05-08"
    )
    run("batch", "log", bars, "--reading", "trace=9 min")  # of the making
    run("batch", "log", bars, "--reading", "lye temperature=49 C", "--on", "2026-05-07")  # unless she says another day
    found = read(run, bars)
    for one in (
        ("2026-06-03", "pH", "9.8"), ("2026-06-10", "pH", "9.6"), ("2026-05-08", "bar weight", "131 g"),
        ("2026-05-08", "observation", "soda ash"), ("2026-05-06", "trace", "9 min"),
        ("2026-05-07", "lye temperature", "49.0 °C"),
    ):  # fmt: skip
        assert one in found


@freeze_time("2026-06-10 09:00:00")
def test_lines_of_a_csv_file_keep_their_day_too(bars: str, run: Any, tmp_path: Any) -> None:
    # a and b to begin with, c to f while mixing, g and h the pour, i the unmoulding
    (tmp_path / "read.csv").write_text("line,weight\ni,9:30\nc,49 C\n", encoding="utf-8")
    run("batch", "log", bars, "--csv", "read.csv", "--on", "2026-05-07")
    found = read(run, bars)
    assert ("2026-05-07", "unmoulded", "09:30") in found
    assert ("2026-05-07", "lye temperature", "49.0 °C") in found
    (tmp_path / "read.csv").write_text("line,weight\nc,49,5 C\n", encoding="utf-8")
    refused = run("batch", "log", bars, "--csv", "read.csv", "--correct", code=2).stderr
    assert "read.csv, line 2: there are more values than columns" in refused


@freeze_time("2026-06-10 09:00:00")
@pytest.mark.parametrize(
    ("on", "what", "says"),
    [
        ("2026-06-11", "pH=9.6", "has not come yet"),
        ("2026-06-11", "lye temperature=49 C", "has not come yet"),
        ("2026-05-05", "pH=9.6", "was planned for 6 May 2026; look at --on"),
        ("2026-05-05", "trace=9 min", "was planned for 6 May 2026; look at --on"),
    ],
)
def test_a_day_to_come_or_before_the_batch_is_refused(bars: str, run: Any, on: str, what: str, says: str) -> None:
    before = read(run, bars)
    said = run("batch", "log", bars, "--reading", what, "--on", on, code=2).stderr
    assert says in said
    assert len(said.strip().splitlines()) == 1
    assert read(run, bars) == before


@freeze_time("2026-06-10 09:00:00")
def test_nothing_is_read_of_bars_before_the_day_the_batch_was_made(shop: Shop, run: Any) -> None:
    code = weighed(shop.book, planned(shop.book), on=date(2026, 5, 9))  # planned for the 6th
    assert (
        "was made on 9 May 2026"
        in run("batch", "log", code, "--reading", "pH=9.6", "--on", "2026-05-08", code=2).stderr
    )
    run("batch", "log", code, "--reading", "pH=9.6", "--on", "2026-05-09")
    run("batch", "note", code, "the lye was made the day before", "--on", "2026-05-08")


@freeze_time("2026-06-10 09:00:00")
@pytest.mark.parametrize("what", ["bar weight=130 g", "waste at the cut=20 g"])
def test_no_bar_is_weighed_before_there_is_one(shop: Shop, run: Any, what: str) -> None:
    code = weighed(shop.book, planned(shop.book))
    before = read(run, code)
    assert f"Batch {code} is poured; it has no bars yet." in run("batch", "log", code, "--reading", what, code=1).stderr
    assert read(run, code) == before
    run("batch", "log", code, "--reading", "unmoulded weight=1400 g")  # of the loaf
    run("batch", "cut", code, "10", "--on", "2026-06-09")
    assert "was cut on 9 Jun 2026" in run("batch", "log", code, "--reading", what, "--on", "2026-06-08", code=2).stderr
    run("batch", "log", code, "--reading", what, "--on", "2026-06-09")


@freeze_time("2026-06-10 09:00:00")
def test_a_correction_keeps_the_day_of_what_it_corrects_unless_said(bars: str, run: Any) -> None:
    run("batch", "log", bars, "--reading", "pH=9.8", "--on", "2026-06-03")
    run("batch", "log", bars, "--reading", "pH=9.7", "--correct")
    assert [one for one in read(run, bars) if one[1] == "pH"] == [
        ("2026-06-03", "pH", "9.8"),
        ("2026-06-03", "pH", "9.7"),
    ]
    run("batch", "log", bars, "--reading", "pH=9.5", "--correct", "--on", "2026-06-04")
    assert ("2026-06-04", "pH", "9.5") in read(run, bars)
    run("batch", "log", bars, "--reading", "poured=14:20", "--correct")
    assert ("2026-05-06", "poured", "14:20") in read(run, bars)


@freeze_time("2026-06-10 09:00:00")
def test_a_deviation_is_of_the_day_of_the_reading_that_opened_it(bars: str, run: Any) -> None:
    run("batch", "log", bars, "--reading", "pH=11.2", "--on", "2026-06-03")
    (one,) = json.loads(run("batch", "show", bars, "--json").stdout)["deviations"]
    assert one["on"] == "2026-06-03"


def test_the_next_sitting_at_the_prompt_is_of_its_own_day(shop: Shop, run: Any) -> None:
    code = weighed(shop.book, planned(shop.book))
    with freeze_time("2026-05-08 09:00:00"):  # unmoulded at, weight of the loaf; not cut yet; seen: soda ash
        run("batch", "log", code, "--on", "2026-05-07", input="9:30\n1430 g\n\n9\n")
        assert ("2026-05-07", "unmoulded", "09:30") in read(run, code)
        assert ("2026-05-07", "observation", "soda ash") in read(run, code)


def test_a_ph_of_the_dough_does_not_answer_for_the_bars(shop: Shop) -> None:
    """Made and cut on 6 May: the order of the entries decides."""
    code = weighed(shop.book, planned(shop.book))
    log_readings(shop.book, code, [read_reading("pH=10.1")], on=MADE)
    cut_batch(shop.book, code, bars=10, on=MADE, by="Nuala", bars_mg=1_320_000)

    def read_of_bars() -> list[int | None]:
        with shop.book.look() as rows:
            return [one.value for one in read_of_the_bars(rows, find_batch(rows, code), "pH")]

    assert read_of_bars() == []
    log_readings(shop.book, code, [read_reading("pH=10.2")], on=MADE, correct=True)  # still of the dough
    assert read_of_bars() == []
    log_readings(shop.book, code, [read_reading("pH=9.6")], on=MADE)  # of that day too, booked after the cut
    assert read_of_bars() == [9600]


@pytest.mark.parametrize(("on", "answers"), [(date(2026, 6, 3), False), (date(2026, 6, 4), True)])
def test_a_ph_counts_from_the_day_the_bars_are_usable(shop: Shop, bars: str, on: date, answers: bool) -> None:
    """Cut on 7 May and cured for 28 days."""
    log_readings(shop.book, bars, [read_reading("pH=9.6")], on=on)
    assert ("pH" not in asked(shop, bars)) is answers


def test_the_latest_day_answers_and_not_what_was_booked_last(shop: Shop, run: Any) -> None:
    code = cut(shop.book)
    pass_bars(shop.book, code, Passing(on=date(2026, 6, 3), by="Nuala"))
    log_readings(shop.book, code, [read_reading("pH=9.4; strips")], on=date(2026, 6, 5))
    log_readings(shop.book, code, [read_reading("pH=10.3; strips")], on=date(2026, 6, 4))
    with freeze_time("2026-06-10 09:00:00"):
        run("release", code, "--anyway", "a trial", "--bare", "a trial", input="y\ny\n130 g\n")
    kept = shop.rows().execute("SELECT found FROM finished_check WHERE what = 'pH' ORDER BY id DESC").fetchone()
    assert kept[0] == "9.4; strips"


def test_a_weighing_of_bars_that_was_corrected_is_not_counted_for_their_net_weight(shop: Shop, bars: str) -> None:
    day = date(2026, 6, 3)
    log_readings(shop.book, bars, [ReadingValue("bar weight", 110_000, "mg")], on=day)
    log_readings(shop.book, bars, [ReadingValue("bar weight", 101_000, "mg")], on=MADE, correct=True)
    with shop.book.look() as rows:
        found = last_weighings(rows, find_batch(rows, bars))
    assert found is not None
    assert (found.on, found.weights_mg) == (day, (101_000,))


@freeze_time("2026-06-10 09:00:00")
def test_the_test_of_a_scale_booked_later_is_a_check_of_its_own_day(bars: str, run: Any) -> None:
    run("equipment", "add", "scale", "bench scale", "--against", "500 g", "--tolerance", "1 g")
    run("batch", "log", bars, "--line", "b=500.4 g", "--on", "2026-05-07")
    (item,) = json.loads(run("equipment", "list", "--json").stdout)
    assert item["last"]["on"] == "2026-05-07"


@freeze_time("2026-06-10 09:00:00")
def test_work_that_was_corrected_is_not_counted_twice(bars: str, run: Any) -> None:
    run("batch", "log", bars, "--reading", "labour=60 min")
    run("batch", "log", bars, "--reading", "labour=40 min", "--correct")
    assert json.loads(run("cost", bars, "--json").stdout)["labour_minutes"] == 40
