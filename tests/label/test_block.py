"""The law's text as a block of outlines: measured in the file, and drawn like the same words in type."""

import io
import re
from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from PIL import ImageChops
from pypdf import PdfReader
from reportlab.lib.units import mm

from ledger.documents.kit.fonts import BOLD, MEDIUM, REGULAR
from ledger.documents.kit.pdf import About, new_canvas
from ledger.documents.label.block import block_pdf, block_svg, set_block
from ledger.documents.label.outlines import outline
from ledger.errors import Refused

SVG = "{http://www.w3.org/2000/svg}"


def boxes(data: bytes) -> list[tuple[float, float, float, float]]:
    """Left, top, right and foot of every path; of these letters every point lies within its curve's own corners."""
    found = []
    for path in ElementTree.fromstring(data).iter(f"{SVG}path"):
        numbers = [float(one) for one in re.findall(r"-?\d+\.\d+", path.get("d", ""))]
        found.append((min(numbers[::2]), min(numbers[1::2]), max(numbers[::2]), max(numbers[1::2])))
    return found


def test_the_letters_are_as_high_as_asked_and_a_twentieth_higher(label: Any) -> None:
    """Directive 76/211/EEC: figures of 3 mm for 100 g, drawn at 3.15; the house minimum of 1.2 mm at 1.26."""
    view = replace(label, function="zxz", net_quantity="111", best_before="zzz", figure_height_mm=3)
    found = boxes(block_svg(set_block(view, width_mm=60, says="", business="")))
    heights = [round(foot - top, 2) for _, top, _, foot in found]
    assert heights[0] == pytest.approx(1.26, abs=0.011)
    assert heights[-3:-1] == [pytest.approx(3.15, abs=0.011), pytest.approx(1.26, abs=0.011)]


@pytest.mark.parametrize("width", [20, 60, 300])
def test_nothing_lies_beyond_the_block_and_no_lines_touch(label: Any, width: int) -> None:
    block = set_block(
        replace(label, precautions=("Avoid contact with eyes, ÅÇĘ.",)), width_mm=width, says="", business=""
    )
    data = block_svg(block)
    root, found = ElementTree.fromstring(data), boxes(data)
    assert root.get("width") == f"{width}mm"
    assert root.get("viewBox") == f"0 0 {width} {float(root.get('height', '').removesuffix('mm')):g}"
    for left, top, right, foot in found:
        assert left >= 0
        assert right <= width
        assert top >= 0
        assert foot <= block.high / mm
    for before, after in pairwise(found):
        assert before[3] <= after[1]


def test_a_block_has_no_text_to_be_set_and_says_in_words_what_it_is(label: Any) -> None:
    data = block_svg(set_block(label, width_mm=60, says="Text 9f, approved by Nuala <&>", business="Tidewrack"))
    root = ElementTree.fromstring(data)
    assert {one.tag.removeprefix(SVG) for one in root.iter()} == {"svg", "title", "desc", "g", "path"}
    said = root.findtext(f"{SVG}desc") or ""
    assert said.startswith("Text 9f, approved by Nuala <&>\n")
    for words in (label.ingredients, label.best_before, "Batch 26-118-0", "100 g", label.responsible_address):
        assert words in said


def test_for_bands_what_changes_with_every_batch_is_left_out(label: Any) -> None:
    words = set_block(label, width_mm=60, says="", business="", bands=True).words
    assert label.ingredients in words
    assert "26-118-0" not in words
    assert "100 g" not in words
    assert label.best_before not in words


def test_the_outlines_cover_what_the_face_itself_draws(read: Callable[[bytes], Any]) -> None:
    """Every printed letter of Western and Central Europe, in each weight, beside the same letters set in type."""
    signs = "".join(chr(code) for code in (*range(33, 127), *range(0xA1, 0xAD), *range(0xAE, 0x180)))
    for face in (REGULAR, MEDIUM, BOLD):
        pages = []
        for outlined in (False, True):
            out = io.BytesIO()
            canvas = new_canvas(out, (700, 700), About("", "", ""))
            for index, sign in enumerate(signs):
                x, y = 10 + index % 20 * 34, 660 - index // 20 * 40
                canvas.setFont(face, 24)
                if not outlined:
                    canvas.drawString(x, y, sign)
                    continue
                path, here = canvas.beginPath(), (0.0, 0.0)
                for kind, points in outline(sign, face):
                    at = [(x + 0.024 * px, y + 0.024 * py) for px, py in points]
                    if kind == "M":
                        path.moveTo(*at[0])
                    elif kind == "L":
                        path.lineTo(*at[0])
                    elif kind == "Q":
                        (x0, y0), (cx, cy), (x1, y1) = here, *at
                        path.curveTo((x0 + 2 * cx) / 3, (y0 + 2 * cy) / 3, (x1 + 2 * cx) / 3, (y1 + 2 * cy) / 3, x1, y1)
                    else:
                        path.close()
                    here = at[-1] if at else here
                canvas.drawPath(path, stroke=0, fill=1, fillMode=1)
            canvas.showPage()
            canvas.save()
            pages.append(read(out.getvalue()).image(scale=3).convert("L"))
        apart = ImageChops.difference(*pages).point(lambda shade: 255 * (shade > 128))
        assert apart.getbbox() is None


