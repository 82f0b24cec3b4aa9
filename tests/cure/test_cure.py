"""Weighings of marked bars, and what they forecast."""

import json
from datetime import date, timedelta
from fractions import Fraction
from typing import Any

import pytest
from freezegun import freeze_time
from making import MADE, cut, planned, weighed
from shop import PLAIN_BAR

from ledger.errors import BadInput, Refused
from ledger.operations.bench.cut import cut_batch
from ledger.operations.bench.readings import log_readings, read_reading
from ledger.operations.cure.weighing import weigh_bars
from ledger.operations.recipe.recipes import add_recipe
from ledger.rows.batch import find_batch
from ledger.views.cure.cure import cure_list
from ledger.views.cure.cure_forecast import forecast, forecast_words, weighings
from ledger.views.cure.weighings import last_weighings

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
    low, high = found.weight_on(date(2027, 5, 8))
    assert 122_000 < low < 126_000 < high < 130_000  # 90 % of 140 g lies between
    assert (found.weighings, found.weighing_days, found.holds) == (5, 5, "if the room stays as it is")
    assert found.steady_from < found.steady_on < found.steady_to


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
    weigh_bars(book, code, {"A": 130_000}, on=CUT)
    with shop.book.look() as rows:
        seen = last_weighings(rows, find_batch(rows, code))
    assert seen is not None
    # quite dry, 1146.826 of the 1360.478 g at the cut are left, and of the 130 g likewise
    assert seen.left == Fraction(1_146_826, 1_360_478)


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


# 1000 g of fats, 146.826 g of alkali reckoned as pure and 293.652 g of water are 1440.478 g; without water 1146.826 g.
DRY = Fraction(1_146_826, 1_440_478)


def kept(shop: Any, code: str) -> tuple[Fraction | None, str]:
    """What is known to stay of the bars weighed last, and its ground."""
    with shop.book.look() as rows:
        seen = last_weighings(rows, find_batch(rows, code))
    assert seen is not None
    return seen.left, seen.when


def dried(shop: Any, code: str) -> None:
    """Five weighings of bar A from 8 May, by 1 - 0.1 (1 - e^(-0.06 t)) of 130 g, to the tenth of a gram."""
    for days, grams in ((0, 130.0), (7, 125.5), (14, 122.6), (21, 120.7), (28, 119.4)):
        weigh_bars(shop.book, code, {"A": round(grams * 1000)}, on=date(2026, 5, 8) + timedelta(days))


def test_no_share_is_claimed_of_a_range_on_screen_or_in_json(shop: Any, run: Any) -> None:
    code = cut(shop.book)
    dried(shop, code)
    with freeze_time("2026-06-08 09:00:00"):
        said = " ".join(run("cure", "show", code).stdout.split())
        assert "By 5 weighings on 5 days it loses less than 0.5 % a week from a day between" in said
        assert "(if the room stays as it is)" in said
        assert "95" not in said.replace("0.5 %", "").replace("0.95", "")
        found = json.loads(run("cure", "show", code, "--json").stdout)["forecast"]
    assert "curve" not in found
    assert (found["weighings"], found["holds"]) == (5, "if the room stays as it is")


def test_a_range_never_reaches_below_the_bar_with_all_its_water_gone(shop: Any) -> None:
    code = cut(shop.book)  # 132 g at the cut: 105.091 g with all its water gone
    for days, grams in ((0, 130.0), (7, 124.0), (14, 119.0), (21, 116.5)):  # four weighings, hardly bent: a wide range
        weigh_bars(shop.book, code, {"A": round(grams * 1000)}, on=date(2026, 5, 8) + timedelta(days))
    found = view(shop, code)
    assert found.basis == "weighings"
    assert found.dry_mg == int(132_000 * DRY) == 105_090
    assert found.weight_on(found.end_on)[0] == 105_090


