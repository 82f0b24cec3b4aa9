"""Names in other scripts, pictures and signs of programs go through every paper and file, and are told at the input."""

from pathlib import Path
from typing import Any

import pytest

pytestmark = pytest.mark.usefixtures("frozen")


def test_what_will_not_print_is_told_in_one_line_when_it_is_booked(shop: Any, run: Any) -> None:
    told = (
        "No typeface here has 🧼 as [U+1F9FC], א as [U+05D0]: so it stands on papers, and a label with it is refused.\n"
    )
    assert run("supplier", "add", "🧼 א水 Oils", "--code", "odd").stderr == told
    assert run("customer", "add", "水谷 Москва Ωμέγα", "--shop", "--code", "mizu").stderr == ""
    for words in (
        ("customer", "add", "Ida", "--person", "--address", "🧼 Row"),
        ("material", "add", "🧼 oil", "--like", "olive", "--code", "soap-oil"),
        ("receive", "tarnlow", "--line", "olive oil; 1 kg; lot 🧼1; 2"),
        ("stall", "add", "Fair 🧼"),
        ("batch", "note", shop.batch, "smells of 🧼"),
    ):
        assert "has 🧼 as [U+1F9FC]" in run(*words).stderr
    assert run("supplier", "show", "odd").stderr == ""


def test_the_files_she_gives_are_told_of_too(shop: Any, run: Any, tmp_path: Path) -> None:  # noqa: ARG001
    from shop import PLAIN_BAR

    text = PLAIN_BAR.replace("plain-bar", "picture").replace("Plain Bar", "Bar 🧼")
    (tmp_path / "r.toml").write_text(text, encoding="utf-8")
    assert "has 🧼 as" in run("recipe", "add", "r.toml").stderr
    (tmp_path / "d.csv").write_text("material,quantity,lot\nolive oil,1 kg,🧼7\n", encoding="utf-8")
    assert "has 🧼 as" in run("receive", "tarnlow", "--csv", "d.csv").stderr


def test_a_long_note_without_a_space_fits_on_its_pages(shop: Any, run: Any, read: Any, tmp_path: Path) -> None:
    """A page holds some 60 lines of 40 ideographs; this takes more than one."""
    note = "".join(map(chr, range(0x4E00, 0x4E00 + 4000)))
    run("batch", "note", shop.batch, note)
    run("batch", "note", shop.batch, "x" * 4000)
    run("batch", "note", shop.batch, "🧼" * 2000)
    run("batch", "show", shop.batch, "-o", "record.pdf")
    drawn = read((tmp_path / "record.pdf").read_bytes())
    said = "".join(drawn.text(page) for page in range(len(drawn.pages)))
    found = [sign for sign in said if "\u4e00" <= sign <= "\u9fff"]
    assert found == list(note)
    assert said.count("[U+1F9FC]") == 2000
