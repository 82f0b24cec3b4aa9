"""The net quantity and the law's letters, measured back from the printed page: height, weight, clear space, place."""

import re
from collections.abc import Callable
from dataclasses import replace
from math import inf
from pathlib import Path
from typing import Any

import pypdfium2
import pytest
from shop import ADDRESS, SETUP, Shop

from ledger.documents.kit.layout import label_layout, sheet_layout
from ledger.documents.label.labels import _near, draw_labels
from ledger.documents.label.tries import draw_tries
from ledger.domain.label.panel import read_front
from ledger.errors import Refused
from ledger.markets import market
from ledger.operations.house.setup import set_up
from ledger.reference.shipped import templates

SHEET = {"small": "a4-24", "band": "a4-6", "box": "a4-8", "round": "a4-6-tag", "wrap": "a4-2"}
SIXTEENTH = 25.4 / 16
EDGE = 0.02  # mm, by which a box read back is off
US = "Net Wt 3.52 oz (100 g)"


@pytest.fixture
def printed(label: Any, read: Any) -> Callable[..., Any]:
    """The page of a label of 100 g for a market, on a layout and a pack of its own or another."""

    def drawn(code: str, layout: str, pack: str | None = None, *, net_mg: int = 100_000, **more: Any) -> Any:
        law, form = market(code), label_layout(layout)
        front = read_front(pack) if pack else form.pack
        view = replace(
            label,
            market=code,
            net_quantity=US if code.startswith("us") else "100 g",
            figure_height_mm=law.figure_height(net_mg, front.cm2),
            lettering=law.lettering.on(front.cm2),
            ingredients_heading=law.ingredients_heading,
            **more,
        )
        return read(draw_labels(view, form, sheet_layout(SHEET[layout]), count=1))

    return drawn


def of(page: Any, words: str) -> list[Any]:
    """The glyphs of some words."""
    glyphs = page.glyphs()
    at = "".join(one.sign for one in glyphs).index(words.replace(" ", ""))
    return list(glyphs[at : at + len(words.replace(" ", ""))])


def high(one: Any) -> float:
    return float(one.bottom - one.top)


def font_of(page: Any, words: str) -> str:
    """The name of the face that the first letter of some words is set in."""
    text = page.pages[0]
    said = text.get_text_range().replace("\r\n", "\n").replace("\u00a0", " ")
    for index in range(text.count_chars()):
        if text.get_text_range(index, 1) == words[0] and said.find(words) >= 0:
            buffer, flags = (pypdfium2.raw.c_char * 99)(), pypdfium2.raw.c_int()
            size = pypdfium2.raw.FPDFText_GetFontInfo(text.raw, index, buffer, 99, flags)
            name = bytes(buffer)[: size - 1].decode()
            if "Bold" in name and "Semi" not in name:
                return name
    return ""


# 16 CFR 500.21(b): 5 square inches and a grain more, 25 and a grain more; 2 x 2.5 in are 5, 5 x 5 in are 25.
@pytest.mark.parametrize("code", ["us-soap", "us-cosmetic"])
@pytest.mark.parametrize(
    ("pack", "sixteenths"),
    [
        ("2 x 2.5 in", 1), ("2 x 2.51 in", 2), ("55 x 80 mm", 2), ("5 x 5 in", 2), ("round 64 mm", 1),
        ("round 65 mm", 2),
    ],
)  # fmt: skip
def test_in_the_us_the_small_o_is_as_high_as_the_side_of_the_pack_asks(
    printed: Any, code: str, pack: str, sixteenths: int
) -> None:
    """A round top of 64 mm is 32.17 cm², one of 65 mm 33.18; 5 square inches are 32.258 cm²."""
    for one in of(printed(code, "wrap", pack), US):
        if one.sign == "o":
            assert high(one) >= sixteenths * SIXTEENTH
            assert sixteenths == 1 or high(one) <= 1.12 * sixteenths * SIXTEENTH  # 5 % over, and what an o overshoots
        if one.sign in "ozNW":
            assert high(one) <= 3 * (one.right - one.left)
        if one.sign in "0123456789NW":
            assert high(one) >= sixteenths * SIXTEENTH


