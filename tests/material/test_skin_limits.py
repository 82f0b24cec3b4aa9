"""Fragrances against what their certificates allow, on a bar at its driest, summed up by hand."""

from datetime import date
from fractions import Fraction

import pytest

from ledger.domain.material.skin_limits import FragranceIn, Limit, compare_limits


def limit(ppm: int, amendment: str | None = "51") -> Limit:
    """A limit for products that are rinsed off."""
    return Limit(ppm, "C-1", amendment, "9", date(2026, 3, 2))


def oil(name: str, mass_mg: int, own: Limit | None = None, **contains: int) -> FragranceIn:
    """So much of an oil, and what it contains in ppm."""
    return FragranceIn(name, mass_mg, own, contains)


@pytest.mark.parametrize(("mass_mg", "over"), [(29_999, False), (30_000, False), (30_001, True)])
def test_exactly_at_the_limit_is_within_it(mass_mg: int, over: bool) -> None:
    # 3 % of a bar mass of 1000 g is 30 g
    (found,) = compare_limits([oil("lavender", mass_mg, limit(30_000))], {}, driest_mg=1_000_000)
    assert found.share_ppm == mass_mg
    assert found.over is over


def test_it_is_the_driest_bar_that_counts() -> None:
    # 30 g in 1386 g of fresh dough is 2.16 %; in 1227 g at its driest 2.445 %, over a limit of 2.4 %.
    own = limit(24_000)
    assert not compare_limits([oil("lavender", 30_000, own)], {}, driest_mg=1_386_000)[0].over
    (found,) = compare_limits([oil("lavender", 30_000, own)], {}, driest_mg=1_227_000)
    assert float(found.share_ppm) == pytest.approx(24_450, abs=1)
    assert found.over


def test_a_constituent_is_summed_over_all_the_oils() -> None:
    # Citral: 10 g of lemongrass at 75 % is 7.5 g, 20 g of lemon at 2.5 % is 0.5 g: 8 g of 1000 g is 0.8 %, over 0.75 %,
    # which neither reaches alone. Linalool: 20 g at 1 % is 0.2 g, 0.02 %, within 0.02 %. Limonene has no limit.
    found = compare_limits(
        [
            oil("lemongrass", 10_000, limit(20_000), Citral=750_000),
            oil("lemon", 20_000, limit(20_000), Citral=25_000, Linalool=10_000, Limonene=650_000),
        ],
        {"citral": limit(7_500), "linalool": limit(200), "eugenol": limit(1)},
        driest_mg=1_000_000,
    )
    assert [(one.name, one.share_ppm, one.over) for one in found] == [
        ("lemongrass", 10_000, False),
        ("lemon", 20_000, False),
        ("citral", 8_000, True),
        ("linalool", 200, False),
    ]


def test_less_than_a_millionth_part_above_the_limit_is_over() -> None:
    # 10 001 mg at 75 % is 7500.75 mg in 1000 g: 7500.75 ppm against 7500, and no rounding hides it.
    found = compare_limits([oil("x", 10_001, None, Citral=750_000)], {"Citral": limit(7_500)}, driest_mg=1_000_000)
    assert found[1].share_ppm == Fraction("7500.75")
    assert found[1].over


def test_one_oil_on_two_lines_is_one_oil() -> None:
    # 20 + 15 g of 1000 g: 3.5 %, over 3 %
    twice = [oil("lavender", 20_000, limit(30_000)), oil("lavender", 15_000, limit(30_000))]
    (found,) = compare_limits(twice, {}, driest_mg=1_000_000)
    assert (found.share_ppm, found.over) == (35_000, True)


def test_an_oil_without_a_certificate_is_named_and_not_judged() -> None:
    (found,) = compare_limits([oil("rose", 90_000)], {}, driest_mg=100_000)
    assert (found.limit, found.over) == (None, False)


def test_the_source_names_certificate_amendment_and_category() -> None:
    assert limit(1).source == "certificate C-1, amendment 51, category 9"
    assert limit(1, None).source == "certificate C-1, category 9"
