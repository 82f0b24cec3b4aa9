"""Signs that nobody sees are refused with their place, or shown by their number; names compare in one form."""

import json

import pytest

from ledger.errors import BadInput
from ledger.units.codes import keys_kept, supplier_number_key
from ledger.units.names import match_name
from ledger.units.signs import composed, escaped, folded, masked, refuse_unseen

UNSEEN = [
    *map(chr, [*range(0x00, 0x09), 0x0B, 0x0C, *range(0x0E, 0x20), *range(0x7F, 0xA0)]),  # C0 and C1 but line ends
    *map(chr, [*range(0x202A, 0x202F), *range(0x2066, 0x206A), 0x200E, 0x200F, 0x061C]),  # directions
    *map(chr, [0x200B, 0x200C, 0x200D, 0x2060, 0xFEFF, 0x00AD, 0x2028, 0x2029]),
    *map(chr, [0x034F, 0x115F, 0x1160, 0x17B4, 0x17B5, 0x2800, 0x3164, 0xFFA0]),  # drawn blank
]
SEEN = [
    "Éva Ní Dhuibhne",
    "E\u0301va",
    "水谷石鹸",
    "עברית",
    "\u202f12 %",  # narrow no-break space
    "👩‍🌾",  # a woman and a sheaf, joined
    "👩🏽‍🌾",  # the same with a colour
    "❤️‍🔥",
    "🏴\U000e0067\U000e0062\U000e0073\U000e0063\U000e0074\U000e007f",  # the flag of Scotland
    "\u0600١٢",  # a number sign of Arabic, which is seen
]


@pytest.mark.parametrize("sign", UNSEEN, ids=lambda sign: f"{ord(sign):04X}")
def test_a_sign_that_nobody_sees_is_refused_with_its_place(sign: str) -> None:
    with pytest.raises(BadInput) as told:
        refuse_unseen(f"Ever{sign}green", "NAME")
    assert str(told.value).startswith(f"NAME, sign 5: after 'Ever' stands U+{ord(sign):04X}, a")
    assert "\n" not in str(told.value)
    assert str(told.value).isprintable()
    assert masked(f"Ever{sign}green") == f"Ever[U+{ord(sign):04X}]green"
    assert json.loads(escaped(f'"Ever{sign}green"')) == f"Ever{sign}green" or ord(sign) < 0x20
    assert escaped(f"Ever{sign}green").isprintable()


@pytest.mark.parametrize("text", SEEN)
def test_what_is_seen_may_stand(text: str) -> None:
    refuse_unseen(text, "NAME")
    assert masked(text) == text == escaped(text)


def test_a_joiner_or_a_flags_ending_alone_is_not_part_of_a_picture() -> None:
    for text in ("👩\u200d", "\u200d👩", "a\u200d👩", "👩\u200db", "👩\U000e007f"):
        with pytest.raises(BadInput):
            refuse_unseen(text, "NAME")


def test_the_place_in_a_file_is_its_line() -> None:
    refuse_unseen("one\n\ttwo\n", "x.toml", lines=True)
    with pytest.raises(BadInput, match=r"^x.toml, line 2, sign 4: after 'one two' stands U\+200B, a space"):
        refuse_unseen("one\ntwo\u200b\n", "x.toml", lines=True)
    with pytest.raises(BadInput, match="line 1, sign 1: at the beginning"):
        refuse_unseen("\u202eone\ntwo\n", "x.toml", lines=True)


def test_line_ends_stand_in_what_is_shown() -> None:
    assert masked("a\nb\tc\u202e") == "a\nb\tc[U+202E]"
    assert escaped('{\n"a": "\u202e\U000e0001"}') == '{\n"a": "\\u202e\\udb40\\udc01"}'


def test_names_compare_in_one_form() -> None:
    assert folded("E\u0301VA") == folded("éva") == "éva"
    assert folded("STRASSE") == folded("Straße")
    assert composed("E\u0301va") == "Éva"
    names = [("eva", "E\u0301va Fenn"), ("oda", "Oda")]  # as an earlier program kept it
    assert match_name("Éva Fenn", names, noun="supplier", add="x") == "eva"
    assert match_name("e\u0301v", names, noun="supplier", add="x") == "eva"


def test_a_lot_number_has_one_key_however_its_accent_is_typed() -> None:
    assert supplier_number_key("E\u0301-12") == supplier_number_key("É 12") == "é12"
    assert set(keys_kept("É12")) == {"é12", "e12"}  # the second as earlier programs kept the accent in two signs
    assert set(keys_kept("E12")) == {"e12"}
