"""Weights, shares, temperatures and lengths are read as people write them, and refused where they could mislead."""

from fractions import Fraction

import pytest

from ledger.errors import BadInput
from ledger.units.quantity import (
    parse_amount,
    parse_length,
    parse_mass,
    parse_number,
    parse_pieces,
    parse_share,
    parse_temperature,
    show_mass,
    show_masses,
    show_sap,
    show_share,
    show_temperature,
    with_scale_unit,
)

NBSP = "\u00a0"


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("1284.5", Fraction(2569, 2)),
        ("1 284.5", Fraction(2569, 2)),
        (f"1{NBSP}284.5", Fraction(2569, 2)),
        ("1\u202f284.5", Fraction(2569, 2)),
        ("12,5", Fraction(25, 2)),
        ("1.284", Fraction(1284, 1000)),
        ("0,125", Fraction(1, 8)),  # no thousands begin with a nought, so this is an eighth
        ("1 284,125", Fraction(1_284_125, 1000)),  # the thousands are parted by a space, so the comma is the decimals'
        (".5", Fraction(1, 2)),
        (" 7 ", Fraction(7)),
    ],
)
def test_a_number_is_read_with_a_point_or_a_comma(text: str, number: Fraction) -> None:
    assert parse_number(text) == number


def test_a_comma_before_three_digits_is_ambiguous_by_a_thousand() -> None:
    with pytest.raises(BadInput, match=r"can be read two ways; write 1284 or 1\.284\."):
        parse_number("1,284")


@pytest.mark.parametrize(
    "text", ["", "  ", "-5", "−5", "+5", "NaN", "inf", "1e3", "1.2.3", "1,284.5", "12 34", "1284 500", "five"]
)
def test_what_is_not_a_plain_number_is_refused(text: str) -> None:
    with pytest.raises(BadInput):
        parse_number(text)


@pytest.mark.parametrize(
    ("typed", "metric", "us"),
    [
        ("182.4", 182_400, 5_170_953),  # 182.4 x 28 349.523125 mg = 5 170 953.018 mg
        ("1", 1000, 28_350),
        ("0", 0, 0),
        ("1 kg", 1_000_000, 1_000_000),
        ("2oz", 56_699, 56_699),  # 2 x 28 349.523125 mg
    ],
)
def test_a_weight_without_a_unit_is_in_that_of_her_scale(typed: str, metric: int, us: int) -> None:
    assert (parse_mass(with_scale_unit(typed, "metric")), parse_mass(with_scale_unit(typed, "us"))) == (metric, us)


def test_no_unit_is_put_behind_what_is_no_number() -> None:
    for typed in ("", "-", "182.", "182.4 gr"):
        with pytest.raises(BadInput):
            parse_mass(with_scale_unit(typed, "metric"))


# A file holds whole numbers up to 2 to the 63rd, about 9.2 million million million; a bar code typed where a
# weight was asked for must not come near it.
@pytest.mark.parametrize("text", ["5012345678900", "1000000000", "9" * 20])
def test_a_figure_too_large_to_be_meant_is_refused(text: str) -> None:
    for read in (parse_number, parse_pieces, lambda typed: parse_mass(f"{typed} kg")):
        with pytest.raises(BadInput, match="is too large to be meant"):
            read(text)


def test_a_figure_without_end_is_refused() -> None:
    for text in ("9" * 5000, "1." + "1" * 5000):
        with pytest.raises(BadInput):
            parse_number(text)


def test_the_message_keeps_the_capitals_of_what_it_names() -> None:
    with pytest.raises(BadInput, match=r"^The pH cannot be below zero: '-5'"):
        parse_number("-5", what="the pH")


# NIST SP 811 (2008), appendix B: 1 lb = 453.592 37 g exactly, 1 oz = 1/16 lb = 28.349 523 125 g.
@pytest.mark.parametrize(
    ("text", "mg"),
    [
        ("182.4 g", 182_400),
        ("182.4g", 182_400),
        ("182,4 G", 182_400),
        ("250 mg", 250),
        ("12 kg", 12_000_000),
        ("0,125 kg", 125_000),
        ("1 lb", 453_592),  # 453 592.37 mg
        ("1 oz", 28_350),  # 28 349.523 mg
        ("16 oz", 453_592),
        ("100 lb", 45_359_237),
        ("1 284.5 g", 1_284_500),
    ],
)
def test_a_weight_is_read_in_milligrams(text: str, mg: int) -> None:
    assert parse_mass(text) == mg


