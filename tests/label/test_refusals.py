"""What does not fit is refused with panel, field, millimetres, and what the law allows for that particular."""

import re
from dataclasses import replace
from typing import Any

import pytest

from ledger.documents.kit.layout import label_layout, sheet_layout, shipped
from ledger.documents.label.doubts import check_placed
from ledger.documents.label.labels import draw_labels
from ledger.errors import Refused
from ledger.reference.shipped import templates

NINE = (
    "SODIUM OLIVATE, SODIUM COCOATE, AQUA, SODIUM SHEA BUTTERATE, GLYCERIN, LAVANDULA ANGUSTIFOLIA OIL, KAOLIN, "
    "CALENDULA OFFICINALIS FLOWER, LINALOOL"
)
ADDRESS = (
    "Małgorzata Świętosławska-Żółkiewska, Mydlarnia Źródło, ul. Świętokrzyska 118/24, 00-950 Wróblewo Dolne, Polska"
)


def refusal(view: Any, layout: str, sheet: str) -> str:
    with pytest.raises(Refused) as caught:
        draw_labels(view, label_layout(layout), sheet_layout(sheet), count=1)
    return str(caught.value)


def test_nine_ingredients_with_a_long_address_do_not_go_on_the_smallest(label) -> None:
    said = refusal(replace(label, ingredients=NINE, responsible_address=ADDRESS), "small", "a4-24")
    assert re.match(
        r"The panel 'back' has no room for the best-before date: [\d.]+ mm of height are missing even at the "
        r"smallest type allowed\. Take a larger layout \(--layout band or [a-z -]+ or wrap\)\. Most room there "
        r"goes to the ingredients\. Where .* tag, card or leaflet .* hand-with-book mark .* for soap also on a notice "
        r"beside it \(--layout notice-shelf\): Art 19\(2\) and \(3\) .*, from memory\. Nothing was printed\.$",
        said,
    )


def test_the_larger_layouts_named_do_take_it(label) -> None:
    view = replace(label, ingredients=NINE, responsible_address=ADDRESS)
    for layout, sheet in (("band", "a4-6"), ("box", "a4-8"), ("round", "a4-6-tag"), ("wrap", "a4-2")):
        assert draw_labels(view, label_layout(layout), sheet_layout(sheet), count=1)


def test_precautions_may_go_on_a_leaflet_tag_or_card(label) -> None:
    said = refusal(replace(label, precautions=("Keep out of eyes. " * 40,)), "box", "a4-8")
    assert "no room for the precautions" in said
    assert "leaflet, tag or card that goes with the bar" in said
    assert "notice beside it" not in said  # that is for ingredients alone


def test_a_batch_code_may_stand_on_the_outer_packaging(label) -> None:
    said = refusal(replace(label, batch_code="26-118-0-" * 6), "box", "a4-8")
    assert "no room for the batch code" in said
    assert "mm of width" in said
    assert "outer packaging alone: Art 19(1)(e)" in said


def test_the_rest_needs_a_larger_layout(label) -> None:
    said = refusal(replace(label, product="Ringelblumenseifenstück"), "small", "a4-24")
    assert "no room for the product" in said
    assert "Take a larger layout" in said
    assert "Art 19" not in said


def test_where_another_law_holds_no_article_of_this_one_is_named(label) -> None:
    said = refusal(replace(label, market="us", ingredients=", ".join([NINE] * 12)), "band", "letter-5")
    assert "no room for the ingredients" in said
    assert "Art 19" not in said


def test_a_printed_code_that_its_kind_cannot_hold_is_refused(rack, tmp_path) -> None:
    path = tmp_path / "mine.toml"
    text = (templates() / "card-rack.toml").read_text(encoding="utf-8")
    path.write_text(text.replace('"qr"', '"ean13"').replace("module_mm = 1.0", ""), encoding="utf-8")
    assert "EAN-13 holds a trade number" in refusal(rack, str(path), "a4-8")


def test_a_layout_of_another_purpose_is_refused(label, ticket) -> None:
    assert refusal(ticket, "small", "a4-24") == (
        'The layout \'small, two panels\' is for = "bar"; take one for = "ticket" here.'
    )
    assert 'is for = "rack"; take one for = "bar"' in refusal(label, "card-rack", "a4-8")


def test_an_origin_without_a_place_is_refused_and_never_left_out(label, tmp_path) -> None:
    text = (templates() / "label-small.toml").read_text(encoding="utf-8")
    assert ', "origin"]' in text
    (tmp_path / "mine.toml").write_text(text.replace(', "origin"]', "]"), encoding="utf-8")
    mine = label_layout(str(tmp_path / "mine.toml"))
    check_placed(label, mine)
    abroad = replace(label, origin="Made in Ireland")
    with pytest.raises(
        Refused, match=r"has no place for the origin 'Made in Ireland'; write \"origin\" among the fields"
    ):
        check_placed(abroad, mine)
    for name in shipped("label"):
        check_placed(abroad, label_layout(name))


@pytest.mark.parametrize(("code", "refused"), [("eu", True), ("gb", True), ("us-soap", False), ("ca", False)])
def test_who_is_responsible_and_the_date_never_stand_on_a_tag_alone(label, tmp_path, code: str, refused: bool) -> None:
    """Art 19(2) lets precautions and ingredients go onto a tag; every shipped layout has the others on the bar."""
    text = (templates() / "label-tag.toml").read_text(encoding="utf-8")
    assert text.count('role = "back"') == 2
    (tmp_path / "mine.toml").write_text(text.replace('role = "back"', 'role = "tag"'), encoding="utf-8")
    sold = replace(label, market=code)
    if refused:
        says = "the responsible person and the best-before date never stand on a tag alone"
        with pytest.raises(Refused, match=says):
            check_placed(sold, label_layout(str(tmp_path / "mine.toml")))
    else:
        check_placed(sold, label_layout(str(tmp_path / "mine.toml")))
    for name in shipped("label"):
        check_placed(sold, label_layout(name))


def test_no_mark_points_to_a_tag_on_which_nothing_stands(label, read) -> None:
    form, page = label_layout("tag"), sheet_layout("a4-6-tag")
    empty = replace(label, ingredients="", precautions=())
    mm = 4 * 72 / 25.4
    corner = [round(one * mm) for one in (9 + 84.5, 21 + 66.6, 9 + 93.0, 21 + 83.4)]
    marked, bare = (read(draw_labels(one, form, page, count=1)).part(corner, scale=4) for one in (label, empty))
    assert min(marked.tobytes()) < 64
    assert min(bare.tobytes()) > 192
