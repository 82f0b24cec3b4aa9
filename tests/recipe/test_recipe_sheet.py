"""The recipe sheet, read back."""

import ctypes
import io
import re
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from itertools import pairwise

import pypdfium2
import pytest
from drawn import Read, page_line
from drawn import recipe as recipe_page
from pypdf import PdfReader

from ledger.documents.kit.range_chart import LEAST_BAR
from ledger.documents.recipe.recipe_sheet import TYPES, draw_recipe_sheet
from ledger.domain.lye.uncertainty import Superfat
from ledger.reference.cautions import Cautions, cautions
from ledger.reference.shipped import templates_digest
from ledger.units.words import Units

BOTH = pytest.mark.parametrize("paper", ["A4", "Letter"])


def words(data: bytes) -> str:
    """All that is printed, by a reader of its own, with every space the same."""
    return re.sub(r"\s+", " ", " ".join(page.extract_text() for page in PdfReader(io.BytesIO(data)).pages))


@cache
def base(paper: str = "A4", units: Units = "metric") -> bytes:
    """The recipe as it is, drawn once for all that is asked of it."""
    return draw_recipe_sheet(replace(recipe_page(), units=units), cautions=cautions(), paper=paper)


@cache
def pages(paper: str = "A4", units: Units = "metric") -> Read:
    return Read(base(paper, units))


@pytest.fixture(scope="module", autouse=True)
def _let_go() -> Iterator[None]:
    yield
    pages.cache_clear()


@pytest.fixture
def drawn() -> bytes:
    return base()


@pytest.fixture(scope="module")
def said() -> str:
    return words(base())


def test_every_line_stands_under_its_step_with_material_amount_and_share(said: str) -> None:
    lines = [
        "in the fats olive oil 600 g 60.0 %",
        "coconut oil 250 g 25.0 %",
        "shea butter 100 g 10.0 %",
        "castor oil 50 g 5.0 %",
        "with the lye distilled water 274.5 g 27.5 %",
        "sodium hydroxide 137.3 g 13.7 %",
        "at trace oat flour 10 g 1.0 %",
        "sweet orange essential oil 20 g 2.0 %",
        "packing paper band 12 pcs",
    ]
    found = [said.index(line) for line in lines]
    assert found == sorted(found)


def test_the_key_facts_say_the_lye_each_way_and_how_full_the_mould_gets(said: str) -> None:
    # 1 394 907 of 1 680 000 microlitres: 83 %
    for fact in (
        "Calendula Morning",
        "calendula, version 3, cold process",
        "6.0 % meant, likely low 4.23 %, all low 2.25 %",
        "concentration 33.3 %",
        "2.00 to 1 of alkali, 27.5 % of the fats",
        "1 441.8 g, about 1 395 mL",
        "beech loaf (30 x 8 x 7 cm), 83 % full",
        "12 bars, 95 g each, net",
        "28 days",
    ):
        assert fact in said


def test_a_superfat_that_is_not_the_one_meant_is_said(recipe) -> None:
    view = replace(recipe, lye=replace(recipe.lye, superfat=Superfat(73_450, 51_000, 30_000, ())))
    said = words(draw_recipe_sheet(view, cautions=cautions()))
    assert "6.0 % meant, 7.35 % as reckoned, likely low 5.10 %, all low 3.00 %" in said


def test_the_pot_before_a_fat_held_back_has_its_own_superfat(recipe) -> None:
    view = replace(recipe, lye=replace(recipe.lye, before_addition=Superfat(-21_200, -46_000, -55_900, ())))
    said = words(draw_recipe_sheet(view, cautions=cautions()))
    assert "before the fat held back goes in: −2.12 % as reckoned, likely low −4.60 %, all low −5.59 %." in said


def test_the_cautions_stand_before_the_work_and_before_the_step_of_the_lye(said: str) -> None:
    order = [
        "go before this page",
        "Goggles, gloves",
        "never vinegar",
        "castor oil",
        "Lye into water",
        "distilled water",
    ]
    found = [said.index(one) for one in order]
    assert found == sorted(found)


