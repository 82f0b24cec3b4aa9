"""Layout files: what is wrong is said by file, line and reason."""

from pathlib import Path

import pytest

from ledger.documents.kit.layout import label_layout, sheet_layout, shipped
from ledger.errors import BadInput
from ledger.reference.shipped import templates

LAYOUTS = (
    *(
        f"label-{name}"
        for name in (
            "band",
            "box",
            "card",
            "leaf-band",
            "leaf-box",
            "leaf-round",
            "leaf-tag",
            "leaf-wrap",
            "round",
            "small",
            "tag",
            "wrap",
        )
    ),
    *("sticker-small", "sticker-band", "notice-shelf", "ticket-price", "ticket-shelf", "ticket-stall"),
    *("card-rack", "lot-jar", "lot-drum", "parcel-label"),
)


@pytest.fixture
def change(tmp_path: Path):
    """A shipped file with one thing changed; returns the path of the copy."""

    def changed(name: str, old: str, new: str) -> str:
        text = (templates() / f"{name}.toml").read_text(encoding="utf-8")
        assert old in text
        path = tmp_path / "mine.toml"
        path.write_text(text.replace(old, new, 1), encoding="utf-8")
        return str(path)

    return changed


def test_every_shipped_layout_and_sheet_is_read() -> None:
    assert {label_layout(name).file for name in shipped("label")} == {f"{name}.toml" for name in LAYOUTS}
    assert len([sheet_layout(name) for name in shipped("sheet")]) == 11


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("law_max_pt = ", "law_max_ptt = ", "line 38: 'law_max_ptt' is not known here; did you mean law_max_pt?"),
        (
            "law_min_x_height_mm = 1.2",
            "law_min_x_height_mm = 0.9",
            "line 37: law_min_x_height_mm = 0.9 cannot be; write a number from 1.2",
        ),
        ("width_mm = 39.0", "width_mm = 60.0", "line 60 [panel], width_mm: the panel reaches beyond its label"),
        ("x_mm = 28.0", "x_mm = 20.0", "line 58 [panel], x_mm: the panel lies over the panel 'front'"),
        ('"precautions", ', "", "'precautions' stands 0 times; it belongs once"),
        ('"precautions"', '"precaution"', "'precaution' is not known; did you mean precautions?"),
        ("product_pt = 19.0", 'product_pt = "big"', "line 41: product_pt is a number; write it without"),
        ('what = "label"', 'what = "sheet"', "this file is no label"),
        ("width_mm = 70.0", "width_mm = = 70.0", "mine.toml, line 34, column 12: the file cannot be read"),
    ],
)
def test_a_faulty_label_is_named_by_file_line_and_reason(change, old: str, new: str, said: str) -> None:
    with pytest.raises(BadInput) as caught:
        label_layout(change("label-small", old, new))
    assert said in str(caught.value)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("columns = 3", "columns = 4", "pitch_x_mm: the last column reaches beyond the paper"),
        ("rows = 8", "rows = 9", "pitch_y_mm: the last row reaches beyond the paper"),
        ("pitch_y_mm = 37.0", "pitch_y_mm = 30.0", "lays labels over each other"),
        ('"A4"', '"A5"', "paper: write one of A4, Letter, roll"),
        ("cut_marks = false", "", "cut_marks: write true"),
    ],
)
def test_a_faulty_sheet_is_named_by_file_line_and_reason(change, old: str, new: str, said: str) -> None:
    with pytest.raises(BadInput) as caught:
        sheet_layout(change("sheet-a4-24", old, new))
    assert said in str(caught.value)


