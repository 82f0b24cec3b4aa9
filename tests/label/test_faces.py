"""The face of a label is hers: nothing on its back makes it smaller, and what is too long there flows to the sides."""

from dataclasses import replace

import pytest
from reportlab.lib.units import mm

from ledger.documents.kit.layout import FAMILIES, LabelLayout, label_layout, shipped
from ledger.documents.kit.sheets import SheetLayout
from ledger.documents.label.choosing import shipped_layout
from ledger.documents.label.labels import draw_labels, set_label
from ledger.documents.label.tries import draw_tries
from ledger.errors import BadInput
from ledger.reference.shipped import templates

BARS = [name for name in shipped("label") if shipped_layout(name).purpose == "bar"]
FORMS = ("band", "box", "round", "tag", "wrap")
NAMES = "OLEA EUROPAEA FRUIT OIL, COCOS NUCIFERA OIL, AQUA, SODIUM HYDROXIDE"
LONG = ", ".join(f"HELIANTHUS ANNUUS SEED OIL {number}" for number in range(18))


@pytest.fixture
def hers(label):
    """A label with all that is hers."""
    return replace(
        label,
        ingredients=NAMES,
        business="Tidewrack Soaps",
        line="From the slipway",
        use="For hands",
        colour="#5b6f4e",
        web="https://www.tidewrack.example",
    )


def sizes(view, layout: LabelLayout, role: str) -> list[tuple[str, float]]:
    form, filled = set_label(view, layout)
    return [
        (line.text, line.size)
        for panel, one in zip(form.panels, filled, strict=True)
        if panel.role == role
        for line in one.lines
    ]


def alone(view, layout: LabelLayout) -> bytes:
    wide, high = layout.width_mm, layout.height_mm
    page = SheetLayout("alone", "roll", 1, 1, 0, 0, wide, high, wide, high, cut_marks=False)
    return draw_labels(view, layout, page, count=1)


def test_each_family_has_all_five_forms() -> None:
    for family in FAMILIES:
        before = "" if family == "plain" else f"{family}-"
        assert {shipped_layout(f"{before}{form}").family for form in FORMS} == {family}


@pytest.mark.parametrize("name", [name for name in BARS if name not in ("small", "round", "leaf-round")])
def test_a_full_back_leaves_the_face_as_it_is(hers, name: str) -> None:
    layout = shipped_layout(name)
    short = replace(hers, ingredients="AQUA")
    longer = replace(hers, ingredients=", ".join(LONG.split(", ")[:9]), precautions=("Keep out of eyes.",))
    assert sizes(longer, layout, "face") == sizes(short, layout, "face")


@pytest.mark.parametrize("name", BARS)
def test_the_name_she_trades_under_stands_on_every_face(hers, name: str) -> None:
    assert "Tidewrack" in " ".join(text for text, _ in sizes(hers, shipped_layout(name), "face"))


def test_a_long_list_flows_from_the_back_to_the_sides_in_the_order_of_the_file(hers) -> None:
    layout = shipped_layout("band")
    panels = [panel.name for panel in layout.panels if panel.role in ("back", "side")]
    assert panels == ["back", "second side", "first side"]
    view = replace(hers, ingredients=LONG)
    form, set_ = set_label(view, layout)
    filled = dict(zip((panel.name for panel in form.panels), set_, strict=True))
    flowed = " ".join(line.text for name in panels for line in filled[name].lines)
    order = [flowed.index(f"SEED OIL {number}") for number in (0, 5, 12, 17)]
    assert order == sorted(order)
    assert "SEED OIL 17" not in " ".join(line.text for line in filled["back"].lines)
    law = {line.size for name in panels for line in filled[name].lines}
    assert len(law) == 1  # one size, wherever it stands


def test_what_fits_the_back_stays_there(hers) -> None:
    _, filled = set_label(hers, shipped_layout("band"))
    names = [panel.name for panel in shipped_layout("band").without_picture().panels]
    assert [line.text for line in filled[names.index("second side")].lines] == []


@pytest.mark.parametrize("name", ["Calendula & Lavender", "Oat", "Žluťoučký kůň"])
@pytest.mark.parametrize("layout", BARS)
def test_every_letter_stands_within_its_panel(hers, read, layout: str, name: str) -> None:
    """Measured on the page; a letter's side may reach 0.3 mm beyond, as its face is cut."""
    form = shipped_layout(layout).without_picture()
    view = replace(hers, product=name) if layout != "small" else replace(hers, product=name, ingredients="AQUA")
    panels = [panel.edges_mm for panel in form.panels]
    for one in read(alone(view, form)).glyphs():
        assert any(
            left - 0.3 <= one.left and one.right <= right + 0.3 and top - 0.3 <= one.top and one.bottom <= foot + 0.3
            for left, right, top, foot in panels
        ), one


def test_a_name_grows_until_its_panel_is_full_and_has_three_lines_at_most(hers) -> None:
    layout = shipped_layout("wrap")
    short, long = (
        max(size for _, size in sizes(replace(hers, product=name), layout, "face"))
        for name in ("Oat", "Wild Rose and Chamomile with Goat Milk")
    )
    assert short == layout.product_pt
    assert layout.product_min_pt <= long < short


def other_sizes(view, layout: str, words: str) -> list[tuple[str, float]]:
    """The lines on the face but for those of some words."""
    found = sizes(view, shipped_layout(layout), "face")
    return [one for one in found if not set(one[0].split()) & set(words.split())]


