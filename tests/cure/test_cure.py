"""Weighings of marked bars, and what they forecast."""

import json
from datetime import date, timedelta
from fractions import Fraction
from math import exp
from typing import Any

import pytest
from freezegun import freeze_time
from making import MADE, cut, planned, weighed
from once import once
from shop import PLAIN_BAR

from ledger.errors import BadInput, Refused
from ledger.operations.bench.cut import cut_batch
from ledger.operations.bench.readings import log_readings, read_reading
from ledger.operations.cure.weighing import Together, weigh_bars
from ledger.operations.recipe.recipes import add_recipe
from ledger.rows.batch import find_batch
from ledger.views.cure.cure import cure_list
from ledger.views.cure.cure_forecast import dried, dried_words
from ledger.views.cure.drying import Drying
from ledger.views.cure.weighed import weighings
from ledger.views.cure.weighings import last_weighings

# 1000 g of fats, 146.826 g of alkali reckoned as pure and 293.652 g of water are 1440.478 g; without water 1146.826 g.
DRY = Fraction(1_146_826, 1_440_478)
CUT = MADE + timedelta(days=1)


def view(shop: Any, code: str) -> Any:
    with shop.book.look() as rows:
        batch = find_batch(rows, code)
        return dried(rows, batch, weighings(rows, batch))


@once
def weigh(shop: Any, code: str, *grams: float, start: date = date(2026, 5, 8), every: int = 7) -> None:
    """Bar A, every seven days."""
    for week, each in enumerate(grams):
        weigh_bars(shop.book, code, {"A": round(each * 1000)}, on=start + timedelta(every * week))


# 10 % in the end at 6 % a day: 1 - 0.1 (1 - e^(-0.06 t)), of 140 g
STEADY = (140.0, 135.2, 132.0, 130.0, 128.6)


@pytest.mark.parametrize(("weighings", "every", "known"), [(3, 14, False), (4, 6, False), (4, 7, True), (5, 7, True)])
def test_nothing_is_forecast_before_four_weighings_over_three_weeks(
    shop: Any, weighings: int, every: int, known: bool
) -> None:
    code = cut(shop.book)
    weigh(shop, code, *STEADY[:weighings], every=every)
    found = view(shop, code)
    assert (found.forecast is not None) == known
    assert found.why_none == (None if known else "Nothing is forecast before 4 weighings over 21 days.")


def test_a_forecast_is_two_figures_with_what_it_stands_on(shop: Any) -> None:
    code = cut(shop.book)
    weigh(shop, code, *STEADY)
    found = view(shop, code).forecast
    low, high = found.weight_on(date(2027, 5, 8))
    assert low < 126_000 < high  # 90 % of 140 g lies between
    assert low >= 140_000 * DRY // 100 * 100
    assert (found.weighings, found.weighing_days, found.holds) == (5, 5, "if the room stays as it is")
    assert found.steady_from <= date(2026, 6, 11) <= found.steady_to  # 33.6 days by the closed formula
    assert found.too_early  # five weighings do not tell a floor from a slow tail
    said = dried_words(view(shop, code), "metric")[-1]
    assert said.startswith("By 5 weighings on 5 days, if the room stays as it is: it loses less than 0.5 % a week from")
    assert "Too early to say what it weighs at the end of its stock life, 6 May 2028:" in said


