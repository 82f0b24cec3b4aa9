"""A recipe is printed from the ledger as it stands."""

from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader


@pytest.mark.usefixtures("shop")
def test_a_recipe_is_printed_with_its_lines_and_chart(run: Any, tmp_path: Path) -> None:
    said = run("recipe", "print", "plain-bar", "-o", "sheet.pdf", "--paper", "letter").stdout
    assert "Plain Bar, version 1, is sheet.pdf." in said
    (page,) = PdfReader(tmp_path / "sheet.pdf").pages
    text = page.extract_text()
    assert "Plain Bar" in text
    assert "600 g" in text
    assert "Lye into water" in text


@pytest.mark.usefixtures("shop")
def test_a_file_that_is_there_is_not_overwritten_unasked(run: Any, tmp_path: Path) -> None:
    (tmp_path / "sheet.pdf").write_text("hers")
    run("recipe", "print", "plain-bar", "-o", "sheet.pdf", code=2)
    assert (tmp_path / "sheet.pdf").read_text() == "hers"
    run("recipe", "print", "plain-bar", "-o", "sheet.pdf", "--force")
    assert (tmp_path / "sheet.pdf").read_bytes().startswith(b"%PDF")
