"""Codes: the check character against its published worked example, and numbers as people quote them."""

import pytest
from stdnum.iso7064 import mod_11_2

from ledger.domain.codes import batch_code, lot_code, read_batch_code, spoken, supplier_number_key
from ledger.errors import BadInput, Refused


def published(digits: str) -> str:
    """ISO/IEC 7064 MOD 11-2, as ORCID's support pages print the algorithm."""
    total = 0
    for digit in digits:
        total = (total + int(digit)) * 2
    result = (12 - total % 11) % 11
    return "X" if result == 10 else str(result)


def test_the_worked_example_of_orcid_0000_0002_1825_0097() -> None:
    assert published("000000021825009") == "7"
    assert mod_11_2.calc_check_digit("000000021825009") == "7"


@pytest.mark.parametrize("number", [1, 7, 99, 118, 1000])
def test_a_batch_code_carries_the_published_check_character(number: int) -> None:
    digits = f"26{number:03d}"
    assert batch_code(2026, number) == f"26-{number:03d}-{published(digits)}"
    assert lot_code(number) == f"L{number}-{published(str(number))}"


def test_every_wrong_digit_and_every_swap_of_neighbours_is_caught() -> None:
    plain = batch_code(2026, 118).replace("-", "")
    wrong = {plain[:i] + d + plain[i + 1 :] for i in range(5) for d in "0123456789"} - {plain}
    wrong |= {plain[:i] + plain[i + 1] + plain[i] + plain[i + 2 :] for i in range(4)} - {plain}
    for text in wrong:
        with pytest.raises(Refused):
            read_batch_code(text)


def test_a_code_is_read_however_it_is_typed_and_said_aloud() -> None:
    assert read_batch_code(" 26 118 0 ") == read_batch_code("26.118–0") == "26-118-0"
    assert spoken("26-118-0") == "two six, one one eight, zero"
    with pytest.raises(BadInput):
        read_batch_code("hello")


@pytest.mark.parametrize("quoted", ["4471/2", "LOT 4471-2", "lot no. 44 71.2", "BN: 4471 2", "Batch 4471/2", "#44712"])
def test_a_supplier_number_is_the_same_however_it_is_quoted(quoted: str) -> None:
    assert supplier_number_key(quoted) == "44712"
