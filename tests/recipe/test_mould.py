"""Moulds are read as people measure them, against volumes worked out by hand, and refused where a slip would flood."""

import pytest

from ledger.domain.recipe.mould import parse_mould
from ledger.errors import BadInput


@pytest.mark.parametrize(
    ("text", "ml"),
    [
        ("25 x 8 x 7 cm", 1400),
        ("250 x 80 x 70 mm", 1400),
        ("25 cm x 80 mm x 7 cm", 1400),  # each with its own unit
        ("25x8x7cm", 1400),
        ("25 × 8 × 7 cm", 1400),
        ("25,0 x 8,0 x 7,0 cm", 1400),
        ("21 x 7 x 6.5 cm", 955.5),
        ("10 x 3 x 4 in", 1966.448),  # 120 cubic inches x 16.387 064 mL (1 in = 25.4 mm exactly, NIST SP 811)
        ("25 x 8 x 7 cm, filled to 6 cm", 1200),
        ("25 x 8 x 7 cm, filled to 7 cm", 1400),
        ("cylinder 7.5 x 25 cm", 1104.466),  # pi / 4 x 7.5 x 7.5 x 25: the width goes across, 44.178 65 cm2
        ("cylinder 7.5 x 25 cm, filled to 20 cm", 883.573),
        ("6 of 8 x 5.5 x 2.5 cm", 660),  # 6 x 110
        ("6 of 8 x 5.5 x 2.5 cm, filled to 2 cm", 528),
        ("6 of 90 mL", 540),
        ("12 of 4 fl oz", 1419.529),  # 48 x 29.573 529 562 5 mL
        ("4 of cylinder 6 x 3 cm", 339.292),  # 4 x pi x 9 x 3
        ("1.2 L", 1200),
        ("25 x 8 x 7 in", 22_941.890),  # 1400 x 16.387 064: large, and still a mould
    ],
)
def test_a_mould_holds_what_its_sizes_multiply_to(text: str, ml: float) -> None:
    mould = parse_mould(text)
    assert mould.volume_ul / 1000 == pytest.approx(ml, abs=0.001)
    assert mould.text == text


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "cannot be read"),
        ("loaf", "cannot be read"),
        ("25 x 8 cm", "cannot be read"),  # a box has three sizes
        ("25 x 8 x 7 x 2 cm", "cannot be read"),
        ("cylinder 7.5 cm", "cannot be read"),
        ("cylinder 7.5 x 25 x 3 cm", "cannot be read"),
        ("25 x 8 x 7", "cannot be read"),  # of what?
        ("25 x 8 x 7 furlongs", "not a unit known here"),
        ("-25 x 8 x 7 cm", "cannot be below zero"),
        ("25 x 8 x 7 cm, filled to 8 cm", "cannot be filled higher than it is"),
        ("25 x 8 x 7 cm, filled to 0 cm", "cannot be filled higher than it is"),
        ("25 x 8 x 7 cm, filled to the brim", "cannot be read"),
        ("25 x 8 x 7 mm", "would hold 1.4 mL; look at the figures and the unit"),
        ("250 x 80 x 70 cm", "would hold 1.4e+06 mL; look at the figures and the unit"),
        ("0 of 90 mL", "would hold 0 mL; look at the figures and the unit"),
        ("900 g", "not a unit known here"),
    ],
)
def test_what_is_no_mould_is_answered_with_what_to_write(text: str, says: str) -> None:
    with pytest.raises(BadInput) as refused:
        parse_mould(text)
    assert says in str(refused.value)
    assert "\n" not in str(refused.value)
