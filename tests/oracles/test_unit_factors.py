"""The units against NIST SP 811 (2008), appendix B, in bold there because they are exact."""

from fractions import Fraction

import pytest

from ledger.units.quantity import parse_amount, parse_length, parse_mass, parse_volume, show_mass, show_volume


# Appendix B.8: pound (avoirdupois) 4.535 923 7 E-01 kg exactly (footnote), so an ounce, its sixteenth, is
# 28.349 523 125 g (B.8 rounds it to 2.834 952 E-02 kg). Thousands of each show every figure in whole mg.
@pytest.mark.parametrize(
    ("text", "mg"),
    [
        ("100000 lb", 45_359_237_000),
        ("10000 oz", 283_495_231),
        ("16 oz", 453_592),
        ("1 kg", 1_000_000),
        ("1 g", 1_000),
        ("1 mg", 1),
    ],
)
def test_masses(text: str, mg: int) -> None:
    assert parse_mass(text) == mg
    assert parse_amount(text) == mg


# Appendix B.8: inch 2.54 E-02 m exactly; gallon (US) 231 cubic inches (B.6), so a US fluid ounce, its 128th, is
# 231 x 2.54^3 / 128 mL = 29.573 529 562 5 mL (B.8 rounds it to 2.957 353 E-05 m3).
FLUID_OUNCE_ML = Fraction(231, 128) * Fraction("2.54") ** 3


@pytest.mark.parametrize(
    ("text", "microlitres"),
    [
        ("100000 fl oz", 2_957_352_956),
        ("128 fl oz", 3_785_412),  # a gallon: B.8 gives 3.785 412 E-03 m3
        ("1 L", 1_000_000),
        ("1 cl", 10_000),
        ("1 mL", 1_000),
    ],
)
def test_volumes(text: str, microlitres: int) -> None:
    assert Fraction("29.5735295625") == FLUID_OUNCE_ML
    assert parse_volume(text) == microlitres


@pytest.mark.parametrize(
    ("text", "micrometres"),
    [("1 in", 25_400), ("8 in", 203_200), ("3.5 in", 88_900), ("1 cm", 10_000), ("1 mm", 1_000)],
)
def test_lengths(text: str, micrometres: int) -> None:
    assert parse_length(text) == micrometres


def test_the_units_come_back_as_they_were_typed() -> None:
    for ounces in ("1", "4", "32", "79"):
        assert show_mass(parse_mass(f"{ounces} oz"), "us") == f"{ounces}.00 oz"
    assert show_volume(parse_volume("36.4 fl oz"), "us") == "36.4 fl oz"
