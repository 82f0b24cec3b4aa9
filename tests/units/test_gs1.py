"""GS1 numbers are read with their check digit, and none is made up."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.errors import BadInput
from ledger.units.gs1 import check_digit, elements, read_gtin

GTIN = "6291041500213"  # the worked example GS1 publishes for its check digit
MADE = date(2026, 11, 25)


@pytest.mark.parametrize("text", [GTIN, " 6291041500213 ", "6 291041 500213", "629-1041-50021-3"])
def test_a_gtin_is_read_without_its_spaces_and_hyphens(text: str) -> None:
    assert read_gtin(text) == GTIN


def test_a_wrong_check_digit_is_refused_with_the_right_one() -> None:
    with pytest.raises(BadInput, match=r"'6291041500218' is not a GTIN: its check digit would be 3, not 8"):
        read_gtin("6291041500218")


@pytest.mark.parametrize("text", ["", "629104150021", "06291041500213", "629104150021X", "٦٢٩١٠٤١٥٠٠٢١٣"])
def test_another_length_or_sign_is_refused(text: str) -> None:
    with pytest.raises(BadInput, match="has 13 digits"):
        read_gtin(text)


@pytest.mark.parametrize("body", ["200000000000", "020000000000", "040000000000"])
def test_a_number_for_use_inside_one_company_is_no_gtin(body: str) -> None:
    with pytest.raises(BadInput, match="inside one company"):
        read_gtin(f"{body}{by_hand(body)}")


def by_hand(digits: str) -> int:
    """GS1's method: weights 3, 1, 3, … from the right; what is missing to the next ten."""
    return -sum(int(digit) * (3, 1)[place % 2] for place, digit in enumerate(reversed(digits))) % 10


@given(body=st.from_regex(r"[13-9][0-9]{11}", fullmatch=True), place=st.integers(0, 12), other=st.integers(1, 9))
def test_every_wrong_digit_is_noticed(body: str, place: int, other: int) -> None:
    assert check_digit(body) == str(by_hand(body))
    good = f"{body}{by_hand(body)}"
    wrong = good[:place] + str((int(good[place]) + other) % 10) + good[place + 1 :]
    assert read_gtin(good) == good
    with pytest.raises(BadInput):
        read_gtin(wrong)


def test_the_elements_of_a_bar() -> None:
    assert elements(GTIN, lot="26-118-0", made_on=MADE) == "(01)06291041500213(11)261125(10)26-118-0"


@pytest.mark.parametrize("lot", ["", "x" * 21, "26 118", "é"])
def test_a_lot_that_gs1_cannot_hold_is_refused(lot: str) -> None:
    with pytest.raises(BadInput, match="1 to 20"):
        elements(GTIN, lot=lot, made_on=MADE)