@pytest.mark.parametrize(
    ("text", "advice"),
    [
        ("12 kgs", "write 12 kg "),
        ("3 lbs", "write 3 lb "),
        ("5 ounces", "write 5 oz "),
        ("5 pounds", "write 5 lb "),
        ("5 kilos", "write 5 kg "),
        ("5 grams", "write 5 g "),
        ("5 stone", "write the weight in g, mg, kg, oz or lb"),  # nothing close: no one unit is put in her mouth
        ("1 kg 200 g", "write the weight in g, mg, kg, oz or lb"),
        # a unit that is only near is another one: a tenth of a litre, a hundredth of a gram, 65 mg
        ("5 dl", "write the weight in g, mg, kg, oz or lb"),
        ("5 cg", "write the weight in g, mg, kg, oz or lb"),
        ("5 grains", "write the weight in g, mg, kg, oz or lb"),
        ("5 fluid ounces", "write the weight in g, mg, kg, oz or lb"),
        ("1e3 g", "write the weight in g, mg, kg, oz or lb"),
    ],
)
def test_an_unknown_unit_is_answered_with_the_unit_meant(text: str, advice: str) -> None:
    with pytest.raises(BadInput) as refused:
        parse_mass(text)
    assert advice in str(refused.value)
    assert "\n" not in str(refused.value)


def test_a_weight_without_a_unit_asks_of_what() -> None:
    with pytest.raises(BadInput, match=r"^12 of what\? Write the fats with its unit, such as 12 g\.$"):
        parse_mass("12", what="the fats")


@pytest.mark.parametrize("text", ["", "g", "-5 g", "−5 g", "NaN g", "1,284 g"])
def test_a_weight_that_cannot_be_read_is_refused(text: str) -> None:
    with pytest.raises(BadInput):
        parse_mass(text)


def test_a_volume_is_no_weight() -> None:
    with pytest.raises(BadInput, match="is a volume; weigh it"):
        parse_mass("5 L")


# An oil of 0.915 g/mL weighs 915 mg per mL. 1 US fl oz = 29.573 529 562 5 mL (NIST SP 811), so
# 29.573 529 562 5 x 915 = 27 059.779 5 mg.
@pytest.mark.parametrize(
    ("text", "mg"),
    [
        ("10 mL", 9_150),
        ("10 ml", 9_150),
        ("5 L", 4_575_000),
        ("5 l", 4_575_000),
        ("1 fl oz", 27_060),
        ("1 fl. oz.", 27_060),
        ("5 kg", 5_000_000),
    ],
)
def test_a_volume_becomes_a_weight_by_the_density(text: str, mg: int) -> None:
    assert parse_amount(text, density_mg_per_ml=915) == mg


def test_a_volume_without_a_density_is_refused() -> None:
    with pytest.raises(BadInput, match="the density is not known"):
        parse_amount("5 L")


def test_an_amount_in_an_unknown_unit_names_the_nearest() -> None:
    with pytest.raises(BadInput, match="write 5 L "):
        parse_amount("5 litres", density_mg_per_ml=915)


def test_pieces_are_whole_numbers() -> None:
    assert parse_pieces(" 12 ") == 12
    assert parse_pieces("0") == 0
    for text in ("", "-1", "1.5", "1,5", "1e3", "ten"):
        with pytest.raises(BadInput):
            parse_pieces(text)


@pytest.mark.parametrize(
    ("text", "ppm"), [("5 %", 50_000), ("5", 50_000), ("5.25%", 52_500), ("5,25 %", 52_500), ("0", 0)]
)
def test_a_share_is_a_percentage_with_or_without_its_sign(text: str, ppm: int) -> None:
    assert parse_share(text, what="the superfat") == ppm


def test_a_share_that_cannot_be_read_is_refused() -> None:
    for text in ("", "%", "5 %%", "-5 %", "5 g"):
        with pytest.raises(BadInput):
            parse_share(text, what="the superfat")


# 120.2 °F: (120.2 - 32) x 5/9 = 49.0 °C. 120 °F: 88 x 5/9 = 48.888 9 °C. -40 is the same in both.
@pytest.mark.parametrize(
    ("text", "milli_c"),
    [
        ("49 C", 49_000),
        ("49.5 °C", 49_500),
        ("49,5c", 49_500),
        ("-5 C", -5_000),
        ("−5 °C", -5_000),
        ("120.2 F", 49_000),
        ("120°F", 48_889),
        ("-40 F", -40_000),
    ],
)
def test_a_temperature_is_read_in_thousandths_of_a_degree(text: str, milli_c: int) -> None:
    assert parse_temperature(text) == milli_c


def test_a_temperature_needs_its_scale() -> None:
    with pytest.raises(BadInput, match=r"^49 degrees of which kind\? Write 49 C or 49 F\.$"):
        parse_temperature("49")
    for text in ("", "49 K", "NaN C", "hot"):
        with pytest.raises(BadInput):
            parse_temperature(text)


# 1 in = 25.4 mm exactly (NIST SP 811).
@pytest.mark.parametrize(("text", "um"), [("80 mm", 80_000), ("8 cm", 80_000), ("1 in", 25_400), ("2.5 in", 63_500)])
def test_a_length_is_read_in_micrometres(text: str, um: int) -> None:
    assert parse_length(text) == um


def test_a_length_in_an_unknown_unit_names_the_nearest() -> None:
    with pytest.raises(BadInput, match="write 3 in "):
        parse_length("3 inches")
    with pytest.raises(BadInput, match="80 of what"):
        parse_length("80")


