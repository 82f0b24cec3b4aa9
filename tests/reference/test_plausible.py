"""Which purities and saponification values are asked about twice, at each limit and a grain to either side."""

import pytest

from ledger.reference.plausible import possible_sap, purity_doubt
from ledger.reference.tables import fats


@pytest.mark.parametrize(
    ("kind", "low_ppm", "high_ppm", "doubted"),
    [
        # NaOH of 95 to 100 %, KOH of 83 to 96 %
        ("NaOH", 949_999, None, True),
        ("NaOH", 950_000, None, False),
        ("NaOH", 1_000_000, None, False),
        ("KOH", 829_999, None, True),
        ("KOH", 830_000, None, False),
        ("KOH", 960_000, None, False),
        ("KOH", 960_001, None, True),
        # a range as wide as 6 points, and a grain wider
        ("KOH", 850_000, 910_000, False),
        ("KOH", 850_000, 910_001, True),
    ],
)
def test_a_purity_at_its_limit_is_ordinary(kind: str, low_ppm: int, high_ppm: int | None, doubted: bool) -> None:
    assert (purity_doubt("lye", kind, low_ppm, high_ppm) is not None) is doubted


@pytest.mark.parametrize(
    ("low", "high", "possible"),
    [(39_999, 60_000, False), (40_000, 60_000, True), (300_000, 400_000, True), (300_000, 400_001, False)],
)
def test_a_value_from_40_to_400_is_one_a_fat_can_have(low: int, high: int, possible: bool) -> None:
    assert possible_sap(low, high) is possible


def test_published_ranges_stand_as_published() -> None:
    """Codex CXS 210-1999, table 2: coconut 248-265, babassu 245-256, in mg KOH per g."""
    found = {key: (fats()[key].sap_low_mg_per_kg, fats()[key].sap_high_mg_per_kg) for key in ("coconut", "babassu")}
    assert found == {"coconut": (248_000, 265_000), "babassu": (245_000, 256_000)}
