"""Allergens summed exactly, and the border of 0.01 % in a rinse-off product."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.material.allergens import Holds, ListedAs, allergens_in
from ledger.reference.allergens import allergen_named, allergens


def entry(name: str) -> ListedAs | None:
    """The long list."""
    found = allergen_named(name)
    return ListedAs(found.name, not found.prohibited, found.prohibited) if found else None


def answer(*parts: Holds, driest_mg: int = 1_000_000):  # type: ignore[no-untyped-def]
    """By the long list, without the oils themselves."""
    return allergens_in(parts, entry_of=entry, entry_of_oil=lambda _: None, driest_mg=driest_mg, threshold_ppm=100)


def holds(mass_mg: int, **contains: int) -> Holds:
    """So much of an oil that holds so many ppm."""
    return Holds("an oil", "L1-X", "", mass_mg, {name.replace("_", "-"): ppm for name, ppm in contains.items()}, True)


def test_a_share_at_the_threshold_is_not_declared_and_one_above_is() -> None:
    # in 1000 g: 0.1000 g linalool is 0.0100 %, 0.1010 g is 0.0101 % ("exceeds", Regulation (EU) 2023/1545)
    assert answer(holds(100, Linalool=1_000_000)).declared == ()
    assert answer(holds(101, Linalool=1_000_000)).declared == ("Linalool",)


# Leave-on 0.001 %, rinse-off 0.01 % (Regulation (EU) 2023/1545): of 1000 g that is 0.01 g and 0.1 g. A tenth of an oil
# is linalool: 0.1 g and 1 g of it. A grain is one part per million of the oil: 0.1 mg of 1000 g at the most.
@pytest.mark.parametrize(("threshold_ppm", "oil_mg"), [(10, 100), (100, 1_000)])
@pytest.mark.parametrize(("stated", "declared"), [(99_999, ()), (100_000, ()), (100_001, ("Linalool",))])
def test_a_declaration_worked_by_hand_at_the_threshold_and_a_grain_to_each_side(
    threshold_ppm: int, oil_mg: int, stated: int, declared: tuple[str, ...]
) -> None:
    found = allergens_in(
        [holds(oil_mg, Linalool=stated)],
        entry_of=entry,
        entry_of_oil=lambda _: None,
        driest_mg=1_000_000,
        threshold_ppm=threshold_ppm,
    )
    assert found.declared == declared
    assert found.found[0].share_ppm == Fraction(oil_mg * stated, 1_000_000)


# 0.02 % of 1000 g is 0.2 g: of an oil of which 20 % is isoeugenol, 1 g; a grain more of it is over (entry 73).
@pytest.mark.parametrize(("stated", "over"), [(199_999, False), (200_000, False), (200_001, True)])
def test_what_exceeds_the_maximum_is_over_and_what_equals_it_is_not(stated: int, over: bool) -> None:
    listed = ListedAs("Isoeugenol", True, False, Fraction(200))
    parts = [holds(1_000, isoeugenol=stated)]
    found = allergens_in(
        parts, entry_of=lambda _: listed, entry_of_oil=lambda _: None, driest_mg=1_000_000, threshold_ppm=100
    )
    assert found.found[0].over is over


def test_a_natural_oil_is_named_beside_its_constituents() -> None:
    # 1 g of lavender oil with 30 % linalool in 1000 g: 0.1 % of the oil itself, 0.03 % of linalool
    oil = Holds("lavender", "L1-X", "LAVANDULA ANGUSTIFOLIA OIL", 1_000, {"Linalool": 300_000}, True)
    found = allergens_in([oil], entry_of=entry, entry_of_oil=entry, driest_mg=1_000_000, threshold_ppm=100)
    assert [(one.name, one.share_ppm) for one in found.found] == [("Lavandula Oil/Extract", 1_000), ("Linalool", 300)]
    assert found.declared == ("Lavandula Oil/Extract", "Linalool")


def test_a_name_not_known_of_which_there_is_none_is_not_asked() -> None:
    assert answer(holds(100, eucalyptol=0)).unknown == ()
    assert len(answer(holds(100, eucalyptol=1)).unknown) == 1


def test_three_percent_of_an_oil_holding_thirty_percent_is_0_9_percent() -> None:
    found = answer(holds(30_000, Linalool=300_000)).found[0]
    assert found.share_ppm == 9_000


def test_members_of_a_group_are_summed_under_its_one_name() -> None:
    found = answer(holds(60, alpha_pinene=1_000_000), holds(60, beta_pinene=1_000_000))
    assert found.declared == ("Pinene",)  # 0.006 % each, 0.012 % together
    assert answer(holds(60, neral=1_000_000), holds(60, geranial=1_000_000)).declared == ("Citral",)


def test_a_natural_oil_that_is_an_entry_counts_with_all_its_mass() -> None:
    found = allergen_named("LAVANDULA ANGUSTIFOLIA OIL")
    assert found is not None
    assert found.name == "Lavandula Oil/Extract"


def test_what_is_prohibited_is_found_at_any_share_and_declared_never() -> None:
    found = answer(holds(1, Lilial=1_000))
    assert found.prohibited == ("Butylphenyl Methylpropional",)
    assert found.declared == ()


def test_an_oil_nobody_stated_is_named() -> None:
    silent = Holds("lavender oil", "L9-5", "", 30_000, None, True)
    assert answer(silent).no_statement == ("lavender oil, lot L9-5",)


def test_the_lists_hold_24_and_81_names() -> None:
    """Annex III: 24 of the first 26 are still allowed; 81 label names in all (Regulation (EU) 2023/1545)."""
    allowed = [one for one in allergens().values() if not one.prohibited]
    assert sum(one.first_list for one in allowed) == 24
    assert len(allowed) == 81


@given(st.lists(st.tuples(st.integers(1, 50_000), st.integers(1, 1_000_000)), min_size=1, max_size=6),
       st.integers(100_000, 5_000_000))  # fmt: skip
def test_declared_if_and_only_if_the_exact_sum_exceeds_the_threshold(parts: list[tuple[int, int]], driest: int) -> None:
    found = answer(*(holds(mass, Linalool=ppm) for mass, ppm in parts), driest_mg=driest)
    whole = sum(mass * ppm for mass, ppm in parts)  # mg x ppm
    assert (found.declared == ("Linalool",)) == (whole > 100 * driest)
