"""A name, a telephone number and an email are found whole, however they are written."""

import pytest

from ledger.units.mentions import Mentions

ZOE = Mentions(["Zoë Marsh", "zoe.marsh@example.org"], ["020 910 0166"])
ABROAD = Mentions([], ["+353 20 910 0166"])


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Zoë Marsh", "Zoë Marsh"),
        ("for ZOË MARSH, gift", "ZOË MARSH"),
        ("for Zoe\u0308 Marsh", "Zoe\u0308 Marsh"),  # two signs for one letter
        ("Zoë  Marsh", "Zoë  Marsh"),
        ("Zoë\u00a0Marsh", "Zoë\u00a0Marsh"),  # a space that does not break
        ("# for Zoë\n# Marsh", "Zoë\n# Marsh"),  # a note in a recipe, over two lines
        ('{"note":"to\\nZoë\\nMarsh"}', "Zoë\\nMarsh"),  # as JSON writes line ends
        ("Marsh, Zoë", "Marsh, Zoë"),
        ("zoë-marsh", "zoë-marsh"),
        ("Zoë Marsh's bar", "Zoë Marsh"),
        ("ｚｏë marsh", "ｚｏë marsh"),  # letters of double width
        ("\U0001d419oë marsh", "\U0001d419oë marsh"),  # a letter of a fancy face, which has no small one
        ("Zoë Marshall", None),
        ("Anzoë Marsh", None),
        ("Zoë and Marsh", None),
        ("the marsh", None),
        ('"Zoë","Marsh"', None),  # two texts of a list
        ("mail ZOE.MARSH@EXAMPLE.ORG today", "ZOE.MARSH@EXAMPLE.ORG"),
        ("zoe.marsh@example.organic", None),
        ("rang 020 910 0166.", "020 910 0166"),
        ("rang 0209100166", "0209100166"),
        ("rang 020/910-0166", "020/910-0166"),
        ("rang +353 20 910 0166", "+353 20 910 0166"),
        ("rang 00353 (0)20 910 0166", "00353 (0)20 910 0166"),
        ("rang 020 910 01667", None),
        ("lot 1020 910 0167", None),
    ],
)
def test_what_names_her_is_found_to_the_sign(text: str, found: str | None) -> None:
    assert [text[start:end] for start, end in ZOE.spans(text)] == ([found] if found else [])


@pytest.mark.parametrize("text", ["+353 20 910 0166", "020 910 0166", "0035320 9100166"])
def test_a_number_with_its_country_is_found_without_it(text: str) -> None:
    assert ABROAD.spans(text) == ((0, len(text)),)


@pytest.mark.parametrize(("phone", "looked_for"), [("123456", True), ("12345", False), ("00012345", False)])
def test_a_number_of_fewer_than_six_digits_is_any_number(phone: str, looked_for: bool) -> None:
    assert bool(Mentions([], [phone]).spans(f"rang {phone}")) == looked_for


def test_nothing_is_found_of_nobody() -> None:
    assert Mentions([None, "", " "], [None]).spans("Zoë Marsh") == ()


def test_each_place_is_told_from_sign_to_sign() -> None:
    text = "Straße: Zoë Marsh, 020 910 0166 (Zoë Marsh)"  # the sharp s is compared as two letters
    assert [text[start:end] for start, end in ZOE.spans(text)] == ["Zoë Marsh", "020 910 0166", "Zoë Marsh"]


@pytest.mark.parametrize(
    ("text", "found"), [("Olive", True), ("OLIVE", True), ("olive oil", False), ("to Olive", False), ("", False)]
)
def test_a_word_that_counts_alone_is_the_whole_text(text: str, found: bool) -> None:
    assert bool(Mentions([], whole=["olive"]).spans(text)) == found
