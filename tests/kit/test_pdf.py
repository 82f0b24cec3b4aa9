"""Every paper is a sound file: its faces stand in it, and it says what it is, whose, and in which language."""

import ast
import io
import shutil
import subprocess
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader
from pypdf.generic import DictionaryObject

import ledger
from ledger.documents.bench.worksheet import draw_worksheet
from ledger.documents.kit.layout import label_layout, sheet_layout
from ledger.documents.kit.places import draw_test_sheet
from ledger.documents.label.labels import draw_labels
from ledger.documents.label.tries import draw_tries
from ledger.documents.recall.recall_report import draw_recall
from ledger.documents.recipe.recipe_sheet import draw_recipe_sheet
from ledger.documents.record.batch_record import draw_batch_record
from ledger.reference.cautions import cautions

BUSINESS = "Tidewrack Soaps"


def cards(layout: str, sheet: str) -> Callable[[Any], bytes]:
    """Draw something of a layout on a sheet."""
    return lambda view: draw_labels(view, label_layout(layout), sheet_layout(sheet), count=2, business=BUSINESS)


# What is drawn of which finished view of tests/papers.py, and words its title must hold.
PAPERS: dict[str, tuple[str | None, Callable[[Any], bytes], str]] = {
    "labels, small": ("label", cards("small", "a4-24"), "Labels 26-118-0 eu"),
    "labels, band": ("label", cards("band", "letter-5"), "Labels 26-118-0 eu"),
    "labels, wrap with a code": ("label", cards("wrap", "a4-2"), "Labels 26-118-0 eu"),
    "labels, round": ("label", cards("round", "a4-6-tag"), "Labels 26-118-0 eu"),
    "labels to choose from": (
        "label",
        lambda view: draw_tries(view, paper="A4", business=BUSINESS),
        "Labels to choose from, 26-118-0",
    ),
    "notice": ("label", cards("notice-shelf", "a4-2"), "Labels 26-118-0 eu"),
    "ticket": ("ticket", cards("ticket-price", "a4-24"), "Price tickets"),
    "rack": ("rack", cards("card-rack", "a4-8"), "Rack card 26-118-0"),
    "jar": ("jar", cards("lot-jar", "a4-24"), "Lot labels"),
    "drum": ("jar", cards("lot-drum", "a4-8"), "Lot labels"),
    "try sheet": (None, lambda _: draw_test_sheet(sheet_layout("a4-24"), business=BUSINESS), "Test of"),
    "worksheet": ("sheet", lambda view: draw_worksheet(view, cautions=cautions()), "Worksheet Batch 26-118-0"),
    "record": ("record", draw_batch_record, "Batch record Batch 26-118-0"),
    "recall": ("answer", draw_recall, "Recall report Recall"),
    "recipe": ("recipe", lambda view: draw_recipe_sheet(view, cautions=cautions()), "Recipe"),
}


@pytest.fixture(scope="module")
def papers() -> dict[str, bytes]:
    """What was drawn of them already."""
    return {}


@pytest.fixture(params=list(PAPERS))
def paper(request: pytest.FixtureRequest, papers: dict[str, bytes]) -> tuple[bytes, str]:
    """One paper of every kind, and what its title must hold."""
    view, draw, title = PAPERS[request.param]
    if request.param not in papers:
        papers[request.param] = draw(request.getfixturevalue(view) if view else None)
    return papers[request.param], title


def fonts(resources: DictionaryObject) -> Iterator[DictionaryObject]:
    """Every font a page declares, and every form in it, however deep."""
    for one in resources.get("/Font", {}).values():
        yield one.get_object()
    for one in resources.get("/XObject", {}).values():
        yield from fonts(one.get_object().get("/Resources", DictionaryObject()))


def test_every_face_that_is_declared_stands_in_the_file(paper: tuple[bytes, str]) -> None:
    found = [font for page in PdfReader(io.BytesIO(paper[0])).pages for font in fonts(page["/Resources"])]
    assert found
    for font in found:
        assert "/FontFile2" in font["/FontDescriptor"], font["/BaseFont"]


def test_a_file_says_what_it_is_whose_and_in_which_language(paper: tuple[bytes, str]) -> None:
    data, title = paper
    file = PdfReader(io.BytesIO(data))
    assert file.metadata is not None
    assert file.metadata.title.startswith(title)
    assert file.metadata.author == BUSINESS
    assert file.metadata.subject not in ("", "unspecified")
    assert file.metadata.creator == "soapledger"
    assert file.trailer["/Root"]["/Lang"] == "en"


@pytest.mark.parametrize(("languages", "said"), [("", "en"), ("de", "de"), ("en fr", "en"), ("fr en", "fr")])
def test_a_label_is_read_aloud_in_its_own_language(label: Any, languages: str, said: str) -> None:
    view = replace(label, languages=languages)
    for data in (cards("small", "a4-24")(view), draw_tries(view, paper="A4")):
        assert PdfReader(io.BytesIO(data)).trailer["/Root"]["/Lang"] == said


def test_another_program_finds_no_fault_in_a_file(paper: tuple[bytes, str], tmp_path: Path) -> None:
    if shutil.which("qpdf") is None:
        pytest.skip("qpdf is not here")
    (tmp_path / "paper.pdf").write_bytes(paper[0])
    assert subprocess.run(["qpdf", "--check", tmp_path / "paper.pdf"], check=False).returncode == 0


def test_the_second_face_stands_in_the_file_too(sheet: Any) -> None:
    data = draw_worksheet(replace(sheet, product="石鹸"), cautions=cautions())
    found = [font for page in PdfReader(io.BytesIO(data)).pages for font in fonts(page["/Resources"])]
    assert any("MicroHei" in font["/BaseFont"] for font in found)
    assert all("/FontFile2" in font["/FontDescriptor"] for font in found)


def test_no_other_file_begins_a_pdf() -> None:
    """What is begun elsewhere would declare reportlab's own first face and no one's name."""
    folder = Path(ledger.__file__).parent / "documents"
    begun = {
        path.relative_to(folder).as_posix()
        for path in folder.rglob("*.py")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Call) and getattr(node.func, "id", "") in ("Canvas", "BaseDocTemplate")
    }
    assert begun == {"kit/pdf.py", "kit/page.py"}
