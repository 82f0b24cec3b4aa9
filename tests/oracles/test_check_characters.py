"""Our check characters against the published worked examples and the published algorithm of ISO/IEC 7064 MOD 11-2."""

from hypothesis import given
from hypothesis import strategies as st
from stdnum.iso7064 import mod_11_2

from ledger.units.codes import batch_code, lot_code


def published(digits: str) -> str:
    """The recursive method as ORCID publishes it ("Structure of the ORCID Identifier"), after ISO/IEC 7064 MOD 11-2."""
    total = 0
    for digit in digits:
        total = (total + int(digit)) * 2
    result = (12 - total % 11) % 11
    return "X" if result == 10 else str(result)


def by_weights(digits: str) -> str:
    """The other way of the standard: the sum of a_i x 2^(i-1), the check character at i = 1, leaves 1 over 11."""
    total = sum(int(digit) * pow(2, place, 11) for place, digit in enumerate(reversed(digits), 1))
    return "0123456789X"[(1 - total) % 11]


# ORCID's documentation gives 0000-0002-1825-0097 (and 0000-0002-1694-233X with the check character X).
def test_the_published_examples_come_out() -> None:
    for digits, check in (("000000021825009", "7"), ("000000021694233", "X")):
        assert published(digits) == by_weights(digits) == mod_11_2.calc_check_digit(digits) == check


@given(year=st.integers(2000, 2099), number=st.integers(1, 99_999))
def test_a_batch_code_carries_the_published_check_character(year: int, number: int) -> None:
    *body, check = batch_code(year, number).replace("-", "")
    assert check == published("".join(body)) == by_weights("".join(body))


@given(number=st.integers(1, 999_999))
def test_a_lot_code_carries_the_published_check_character(number: int) -> None:
    body, check = lot_code(number).removeprefix("L").split("-")
    assert check == published(body) == by_weights(body)