@pytest.mark.parametrize("layout", ["band", "wrap"])
def test_in_the_us_it_keeps_its_space_and_stands_in_the_lowest_part(printed: Any, layout: str) -> None:
    """A letter's height above and below, two widths of N at the sides, and in the lowest 30 % of the front."""
    page = printed("us-soap", layout, product="Calendula & Lavender", function="Soap of olives")
    net = of(page, US)
    letter, side = max(high(one) for one in net if one.sign == "o"), 2 * (net[0].right - net[0].left)
    left, right = min(one.left for one in net), max(one.right for one in net)
    top, foot = min(one.top for one in net), max(one.bottom for one in net)
    for one in page.glyphs():
        if one not in net:
            assert (
                one.bottom <= top - letter + EDGE
                or one.top >= foot + letter - EDGE
                or one.right <= left - side + EDGE
                or one.left >= right + side - EDGE
            ), one
    form, sheet = label_layout(layout), sheet_layout(SHEET[layout])
    (_, above) = sheet.corner_mm(0, form.width_mm, form.height_mm)
    begins, ends = (0, 46) if layout == "band" else (15, 95)  # of the wrap, between its level folds
    capitals = [one.top for one in net if one.sign in "NW352100"]
    assert min(capitals) - above >= ends - 0.3 * (ends - begins) - EDGE


def test_the_sheet_to_choose_from_has_the_heights_of_each_pack(label: Any, read: Any) -> None:
    """Over 5 square inches are the packs of both bands, wraps and tags, and of the card."""
    view = replace(label, market="us-soap", net_quantity=US, figure_height_mm=None, ingredients="WATER")
    view = replace(view, lettering=market("us-soap").lettering, product="Sea", function="Soap")
    page = read(draw_tries(view, paper="Letter"))
    letters = [one for number in range(3) for one in page.glyphs(number)]
    joined = "".join(one.sign for one in letters)
    heights = [high(letters[one.start()]) for one in re.finditer("NetWt", joined)]
    assert len(heights) == 12
    assert sum(one >= 2 * SIXTEENTH for one in heights) == 7
    assert all(one >= SIXTEENTH for one in heights)


def test_what_would_reach_above_the_lowest_part_is_refused(printed: Any) -> None:
    """A round has no foot that all its width stands on; one of 5 square inches or less is freed from it."""
    with pytest.raises(Refused, match=r"the net quantity.*--layout .*box .*wrap"):
        printed("us-soap", "round", "round 65 mm")
    assert printed("us-soap", "round", "round 64 mm")


@pytest.mark.parametrize(("layout", "pack"), [("band", "66 x 90 mm"), ("box", "5 x 5 in"), ("box", "2 x 2.5 in")])
@pytest.mark.parametrize("name", ["Calendula, Honey & Oat Bar for the Kitchen Gardener", "Sea"])
def test_where_it_has_no_room_in_its_place_it_takes_the_foot_of_the_face(
    printed: Any, layout: str, pack: str, name: str
) -> None:
    """What it is stays over it, and smaller than the name of the product."""
    page = printed("us-soap", layout, pack, product=name, function="Soap")
    foot = max(one.bottom for one in of(page, name))
    (soap,) = [one for one in of(page, "Soap") if one.sign == "S"]
    assert foot < soap.top < of(page, US)[0].top
    assert soap.size <= of(page, name)[0].size + EDGE


@pytest.mark.parametrize(("code", "bold"), [("us-soap", True), ("us-cosmetic", True), ("ca", True), ("eu", False)])
def test_it_is_bold_where_the_law_says_so(printed: Any, code: str, bold: bool) -> None:
    assert bool(font_of(printed(code, "band"), "Net" if code.startswith("us") else "100")) is bold


