"""Codes are read however they are typed, a slip is caught, and a supplier's number is matched as it is quoted."""

import pytest

from ledger.errors import BadInput, Refused
from ledger.units.codes import (
    batch_code,
    looks_like_batch_code,
    looks_like_lot_code,
    lot_code,
    near_codes,
    read_batch_code,
    read_lot_code,
    supplier_number_key,
)

# ISO/IEC 7064 MOD 11-2 by hand, over 26118: each step is (sum + digit) x 2.
# 2 -> 4; (4 + 6) x 2 = 20; (20 + 1) x 2 = 42; (42 + 1) x 2 = 86; (86 + 8) x 2 = 188.
# 188 = 17 x 11 + 1, and 12 - 1 = 11, of which 11 are left out: 0.
# Over 41: 4 -> 8; (8 + 1) x 2 = 18 = 11 + 7; 12 - 7 = 5.
# Over 26001: 4, 20, 40, 80, (80 + 1) x 2 = 162 = 14 x 11 + 8; 12 - 8 = 4.
# Over 26003: 4, 20, 40, 80, (80 + 3) x 2 = 166 = 15 x 11 + 1; 0. Over 26007: (80 + 7) x 2 = 174 = 15 x 11 + 9; 3.
# Over 26004: (80 + 4) x 2 = 168 = 15 x 11 + 3; 9. Over 26009: (80 + 9) x 2 = 178 = 16 x 11 + 2; 10, written X.


def test_a_batch_code_is_year_number_and_check_character() -> None:
    assert batch_code(2026, 118) == "26-118-0"
    assert batch_code(2026, 1) == "26-001-4"
    assert batch_code(2026, 9) == "26-009-X"


def test_a_lot_code_is_its_number_and_check_character() -> None:
    assert lot_code(41) == "L41-5"


@pytest.mark.parametrize(
    "text",
    [
        "26-118-0",
        "261180",
        " 26 118 0 ",
        "26.118.0",
        "26.118–0",
        "26–118–0",
        "26\u2011118\u20110",
        "26--118-0",
        "26/118/0",
    ],
)
def test_a_batch_code_is_read_whatever_parts_it(text: str) -> None:
    assert read_batch_code(text) == "26-118-0"


def test_a_batch_code_is_read_in_small_letters() -> None:
    assert read_batch_code("26-009-x") == "26-009-X"


@pytest.mark.parametrize("text", ["L41-5", "l41-5", "l 41 5", "L415", "L.41.5"])
def test_a_lot_code_is_read_whatever_parts_it(text: str) -> None:
    assert read_lot_code(text) == "L41-5"


def test_a_mistyped_code_is_refused_with_the_character_that_would_fit() -> None:
    with pytest.raises(Refused, match=r"it would be 26-118-0\)\. Read the label again\."):
        read_batch_code("26-118-1")
    with pytest.raises(Refused, match=r"it would be L41-5\)\. Read the label again\."):
        read_lot_code("L41-6")


# Over 260118: 4, 20, 40, (40 + 1) x 2 = 82, (82 + 1) x 2 = 166, (166 + 8) x 2 = 348 = 31 x 11 + 7; 12 - 7 = 5.
# So 26-0118-5 passes its check character by chance, and must not pass for 26-118-0.
def test_a_nought_too_many_is_refused_even_where_the_check_character_fits() -> None:
    with pytest.raises(Refused, match="too many noughts"):
        read_batch_code("26-0118-5")


@pytest.mark.parametrize("text", ["", "hello", "26-11-0", "L41-5", "26-1X8-0", "4471/2"])
def test_what_has_not_the_shape_of_a_batch_code_is_bad_input(text: str) -> None:
    assert not looks_like_batch_code(text)
    with pytest.raises(BadInput, match="is not a batch code; one looks like 26-118-0"):
        read_batch_code(text)


@pytest.mark.parametrize("text", ["", "41-5", "L5", "LX", "26-118-0"])
def test_what_has_not_the_shape_of_a_lot_code_is_bad_input(text: str) -> None:
    assert not looks_like_lot_code(text)
    with pytest.raises(BadInput, match="is not a lot code of ours; one looks like L41-5"):
        read_lot_code(text)


def test_a_mistyped_code_still_has_the_shape_of_one() -> None:
    assert looks_like_batch_code("26-118-7")
    assert looks_like_lot_code("L41-X")


@pytest.mark.parametrize(
    "quoted",
    [
        "4471/2",
        " 4471-2 ",
        "4471 2",
        "4471.2",
        "4471_2",
        "#4471/2",
        "#44712",
        "LOT 4471-2",
        "lot no. 44 71.2",
        "BN: 4471 2",
        "'4471/2'",
        "LOT 4471/2",
        "lot4471/2",
        "Lot: 4471/2",
        "LOT NO 4471/2",
        "LOT-NO 4471/2",
        "Lot. No. 4471/2",
        "LOT/NO: 4471/2",
        "Lot number 4471-2",
        "LOT#4471/2",
        "BN 4471/2",
        "B/N: 4471/2",
        "L/N 4471/2",
        "Batch 4471/2",
        "BATCH NO. 4471/2",
        "LOT/BATCH 4471/2",
        "LOTE 4471/2",
        "Charge 4471/2",
        "Chargen-Nr. 4471/2",
        "Chargen Nr 4471/2",
    ],
)
def test_a_supplier_number_is_the_same_however_it_is_quoted(quoted: str) -> None:
    assert supplier_number_key(quoted) == "44712"


def test_letters_and_leading_noughts_of_a_supplier_number_count() -> None:
    assert supplier_number_key("SH 88 A") == "sh88a"
    assert supplier_number_key("0044") == "0044"
    assert supplier_number_key("LOT 0044") != supplier_number_key("44")


# A word that only begins like a prefix belongs to the number, and a prefix alone is the number itself.
@pytest.mark.parametrize(
    ("quoted", "key"),
    [("LOTUS 12", "lotus12"), ("Batchelor 5", "batchelor5"), ("LOT NORTH5", "north5"), ("LOT", "lot"), ("BN", "bn")],
)
def test_a_prefix_is_taken_off_only_where_it_is_one(quoted: str, key: str) -> None:
    assert supplier_number_key(quoted) == key


@pytest.mark.parametrize(
    ("typed", "near"),
    [
        ("26-118-1", ["26-118-0"]),  # the check character wrong
        ("26-113-0", ["26-118-0"]),  # a digit wrong
        ("26-181-0", ["26-118-0"]),  # neighbours swapped
        ("26-18-0", ["26-118-0"]),  # a digit left out
        ("261 118 0", ["26-118-0"]),  # one too many
        ("26-811-0", []),  # two slips
        ("26-118-0", []),  # none
        ("26-009-x", []),
    ],
)
def test_the_codes_one_slip_away_are_near(typed: str, near: list[str]) -> None:
    assert near_codes(typed, ["26-118-0", "26-009-X", "L41-5"]) == near
