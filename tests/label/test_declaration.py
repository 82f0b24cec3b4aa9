"""The declaration of ingredients: order, merging, and nothing lost."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.label.declaration import Floats, Naming, Part, declare, floats

NAMES = ["OLEA EUROPAEA FRUIT OIL", "AQUA", "COCOS NUCIFERA OIL", "KAOLIN", "CI 77491", "LAVANDULA ANGUSTIFOLIA OIL"]
parts = st.lists(
    st.builds(Part, st.sampled_from(NAMES), st.integers(1, 10**6), st.just("fat"), st.sampled_from(["L1-X", "L2-8"])),
    min_size=1,
    max_size=20,
)


def test_equal_names_merge_whatever_their_capitals_and_spaces() -> None:
    declared = declare([Part("Cocos  nucifera oil", 100, "fat", "L1-X"), Part("COCOS NUCIFERA OIL", 50, "fat", "L2-8")])
    assert [(one.inci, one.mass_mg, one.lots) for one in declared] == [("COCOS NUCIFERA OIL", 150, ("L1-X", "L2-8"))]


def test_colour_index_numbers_stand_last_and_water_by_the_word_of_the_market() -> None:
    declared = declare(
        [Part("CI 77491", 900, "colourant", "L1-X"), Part("AQUA", 5, "liquid", "L2-8")], Naming(aqua="WATER")
    )
    assert [one.inci for one in declared] == ["WATER", "CI 77491"]


@pytest.mark.parametrize(("rule", "last"), [("below 1 %", 9_999), ("not more than 1 %", 10_000), ("none", None)])
def test_what_may_follow_in_any_order(rule: Floats, last: int | None) -> None:
    """1 % of 1 kg is 10 g."""
    found = [mass for mass in (1, 9_999, 10_000, 10_001) if floats(mass, 1_000_000, rule)]
    assert found == [mass for mass in (1, 9_999, 10_000) if last is not None and mass <= last]


@given(parts)
def test_the_order_never_rises_and_the_masses_add_up(given_parts: list[Part]) -> None:
    declared = declare(given_parts)
    plain = [one.mass_mg for one in declared if not one.inci.startswith("CI ")]
    assert plain == sorted(plain, reverse=True)
    assert sum(one.mass_mg for one in declared) == sum(part.mass_mg for part in given_parts)
