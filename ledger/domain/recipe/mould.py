"""Moulds: a box, a cylinder, a number of cavities, and the volume they hold."""

import re
from fractions import Fraction
from typing import NamedTuple

from ledger.errors import BadInput
from ledger.units.quantity import parse_length, parse_volume

_PI = Fraction("3.14159265358979")
_FORMS = (
    "'21 x 7 x 6.5 cm' for a box, 'cylinder 7.5 x 25 cm' (width and height), '6 of 8 x 5.5 x 2.5 cm' or "
    "'6 of 90 mL' for cavities; add ', filled to 6 cm' where it is not filled to the top"
)


class Mould(NamedTuple):
    """A mould as written, and the volume of dough it takes in microlitres (cubic millimetres)."""

    text: str
    volume_ul: int
    cavities: int = 1


def parse_mould(text: str) -> Mould:
    """A mould as typed; the last figure of its size is its height. Raises BadInput for what cannot be read."""
    plain = " ".join(text.split())
    body, _, fill = plain.partition(", filled to ")
    number, one = 1, body
    if found := re.fullmatch(r"(\d{1,3}) of (.+)", body):
        number, one = int(found[1]), found[2]
    volume = _volume(one, fill, plain) * number
    if not number or not 10_000 <= volume <= 100_000_000:
        raise BadInput(f"The mould '{plain}' would hold {float(volume / 1000):g} mL; look at the figures and the unit.")
    return Mould(plain, round(volume), number)


def _volume(text: str, fill: str, whole: str) -> Fraction:
    """The volume of one cavity in microlitres, filled so high."""
    cylinder = text.startswith("cylinder ")
    sizes = re.split(r"\s*[x×]\s*", text.removeprefix("cylinder "))
    if len(sizes) == 1 and not cylinder and not fill:
        return Fraction(parse_volume(text, what="the mould"))
    found = re.fullmatch(r"([\d.,]+)\s*([a-zA-Z]+)", sizes[-1])
    if len(sizes) != (2 if cylinder else 3) or not found:
        raise BadInput(f"The mould '{whole}' cannot be read; write {_FORMS}.")
    lengths = [
        Fraction(
            parse_length(size if size[-1:].isalpha() else f"{size} {found[2]}", what="the size of the mould"), 1000
        )
        for size in sizes
    ]
    if fill:
        height = Fraction(parse_length(fill, what="the fill"), 1000)
        if not 0 < height <= lengths[-1]:
            raise BadInput(f"The mould '{whole}' cannot be filled higher than it is; look at 'filled to'.")
        lengths[-1] = height
    if cylinder:
        return _PI * (lengths[0] / 2) ** 2 * lengths[1]
    return lengths[0] * lengths[1] * lengths[2]
