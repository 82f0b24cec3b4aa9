"""Rules of the trade at their very limit, and a grain to each side of it."""

from dataclasses import replace
from datetime import date

import pytest
from bench.test_correction import PLENTY, SODA, WATER, batch, line
from release.test_assessed import FACTS, GIVEN

from ledger.domain.bench.correction import Case, ways, what_it_means
from ledger.domain.label.durability import durability
from ledger.domain.label.handbook_133 import maximum_allowable_variation
from ledger.domain.lye.pot import Pot
from ledger.domain.lye.uncertainty import Superfat
from ledger.domain.material.allergens import Holds, ListedAs, allergens_in
from ledger.domain.release.assessed import compare
from ledger.domain.tools.bounds import Limits
from ledger.domain.tools.limits import LineRead, Read, outside, read_ph
from ledger.errors import BadInput, Refused
from ledger.units.dates import not_future, parse_date

TODAY = date(2026, 6, 1)


def test_an_oil_that_is_itself_on_the_list_counts_with_its_mass_once() -> None:
    """100 mg in 1000 g are 0.01 %, which is not exceeded; stated of itself too, it is still 100 mg."""
    entry = ListedAs("An oil", True, False)
    part = Holds("an oil", "L1-X", "AN OIL", 100, {"An oil": 1_000_000}, True)
    found = allergens_in(
        [part], entry_of=lambda _: entry, entry_of_oil=lambda _: entry, driest_mg=1_000_000, threshold_ppm=100
    )
    assert [(one.share_ppm, one.declared) for one in found.found] == [(100, False)]


@pytest.mark.parametrize(("day", "verdict"), [(9, "outside"), (10, "inside"), (11, "inside")])
def test_a_notification_holds_from_its_day(day: int, verdict: str) -> None:
    """Notified on 10 March."""
    found = compare(GIVEN, FACTS, on=date(2026, 3, day))
    assert [one.verdict for one in found if one.what == "notification EU"] == [verdict]


@pytest.mark.parametrize(
    ("nominal", "likely", "begins"),
    [
        (0, 0, "lye is left over"),
        (1, 0, "lye may be left over"),
        (50_000, 0, "lye may be left over"),
        (50_000, 1, "an ordinary bar"),
        (19_999, 1, "a hard, drying bar"),
        (20_000, 1, "an ordinary bar"),
        (80_000, 1, "an ordinary bar"),
        (80_001, 1, "a softer bar"),
        (150_000, 1, "a softer bar"),
        (150_001, 1, "a soft, greasy bar"),
    ],
)
def test_what_a_superfat_means_for_the_bar(nominal: int, likely: int, begins: str) -> None:
    assert what_it_means(Superfat(nominal, likely, likely, ())).startswith(begins)


@pytest.mark.parametrize(("likely", "burns"), [(-1, True), (0, True), (1, False)])
def test_a_superfat_likely_nothing_is_no_way_out(monkeypatch: pytest.MonkeyPatch, likely: int, burns: bool) -> None:
    monkeypatch.setattr(Pot, "lowest", lambda *_: Superfat(50_000, likely, likely, ()))
    assert ways(batch(SODA, 142_289), PLENTY)[0].burns is burns


@pytest.mark.parametrize(("mass", "dissolves"), [(142_288, False), (142_289, True), (142_290, True)])
def test_alkali_dissolves_in_its_own_weight_of_water(mass: int, dissolves: bool) -> None:
    assert (ways(batch(WATER, mass), PLENTY)[0].why_not is None) is dissolves


def potash(mass: int) -> Case:
    """The same batch with KOH, pure: 210.1 g less 5 % are 199.595 g."""
    case = batch(SODA, 142_289)
    alkali = line(SODA, "alkali", "potash", 199_595, alkali_kind="KOH", purity_low_ppm=1_000_000)
    lines = [one for one in case.lines if one.role != "alkali"]
    water = [replace(one, mass_mg=400_000, target_mg=400_000) if one.number == WATER else one for one in lines]
    return replace(case, lines=(*water, replace(alkali, mass_mg=mass)))


@pytest.mark.parametrize(("mass", "fits"), [(199_494, False), (199_495, True), (199_695, True), (199_696, False)])
def test_the_lye_fits_to_a_step_of_the_scale(mass: int, fits: bool) -> None:
    """The scale shows 0.1 g."""
    assert (ways(potash(mass), PLENTY)[1].why_not == "the lye fits as it is") is fits


