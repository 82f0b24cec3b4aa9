"""Printed codes: read back by another library, and their quiet zones measured on the page."""

from dataclasses import replace
from typing import Any

import pytest
import zxingcpp

from ledger.documents.kit.layout import label_layout, sheet_layout
from ledger.documents.kit.printed_code import symbol
from ledger.documents.label.labels import draw_labels
from ledger.errors import Refused

CARD = """
what = "label"
for = "rack"
width_mm = 96
height_mm = 65
law_min_x_height_mm = 1.2
law_max_pt = 9
what_pt = 12
product_pt = 18
product_min_pt = 12
code = "{kind}"
module_mm = {module}

[[panel]]
x_mm = 2
y_mm = 2
width_mm = 92
height_mm = 30
fields = ["batch_code", "product", "made_on", "ready_on"]

[[panel]]
x_mm = 2
y_mm = 32
width_mm = {wide}
height_mm = 31
fields = ["code"]
"""
GTIN = "2012345678903"  # of the range for use within a shop: 2+1+3+5+7+9 + 3 * (0+2+4+6+8+0) = 87, check figure 3
SCALE = 10  # 28.35 dots a mm
DOTS = SCALE * 72 / 25.4


@pytest.fixture
def card(tmp_path, rack, read):
    """A picture of a card with a code of a kind in a panel of a width, from the corner of its place on."""

    def drawn(kind: str, text: str, *, module: float, wide: float = 92, scale: float = SCALE) -> Any:
        path = tmp_path / "card.toml"
        path.write_text(CARD.format(kind=kind, module=module, wide=wide), encoding="utf-8")
        view, page = replace(rack, code_text=text), replace(sheet_layout("a4-8"), cut_marks=False)
        data = draw_labels(view, label_layout(str(path)), page, count=1)
        place = [round(mm * scale * 72 / 25.4) for mm in (9, 18.5, 9 + 96, 18.5 + 65)]
        return read(data).part(place, scale=scale)

    return drawn


@pytest.mark.parametrize(
    ("kind", "text", "module", "form"),
    [
        ("qr", "26-118-0", 0.42, zxingcpp.BarcodeFormat.QRCode),
        ("code128", "26-118-X", 0.3, zxingcpp.BarcodeFormat.Code128),
        ("ean13", GTIN, 0.33, zxingcpp.BarcodeFormat.EAN13),
        ("ean13", GTIN, 0.264, zxingcpp.BarcodeFormat.EAN13),
        ("ean13", "201234567899", 0.5, zxingcpp.BarcodeFormat.EAN13),  # twelve figures: a 0 goes before them
    ],
)
def test_a_code_is_read_back(card, kind: str, text: str, module: float, form: Any) -> None:
    found = zxingcpp.read_barcodes(card(kind, text, module=module, scale=6), formats=form)
    assert [one.text for one in found] == [text.zfill(13) if kind == "ean13" else text]


def first_and_last_dark(picture: Any) -> tuple[int, int]:
    """The first and the last column with ink at the height of the code, in dots from the left of its panel."""
    strip = picture.crop([round(mm * DOTS) for mm in (2, 32 + 4, 2 + 92, 32 + 9)])
    left, _, right, _ = strip.point(lambda shade: 255 * (shade < 128)).getbbox()
    return left, right - 1


@pytest.mark.parametrize(
    ("kind", "text", "module", "quiet"),
    [("qr", "26-118-0", 0.5, 4), ("code128", "26-118-0", 0.3, 10), ("ean13", GTIN, 0.33, 11)],
)
def test_the_quiet_zone_at_the_left_is_kept_within_the_panel(card, kind, text, module, quiet) -> None:
    """The place begins 9 mm from the left and 18.5 mm from the top, its panel 2 and 32 mm further on."""
    first, _ = first_and_last_dark(card(kind, text, module=module))
    assert first / DOTS == pytest.approx(quiet * module, abs=0.05)


def test_the_quiet_zone_at_the_right_is_kept_where_the_panel_is_no_wider(card) -> None:
    """EAN-13 is 11 + 95 + 7 X: at 0.3 mm 33.9 mm; its last bar ends 7 X = 2.1 mm before the panel does."""
    first, last = first_and_last_dark(card("ean13", GTIN, module=0.3, wide=33.9))
    assert first / DOTS == pytest.approx(11 * 0.3, abs=0.05)
    assert 33.9 - (last + 1) / DOTS == pytest.approx(7 * 0.3, abs=0.05)


def test_a_code_shrinks_to_its_panel_but_not_below_its_least(card) -> None:
    """113 X of 0.264 mm are 29.832 mm."""
    assert zxingcpp.read_barcodes(card("ean13", GTIN, module=0.4, wide=31, scale=6))[0].text == GTIN
    with pytest.raises(Refused, match=r"no room for the printed code: 0\.9 mm of width"):
        card("ean13", GTIN, module=0.4, wide=29)


@pytest.mark.parametrize("text", ["26-118-0", "2012345678904", "201234567890", "٢٠١٢٣٤٥٦٧٨٩٠٣"])
def test_ean13_takes_a_trade_number_with_its_check_figure_and_nothing_else(text: str) -> None:
    with pytest.raises(Refused, match=r"EAN-13 holds a trade number|cannot be printed"):
        symbol("ean13", text)


def test_code_128_refuses_a_letter_with_an_accent() -> None:
    with pytest.raises(Refused, match="letters without accents"):
        symbol("code128", "Å-118")