@pytest.mark.parametrize(
    ("name", "old", "new", "said"),
    [
        (
            "label-small",
            'for = "bar"',
            'for = "jar"',
            "mine.toml, line 32, for: write one of bar, notice, sticker, ticket, rack, lot",
        ),
        (
            "label-small",
            'fields = ["ingredients"',
            'fields = ["unit_price", "ingredients"',
            "'unit_price' does not belong",
        ),
        ("label-small", 'fields = ["ingredients"', 'fields = ["origin", "origin", "ingredients"', "once at most"),
        (
            "label-small",
            'fields = ["business", "product", "function"]',
            'fields = "product"',
            "line 52 [panel]: fields is a list of words",
        ),
        (
            "label-small",
            'fields = ["business", "product", "function"]',
            "fields = [7]",
            "line 52 [panel]: fields is a word, in",
        ),
        (
            "label-small",
            "mark_mm = 5.0",
            "mark_mm = 4.0",
            "line 43: mark_mm = 4.0 cannot be; write a number from 5 up to 20.",
        ),
        ("label-small", "mark_mm = 5.0", 'clear_space = "yes"', "line 43: clear_space is a yes or no"),
        ("label-small", "mark_mm = 5.0", 'code = "qr"', "code: no panel has the field 'code'"),
        ("label-small", "mark_mm = 5.0", "folds_mm = 5", "line 43: folds_mm is a list of numbers"),
        (
            "label-small",
            '[[panel]]\nname = "front"',
            '[[panel]]\nalign = "middle"',
            "line 46 [panel], align: write one",
        ),
        ("label-wrap", 'code = "qr"', 'code = "aztec"', "code: write one of qr, code128, ean13"),
        ("label-wrap", 'code = "qr"\n', "", "code: write one of qr, code128, ean13"),
        (
            "label-wrap",
            'code = "qr"\nmodule_mm = 0.4',
            'code = "ean13"\nmodule_mm = 0.7',
            "line 21: module_mm = 0.7 cannot be",
        ),
        ("label-round", "50.0]", "55.0]", "rounds_mm: the round of 55 mm reaches beyond its label"),
        ("label-round", "[26.0, 32.5, 50.0]", "[26.0, 32.5]", "line 11: rounds_mm is a list of circles"),
        (
            "label-round",
            "x_mm = 6.0",
            "x_mm = 2.0",
            "line 36 [panel], x_mm: the panel lies across the edge of the round",
        ),
        ("notice-shelf", '"ingredients"]', '"ingredients", "precautions"]', "'precautions' does not belong"),
        ("ticket-price", '"unit_price"', '"function"', "'unit_price' stands 0 times"),
        ("card-rack", '"ready_on"', '"made_on"', "'made_on' stands 2 times"),
    ],
)
def test_a_faulty_mark_code_round_or_purpose_is_named_too(change, name: str, old: str, new: str, said: str) -> None:
    with pytest.raises(BadInput) as caught:
        label_layout(change(name, old, new))
    assert said in str(caught.value)
    assert str(caught.value).startswith("mine.toml, ")


def test_columns_and_rows_are_whole(change) -> None:
    """Half a column was once dropped in silence."""
    with pytest.raises(BadInput, match=r"mine\.toml, line \d+: columns is a whole number\."):
        sheet_layout(change("sheet-a4-24", "columns = 3", "columns = 2.5"))
    with pytest.raises(BadInput, match=r"mine\.toml: rows is missing; write rows = 1\."):
        sheet_layout(change("sheet-a4-24", "rows = 8", ""))


def test_a_label_without_panels_is_named(tmp_path: Path) -> None:
    path = tmp_path / "mine.toml"
    path.write_text('what = "label"\nwidth_mm = 70\nheight_mm = 37\n', encoding="utf-8")
    with pytest.raises(BadInput, match=r"mine\.toml, panel: a label has one panel or more"):
        label_layout(str(path))


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("width_mm = 80.0", "columns = 2", "columns: a roll has one label to a page"),
        ("width_mm = 80.0", "", "mine.toml: width_mm is missing; write width_mm = 10."),
    ],
)
def test_a_faulty_roll_is_named_too(change, old: str, new: str, said: str) -> None:
    with pytest.raises(BadInput) as caught:
        sheet_layout(change("sheet-roll", old, new))
    assert said in str(caught.value)


def test_an_unknown_name_lists_what_there_is() -> None:
    with pytest.raises(BadInput, match=r"no label 'smal'\. Did you mean small\?"):
        label_layout("smal")