def test_what_was_weighed_stands_first_then_the_dry_bar_then_her_own_batches(shop: Any) -> None:
    for month, grams in ((1, (140.0, 135.0)), (2, (140.0, 134.0)), (3, (140.0, 136.0)), (4, (140.0, 133.0))):
        on = date(2026, month + 2, 6)
        code = cut(shop.book, on=on)
        weigh(shop, code, *grams, start=on + timedelta(1), every=28)
    code = cut(shop.book, on=date(2026, 7, 6))
    assert dried_words(view(shop, code), "metric")[0] == ("No marked bar was weighed; your limit is 0.5 % a week.")
    for bars, on in (({"A": 140_000, "B": 141_000}, 7), ({"A": 138_000, "B": 137_500}, 14)):
        weigh_bars(shop.book, code, bars, on=date(2026, 7, on))
    weigh_bars(shop.book, code, {"A": 135_000, "B": 136_000}, on=date(2026, 8, 4))
    last, dry, ours, ahead = dried_words(view(shop, code), "metric")
    # 271.0 of 275.5 g in 21 days: 4.5 / 275.5 is 1.63 %, a third of that a week
    assert last == (
        "Weighed on 4 Aug 2026: the lightest 135 g. The last 21 days took 1.6 %, 0.5 % a week; your limit is 0.5 % "
        "a week."
    )
    assert dry == "With all its water gone it weighs 111 g at the least: print that, and drying never makes it short."
    # 140 x 0.796143 = 111.46; 271 of 281 g left: 3.56 %; of 140 g lost 7, 4 and 6 g
    codes = [one.batch_code for one in view(shop, code).seen.earlier]
    assert ours == (
        "Between 1 and 29 days after the cut it has lost 3.6 % of its first weight; "
        "your last 3 batches of the recipe had lost "
        f"5.0 % ({codes[0]}), 2.9 % ({codes[1]}), 4.3 % ({codes[2]})."
    )
    assert ahead == "Nothing is forecast before 4 weighings over 21 days."


def test_a_scale_of_one_gram_is_told_what_it_cannot_see(shop: Any, run: Any) -> None:
    with freeze_time("2026-06-08 09:00:00"):
        run("init", "--scale-step", "1 g")
        code = cut(shop.book)
        said = " ".join(run("cure", "weigh", code, "A=104", "--on", "2026-06-01", "--yes").stdout.split())
        assert "A scale that shows steps of 1 g cannot see 0.5 % a week of that; weigh 10 bars together." in said
        said = " ".join(run("cure", "weigh", code, "--total", "1042", "--bars", "10", "--yes").stdout.split())
        assert "10 bars of batch" in said
        shown = run("cure", "show", code).stdout
        assert "10 together" in shown
        assert "104.2 g" in shown
        assert f"Next: soapledger cure weigh {code} A=WEIGHT --total WEIGHT --bars 10" in shown
        assert "Weighed on 8 Jun 2026: 10 together, 104.2 g each." in shown
        # 104.2 x 0.796143 = 82.96 g: of an average bar, since the lightest is not known
        assert "With all its water gone an average bar weighs 82 g." in shown
        assert "bar weight, 10 together" in run("batch", "show", code).stdout


@pytest.mark.parametrize(
    ("typed", "says", "code"),
    [
        (("--total", "1042 g"), "Write both", 2),
        (("--bars", "10"), "Write both", 2),
        (("--total", "104 g", "--bars", "1"), "two bars or more", 2),
        (("--total", "0 g", "--bars", "10"), "two bars or more", 2),
        (("--total", "1430 g", "--bars", "11"), "was cut into 10 bars", 1),
        ((), "Write each marked bar", 2),
    ],
)
def test_bars_together_that_cannot_be(shop: Any, run: Any, typed: tuple[str, ...], says: str, code: int) -> None:
    batch = cut(shop.book)
    with freeze_time("2026-06-08 09:00:00"):
        assert says in run("cure", "weigh", batch, *typed, "--yes", code=code).stderr
    with shop.book.look() as rows:
        assert weighings(rows, find_batch(rows, batch)) == ()


def test_bars_weighed_together_are_no_bar_of_the_label_but_count_at_the_cut(shop: Any) -> None:
    code = weighed(shop.book, planned(shop.book))
    cut_batch(shop.book, code, bars=10, on=MADE, by="Nuala")
    weigh_bars(shop.book, code, {}, on=MADE, together=Together(10, 1_320_000))
    with shop.book.look() as rows:
        batch = find_batch(rows, code)
        assert last_weighings(rows, batch) is None
        assert Drying(rows, [batch]).cut_bar(batch) == 132_000


