"""Labels, measured on the printed page."""

from dataclasses import replace

import pytest

from ledger.documents.kit.layout import label_layout, sheet_layout
from ledger.documents.label.labels import draw_labels
from ledger.errors import BadInput, Refused

KINDS = [("small", "a4-24"), ("band", "a4-6"), ("small", "letter-21"), ("band", "letter-5")]
LONG = ", ".join(f"HELIANTHUS ANNUUS SEED OIL {number}" for number in range(40))
MIDDLING = ", ".join(f"HELIANTHUS ANNUUS SEED OIL {number}" for number in range(14))


def draw(view, layout: str, sheet: str, **more) -> bytes:
    return draw_labels(view, label_layout(layout), sheet_layout(sheet), **{"count": 1, **more})


@pytest.mark.parametrize(("layout", "sheet"), KINDS)
def test_every_letter_stands_in_a_panel_of_its_label(label, read, layout: str, sheet: str) -> None:
    form, page = label_layout(layout), sheet_layout(sheet)
    left = page.left_mm + (page.width_mm - form.width_mm) / 2
    top = page.top_mm + (page.height_mm - form.height_mm) / 2
    for one in read(draw(label, layout, sheet)).glyphs():
        x, y, right, bottom = one.left - left, one.top - top, one.right - left, one.bottom - top
        assert any(
            p.x_mm - 0.3 <= x and right <= p.x_mm + p.width_mm + 0.3 and p.y_mm <= y and bottom <= p.y_mm + p.height_mm
            for p in form.panels
        ), one


@pytest.mark.parametrize(("layout", "sheet"), KINDS)
@pytest.mark.parametrize("height", [2, 3, 4])
def test_figures_and_small_letters_are_as_high_as_the_rules_ask(label, read, layout, sheet, height: int) -> None:
    """Directive 76/211/EEC: figures of 2, 3 and 4 mm by nominal weight; house minimum: x-height 1.2 mm."""
    view = replace(label, figure_height_mm=height, net_quantity="100 g", ingredients="Aqua, zea, cera")
    glyphs = read(draw(view, layout, sheet)).glyphs()
    biggest = max(one.size for one in glyphs if one.sign == "0")
    assert all(1.05 * height <= one.bottom - one.top for one in glyphs if one.sign == "0" and one.size == biggest)
    assert all(one.bottom - one.top >= 1.2 - 0.03 for one in glyphs if one.sign in "xz")


@pytest.mark.parametrize(("layout", "sheet"), KINDS)
def test_everything_is_on_the_label_in_few_sizes(label, read, layout: str, sheet: str) -> None:
    drawn = read(draw(label, layout, sheet))
    said = drawn.text()
    for words in (label.product, "Soap", "100 g", label.best_before, "Batch 26-118-0", "Nuala Quill, Tidewrack Soaps"):
        assert words in said
    for name in label.ingredients.split(", "):
        assert name in said
    assert len({one.size for one in drawn.glyphs()}) <= 4  # its name, what it weighs, the law; two on the smallest


def test_precautions_are_printed_where_there_are_some(label, read) -> None:
    assert "Keep out of eyes." in read(draw(replace(label, precautions=("Keep out of eyes.",)), "band", "a4-6")).text()


def test_a_list_too_long_is_refused_with_the_panel_the_millimetres_and_the_remedy(label) -> None:
    view = replace(label, ingredients=", ".join([LONG] * 3))
    with pytest.raises(
        Refused,
        match=r"panel 'back' has no room for the ingredients: [\d.]+ mm of height .*--layout band [a-z -]+ wrap\)",
    ):
        draw(replace(label, ingredients=MIDDLING), "small", "a4-24")
    with pytest.raises(Refused, match="No shipped layout has the room; make a larger layout of your own"):
        draw(view, "band", "a4-6")


def test_a_word_wider_than_its_panel_is_refused_not_broken(label) -> None:
    with pytest.raises(Refused, match=r"panel 'front' has no room for the product: [\d.]+ mm of width"):
        draw(replace(label, product="Ringelblumenlavendelseifenstück"), "small", "a4-24")


def test_polish_czech_turkish_and_nordic_letters_are_read_back(label, read) -> None:
    view = replace(label, product="Łąka Žluťoučká", responsible_name="Işıl Ğ Åse Øre")
    said = read(draw(view, "band", "a4-6")).text()
    assert "Łąka Žluťoučká" in said
    assert "Işıl Ğ Åse Øre" in said


def test_a_draft_says_so_on_every_label(label, read) -> None:
    assert read(draw(replace(label, draft=True), "small", "a4-24", count=5)).text().count("DRAFT") == 5


def test_labels_start_at_the_first_free_position_and_run_on(label, read) -> None:
    """24 on a sheet, the first 23 used: one on this sheet, two on the next."""
    drawn = read(draw(label, "small", "a4-24", count=3, start=24))
    assert [drawn.text(page).count("Batch 26-118-0") for page in range(len(drawn.pages))] == [1, 2]
    assert min(one.left for one in drawn.glyphs()) > 140  # third column of 70 mm
    with pytest.raises(BadInput, match="positions 1 to 24; 25 is none of them"):
        draw(label, "small", "a4-24", start=25)


def test_a_label_larger_than_its_place_is_refused(label) -> None:
    with pytest.raises(Refused, match=r"larger than its place on sheet-a4-24\.toml"):
        draw(label, "band", "a4-24")


def test_equal_input_gives_equal_bytes(label) -> None:
    assert draw(label, "band", "a4-6", count=7) == draw(label, "band", "a4-6", count=7)


def test_an_accent_that_an_older_ledger_keeps_apart_is_drawn_with_its_letter(label, read) -> None:
    apart = draw(replace(label, product="E\u0301va"), "band", "a4-6")
    assert apart == draw(replace(label, product="Éva"), "band", "a4-6")
    assert "Éva" in read(apart).text(0)
