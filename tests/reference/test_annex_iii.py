"""Our list of Annex III held against two public copies of it, row by row; every shipped row has its source."""

import csv
from pathlib import Path

import pytest

from ledger.markets import laws
from ledger.reference import allergens as table
from ledger.reference.allergens import allergen_named, allergens, entry_limits, is_cas_number

HERE, SHIPPED = Path(__file__).parent, Path(table.__file__).parent
# In two entries each, or for another plant as well (read in the copies and the inventory), so no name by itself.
TELLS_NOTHING = {"72968-50-4", "8028-48-6", "84649-98-9", "8000-48-4"}
# The first copy gives these entries a second number that the other one lacks.
ONE_COPY_MORE = {"Evernia Prunastri Extract": "68917-10-2", "Evernia Furfuracea Extract": "68648-41-9"}


def rows(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def numbers(text: str) -> set[str]:
    return {one.strip() for one in text.split(";") if one.strip()}


OURS = {row["name"]: row for row in rows(SHIPPED / "allergens.csv")}
FIRST, SECOND = rows(HERE / "annex_iii.csv"), rows(HERE / "annex_iii_transcribed.csv")


def test_names_numbers_and_entries_are_those_of_the_first_copy() -> None:
    assert len(FIRST) == 83  # 81 label names, and the two that are prohibited since
    for row in FIRST:
        ours = OURS[row["name"]]
        assert numbers(ours["cas"]) == numbers(row["cas"]), row["name"]
        assert ours["first_list"] == row["first_26"], row["name"]
        assert (ours["prohibited"] == "yes") == ("now prohibited" in row["entry"]), row["name"]
        if ours["prohibited"] == "no":
            assert ours["entry"] == row["entry"]
        else:  # "(was III/83; now prohibited, Annex II)"
            assert f"was {row['entry'].removeprefix('(was ').partition(';')[0]}" in ours["entry"]
    assert all(OURS[name]["prohibited"] == "yes" for name in OURS.keys() - {row["name"] for row in FIRST})


def test_every_name_and_number_of_the_second_copy_is_read_as_its_entry() -> None:
    assert len(SECOND) == 244
    for row in SECOND:
        found = allergen_named(row["written"])
        if row["written"] in TELLS_NOTHING:
            assert found is None, row["written"]
        else:
            assert found is not None, row["written"]
            assert found.name == row["name"], row["written"]
            assert found.entry.partition(" ")[0] in row["entry"], row["written"]


def test_the_numbers_of_the_second_copy_are_all_of_its_entries() -> None:
    copied: dict[str, set[str]] = {}
    for row in SECOND:
        if is_cas_number(row["written"]):
            copied.setdefault(row["name"], set()).add(row["written"])
    assert len(copied) == 60  # the rest are natural materials, which it names in INCI
    for name, found in copied.items():
        ours = numbers(OURS[name]["cas"])
        assert ours - found == ({ONE_COPY_MORE[name]} if name in ONE_COPY_MORE else set()), name
        assert found <= ours, name


def test_no_entry_that_was_struck_out_or_repealed_is_revived() -> None:
    """Struck out 68, 79, 83; repealed by Regulation (EU) 2023/1545 (read in a secondary text)."""
    gone = {f"III/{number}" for number in (68, 79, 83, 125, 126, 158, 160, 161, 162, 163, 165, 167, 168)}
    assert not gone & {one.entry for one in allergens().values()}


# Maxima in the finished product in percent, and peroxide values in mmol/L, by entry (consolidated Annex III, as
# transcribed: read in a secondary text; that of 324 from memory).
LIMITS = {
    "III/72": ("maximum", "1"), "III/73": ("maximum", "0.02"), "III/89": ("maximum", "0.01"),
    "III/157": ("maximum", "0.02"), "III/175": ("maximum", "0.01"), "III/196": ("maximum", "0.2"),
    "III/154": ("maximum", "0.4"), "III/324": ("maximum", "0.06"), "III/88": ("peroxide", "20"),
    "III/109": ("peroxide", "10"), "III/114": ("peroxide", "10"), "III/122": ("peroxide", "10"),
    "III/124": ("peroxide", "10"), "III/131": ("peroxide", "10"), "III/133": ("peroxide", "10"),
    "III/371": ("peroxide", "10"), "III/91": ("free of", "0"), "III/92": ("free of", "0"),
    "III/46": ("oral", "0"), "III/45": ("preserving", "0"),
}  # fmt: skip


def test_the_limits_are_those_of_the_copy_and_stand_with_their_entry() -> None:
    found = {one.entry: (one.kind, f"{float(one.figure or 0):g}") for one in entry_limits().values()}
    assert found == LIMITS
    for one in entry_limits().values():
        assert allergens()[one.name.casefold()].entry == one.entry
        assert one.read == (one.entry != "III/324")
    assert entry_limits()["Isoeugenol"].maximum_ppm == 200  # 0.02 % of a million
    assert entry_limits()["Limonene"].maximum_ppm is None


def test_limits_hold_where_prohibitions_are_known() -> None:
    for law in laws():
        for one in law.allergens:
            assert bool(one.limits) == bool(one.bans), law.code


@pytest.mark.parametrize("path", sorted(SHIPPED.glob("*.csv")), ids=lambda path: path.name)
def test_every_shipped_row_has_its_source_and_status(path: Path) -> None:
    ways = ("read", "memory", "from memory, unverified", "computed")
    found = rows(path)
    assert found
    assert [row for row in found if not row["source"].strip() or not row["status"].startswith(ways)] == []