def test_the_lesser_of_the_forecasts_low_end_and_the_dry_bar_counts(shop: Any) -> None:
    code = cut(shop.book)
    dried(shop, code)
    left, when = kept(shop, code)
    assert left == 132_000 * DRY / 119_400  # 105.091 g, under the 114 g or so at which these bars seem to stop
    assert when == "with all its water gone"


def test_without_a_weight_at_the_cut_the_low_end_of_the_forecast_counts(shop: Any) -> None:
    code = weighed(shop.book, planned(shop.book))
    cut_batch(shop.book, code, bars=10, on=MADE, by="Nuala")
    for days, grams in ((2, 130.0), (9, 125.5)):
        weigh_bars(shop.book, code, {"A": round(grams * 1000)}, on=MADE + timedelta(days))
    left, when = kept(shop, code)
    assert left is None
    assert when == "the bars were not weighed at the cut, and their weighings give no forecast yet"
    for days, grams in ((16, 122.6), (23, 120.7), (30, 119.4)):
        weigh_bars(shop.book, code, {"A": round(grams * 1000)}, on=MADE + timedelta(days))
    found = view(shop, code)
    left, when = kept(shop, code)
    assert left == Fraction(found.weight_on(found.end_on)[0], 119_400)
    assert left < Fraction(117_000, 119_400)  # 130 g less a tenth, at the middle
    assert "at the low end of its forecast" in when
    assert "from 5 weighings on 5 days, if the room stays as it is" in when


def test_bars_lighter_than_they_can_be_quite_dry_leave_it_unknown(shop: Any) -> None:
    # 1000 mg x 1440.478 / 1146.826 = 1256.056: bars of 100 g are as light as the dry bar of 1256.056 g at the cut
    for ten_bars, known in ((1_256_056, True), (1_256_057, False)):
        code = weighed(shop.book, planned(shop.book))
        cut_batch(shop.book, code, bars=10, on=MADE, by="Nuala", bars_mg=ten_bars)
        weigh_bars(shop.book, code, {"A": 100_000}, on=date(2026, 6, 8))
        assert (kept(shop, code)[0] is not None) == known


def test_a_cook_that_was_not_weighed_takes_no_water_off_before_the_cut(book: Any, shop: Any) -> None:
    hot = PLAIN_BAR.replace("plain-bar", "cooked").replace("Plain Bar", "Cooked").replace('"cold"', '"hot"')
    add_recipe(book, hot, file="c")
    code = weighed(book, planned(book, "cooked"))
    cut_batch(book, code, bars=10, on=CUT, by="Nuala", bars_mg=1_300_000)
    weigh_bars(book, code, {"A": 130_000}, on=CUT)
    assert kept(shop, code)[0] == DRY  # an estimated loss in the cook would leave the bars too little to lose


def test_the_label_says_what_is_the_highest_or_that_it_is_not_known(shop: Any, run: Any) -> None:
    # a dry bar of 1256.057 / 10 x 0.796143 = 100.00006 g, and of 1256.056 / 10 x 0.796143 = 99.99998 g
    for ten_bars, highest in ((1_256_057, "100 g"), (1_256_056, "99 g")):
        code = weighed(shop.book, planned(shop.book))
        cut_batch(shop.book, code, bars=10, on=MADE, by="Nuala", bars_mg=ten_bars)
        weigh_bars(shop.book, code, {"A": 112_000}, on=date(2026, 6, 8))
        said = " ".join(run("label", "check", code, "--on", "2026-06-09").stdout.split())
        assert f"{highest} is the highest; at" in said
        assert "with all its water gone" in said
    code = weighed(shop.book, planned(shop.book))
    cut_batch(shop.book, code, bars=10, on=MADE, by="Nuala")
    weigh_bars(shop.book, code, {"A": 112_000}, on=date(2026, 6, 8))
    said = " ".join(run("label", "check", code, "--on", "2026-06-09").stdout.split())
    assert "is the highest" not in said
    assert "The highest weight to declare is not known here: the bars were not weighed at the cut" in said