def test_the_pdf_declares_no_face_and_is_as_large_as_the_block(label: Any) -> None:
    block = set_block(label, width_mm=60, says="Text 9f", business="Tidewrack")
    file = PdfReader(io.BytesIO(block_pdf(block)))
    (page,) = file.pages
    assert not page["/Resources"]["/Font"]
    assert float(page.mediabox[2]) == pytest.approx(60 * mm, abs=0.01)
    assert float(page.mediabox[3]) == pytest.approx(block.high, abs=0.01)
    assert page.extract_text() == ""
    assert file.metadata is not None
    assert file.metadata.subject == "Text 9f"


def test_a_word_wider_than_the_block_is_refused(label: Any) -> None:
    with pytest.raises(Refused, match=r"no room for the function.*Take a wider block \(--width\)"):
        set_block(replace(label, function="Seife" * 10), width_mm=20, says="", business="")


@pytest.mark.usefixtures("frozen")
def test_only_an_approved_text_is_written_and_a_draft_is_marked(shop: Any, run: Any) -> None:
    words = ("label", "block", shop.batch, "--market", "eu")
    assert "Nobody approved what this label says yet" in run(*words, "-o", "block.svg", code=1).stderr
    assert not Path("block.svg").exists()
    assert "DRAFT" in run(*words, "-o", "draft.svg", "--draft").stdout
    draft = ElementTree.parse("draft.svg").getroot().findtext(f"{SVG}desc") or ""
    assert draft.startswith("DRAFT, not for sale: nobody approved it\nDRAFT, not for sale\n")
    run("label", "approve", shop.batch, "--market", "eu")
    said = " ".join(run(*words, "-o", "block.svg").stdout.split())
    assert re.search(r"Text [0-9a-f]{64}, approved by Nuala on 1 Jun 2026 for eu\.", said)
    assert "DRAFT" not in Path("block.svg").read_text(encoding="utf-8")
    run(*words, "-o", "block.pdf", "--width", "20 mm")
    assert "Nobody approved" in run("label", "block", shop.batch, "--market", "gb", "-o", "gb.svg", code=1).stderr


@pytest.mark.parametrize(
    ("more", "said"),
    [
        (("-o", "block.png"), "block.png is neither .svg nor .pdf"),
        (("-o", "block.svg", "--width", "19.9 mm"), "write --width from 20 mm to 300 mm"),
        (("-o", "block.svg", "--width", "300.1 mm"), "write --width from 20 mm to 300 mm"),
    ],
)
@pytest.mark.usefixtures("frozen")
def test_what_cannot_be_written_is_said_in_a_line(shop: Any, run: Any, more: tuple[str, ...], said: str) -> None:
    refused = run("label", "block", shop.batch, "--market", "eu", *more, code=2).stderr
    assert said in " ".join(refused.split())


@pytest.mark.usefixtures("frozen")
def test_where_the_height_goes_by_the_panel_the_panel_is_asked_for(shop: Any, run: Any) -> None:
    run("init", "--market", "us=Nuala Quill; Tidewrack Soaps, 3 Slip Lane, Port Emmer")
    words = ("label", "block", shop.batch, "--market", "us-soap", "--draft", "-o", "us.svg")
    assert "--pack '2 x 3 in'" in run(*words, code=2).stderr
    run(*words, "--pack", "2 x 3 in")


@pytest.mark.usefixtures("frozen")
@pytest.mark.parametrize(("language", "said"), [("de", 'lang="de"'), ("en", 'lang="en"')])
def test_the_outlines_say_which_language_their_words_are_in(shop: Any, run: Any, language: str, said: str) -> None:
    run("label", "block", shop.batch, "--market", "eu", "--language", language, "--draft", "-o", "block.svg")
    assert said in Path("block.svg").read_text(encoding="utf-8")
