"""A thing is found by its code, its name or a start that fits only one; else the near ones are named."""

import pytest

from ledger.errors import BadInput
from ledger.units.names import match_name, near

NAMES = [
    ("olive-oil", "Olive oil"),
    ("olive-pomace", "Olive pomace oil"),
    ("coconut-oil", "Coconut oil"),
    ("rape", "Rapeseed oil"),
    ("rapeseed-meal", "Rape"),
]


def found(text: str) -> str:
    """The code of the material meant."""
    return match_name(text, NAMES, noun="material", add="soapledger material add NAME")


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("olive-oil", "olive-oil"),
        ("OLIVE-OIL", "olive-oil"),
        ("Coconut Oil", "coconut-oil"),
        (" coco ", "coconut-oil"),
        ("pom", "olive-pomace"),  # the start of a word within the name
        ("rape", "rape"),  # a code wins over the same name
    ],
)
def test_a_name_is_found(text: str, code: str) -> None:
    assert found(text) == code


@pytest.mark.parametrize(
    ("text", "code"), [("zofie", "person-1"), ("zof", "person-1"), ("aegir", "person-2"), ("strassner", "person-3")]
)
def test_a_name_is_found_without_the_accents_that_a_keyboard_lacks(text: str, code: str) -> None:
    people = [("person-1", "Žofie Dvořák"), ("person-2", "Ægir Þórsson"), ("person-3", "Straßner"), ("ann", "Ann")]
    assert match_name(text, people, noun="customer", add="") == code


def test_an_accent_that_was_typed_counts() -> None:
    with pytest.raises(BadInput, match="No customer is called 'Zófie'"):
        match_name("Zófie", [("person-1", "Žofie")], noun="customer", add="")


def test_what_could_be_several_lists_them() -> None:
    with pytest.raises(BadInput) as refused:
        found("olive")
    assert str(refused.value) == (
        "'olive' could be any of these materials: olive-oil (Olive oil), olive-pomace (Olive pomace oil). "
        "Write its short name."
    )


def test_an_unknown_name_is_answered_with_near_ones_and_how_to_add_it() -> None:
    with pytest.raises(BadInput) as refused:
        found("cocnut oil")
    assert str(refused.value).startswith("No material is called 'cocnut oil'. Did you mean Coconut oil")
    assert str(refused.value).endswith("To add one: soapledger material add NAME")


def test_a_name_like_no_other_gets_no_guess() -> None:
    for text in ("zzz", ""):
        with pytest.raises(BadInput) as refused:
            found(text)
        assert "Did you mean" not in str(refused.value)


def test_near_words_come_nearest_first_and_keep_their_capitals() -> None:
    assert near("OLIV OIL", ["Coconut oil", "Olive oil"], 1) == ["Olive oil"]
    assert near("zzz", ["Olive oil"]) == []
    assert len(near("oil", ["oila", "oilb", "oilc", "oild"], 2)) == 2
