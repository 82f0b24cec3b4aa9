"""Layout files: what is wrong is said by file, key and reason."""

from pathlib import Path

import pytest

from ledger.documents.layout import label_layout, sheet_layout, shipped
from ledger.errors import BadInput
from ledger.reference.shipped import templates

LAYOUTS = (
    *(f"label-{name}" for name in ("band", "pair", "round", "small", "wrap")),
    *("notice-shelf", "ticket-price", "card-rack"),
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
    assert len([sheet_layout(name) for name in shipped("sheet")]) == 9


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("law_max_pt = ", "law_max_ptt = ", "mine.toml, law_max_ptt: not known here; did you mean law_max_pt?"),
        ("law_min_x_height_mm = 1.2", "law_min_x_height_mm = 0.9", "law_min_x_height_mm: 0.9 does not lie between 1.2"),
        ("width_mm = 39.0", "width_mm = 60.0", "panel 2, width_mm: the panel reaches beyond its label"),
        ("x_mm = 28.0", "x_mm = 20.0", "panel 2, x_mm: the panel lies over the panel 'front'"),
        ('"precautions", ', "", "'precautions' stands 0 times; it belongs once"),
        ('"precautions"', '"precaution"', "'precaution' is not known; did you mean precautions?"),
        ("product_pt = 14.0", 'product_pt = "big"', "product_pt: a number is missing"),
        ('what = "label"', 'what = "sheet"', "this file is no label"),
        ("width_mm = 70.0", "width_mm = = 70.0", "mine.toml cannot be read"),
    ],
)
def test_a_faulty_label_is_named_by_file_key_and_reason(change, old: str, new: str, said: str) -> None:
    with pytest.raises(BadInput) as caught:
        label_layout(change("label-small", old, new))
    assert said in str(caught.value)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("columns = 3", "columns = 4", "pitch_x_mm: the last column reaches beyond the paper"),
        ("rows = 8", "rows = 9", "pitch_y_mm: the last row reaches beyond the paper"),
        ("pitch_y_mm = 37.0", "pitch_y_mm = 30.0", "lays labels over each other"),
        ('"A4"', '"A5"', "paper: write one of A4, Letter"),
        ("cut_marks = false", "", "cut_marks: write true"),
    ],
)
def test_a_faulty_sheet_is_named_by_file_key_and_reason(change, old: str, new: str, said: str) -> None:
    with pytest.raises(BadInput) as caught:
        sheet_layout(change("sheet-a4-24", old, new))
    assert said in str(caught.value)


def test_an_unknown_name_lists_what_there_is() -> None:
    with pytest.raises(BadInput, match=r"no label 'smal'\. Did you mean small\?"):
        label_layout("smal")
