"""Her colour, her line, her picture: from the recipe and the settings onto the bar, and the same when printed again."""

import hashlib
from pathlib import Path

import pypdfium2
import pytest
import shop as worked
from commands_run import RUN

from ledger.storage.book import Book

WAVE = b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><circle cx="4" cy="4" r="4" fill="#124"/></svg>'
LOOKS = """
[label]
line = "From the slipway"
use = "For hands"
colour = "#5b6f4e"
picture = "wave.svg"
"""


def text(path: str) -> str:
    pages = pypdfium2.PdfDocument(path)
    return "\n".join(page.get_textpage().get_text_bounded() for page in pages)


@pytest.fixture
def batch(book: Book, monkeypatch: pytest.MonkeyPatch, frozen) -> str:
    """The worked shop, whose recipe tells how its label looks."""
    assert frozen
    monkeypatch.setattr(worked, "PLAIN_BAR", worked.PLAIN_BAR + LOOKS)
    return worked.work_a_shop(book).batch


def test_a_label_from_its_recipe_to_its_reprint(batch: str, run) -> None:
    missing = run("label", "try", batch, "--market", "eu", "-o", "try.pdf", code=1).stderr
    assert "names the picture 'wave.svg' for its label" in " ".join(missing.split())
    Path("wave.svg").write_bytes(WAVE)
    run("attach", "wave.svg", "--to", "plain-bar", "--kind", "photograph")
    run("init", "--web", "www.tidewrack.example", "--line", "Soap of the sea")

    said = run("label", "try", batch, "--market", "eu", "-o", "try.pdf").stdout
    assert said.startswith(f"Every layout with the label of batch {batch} is in try.pdf, at printing size;")
    assert "label try" in RUN
    assert " ".join(text("try.pdf").split()).count("From the slipway") == 9  # not on the smallest and the rounds
    run("label", "try", batch, "--market", "eu", "--black", "-o", "black.pdf")

    approved = run("label", "approve", batch, "--market", "eu").stdout
    for words in ("From the slipway", "For hands", "https://www.tidewrack.example", "wave.svg"):
        assert words in approved
    run("label", "print", batch, "--market", "eu", "--layout", "leaf-wrap", "--count", "2", "-o", "run.pdf")
    assert "Tidewrack Soaps" in text("run.pdf")
    run("label", "print", batch, "--market", "eu", "--black", "--price", "6.50", "--count", "2", "-o", "brown.pdf")

    run("label", "reprint", "1", "-o", "again.pdf")
    run("label", "reprint", "2", "-o", "brown-again.pdf")
    for first, again in (("run.pdf", "again.pdf"), ("brown.pdf", "brown-again.pdf")):
        assert hashlib.sha256(Path(first).read_bytes()).digest() == hashlib.sha256(Path(again).read_bytes()).digest()


@pytest.mark.parametrize(
    ("typed", "said"), [("soap", "is not a web address"), ("ftp://a.example", "write it like www.")]
)
def test_a_web_address_is_one(book: Book, run, typed: str, said: str) -> None:
    assert book
    assert said in " ".join(run("init", "--web", typed, code=2).stderr.split())
