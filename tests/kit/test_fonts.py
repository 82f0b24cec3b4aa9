"""The typeface: what it can print, and how high it stands."""

import struct

import pytest
from reportlab.pdfbase import pdfmetrics

from ledger.documents.kit.fonts import (
    BOLD,
    FALLBACK,
    FIGURE_HEIGHT,
    MEDIUM,
    REGULAR,
    X_HEIGHT,
    check_glyphs,
    printable,
    register,
    runs,
    size_for_x_height,
    unprintable,
    width,
)
from ledger.errors import Refused

# Polish, Czech, Turkish, Nordic, Baltic, Romanian, Hungarian, German letters, and signs that documents use.
LETTERS = "ĄĆĘŁŃÓŚŹŻ ąćęłńóśźż ČĎĚŇŘŠŤŮŽ čďěňřšťůž ĞİŞ ğış ÅÄÖÆØÞÐ åäöæøþð ĀĒĢĪĶĻŅŪ ĂȘȚ ășț ŐŰ őű ß €℮°–→−·"


@pytest.mark.parametrize("face", [REGULAR, MEDIUM, BOLD])
def test_every_face_has_the_letters_of_european_names(face: str) -> None:
    register()
    known = pdfmetrics.getFont(face).face.charToGlyph
    assert [sign for sign in LETTERS if ord(sign) not in known] == []


def test_a_character_the_face_lacks_is_refused_naming_it_and_its_field() -> None:
    with pytest.raises(Refused, match=r"product has the character '石' \(U\+77F3\)"):
        check_glyphs("Soap 石", "product")


def test_the_heights_are_those_of_the_font_file() -> None:
    """Table OS/2 version 2 and later: sxHeight at byte 86, sCapHeight at byte 88 (OpenType specification)."""
    register()
    with open(pdfmetrics.getFont(REGULAR).face.filename, "rb") as font:
        data = font.read()
    tables = {
        data[at : at + 4]: struct.unpack(">II", data[at + 8 : at + 16])
        for at in range(12, 12 + 16 * struct.unpack(">H", data[4:6])[0], 16)
    }
    start = tables[b"OS/2"][0]
    assert struct.unpack(">hh", data[start + 86 : start + 90]) == (X_HEIGHT, FIGURE_HEIGHT)


def test_an_x_height_of_1_2_mm_needs_6_6_points() -> None:
    # 1.2 mm = 3.402 points; the x-height is 0.516 of the size: 3.402 / 0.516 = 6.592
    assert size_for_x_height(1.2) == pytest.approx(6.592, abs=0.001)


def test_a_text_is_set_in_the_face_that_has_it_and_the_rest_by_its_number() -> None:
    """Code points by The Unicode Standard: water 6C34, alef 05D0, soap 1F9FC, right-to-left override 202E."""
    assert runs(printable("Éva 水谷, Москва"), REGULAR) == [
        (REGULAR, "Éva "),
        (FALLBACK, "水谷"),
        (REGULAR, ", "),
        (FALLBACK, "Москва"),
    ]
    assert printable("א🧼\u202ex") == "[U+05D0] [U+1F9FC] [U+202E]x"
    assert printable("E\u0301va") == "Éva"
    assert unprintable("水 🧼 🧼 א") == ("🧼", "א")
    assert unprintable("Éva & Söhne") == ()


def test_a_width_counts_each_part_in_its_own_face() -> None:
    assert width("a水", REGULAR, 10) == width("a", REGULAR, 10) + pdfmetrics.stringWidth("水", FALLBACK, 10)
    assert pdfmetrics.stringWidth("水", FALLBACK, 10) == 10  # an ideograph is as wide as high


@pytest.mark.parametrize("sign", ["\u00ad", "\r", "\u202e"])
def test_a_sign_that_nobody_sees_is_refused_on_a_label_though_the_face_may_have_it(sign: str) -> None:
    with pytest.raises(Refused, match=rf"product has the character .* \(U\+{ord(sign):04X}\)"):
        check_glyphs(f"So{sign}ap", "product")
