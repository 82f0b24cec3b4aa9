"""Which published material a word means, what a name calls a material, and whose INCI name it takes."""

from collections import Counter
from typing import Any

import pytest

from ledger.operations.material.materials import MaterialFacts, started_from
from ledger.reference.find import called, find_reference, published
from ledger.reference.plausible import sap_doubt


@pytest.mark.parametrize(
    ("said", "key"),
    [
        ("canola", "rapeseed"), ("canola oil", "rapeseed"), ("corn", "maize"), ("corn oil", "maize"),
        ("sweet almond", "almond"), ("Sweet Almond Oil", "almond"), ("linseed", "flaxseed"), ("soybean oil", "soya"),
        ("groundnut", "peanut"), ("beef tallow", "tallow"), ("pork lard", "lard"), ("karite", "shea"),
        ("MCT", "fractionated coconut"), ("coconut", "coconut"), ("soy wax", "hydrogenated soya"),
        ("ghee", "milk fat"), ("butter", "milk fat"), ("milk", "cow milk"), ("cocoa butter", "cocoa butter"),
        ("argan", "argan"), ("neem oil", "neem"), ("lanolin", "lanolin"), ("wool fat", "lanolin"),
        ("rose hip", "rosehip"), ("baking soda", "sodium bicarbonate"), ("vinegar", "acetic acid"),
        ("stearic acid", "stearic acid"), ("caustic soda", "sodium hydroxide"), ("lye", "sodium hydroxide"),
    ],
)  # fmt: skip
def test_what_people_call_it_finds_it(said: str, key: str) -> None:
    assert find_reference(said).key == key


def test_no_name_means_two_materials() -> None:
    names = Counter(
        word.casefold()
        for one in published().values()
        for word in {one.key.casefold(), *map(str.casefold, one.aliases)}
    )
    assert [name for name, times in names.items() if times > 1] == []


@pytest.mark.parametrize(
    ("name", "keys"),
    [
        ("olive oil", {"olive"}), ("organic EVOO", {"olive"}), ("palm kernel oil", {"palm kernel"}),
        ("fractionated coconut oil", {"fractionated coconut"}), ("yogurt", set()), ("oat milk", set()),
        ("butter", {"milk fat"}), ("my best oil", set()), ("goat milk", {"goat milk"}),
    ],
)  # fmt: skip
def test_what_a_name_calls_a_material(name: str, keys: set[str]) -> None:
    assert called(name) == keys


@pytest.mark.parametrize(
    ("name", "like", "inci"),
    [
        ("yogurt", "goat milk", None), ("goat milk", "goat milk", "CAPRAE LAC"), ("oat milk", "milk", None),
        ("canola oil", "canola", "BRASSICA CAMPESTRIS SEED OIL"), ("argan oil", "argan", "ARGANIA SPINOSA KERNEL OIL"),
        ("palm kernel oil", "palm", None), ("flakes", "lye", "SODIUM HYDROXIDE"),
    ],
)  # fmt: skip
def test_a_near_guess_gives_its_figures_and_not_its_inci_name(name: str, like: str, inci: str | None) -> None:
    found = started_from(MaterialFacts(name), find_reference(like))
    assert found.inci == inci
    assert found.reference_key == find_reference(like).key


@pytest.mark.usefixtures("shop")
def test_an_inci_name_that_was_not_taken_is_said(run: Any) -> None:
    said = " ".join(run("material", "add", "yogurt", "--like", "goat milk").stdout.split())
    assert "The INCI name of goat milk was not taken, since yogurt is not called so." in said
    assert 'If it is the same: soapledger material edit yogurt --inci "CAPRAE LAC"' in said
    run("material", "edit", "yogurt", "--inci", "yogurt")
    assert "was not taken" not in run("material", "add", "canola oil", "--like", "canola").stdout


@pytest.mark.usefixtures("shop")
def test_a_material_called_like_another_is_asked_about(run: Any) -> None:
    words = ("material", "add", "fractionated coconut oil", "--like", "coconut")
    said = run(*words, input="n\n", code=1).stderr
    assert "is called like fractionated coconut (medium-chain triglycerides)" in said
    assert "starts from the figures of coconut" in said
    run(*words, "--yes")
    assert "COCOS NUCIFERA" not in run("material", "show", "fractionated-coconut-oil").stdout.replace("--inci", "")


def test_everything_there_is_can_be_listed(run: Any) -> None:
    said = run("material", "add", "--like", "?").stdout
    for one in published().values():
        assert f"  {one.key} " in said
    assert "canola; colza" in said
    assert "Write its name first" in run("material", "add", "--like", "olive", code=2).stderr


@pytest.mark.usefixtures("shop")
def test_what_standards_boil_for_hours_is_remarked(run: Any) -> None:
    said = " ".join(run("material", "add", "jojoba oil", "--like", "jojoba").stdout.split())
    assert "in cold process count on little of its alkali" in said


# Ph. Eur. 310-360 (from memory): 365 at the most for a name that says so, 275 for any other.
@pytest.mark.parametrize(
    ("name", "value", "doubted"),
    [("MCT oil", 365_000, False), ("MCT oil", 365_001, True), ("my oil", 275_000, False), ("my oil", 275_001, True)],
)
def test_only_medium_chains_have_so_high_a_value(name: str, value: int, doubted: bool) -> None:
    assert bool(sap_doubt(name, None, value, value)) is doubted


# 56.105 / 200.32 = 280.1 mg KOH per g of lauric acid: as a triglyceride it would be 263.4, over 5 % away.
def test_a_free_acid_is_held_against_its_own_molar_mass() -> None:
    assert sap_doubt("lauric acid", "lauric acid", 280_100, 280_100) is None