def test_the_soap_is_shown_by_kind_at_each_stage_and_adds_up(said: str) -> None:
    # after the cure: 971.9 + 105.3 + 60.0 + 129.7 + 10.0 + 20.0 = 1 297.0 (1 296.951)
    for row in (
        "The soap it makes, in g",
        "soap – 971.9 971.9 971.9",
        "glycerol – 105.3 105.3 105.3",
        "fat 1 000.0 60.0 60.0 60.0",
        "water 274.5 274.5 129.7 101.5",
        "alkali 137.3 – – –",
        "in all 1 441.8 1 441.8 1 297.0 1 268.8",
    ):
        assert row in said


def test_every_acid_has_its_range_and_fats_without_figures_are_named(recipe) -> None:
    said = pages().text()
    for one in recipe.profile:
        assert one.name in said
        assert f"{one.low_ppm / 10_000 + 1e-9:.1f} to {one.high_ppm / 10_000 + 1e-9:.1f}" in said
    assert "% of the fatty acids" in said
    assert "not counted: beeswax." in said


def test_each_bar_starts_at_its_low_and_ends_at_its_high(recipe, drawn: bytes) -> None:
    page = pypdfium2.PdfDocument(io.BytesIO(drawn))[0]
    paths = [one.get_bounds() for one in page.get_objects(filter=[pypdfium2.raw.FPDF_PAGEOBJ_PATH])]
    # The axis of 0 to 60 % is drawn by upright hairlines; a caution's bar is upright too, but three points thick.
    hairlines = sorted((x0 + x1) / 2 for x0, low, x1, high in paths if x1 - x0 < 1.5 and high - low > 100)
    assert len(hairlines) == 4
    zero, point = hairlines[0], (hairlines[-1] - hairlines[0]) / 600_000
    filled = [
        one
        for one in page.get_objects(filter=[pypdfium2.raw.FPDF_PAGEOBJ_PATH])
        if _filled(one) and one.get_bounds()[0] > zero - 1
    ]
    boxes = sorted((one.get_bounds() for one in filled), key=lambda box: -box[1])
    assert len(boxes) == len(recipe.profile)
    for box, acid in zip(boxes, recipe.profile, strict=True):
        right = max(zero + acid.high_ppm * point, zero + acid.low_ppm * point + LEAST_BAR)
        assert (box[0], box[2]) == pytest.approx((zero + acid.low_ppm * point, right), abs=0.05)


def _filled(path) -> bool:
    fill, stroke = ctypes.c_int(), ctypes.c_int()
    assert pypdfium2.raw.FPDFPath_GetDrawMode(path.raw, fill, stroke)
    return fill.value != 0


def test_warnings_notes_and_sources_come_last(recipe, said: str) -> None:
    assert f"• {recipe.warnings[0]}" in said
    assert "oat flour: sieved." in said
    assert "in mg KOH/g: olive oil 184 to 196 (CXS 210-1999 Table 2;" in said
    assert "sodium hydroxide: purity 99.2 %." in said
    found = [said.index(one) for one in ("The soap it makes", "• sweet", "Notes.", "Sources of the figures.")]
    assert found == sorted(found)


@BOTH
def test_nine_lines_keep_to_one_page_that_reads_at_arms_length(paper: str) -> None:
    drawn = pages(paper)
    assert len(drawn.pages) == 1
    assert drawn.size_mm() == {"A4": (210, 297), "Letter": (216, 279)}[paper]
    sizes = sorted({one.size for one in drawn.glyphs()})
    assert len(sizes) == 3
    assert sizes[0] >= 8.5  # the foot, the notes and the sources
    assert sizes[1] >= 10.5
    assert sizes[2] >= 14  # the name and the amounts
    program = f"soapledger 0.1.0 (templates {templates_digest()})"
    foot = f"calendula, version 3 from entry 214 of 1 Jun 2026, 09:30 UTC, {program} page 1 of 1"
    assert foot in drawn.text()