@pytest.mark.parametrize("layout", BARS)
def test_a_long_name_makes_nothing_else_on_the_face_smaller(hers, layout: str) -> None:
    short, long = (
        other_sizes(replace(hers, product=name), layout, name)
        for name in ("Oat", "Wild Rose and Chamomile with Goat Milk")
    )
    assert short == long != []


@pytest.mark.parametrize("layout", [name for name in BARS if shipped_layout(name).panels[0].fields == ("business",)])
def test_what_is_too_long_on_the_face_is_smaller_in_its_own_panel_alone(hers, layout: str) -> None:
    short, long = (
        other_sizes(replace(hers, business=name), layout, name)
        for name in ("Tidewrack", "Tidewrack Soaps and Candles of Emmer")
    )
    assert short == long != []


def test_no_line_of_a_name_ends_with_a_single_letter_or_an_and(hers) -> None:
    for name in ("Rose & Clay", "Kůň s medem", "Rose a levandule"):
        lines = [text for text, _ in sizes(replace(hers, product=name), shipped_layout("leaf-tag"), "face")]
        assert not any(line.split("\u00a0")[-1] in ("&", "s", "a") for line in lines)


def test_a_word_with_a_hyphen_breaks_there_where_it_is_too_wide(hers) -> None:
    view = replace(hers, product="Ringelblumen-Lavendel-Seifenstück")
    lines = [text for text, _ in sizes(view, shipped_layout("small"), "face")]
    assert lines[1:4] == ["Ringelblumen-", "Lavendel-", "Seifenstück"]
    assert "Batch\u00a026-118-0" in lines


def dark_share(read, data: bytes, area: tuple[float, float, float, float]) -> float:
    """The share of a part of the page, in mm, that is darker than the middle grey."""
    dots = 72 / 25.4 * 4
    shades = read(data).part([round(n * dots) for n in area], scale=4).histogram()
    return sum(shades[:128]) / sum(shades)


def test_the_colour_is_on_the_face_alone_and_gone_in_black(hers, read) -> None:
    """A hand's breadth of the block of label-band.toml without print: 45 to 60 mm by 25 to 29 mm."""
    layout = shipped_layout("band")
    assert dark_share(read, alone(hers, layout), (45, 25, 60, 29)) == 1
    assert dark_share(read, alone(hers, replace(layout, ink="black")), (45, 25, 60, 29)) == 0
    assert dark_share(read, alone(replace(hers, colour=None), layout), (45, 25, 60, 29)) == 0


@pytest.mark.parametrize("layout", [name for name in BARS if name != "small"])
def test_nothing_is_lost_in_black_alone(hers, read, layout: str) -> None:
    form = shipped_layout(layout)
    assert read(alone(hers, replace(form, ink="black"))).text().split() == read(alone(hers, form)).text().split()


def test_the_ornament_stands_where_she_has_no_picture(hers, read) -> None:
    """The place of label-leaf-wrap.toml, 12.5 to 42.5 mm by 19.5 to 49.5 mm; white on a pale disc is never drawn."""
    layout, place = shipped_layout("leaf-wrap"), (12.5, 19.5, 42.5, 49.5)
    assert 0.04 < dark_share(read, alone(replace(hers, colour=None), layout), place) < 0.5
    assert 0.03 < dark_share(read, alone(replace(hers, colour="#f4eec0"), layout), place) < 0.5


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_every_layout_is_shown_on_three_sheets(hers, read, paper: str) -> None:
    """Those of "plain" want two: 46, 110, 80, 85 and 65 mm of rows are more than a sheet has; the second has room."""
    drawn = read(draw_tries(hers, paper=paper))
    assert len(drawn.pages) == 3
    said = drawn.text()
    for name in BARS:
        assert name in said
    assert said.count("Batch 26-118-0") == len(BARS)


def test_what_does_not_fit_is_said_in_its_place(hers, read) -> None:
    said = read(draw_tries(replace(hers, ingredients=LONG), paper="A4")).text()
    fit, not_ = said.count("Batch 26-118-0"), said.count("has no room for the")
    assert min(fit, not_) > 0
    assert fit + not_ == len(BARS)


def test_a_layout_without_roles_is_fitted_as_one_as_it_always_was(label, tmp_path) -> None:
    """A copy from before: all of it shrinks together, and her own particulars are not asked for."""
    text = (templates() / "label-small.toml").read_text(encoding="utf-8")
    for gone in ('role = "face"\n', 'role = "back"\n', '"business", ', "business_pt = 7.5\n", "face_mm"):
        assert gone in text
        text = text.replace(gone, "" if gone != "face_mm" else "# face_mm")
    path = tmp_path / "mine.toml"
    path.write_text(text, encoding="utf-8")
    layout = label_layout(str(path))
    assert not layout.parted
    _, filled = set_label(label, layout)
    names = filled[0].lines[0].size
    (law,) = {line.size for line in filled[1].lines}
    # one share of the way from largest to least for both: 19 to 8 pt, and 7.8 pt to that of 1.2 mm
    least = 1.2 * mm * 1000 / 516
    assert (19 - names) / (19 - 8) == pytest.approx((7.8 - law) / (7.8 - least), abs=1e-6)


def test_roles_are_told_for_all_panels_or_none(tmp_path) -> None:
    path = tmp_path / "mine.toml"
    text = (templates() / "label-small.toml").read_text(encoding="utf-8").replace('role = "back"\n', "")
    path.write_text(text, encoding="utf-8")
    with pytest.raises(BadInput, match=r"role: the panel 'back' has none; write one of face, back, side, tag\."):
        label_layout(str(path))
