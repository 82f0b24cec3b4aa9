"""A product beside its assessment, particular by particular, with shares at, over and under their limits."""

from datetime import date

import pytest

from ledger.domain.release.assessed import Assessed, Compared, Share, compare
from ledger.domain.release.assessment import Assessment, Bounds, Notification

ON = date(2026, 6, 1)
OLIVE, LAVENDER = "OLEA EUROPAEA FRUIT OIL", "LAVANDULA ANGUSTIFOLIA OIL"
# 1000 g in all, so a gram is a tenth of a percent: olive 50 %, water 22.5 %, the rest by its grams.
FACTS = Assessed(
    process="cold",
    superfat_ppm=50_000,
    best_before_months=24,
    shares=(
        Share("Olea Europaea Fruit Oil", 400_000),
        Share(OLIVE, 100_000),
        Share("Water", 225_000),
        Share("COCOS NUCIFERA OIL", 155_000),
        Share("SODIUM HYDROXIDE", 100_000),
        Share(LAVENDER, 20_000, fragrance=True),
    ),
    markets={"eu": True},
)
GIVEN = Assessment(
    assessor="R. Lund",
    reference="QR-114",
    on=date(2026, 3, 3),
    until=date(2026, 12, 31),
    process=("cold", "hot"),
    markets=("eu", "gb"),
    superfat_ppm=(30_000, 80_000),
    durability_months=24,
    ingredients=(
        Bounds(OLIVE, 300_000, 500_000),
        Bounds("AQUA", 0, 250_000),
        Bounds("COCOS NUCIFERA OIL", 0, 200_000),
        Bounds("SODIUM HYDROXIDE", 0, 110_000),
    ),
    fragrances=(Bounds(LAVENDER, 0, 20_000),),
    notifications=(Notification("eu", "N-7", date(2026, 3, 10)),),
)


def found(what: str, *, given: Assessment = GIVEN, facts: Assessed = FACTS, on: date = ON) -> Compared:
    """The one particular of that name."""
    (one,) = [one for one in compare(given, facts, on=on) if one.what == what]
    return one


def with_olive(mass_mg: int) -> Assessed:
    """So much olive oil, with water making up the 1000 g."""
    shares = [one for one in FACTS.shares if one.inci not in ("Olea Europaea Fruit Oil", OLIVE, "Water")]
    return FACTS._replace(shares=(Share(OLIVE, mass_mg), Share("Water", 725_000 - mass_mg), *shares))


def test_every_particular_is_laid_beside_the_assessment_in_order() -> None:
    assert compare(GIVEN, FACTS, on=ON) == (
        Compared("date", "1 Jun 2026", "until 31 Dec 2026", "inside"),
        Compared("process", "cold", "cold, hot", "inside"),
        Compared("superfat", "5.0 %", "3 % to 8 %", "inside"),
        Compared("best before", "24 months", "at most 24 months", "inside"),
        Compared(OLIVE, "50 %", "30 % to 50 %", "inside"),  # 400 g and 100 g of 1000 g, exactly at the limit
        Compared("AQUA", "22.50 %", "at most 25 %", "inside"),
        Compared("COCOS NUCIFERA OIL", "15.50 %", "at most 20 %", "inside"),
        Compared("SODIUM HYDROXIDE", "10.00 %", "at most 11 %", "inside"),
        Compared(LAVENDER, "2 % fragrance", "at most 2 %", "inside"),
        Compared("market EU", "asked for", "EU, GB", "inside"),
        Compared("notification EU", "asked for", "N-7", "inside"),
    )


@pytest.mark.parametrize(
    ("mass_mg", "shown", "verdict"),
    [
        (300_000, "30 %", "inside"),
        (299_999, "just under 30 %", "outside"),
        (299_900, "29.99 %", "outside"),
        (300_001, "just over 30 %", "inside"),
        (500_000, "50 %", "inside"),
        (499_999, "just under 50 %", "inside"),
        (500_001, "just over 50 %", "outside"),
        (501_000, "50.10 %", "outside"),
    ],
)
def test_a_share_is_compared_to_the_milligram(mass_mg: int, shown: str, verdict: str) -> None:
    one = found(OLIVE, facts=with_olive(mass_mg))
    assert (one.found, one.verdict) == (shown, verdict)


def test_a_third_over_its_limit_is_not_rounded_back_inside() -> None:
    # 1 mg of 3 mg is 33.3333… %: over a limit of 33.3333 %, and under one of 33.3334 %
    facts = FACTS._replace(shares=(Share(OLIVE, 1), Share("AQUA", 2)))
    for limit, verdict in ((333_333, "outside"), (333_334, "inside")):
        given = GIVEN._replace(ingredients=(Bounds(OLIVE, 0, limit),))
        assert found(OLIVE, given=given, facts=facts).verdict == verdict


def test_what_is_not_named_is_outside_and_what_must_be_there_is_missed() -> None:
    clay = FACTS._replace(shares=(*with_olive(0).shares, Share("KAOLIN", 10_000)))
    assert found("KAOLIN", facts=clay) == Compared("KAOLIN", "0.99 %", "not named", "outside", True)  # 10 of 1010 g
    assert found(OLIVE, facts=clay) == Compared(OLIVE, "none", "30 % to 50 %", "outside")
    assert found("AQUA", facts=clay).verdict == "outside"  # 725 g of 1010 g
    assert not [one for one in compare(GIVEN, FACTS._replace(shares=()), on=ON) if one.what == "AQUA"]


