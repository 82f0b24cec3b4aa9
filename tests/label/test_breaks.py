"""Compound words break by the joints that the words of their language give; ingredients, names and addresses never."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from ledger.documents.kit.layout import label_layout
from ledger.documents.label.labels import set_label
from ledger.domain.label.words import Words, breaks_in
from ledger.errors import BadInput, Refused
from ledger.reference.label_words import label_words
from ledger.reference.shipped import templates

LONG = "Überempfindlichkeitsreaktionen"
JOINTS = ("Überempfindlichkeits-reaktionen",)
TWICE = "Überempfindlichkeits-reaktionen-überempfindlichkeits-reaktionen"


@pytest.fixture
def lines(label: Any, tmp_path: Path) -> Callable[..., list[str]]:
    """What stands on the back of the small label, made 26 mm wide, line by line."""
    text = (templates() / "label-small.toml").read_text(encoding="utf-8")
    narrow = text.replace("width_mm = 39.0", "width_mm = 26.0")
    (tmp_path / "narrow.toml").write_text(narrow, encoding="utf-8")

    def set_(**more: Any) -> list[str]:
        view = replace(label, **{"ingredients": "AQUA", "origin": None, **more})
        _, filled = set_label(view, label_layout(str(tmp_path / "narrow.toml")))
        return [one.text for one in filled[1].lines]

    return set_


def test_a_word_too_long_for_its_line_goes_on_in_the_next_at_its_joint(lines: Callable[..., list[str]]) -> None:
    found = lines(precautions=(f"Meiden bei {LONG}!",), breaks=JOINTS)
    at = found.index("Überempfindlichkeits-")
    assert found[at + 1] == "reaktionen!"
    assert "-" not in "".join(lines(precautions=("Meiden bei Haut!",), breaks=JOINTS)).replace("26-118-0", "")


def test_without_a_joint_it_is_refused_and_so_is_an_ingredient(lines: Callable[..., list[str]]) -> None:
    wide = LONG + LONG.casefold()
    with pytest.raises(Refused, match=r"no room for the precautions: .* mm of width are missing"):
        lines(precautions=(wide,))
    assert lines(precautions=(wide,), breaks=(TWICE,))
    with pytest.raises(Refused, match="no room for the ingredients"):
        lines(ingredients=wide.upper(), breaks=(TWICE,))
    with pytest.raises(Refused, match="no room for the responsible person"):
        lines(responsible_name=wide, breaks=(TWICE,))


def test_only_the_words_that_stand_on_it_are_kept_with_a_label() -> None:
    german = Words("de", breaks=("Haut-reizungen", "Kern-seife"))
    assert breaks_in([german], ("Soap", "Bei (Hautreizungen): absetzen.")) == ("Haut-reizungen",)
    assert breaks_in([], ("Hautreizungen",)) == ()


def test_the_german_words_have_joints_that_leave_whole_words() -> None:
    (german,) = label_words("de")
    assert "Haut-reizungen" in german.breaks
    for one in german.breaks:
        assert one.count("-") == 1
        assert one.partition("-")[2][:1].islower()


@pytest.mark.parametrize("wrong", ["Hautreizungen", "-Haut", "Haut-", "H-aut", "Haut reizung"])
def test_a_word_without_a_joint_is_one_clear_line(tmp_path: Path, wrong: str) -> None:
    text = (templates() / "words-fr.toml").read_text(encoding="utf-8")
    mine = text.replace('batch = "Lot"', f'batch = "Lot"\nbreaks = ["{wrong}"]')
    (tmp_path / "words-fr.toml").write_text(mine, encoding="utf-8")
    with pytest.raises(BadInput, match=f"breaks are words with a hyphen at each joint, .* not '{wrong}'"):
        label_words("fr", tmp_path)