# C.R.C. c. 417, s. 14(2): 32 cm² and a grain more, 258 and a grain more.
@pytest.mark.parametrize(
    ("pack", "mm"), [("40 x 80 mm", 1.6), ("40 x 80.1 mm", 3.2), ("129 x 200 mm", 3.2), ("129 x 200.1 mm", 6.4)]
)
def test_in_canada_the_figures_go_by_the_side_and_all_else_has_letters_of_its_own(
    printed: Any, pack: str, mm: float
) -> None:
    page = printed("ca", "wrap", pack)
    assert all(high(one) >= mm for one in of(page, "100"))
    for words in ("Soap", "Tidewrack Soaps", "Port Emmer"):
        assert all(high(one) >= 1.6 for one in of(page, words) if one.sign == "o")
    assert all(high(one) >= 1.6 for one in of(page, "COCOS NUCIFERA OIL"))


def test_the_letters_of_the_ingredients_of_a_us_cosmetic(printed: Any) -> None:
    """21 CFR 701.3(b): 1/16 in, here all capitals."""
    page = printed("us-cosmetic", "band")
    assert all(high(one) >= SIXTEENTH for one in of(page, "INGREDIENTS") + of(page, "COCOS NUCIFERA OIL"))


# Directive 76/211/EEC, annex I: up to 50 g 2 mm, up to 200 g 3 mm, up to 1000 g 4 mm.
@pytest.mark.parametrize("code", ["eu", "gb"])
@pytest.mark.parametrize(("net_mg", "mm"), [(50_000, 2), (50_001, 3), (200_000, 3), (200_001, 4)])
def test_in_europe_the_figures_go_by_the_weight(printed: Any, code: str, net_mg: int, mm: float) -> None:
    assert all(high(one) >= mm for one in of(printed(code, "small", net_mg=net_mg), "100"))


@pytest.mark.usefixtures("frozen")
def test_the_print_and_the_check_know_the_pack(shop: Shop, run: Any, tmp_path: Path, read: Any) -> None:
    set_up(shop.book, replace(SETUP, country="US", addresses={"us": ADDRESS}))
    mine = (templates() / "label-wrap.toml").read_text(encoding="utf-8")
    (tmp_path / "mine.toml").write_text(mine.replace('pack = "55 x 80 mm"', ""), encoding="utf-8")
    us = ("--market", "us-soap")
    run("label", "approve", shop.batch, *us)
    for words, said, least in (
        (("--layout", "wrap"), "55 x 80 mm (44 cm², 6.82 sq in)", 2 * SIXTEENTH),
        (("--layout", "wrap", "--pack", "2 x 2.5 in"), "2 x 2.5 in (32.26 cm², 5 sq in)", SIXTEENTH),
        (("--layout", "mine.toml", "--pack", "60 × 80 mm"), "60 x 80 mm (48 cm²", 2 * SIXTEENTH),
    ):
        checked = " ".join(run("label", "check", shop.batch, *us, *words).stdout.split())
        assert f"{least:g} mm at least for the small letter o, bold; the side that bears the front is {said}" in checked
        run("label", "print", shop.batch, *us, *words, "-o", "l.pdf", "--force")
        page = read(Path("l.pdf").read_bytes())
        (o,) = [one for one in of(page, US) if one.sign == "o"]
        assert high(o) >= least
        run("label", "reprint", "1", "-o", "again.pdf", "--force")
    for command in (("check",), ("print", "-o", "m.pdf")):
        failed = run("label", command[0], shop.batch, *us, "--layout", "mine.toml", *command[1:], code=2)
        assert "the layout 'mine.toml' does not say it; measure and write it: --pack '55 x 80 mm'" in failed.stderr
        assert len(failed.stderr.splitlines()) == 1
    failed = run("label", "check", shop.batch, *us, "--pack", "large", code=2)
    assert "'large' is no side of a pack; write its height and width" in failed.stderr


def test_panels_that_touch_lie_one_over_the_other_and_not_side_by_side() -> None:
    """As reckoned, the upper may reach a hair's breadth into the lower; beside it nothing stands all the same."""
    form = label_layout("leaf-tag")
    head = next(one for one in form.panels if one.name == "head")
    touching = tuple(
        replace(one, y_mm=head.edges_mm[3] - 1e-12, height_mm=10.0) if one.name == "name" else one
        for one in form.panels
    )
    near = _near(head, replace(form, panels=touching))
    assert near.right == inf
    assert near.below == pytest.approx(0.0, abs=1e-6)