@pytest.mark.parametrize(("free", "possible"), [(139_999, False), (140_000, True), (140_001, True)])
def test_all_that_is_free_of_a_fat_may_be_added(free: int, possible: bool) -> None:
    """1.2 times the lye takes 1.2 times the fats: 140 g of olive and 60 g of coconut more."""
    fats = ways(potash(239_514), {"olive": free, "coconut": 60_000})[2]
    assert (fats.why_not is None) is possible


def test_today_has_come_and_tomorrow_has_not() -> None:
    assert not_future(TODAY, today=TODAY) == TODAY
    with pytest.raises(BadInput, match="2 Jun 2026 has not come yet"):
        not_future(date(2026, 6, 2), today=TODAY)


def test_the_name_of_today_is_today() -> None:
    """1 June 2026 is a Monday."""
    assert parse_date("monday", today=TODAY) == TODAY
    assert parse_date("tuesday", today=TODAY) == date(2026, 5, 26)
    assert parse_date("1990-01-01", today=TODAY) == date(1990, 1, 1)
    with pytest.raises(BadInput, match="1990 to 2100"):
        parse_date("1989-12-31", today=TODAY)


@pytest.mark.parametrize(
    ("read", "subject"),
    [
        (Read(clocks={"cook start": "10:00", "cook end": "10:44"}), "cook"),
        (Read(clocks={"cook start": "10:00", "cook end": "10:45"}), None),
        (Read(clocks={"cook start": "10:00", "cook end": "12:00"}), None),
        (Read(clocks={"cook start": "10:00", "cook end": "12:01"}), "cook"),
        (Read(figures={"pH": [10_500]}), None),
        (Read(figures={"pH": [10_501]}), "pH"),
        (Read(loss_ppm=100_000), None),
        (Read(loss_ppm=100_001), "loss"),
        (Read(figures={"lye temperature": [45_000], "fats temperature": [40_000]}), None),
        (Read(figures={"lye temperature": [45_001], "fats temperature": [40_000]}), "lye and fats apart"),
        (Read(figures={"fragrance temperature": [80_000]}), None),
        (Read(figures={"fragrance temperature": [80_001]}), "fragrance temperature"),
        (Read(bars_mg=[95_000, 115_000]), None),
        (Read(bars_mg=[94_999]), "bar weight"),
        (Read(bars_mg=[115_001]), "bar weight"),
        (Read(lines=[LineRead(1, "oil", 90, 90, 110, False), LineRead(2, "oil", 110, 90, 110, False)]), None),
        (Read(lines=[LineRead(1, "oil", 89, 90, 110, False)]), "line 1"),
        (Read(lines=[LineRead(1, "oil", 111, 90, 110, False)]), "line 1"),
    ],
)
def test_a_figure_at_its_limit_is_inside(read: Read, subject: str | None) -> None:
    limits = Limits(cook_minutes=(45, 120), bar_weight_mg=(95_000, 115_000))
    assert [one.subject for one in outside(limits, read, "metric")] == ([subject] if subject else [])


def test_a_ph_below_9_says_how_it_was_measured() -> None:
    assert read_ph("9.0") == (9000, None)
    with pytest.raises(BadInput, match="method"):
        read_ph("8.9")


def test_as_many_months_as_were_assessed_may_be_claimed() -> None:
    assert durability(TODAY, 24, dated_months=30, assessed_months=24).best_before == date(2028, 6, 1)
    with pytest.raises(Refused, match="25 months are claimed"):
        durability(TODAY, 25, dated_months=30, assessed_months=24)
    assert durability(TODAY, 30, dated_months=30).best_before == date(2028, 12, 1)
    with pytest.raises(BadInput, match="Above 30 months"):
        durability(TODAY, 31, dated_months=30)
    assert durability(TODAY, 31, dated_months=30, after_opening_months=31).after_opening_months == 31
    with pytest.raises(BadInput, match="cannot outlast"):
        durability(TODAY, 31, dated_months=30, after_opening_months=32)


@pytest.mark.parametrize(("nominal", "allowed"), [(53_999, 3600), (54_000, 3600), (54_001, 5400), (81_000, 5400)])
def test_the_smaller_variation_is_taken_where_two_rows_meet(nominal: int, allowed: int) -> None:
    """NIST Handbook 133 (from memory): up to 54 g 3.6 g, up to 81 g 5.4 g."""
    assert maximum_allowable_variation(nominal).mg == allowed