def test_the_amounts_are_as_large_as_the_name() -> None:
    glyphs = pages().glyphs()
    largest = max(one.size for one in glyphs)
    large = "".join(one.sign for one in glyphs if one.size == largest)
    assert large == "CalendulaMorning600g250g100g50g274.5g137.3g10g20g12pcs"


@BOTH
@pytest.mark.parametrize("units", ["metric", "us"])
def test_nothing_runs_over_a_margin_or_into_the_foot(paper: str, units: Units) -> None:
    drawn = pages(paper, units)
    wide, high = drawn.size_mm()
    for glyph in drawn.glyphs():
        assert glyph.left >= 14.9
        assert glyph.right <= wide - 14.9
        assert glyph.bottom <= high - 8


@BOTH
def test_no_two_lines_of_print_lie_over_each_other(paper: str) -> None:
    inked = pages(paper).glyphs()
    inked.sort(key=lambda one: one.top)
    for number, one in enumerate(inked):
        for other in inked[number + 1 :]:
            if other.top > one.bottom - 0.35:  # a descender may just meet an ascender
                break
            across = min(one.right, other.right) - max(one.left, other.left)
            down = min(one.bottom, other.bottom) - other.top
            assert across < 0.25 or down < 0.35, f"{one} lies over {other}"


def test_pounds_and_ounces() -> None:
    # 600 g / 28.349523125 = 21.16 oz; 1 394 907 uL / 29.5735295625 = 47.2 fl oz; 971.91 g = 34.28 oz
    said = words(base("A4", "us"))
    assert "olive oil 21.16 oz 60.0 %" in said
    assert "about 47.2 fl oz" in said
    assert "The soap it makes, in oz" in said
    assert "soap – 34.28 34.28 34.28" in said


def test_a_portion_is_named_beside_its_material(recipe) -> None:
    lines = (*recipe.lines[:7], page_line("at trace", "fragrance", "lavender oil", 20_000, portion="dark"))
    said = words(draw_recipe_sheet(replace(recipe, lines=lines), cautions=cautions()))
    assert "when material portion amount of the fats" in said
    assert "lavender oil dark 20 g 2.0 %" in said


@pytest.mark.parametrize("process", ["infusion", "blend", "rebatch"])
def test_a_recipe_without_lye_has_no_lye_soap_or_chart(recipe, process: str) -> None:
    lines = tuple(
        replace(page_line("in the pot", "part", name, mass), of_fats_ppm=None)
        for name, mass in (("olive oil", 1_000_000), ("calendula petals", 90_000))
    )
    view = replace(
        recipe, process=process, lines=lines, fats_mg=0, superfat_meant_ppm=None, lye=None, dough_mg=1_090_000,
        dough_ul=None, stages=None, profile=(), no_profile=(), warnings=(), bars=None, net_weight_mg=None,
    )  # fmt: skip
    said = words(draw_recipe_sheet(view, cautions=cautions()))
    assert "in the pot olive oil 1 000 g calendula petals 90 g" in said
    assert "go before this page" in said
    assert ("28 days" in said) == (process == "rebatch")
    for absent in ("Goggles", "Lye into water", "of the fats", "superfat", "The soap it makes", "fatty acids"):
        assert absent not in said


def test_a_lye_ready_made_brings_its_cautions_wherever_it_stands(recipe) -> None:
    stock = replace(page_line("in the pot", "part", "stock lye", 500_000), caustic=True)
    view = replace(recipe, process="blend", lines=(stock,), lye=None, stages=None, profile=())
    said = words(draw_recipe_sheet(view, cautions=cautions()))
    assert said.index("Goggles") < said.index("Lye into water") < said.index("stock lye")


def test_where_the_sources_do_not_fit_they_alone_go_to_a_second_page(recipe, read) -> None:
    more = [
        page_line("at trace", "additive", f"clay {n}", 1_000, figure=f"{'a long source ' * 9}{n}") for n in range(4)
    ]
    drawn = read(draw_recipe_sheet(replace(recipe, lines=(*recipe.lines, *more)), cautions=cautions()))
    assert len(drawn.pages) == 2
    assert "Notes." in drawn.text(0)
    assert "page 1 of 2" in drawn.text(0)
    assert drawn.text(1).startswith("Sources of the figures.")
    assert {one.size for one in drawn.glyphs(0)} == {TYPES[-1].large, TYPES[-1].head, TYPES[-1].body} == {14, 10.5, 8.5}


