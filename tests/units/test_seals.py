"""A seal is typed from paper: each slip of the hand is found before the ledger is asked."""

import pytest
from stdnum.iso7064 import mod_37_2

from ledger.errors import BadInput
from ledger.units.seals import SIGNS, read_seal, seal_of

DIGEST = "00000000000000000016" + "f" * 44  # 80 bits: the number 22, whatever follows them
SEAL = seal_of(41, DIGEST)


def test_the_signs_are_the_first_eighty_bits_in_base_twenty_three() -> None:
    """22 is the last sign; 23 is one, and none over. By hand: all other signs are the first, '2'."""
    assert len(SIGNS) == 23
    assert SEAL.text[:-1] == "41:2222-2222-2222-2222-2X"
    assert seal_of(41, "0" * 18 + "17" + "0" * 44).text[:-1] == "41:2222-2222-2222-2222-32"


def test_eighty_bits_fit_and_one_more_would_not_be_lost() -> None:
    assert 23**17 < 2**80 < 23**18


def test_no_sign_is_like_another() -> None:
    assert len(set(SIGNS)) == len(SIGNS)
    for alike in ("0OQD", "1IL", "2Z", "5S", "6G", "8B", "UVWY"):
        assert len(set(alike) & set(SIGNS)) <= 1


@pytest.mark.parametrize("entry", [1, 41, 895_096])
def test_the_check_character_is_that_of_the_standard_by_another_program(entry: int) -> None:
    plain = seal_of(entry, "9f86d081884c7d659a2feaa0c55ad015" * 2).text.partition(":")[2].replace("-", "")
    body = "".join(SIGNS[int(figure)] for figure in str(entry)) + plain[:-1]
    assert mod_37_2.calc_check_digit(body, alphabet=SIGNS) == plain[-1]


@pytest.mark.parametrize(
    "typed", [SEAL.text, SEAL.text.lower(), SEAL.text.replace("-", " "), f"  {SEAL.text} ", f"0{SEAL.text}"]
)
def test_it_is_read_however_it_is_grouped(typed: str) -> None:
    assert read_seal(typed) == SEAL


def test_every_wrong_sign_and_every_swap_of_neighbours_is_found() -> None:
    seal = seal_of(1240, "9f86d081884c7d659a2feaa0c55ad015" * 2).text
    number, _, signs = seal.replace("-", "").partition(":")
    slips = {f"{number}:{signs[:at]}{other}{signs[at + 1 :]}" for at in range(19) for other in SIGNS}
    slips |= {f"{number}:{signs[:at]}{signs[at + 1]}{signs[at]}{signs[at + 2 :]}" for at in range(18)}
    slips |= {f"{number[:at]}{other}{number[at + 1 :]}:{signs}" for at in range(4) for other in "0123456789"}
    slips |= {f"{swapped}:{signs}" for swapped in ("2140", "1420", "1204")}
    for slip in slips - {f"{number}:{signs}"}:
        with pytest.raises(BadInput, match="mistyped"):
            read_seal(slip)


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("yesterday", "is not a seal"),
        ("x:2222", "is not a seal"),
        ("41:", "is not a seal"),
        ("41:2222-2222-2222-2222-2O2", "no seal holds 'O'"),
        ("41:2222-2222-2222-2222-2", "17 signs follow the colon, not 19"),
    ],
)
def test_what_is_no_seal_is_told_how(typed: str, told: str) -> None:
    with pytest.raises(BadInput, match=told):
        read_seal(typed)