@pytest.mark.parametrize(("after", "refused"), [(129_350, False), (129_349, True)])
def test_bars_that_lost_more_than_allowed_are_not_passed_unless_someone_says_so(
    shop: Any, run: Any, after: int, refused: bool
) -> None:
    code = cut(shop.book)  # 130 g less half a percent is 129.35 g
    weigh_bars(shop.book, code, {"A": 130_000}, on=date(2026, 5, 27))
    weigh_bars(shop.book, code, {"A": after}, on=date(2026, 6, 3))
    with freeze_time("2026-06-03 09:00:00"):
        if not refused:
            run("pass", code)
            return
        said = run("pass", code, code=1).stderr
        assert "weighed on 3 Jun 2026 it was losing 0.50 % a week, over the 0.50 % allowed" in said
        assert "--anyway REASON" in said
        run("pass", code, "--anyway", "the tearoom waits")
        assert "passed all the same: the tearoom waits" in run("batch", "show", code).stdout


def test_weighings_after_the_day_of_the_pass_do_not_stop_it(shop: Any, run: Any) -> None:
    code = cut(shop.book)
    weigh_bars(shop.book, code, {"A": 130_000}, on=date(2026, 6, 3))
    weigh_bars(shop.book, code, {"A": 120_000}, on=date(2026, 6, 10))
    with freeze_time("2026-06-12 09:00:00"):
        run("pass", code, "--on", "2026-06-09")


def test_a_cooked_soap_has_lost_its_water_before_the_cut(book: Any, shop: Any) -> None:
    add_recipe(
        book, PLAIN_BAR.replace("plain-bar", "cooked").replace("Plain Bar", "Cooked").replace("cold", "hot"), file="c"
    )
    code = weighed(book, planned(book, "cooked"))
    log_readings(book, code, [read_reading("pot before cook=2640 g"), read_reading("pot after cook=2560 g")], on=MADE)
    cut_batch(book, code, bars=10, on=CUT, by="Nuala", bars_mg=1_300_000)
    # 1440.478 g in, 80 g cooked off: 1360.478 g at the cut; dry 1440.478 - 293.652 = 1146.826 g is 92 % of 1246.550 g:
    # 113.928 g, 8.374 % of the cut, dries away
    with shop.book.look() as rows:
        batch = find_batch(rows, code)
        left = Drying(rows, [batch]).left_of_the_cut(batch, 80_000)
    assert 1 - float(left or 0) == pytest.approx(0.08374, abs=1e-5)
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
        assert "Nothing is forecast before" in shown


def test_what_is_due_to_be_weighed_and_the_calendar(shop: Any, run: Any) -> None:
    code = cut(shop.book)
    with shop.book.look() as rows:
        (one,) = cure_list(rows, on=date(2026, 5, 20))
        cut_on = one.cut_on
        assert one.weigh_on == cut_on + timedelta(days=7)
    with freeze_time("2026-05-31 09:00:00"):
        assert f"To be weighed: {code}" in run("cure", "list").stdout
        run("cure", "calendar", "-o", "rack.ics")


def kept(shop: Any, code: str) -> tuple[Fraction | None, str]:
    """What is known to stay of the bars weighed last, and its ground."""
    with shop.book.look() as rows:
        seen = last_weighings(rows, find_batch(rows, code))
    assert seen is not None
    return seen.left, seen.when


@once
def dried_out(shop: Any, code: str) -> None:
    """Five weighings of bar A from 8 May, by 1 - 0.1 (1 - e^(-0.06 t)) of 130 g, to the tenth of a gram."""
    for days, grams in ((0, 130.0), (7, 125.5), (14, 122.6), (21, 120.7), (28, 119.4)):
        weigh_bars(shop.book, code, {"A": round(grams * 1000)}, on=date(2026, 5, 8) + timedelta(days))