def test_a_fragrance_is_laid_beside_the_assessed_fragrances_alone() -> None:
    moved = GIVEN._replace(ingredients=(*GIVEN.ingredients, *GIVEN.fragrances), fragrances=())
    assert found(LAVENDER, given=moved) == Compared(LAVENDER, "2.00 % fragrance", "not named", "outside", True)
    needed = GIVEN._replace(fragrances=(Bounds("CEDRUS ATLANTICA WOOD OIL", 10_000, 20_000),))
    one = found("CEDRUS ATLANTICA WOOD OIL", given=needed)
    assert (one.found, one.assessed, one.verdict) == ("no fragrance", "1 % to 2 %", "outside")


@pytest.mark.parametrize(
    ("superfat_ppm", "shown", "verdict"),
    [
        (30_000, "3 %", "inside"),
        (29_999, "just under 3 %", "outside"),
        (80_000, "8 %", "inside"),
        (80_001, "just over 8 %", "outside"),
        (-12_000, "−1.2 %", "outside"),
        (None, "not reckoned", "outside"),
    ],
)
def test_the_superfat_lies_in_its_range_or_not(superfat_ppm: int | None, shown: str, verdict: str) -> None:
    one = found("superfat", facts=FACTS._replace(superfat_ppm=superfat_ppm))
    assert (one.found, one.verdict) == (shown, verdict)


def test_without_a_range_the_assessment_is_silent_on_the_superfat() -> None:
    given = GIVEN._replace(superfat_ppm=None)
    assert found("superfat", given=given) == Compared("superfat", "5.0 %", "not named", "silent")
    unknown = FACTS._replace(superfat_ppm=None)
    assert found("superfat", given=given, facts=unknown) == Compared("superfat", "not reckoned", "not named", "silent")


def test_a_rebatch_has_no_superfat_of_its_own() -> None:
    again = FACTS._replace(process="rebatch", superfat_ppm=None)
    assert "superfat" not in [one.what for one in compare(GIVEN, again, on=ON)]
    assert found("process", facts=again) == Compared("process", "rebatch", "cold, hot", "outside")


def test_the_best_before_is_held_to_the_durability() -> None:
    assert found("best before", facts=FACTS._replace(best_before_months=25)).verdict == "outside"
    silent = found("best before", given=GIVEN._replace(durability_months=None))
    assert silent == Compared("best before", "24 months", "not named", "silent")


@pytest.mark.parametrize(
    ("on", "until", "assessed", "verdict"),
    [
        (date(2026, 3, 2), GIVEN.until, "from 3 Mar 2026", "outside"),
        (date(2026, 3, 3), GIVEN.until, "until 31 Dec 2026", "inside"),
        (date(2026, 12, 31), GIVEN.until, "until 31 Dec 2026", "inside"),
        (date(2027, 1, 1), GIVEN.until, "until 31 Dec 2026", "outside"),
        (date(2027, 1, 1), None, "no end named", "silent"),
        (date(2026, 3, 2), None, "from 3 Mar 2026", "outside"),
    ],
)
def test_the_day_lies_within_the_assessment_or_not(on: date, until: date | None, assessed: str, verdict: str) -> None:
    one = found("date", given=GIVEN._replace(until=until), on=on)
    assert (one.assessed, one.verdict) == (assessed, verdict)


def test_each_market_asked_for_is_named_and_notified_or_not() -> None:
    facts = FACTS._replace(markets={"eu": True, "gb": True, "us": False})
    rows = [one for one in compare(GIVEN, facts, on=ON) if "market" in one.what or "notification" in one.what]
    assert [(one.what, one.assessed, one.verdict) for one in rows] == [
        ("market EU", "EU, GB", "inside"),
        ("notification EU", "N-7", "inside"),
        ("market GB", "EU, GB", "inside"),
        ("notification GB", "not named", "silent"),
        ("market US", "EU, GB", "outside"),  # which asks for no notification
    ]
    early = found("notification EU", on=date(2026, 3, 9))
    assert (early.assessed, early.verdict) == ("N-7 from 10 Mar 2026", "outside")


def test_an_ingredient_is_laid_beside_the_name_it_has_in_the_report() -> None:
    """400 g and 100 g of olive oil are 50 % of 1000 g, as one soap in the report; the lye is in the soaps it names."""
    soaps = (Bounds("SODIUM OLIVATE", 0, 500_000), Bounds("AQUA", 0, 250_000), Bounds("SODIUM COCOATE", 0, 200_000))
    also = ((OLIVE, "SODIUM OLIVATE"), ("COCOS NUCIFERA OIL", "SODIUM COCOATE"))
    given = GIVEN._replace(ingredients=soaps, also=also, held=("SODIUM HYDROXIDE",))
    assert found(OLIVE, given=given) == Compared(OLIVE, "50 %", "at most 50 % as SODIUM OLIVATE", "inside")
    assert found("SODIUM HYDROXIDE", given=given).verdict == "silent"
    over = FACTS._replace(shares=(*FACTS.shares, Share(OLIVE, 1), Share("AQUA", -1)))
    assert found(OLIVE, given=given, facts=over).verdict == "outside"


def test_the_assessors_word_stands_in_place_of_the_report() -> None:
    clay = FACTS._replace(shares=(*FACTS.shares, Share("KAOLIN", 10_000)))  # 10 of 1010 g, 0.990099 %
    for highest, verdict in ((9_901, "inside"), (9_900, "outside")):
        assert found("KAOLIN", given=GIVEN.with_word("KAOLIN", highest), facts=clay).verdict == verdict
    assert found(LAVENDER, given=GIVEN.with_word(LAVENDER, 19_999)).verdict == "outside"  # the report allowed 2 %
