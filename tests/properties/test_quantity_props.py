"""What is shown can be typed again, and means the same to the figures shown."""

from contextlib import suppress
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from ledger.errors import BadInput
from ledger.units.money import parse_money, show_money
from ledger.units.quantity import (
    parse_length,
    parse_mass,
    parse_number,
    parse_pieces,
    parse_share,
    parse_temperature,
    show_mass,
    show_share,
    show_temperature,
)


# Shown to 0.01 g under 10 g, 0.1 g under 10 kg, 0.01 kg above: off by at most half of that.
@given(mg=st.integers(0, 10**9))
def test_a_weight_shown_reads_back_within_half_its_last_figure(mg: int) -> None:
    half = 5 if mg < 10_000 else 50 if mg < 10_000_000 else 5_000
    assert abs(parse_mass(show_mass(mg)) - mg) <= half


# Shown to 0.01 oz (283.495 mg) below 5 lb (2 267 961.85 mg) and to 0.01 lb (4 535.923 7 mg) above; half of that,
# and one milligram for rounding on reading.
@given(mg=st.integers(0, 10**9))
def test_a_weight_in_ounces_or_pounds_reads_back_within_half_its_last_figure(mg: int) -> None:
    half = 142 if mg < 2_267_962 else 2_268
    assert abs(parse_mass(show_mass(mg, "us")) - mg) <= half + 1


@given(ppm=st.integers(0, 1_000_000))
def test_a_share_shown_reads_back_within_half_its_last_figure(ppm: int) -> None:
    assert abs(parse_share(show_share(ppm), what="the share") - ppm) <= 500
    assert parse_share(show_share(ppm, decimals=4), what="the share") == ppm


@given(milli_c=st.integers(-50_000, 250_000), units=st.sampled_from(["metric", "us"]))
def test_a_temperature_shown_reads_back_within_half_a_tenth(milli_c: int, units: str) -> None:
    assert abs(parse_temperature(show_temperature(milli_c, units)) - milli_c) <= 50


@given(minor=st.integers(0, 10**9 - 1), currency=st.sampled_from(["EUR", "JPY", "KWD"]))
def test_money_shown_reads_back_exactly(minor: int, currency: str) -> None:
    assert parse_money(show_money(minor, currency), currency) == minor


@given(whole=st.integers(0, 10**9 - 1), decimals=st.text("0123456789", min_size=1, max_size=6))
def test_a_comma_means_what_a_point_means_or_is_refused(whole: int, decimals: str) -> None:
    with_point = parse_number(f"{whole}.{decimals}")
    assert with_point == Fraction(int(f"{whole}{decimals}"), 10 ** len(decimals))
    try:
        assert parse_number(f"{whole},{decimals}") == with_point
    except BadInput:
        assert len(decimals) == 3
        assert 1 <= whole <= 999


# The second alphabet hits the figures, signs and units that matter far more often than any text would.
@given(text=st.text(max_size=20) | st.text("0123456789.,- %°CFgkozlbmLfin", max_size=30))
def test_any_text_is_read_or_refused_and_fits_the_file(text: str) -> None:
    for parse in (parse_mass, parse_temperature, parse_pieces, parse_length, parse_share):
        with suppress(BadInput):
            assert abs(parse(text)) < 2**63