def test_no_share_is_claimed_of_a_range_on_screen_or_in_json(shop: Any, run: Any) -> None:
    code = cut(shop.book)
    dried_out(shop, code)
    with freeze_time("2026-06-08 09:00:00"):
        said = " ".join(run("cure", "show", code).stdout.split())
        assert "By 5 weighings on 5 days, if the room stays as it is: it loses less than 0.5 % a week from" in said
        assert "95" not in said.replace("0.5 %", "").replace("0.95", "")
        found = json.loads(run("cure", "show", code, "--json").stdout)["forecast"]
    assert "envelope" not in found
    assert (found["weighings"], found["holds"]) == (5, "if the room stays as it is")


def test_a_range_never_reaches_below_the_bar_with_all_its_water_gone(shop: Any) -> None:
    code = cut(shop.book)
    for days, grams in ((0, 130.0), (7, 124.0), (14, 119.0), (21, 116.5)):  # four weighings, hardly bent: a wide range
        weigh_bars(shop.book, code, {"A": round(grams * 1000)}, on=date(2026, 5, 8) + timedelta(days))
    found = view(shop, code)
    assert found.seen.dry_mg == int(130_000 * DRY) == 103_498
    assert found.forecast.weight_on(found.forecast.end_on)[0] == 103_400  # to the tenth of a gram, downwards


def test_while_it_is_too_early_the_dry_bar_counts_for_the_label(shop: Any) -> None:
    code = cut(shop.book)
    dried_out(shop, code)
    assert view(shop, code).forecast.too_early
    left, when = kept(shop, code)
    assert left == 132_000 * DRY / 119_400
    assert when == "with all its water gone"


def test_once_it_is_no_longer_too_early_the_low_end_of_the_forecast_counts(shop: Any) -> None:
    code = cut(shop.book)
    # 130 g down to 122.2 g and there since: 6 % at 20 % a day, week by week for half a year
    weigh(shop, code, *(round(130 - 7.8 * (1 - exp(-0.2 * 7 * week)), 1) for week in range(26)))
    found = view(shop, code).forecast
    low, high = found.weight_on(found.end_on)
    assert not found.too_early
    assert high - low <= 0.03 * high + 200
    left, when = kept(shop, code)
    assert left == Fraction(found.least_at_the_end_mg, found.weight_on(date(2026, 5, 8) + timedelta(175))[1])
    assert Fraction(115_000, 122_200) < left < 1
    assert "at the low end of its forecast" in when
    assert "from 26 weighings on 26 days, if the room stays as it is" in when


def test_without_a_weight_at_the_cut_nothing_is_known_until_the_forecast_says_it(shop: Any) -> None:
    code = weighed(shop.book, planned(shop.book))
    cut_batch(shop.book, code, bars=10, on=MADE, by="Nuala")
    for days, grams in ((2, 130.0), (9, 125.5), (16, 122.6), (23, 120.7), (30, 119.4)):
        weigh_bars(shop.book, code, {"A": round(grams * 1000)}, on=MADE + timedelta(days))
    left, when = kept(shop, code)
    assert left is None
    assert when == "the bars were not weighed at the cut, and their weighings do not say it yet"


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


@freeze_time("2026-06-09 09:00:00")
@pytest.mark.parametrize(
    ("days", "moment"), [(0, "at the cut"), (1, "while curing"), (27, "while curing"), (28, "at packing")]
)
def test_bars_are_weighed_at_packing_from_the_day_they_are_usable(shop: Any, run: Any, days: int, moment: str) -> None:
    """Cut on 6 May and cured for 28 days; a label goes by bars as they are packed."""
    code = cut(shop.book)
    weigh_bars(shop.book, code, {"A": 112_000}, on=MADE + timedelta(days))
    said = " ".join(run("label", "check", code, "--on", "2026-06-09").stdout.split())
    assert f"2026, {moment}." in said
    assert f"falls from 112 g {moment} to 105.09 g" in said
    assert ("is not yet their answer; weigh some at packing" in said) == (moment != "at packing")
