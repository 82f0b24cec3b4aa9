"""The bench worksheet, read back."""

from dataclasses import replace

import pytest
import zxingcpp

from ledger.documents.bench.worksheet import draw_worksheet
from ledger.domain.bench.steps import steps
from ledger.reference.cautions import cautions
from ledger.reference.shipped import templates_digest


@pytest.fixture(scope="module")
def pages() -> dict[str, bytes]:
    """The worksheet, once it was drawn."""
    return {}


@pytest.fixture
def drawn(sheet, read, pages):
    if not pages:
        pages["sheet"] = draw_worksheet(sheet, cautions=cautions())
    return read(pages["sheet"])


def test_every_line_has_its_number_lot_target_and_window(drawn) -> None:
    # coconut oil 300 g, slack a hundredth of it: 297 to 303 g
    assert "2 coconut oil lot L42-5 (Tarnlow Oils, CN-0919) 300 g OK 297 g to 303 g" in drawn.text()


def test_nothing_is_below_eleven_points_and_there_are_three_sizes(drawn) -> None:
    sizes = {one.size for page in range(len(drawn.pages)) for one in drawn.glyphs(page)}
    assert sizes == {11, 14, 28}


def test_the_cautions_stand_before_the_step_they_belong_to(drawn) -> None:
    said = drawn.text()
    order = [
        "Goggles, gloves",
        "never vinegar",
        "Weigh the fats",
        "Lye into water, never water into lye",
        "sodium hydroxide",
    ]
    order += ["Raw dough is caustic", "At trace"]
    found = [said.index(words) for words in order]
    assert found == sorted(found)


def test_the_batch_code_is_read_from_the_printed_page(drawn) -> None:
    assert [code.text for code in zxingcpp.read_barcodes(drawn.image())] == ["26-118-0"]


def test_packaging_is_not_weighed_at_the_bench(drawn) -> None:
    assert "paper band" not in drawn.text()


def test_an_infusion_needs_no_lye_and_is_strained(sheet, read) -> None:
    lines = tuple(replace(line, stage="in the pot") for line in sheet.lines if line.role == "fat")
    read_at = steps("infusion", makes_lye=True, gives_bars=False)
    view = replace(
        sheet,
        process="infusion",
        lines=lines,
        steps=read_at,
        alkali_mg=0,
        superfat_ppm=None,
        lye_concentration_ppm=None,
    )
    said = read(draw_worksheet(view, cautions=cautions())).text()
    assert "Oil strained off" in said
    assert "Lye temperature" not in said


@pytest.mark.parametrize(("paper", "size"), [("A4", (210, 297)), ("Letter", (216, 279))])
def test_paper_pages_and_foot(sheet, read, paper: str, size: tuple[int, int]) -> None:
    drawn = read(draw_worksheet(sheet, cautions=cautions(), paper=paper))
    pages = len(drawn.pages)
    assert drawn.size_mm() == size
    for page in range(pages):
        program = f"soapledger 0.1.0 (templates {templates_digest()})"
        foot = f"from entry 214 of 1 Jun 2026, 09:30 UTC, {program} page {page + 1} of {pages}"
        assert foot in drawn.text(page)
        assert "Batch 26-118-0" in drawn.text(page)


def test_equal_views_give_equal_bytes(sheet) -> None:
    care = cautions()
    assert draw_worksheet(sheet, cautions=care) == draw_worksheet(sheet, cautions=care)


def test_a_material_is_printed_in_the_second_face_or_by_the_numbers_of_its_signs(sheet, read) -> None:
    """A bar of soap is U+1F9FC (The Unicode Standard)."""
    line = replace(sheet.lines[0], material="石 oil \U0001f9fc", lot_code="L1-\U0001f9fc")
    said = read(draw_worksheet(replace(sheet, lines=(line,)), cautions=cautions())).text(0)
    assert "石 oil [U+1F9FC]" in said
    assert "lot L1-[U+1F9FC]" in said
    assert "[U+…] stands for a character" in said


@pytest.mark.parametrize("fats", range(1, 9))
def test_the_alkali_stands_on_the_page_of_its_cautions_and_of_what_goes_into_the_jug_first(
    sheet, read, fats: int
) -> None:
    """However many fats come before it."""
    fat, *_ = [line for line in sheet.lines if line.role == "fat"]
    others = [line for line in sheet.lines if line.role != "fat"]
    lines = [replace(fat, number=number, material=f"oil {number}") for number in range(1, fats + 1)]
    view = replace(sheet, lines=(*lines, *others))
    drawn = read(draw_worksheet(view, cautions=cautions()))
    (page,) = [n for n in range(len(drawn.pages)) if "Make the lye" in drawn.text(n)]
    said = drawn.text(page)
    assert said.index("never water into lye") < said.index("water lot") < said.index("sodium hydroxide lot")