@BOTH
def test_a_very_long_recipe_is_whole_and_warns_on_the_page_it_is_worked_from(recipe, read, paper: str) -> None:
    more = tuple(page_line("at trace", "additive", f"clay number {n}", 1_000 * n) for n in range(10, 22))
    view = replace(recipe, lines=(*recipe.lines, *more))
    drawn = read(draw_recipe_sheet(view, cautions=cautions(), paper=paper))
    assert len(drawn.pages) == 2
    assert all(f"clay number {n} {n} g" in drawn.text() for n in range(10, 22))
    assert "no certificate says how much." in drawn.text(0)
    assert "% of the fatty acids" in drawn.text(1)


def test_hundreds_of_lines_and_warnings_are_still_printed(recipe, read) -> None:
    more = tuple(page_line("at trace", "additive", f"clay number {n}", 1_000 * n) for n in range(10, 110))
    view = replace(recipe, lines=more, warnings=recipe.warnings * 80, no_profile=("beeswax", "lanolin") * 20)
    said = read(draw_recipe_sheet(view, cautions=cautions())).text()
    assert "clay number 109 109 g" in said
    assert said.count("no certificate says how much.") == 80


def test_fats_without_any_published_figure_are_named_without_a_chart(recipe) -> None:
    view = replace(recipe, profile=(), no_profile=("emu oil",))
    said = words(draw_recipe_sheet(view, cautions=cautions()))
    assert "No fatty acids are published here for emu oil." in said
    assert "% of the fatty acids" not in said


def test_no_figure_is_torn_from_its_percent_sign() -> None:
    lines = pages().pages[0].get_text_bounded().splitlines()
    torn = [after for line, after in pairwise(lines) if after.startswith("%") and line[-1:].isdigit()]
    assert torn == ["% of the fatty acids"]  # which stands below the figures of the axis


def test_edited_cautions_are_printed_as_they_are(recipe) -> None:
    own = Cautions("My rules first.", {"start": ("Apron on.",), "lye": ("Slowly.",), "mix": ("Not here.",)})
    said = words(draw_recipe_sheet(recipe, cautions=own))
    assert "My rules first. Apron on." in said
    assert "Slowly." in said
    assert "First aid" not in said
    assert "Not here." not in said


def test_equal_views_give_equal_bytes(recipe, drawn: bytes) -> None:
    assert draw_recipe_sheet(recipe, cautions=cautions()) == drawn


PARTS = ("line", "name", "mould", "warnings", "no_profile")


def with_word(recipe, part: str, word: str):
    change: dict[str, object] = {
        "line": {"lines": (replace(recipe.lines[0], material=word),)},
        "name": {"name": word},
        "mould": {"mould": word},
        "warnings": {"warnings": (word,)},
        "no_profile": {"no_profile": (word,)},
    }[part]  # type: ignore[assignment]
    return replace(recipe, **change)


@pytest.mark.parametrize("part", PARTS)
def test_nothing_she_wrote_is_printed_as_a_black_box(recipe, read, part: str) -> None:
    """No face has a bar of soap, U+1F9FC (The Unicode Standard)."""
    said = read(draw_recipe_sheet(with_word(recipe, part, "\U0001f9fc"), cautions=cautions())).text()
    assert "[U+1F9FC]" in said
    assert "[U+…] stands for a character" in said


def test_what_the_first_face_lacks_is_printed_in_the_second(recipe) -> None:
    for number, part in enumerate(PARTS):
        recipe = with_word(recipe, part, f"石{number}\U0001f9fc")
    said = words(draw_recipe_sheet(recipe, cautions=cautions()))
    for number in range(len(PARTS)):
        assert f"石{number}[U+1F9FC]" in said