@pytest.mark.parametrize(
    ("mg", "shown"),
    [
        (0, "0 g"),
        (1_234, "1.23 g"),
        (1_235, "1.24 g"),  # half up
        (9_500, "9.5 g"),
        (182_400, "182.4 g"),
        (182_449, "182.4 g"),
        (182_450, "182.5 g"),
        (1_284_000, f"1{NBSP}284 g"),
        (9_999_900, f"9{NBSP}999.9 g"),
        (10_000_000, "10.00 kg"),
        (12_345_678, "12.35 kg"),
        (-2_500, "−2.5 g"),
    ],
)
def test_a_weight_is_shown_as_her_scale_reads_it(mg: int, shown: str) -> None:
    assert show_mass(mg) == shown


# 4 oz = 113 398.09 mg. 5 lb = 2 267 961.85 mg, so 2 267 961 mg is still in ounces: 79.999 97 oz.
@pytest.mark.parametrize(
    ("mg", "shown"), [(113_398, "4.00 oz"), (2_267_961, "80.00 oz"), (2_267_962, "5.00 lb"), (4_535_924, "10.00 lb")]
)
def test_a_weight_is_shown_in_ounces_and_from_five_pounds_in_pounds(mg: int, shown: str) -> None:
    assert show_mass(mg, "us") == shown


def test_shares_temperatures_and_saponification_values_are_shown() -> None:
    assert show_share(52_000) == "5.2 %"
    assert show_share(52_500) == "5.3 %"  # half up
    assert show_share(52_500, decimals=2) == "5.25 %"
    assert show_share(50_000, decimals=0) == "5 %"
    assert show_temperature(49_000) == "49.0 °C"
    assert show_temperature(49_000, "us") == "120.2 °F"
    assert show_temperature(-5_000) == "−5.0 °C"
    assert show_sap(190_000) == "190.0"


@pytest.mark.parametrize(
    ("masses", "units", "shown"),
    [
        ((60_001, 0, 971_910), "metric", ("g", ["60.0", "–", "971.9"])),
        ((60_001, 10_000_000), "metric", ("kg", ["0.06", "10.00"])),
        ((28_350, 1_000_000), "us", ("oz", ["1.00", "35.27"])),
        ((28_350, 2_267_962), "us", ("lb", ["0.06", "5.00"])),  # 5 lb = 2 267 961.85 mg
        ((), "metric", ("g", [])),
    ],
)
def test_the_masses_of_a_table_stand_in_one_unit_with_equal_decimals(
    masses: tuple[int, ...], units: str, shown: tuple[str, list[str]]
) -> None:
    assert show_masses(masses, units) == shown


# NIST SP 811 (2008), appendix B: 1 oz = 28.349 523 125 g, 1 lb = 453.592 37 g, exactly.
@pytest.mark.parametrize(
    ("text", "mg"),
    [
        ("1 lb 12 oz", 793_787),  # 28 oz x 28 349.523125 = 793 786.6475
        ("1lb 12oz", 793_787),
        ("2 lbs, 0 oz", 907_185),  # 2 x 453 592.37 = 907 184.74
        ("1 pound and 1/2 ounce", 467_767),  # 453 592.37 + 14 174.7615625 = 467 767.13
        ("0 lb 15.5 oz", 439_418),  # 15.5 x 28 349.523125 = 439 417.608
        ("1/2 oz", 14_175),  # 14 174.7615625
        ("1 1/2 lb", 680_389),  # 680 388.555
        ("1½ lb", 680_389),
        ("¼ kg", 250_000),
        ("3/4 oz", 21_262),  # 21 262.14
    ],
)
def test_pounds_with_ounces_and_fractions_are_read(text: str, mg: int) -> None:
    assert parse_mass(text) == mg
    assert parse_amount(text) == mg


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("1 lb 16 oz", "16 ounces are a pound"),
        ("1 1/2 lb 4 oz", "whole pounds with ounces below 16"),
        ("11/2 oz", "its upper number the smaller one"),  # eleven halves, or one and a half without its space
        ("2/2 oz", "its upper number the smaller one"),
        ("1/0 oz", "its upper number the smaller one"),
        ("0/2 oz", "its upper number the smaller one"),
        ("1/2/3 oz", "its upper number the smaller one"),
        ("1 lb 12 g", "is not a unit known here"),
    ],
)
def test_what_could_be_another_quantity_is_refused(text: str, said: str) -> None:
    for read in (parse_mass, parse_amount):
        with pytest.raises(BadInput, match=said):
            read(text)


# NIST Handbook 44, appendix C: teaspoon 4.928 92 mL, tablespoon 14.786 8 mL, cup 236.588 mL; at 1 g/mL these are grams.
@pytest.mark.parametrize(
    ("text", "mg"),
    [
        ("1 tsp", 4_929),
        ("2 teaspoons", 9_858),
        ("1 tbsp", 14_787),
        ("1/2 tablespoon", 7_393),
        ("1 cup", 236_588),
        ("1 1/2 cups", 354_882),
        ("1 metric tsp", 5_000),
        ("3 metric tablespoons", 45_000),
        ("1 metric cup", 250_000),
    ],
)
def test_spoons_and_cups_are_of_us_measure_unless_metric_is_said(text: str, mg: int) -> None:
    assert parse_amount(text, density_mg_per_ml=1000) == mg
