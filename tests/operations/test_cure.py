"""Weighings of marked bars, and what they forecast."""

from datetime import date, timedelta
from typing import Any

import pytest
from conftest import PLAIN_BAR
from freezegun import freeze_time
from making import MADE, cut, planned, weighed

from ledger.errors import BadInput, Refused
from ledger.operations.cure import weigh_bars
from ledger.operations.cut import cut_batch
from ledger.operations.readings import log_readings, read_reading
from ledger.operations.recipes import add_recipe
from ledger.views.batch import find_batch
from ledger.views.cure import cure_list
from ledger.views.cure_forecast import forecast, forecast_words, weighings
from ledger.views.weighings import last_weighings

CUT = MADE + timedelta(days=1)


def view(shop: Any, code: str) -> Any:
    with shop.book.look() as rows:
        batch = find_batch(rows, code)
        return forecast(rows, batch, weighings(rows, batch))


def test_before_weighings_the_composition_and_then_the_bars_themselves(shop: Any) -> None:
    code = cut(shop.book)
    assert view(shop, code).basis == "composition"
    # 10 % in the end at 6 % a day: 1 - 0.1 (1 - e^(-0.06 t)), of 140 g
    for days, grams in ((0, 140.0), (7, 135.2), (14, 132.0), (21, 130.0), (28, 128.6)):
        weigh_bars(shop.book, code, {"A": round(grams * 1000)}, on=date(2026, 5, 8) + timedelta(days=days))
        assert view(shop, code).basis == ("weighings" if days >= 21 else "composition")
    found = view(shop, code)
    assert found.curve.loss == pytest.approx(0.1, abs=0.005)
    assert abs((found.steady_on - date(2026, 5, 8)).days - 34) <= 3  # 33.6 days by the closed formula
    weight, give = found.weight_on(date(2027, 5, 8))
    assert weight == pytest.approx(126_000, rel=0.006)  # 90 % of 140 g
    assert 0 < give < 4_000
    assert found.surely == "about 95 %"


def test_the_composition_says_that_its_range_is_a_rough_one_and_why_it_speaks(shop: Any) -> None:
    code = cut(shop.book)
    words = forecast_words(view(shop, code), "metric")
    assert "(not weighed on four days yet)" in words
    assert "a rough range: common practice, no source" in words
    assert "95 %" not in words
    for days in range(0, 35, 7):  # gaining: no curve fits
        weigh_bars(shop.book, code, {"A": 130_000 + 10 * days}, on=date(2026, 5, 8) + timedelta(days=days))
    words = forecast_words(view(shop, code), "metric")
    assert "its weighings show no drying that a curve fits" in words
    with shop.book.look() as rows:
        (one,) = cure_list(rows, on=date(2026, 6, 8))
    assert one.lags == "drying slower than its composition lets expect"


def test_a_cooked_soap_has_lost_its_water_before_the_cut(book: Any, shop: Any) -> None:
    add_recipe(
        book, PLAIN_BAR.replace("plain-bar", "cooked").replace("Plain Bar", "Cooked").replace("cold", "hot"), file="c"
    )
    code = weighed(book, planned(book, "cooked"))
    log_readings(book, code, [read_reading("pot before cook=2640 g"), read_reading("pot after cook=2560 g")], on=MADE)
    cut_batch(book, code, bars=10, on=CUT, by="Nuala", bars_mg=1_300_000)
    # 1440.478 g in, 80 g cooked off: 1360.478 g at the cut; dry 1440.478 - 293.652 = 1146.826 g is 92 % of 1246.550 g:
    # 113.928 g, 8.374 % of the cut, dries away
    assert view(shop, code).curve.loss == pytest.approx(0.08374, abs=1e-5)
    with shop.book.look() as rows:
        batch = find_batch(rows, code)
        weigh_bars(book, code, {"A": 130_000}, on=CUT)
        seen = last_weighings(rows, batch)
    assert seen is not None
    assert seen.left_ppm == pytest.approx(916_260, abs=10)  # of the 130 g at the cut


def test_what_is_asked_as_of_a_day_knows_nothing_later(shop: Any) -> None:
    code = cut(shop.book)
    for days in (0, 7, 14, 21, 28):
        weigh_bars(
            shop.book, code, {"A": 130_000 - 300 * days + 4 * days * days}, on=date(2026, 5, 8) + timedelta(days)
        )
    with shop.book.look() as rows:
        assert len(weighings(rows, find_batch(rows, code), on=date(2026, 5, 20))) == 2
        (one,) = cure_list(rows, on=date(2026, 5, 20))
    assert one.basis == "composition"
    assert one.weigh_on == date(2026, 5, 22)  # seven days after 15 May


@pytest.mark.parametrize("mark", ["", "A B", "\N{LARGE RED SQUARE}", "ABCDEFG"])
def test_a_mark_is_short_and_can_be_printed(shop: Any, mark: str) -> None:
    with pytest.raises(BadInput, match="is not a mark for a bar"):
        weigh_bars(shop.book, cut(shop.book), {mark: 100_000}, on=date(2026, 6, 1))


def test_weighed_before_the_cut_or_with_nothing(shop: Any) -> None:
    with pytest.raises(Refused, match="no bars on the rack"):
        weigh_bars(shop.book, planned(shop.book), {"A": 1}, on=MADE)
    code = cut(shop.book)
    for weights in ({}, {"A": 0}):
        with pytest.raises(BadInput, match=r"A=101\.2g"):
            weigh_bars(shop.book, code, weights, on=date(2026, 6, 1))
    with pytest.raises(BadInput, match="was cut on"):
        weigh_bars(shop.book, code, {"A": 100_000}, on=date(2026, 5, 1))


def test_a_bar_heavier_than_before_is_asked_about_once_and_kept(shop: Any, run: Any) -> None:
    code = cut(shop.book)
    with freeze_time("2026-06-01 09:00:00"):
        run("cure", "weigh", code, "A=130", "--on", "2026-05-20")
        assert "damp weather" in run("cure", "weigh", code, "A=131", input="no\n", code=1).stderr
        assert "1 bar" in run("cure", "weigh", code, "A=131", input="yes\n").stdout
        assert "before. Is it right?" in run("cure", "weigh", code, "A=13.1", input="n\n", code=1).stderr
        shown = run("cure", "show", code).stdout
        assert "131 g" in shown
        assert "From its composition" in shown


def test_what_is_due_to_be_weighed_and_the_calendar(shop: Any, run: Any) -> None:
    code = cut(shop.book)
    with shop.book.look() as rows:
        (one,) = cure_list(rows, on=date(2026, 5, 20))
        cut_on = one.cut_on
        assert one.weigh_on == cut_on + timedelta(days=7)
    with freeze_time("2026-05-31 09:00:00"):
        assert f"To be weighed: {code}" in run("cure", "list").stdout
        run("cure", "calendar", "-o", "rack.ics")
