"""Letters as their outlines, read from the typeface itself, so that what is set with them needs no face.

The tables glyf and loca of TrueType (OpenType specification, from memory); reportlab reads where each letter lies.
"""

from collections.abc import Iterator
from functools import cache
from struct import unpack_from
from typing import Literal, NamedTuple

from reportlab.pdfbase import pdfmetrics

from ledger.documents.kit.fonts import register

# Flags of a point, and of a part of a letter that is put together of others.
_ON, _X_BYTE, _Y_BYTE, _REPEAT, _X_SAME, _Y_SAME = 1, 2, 4, 8, 16, 32
_WORDS, _OFFSETS, _SCALE, _MORE, _TWO_SCALES, _TWO_BY_TWO = 1, 2, 8, 32, 64, 128


class Step(NamedTuple):
    """One step of a path in thousandths of the type size, upwards: to a point, along a quadratic curve, or closed."""

    kind: Literal["M", "L", "Q", "Z"]
    points: tuple[tuple[float, float], ...] = ()


Points = list[tuple[float, float, bool]]


@cache
def outline(sign: str, face: str) -> tuple[Step, ...]:
    """The outline of one letter of a face that has it."""
    register()
    number = pdfmetrics.getFont(face).face.charToGlyph[ord(sign)]
    return tuple(step for contour in _contours(face, number) for step in _steps(contour))


def advance(sign: str, face: str) -> float:
    """How far the next letter stands, in thousandths of the type size."""
    register()
    return float(pdfmetrics.stringWidth(sign, face, 1000))


@cache
def _table(face: str) -> bytes:
    return bytes(pdfmetrics.getFont(face).face.get_table("glyf"))


def _contours(face: str, number: int) -> list[Points]:
    places = pdfmetrics.getFont(face).face.glyphPos
    data = _table(face)[places[number] : places[number + 1]]
    if not data:
        return []  # a space
    (count,) = unpack_from(">h", data)
    return _simple(data, count) if count >= 0 else _put_together(face, data)


def _simple(data: bytes, count: int) -> list[Points]:
    ends = unpack_from(f">{count}H", data, 10)
    at = 10 + 2 * count
    at += 2 + unpack_from(">H", data, at)[0]  # instructions for screens
    flags: list[int] = []
    while len(flags) <= ends[-1]:
        flag = data[at]
        times = data[at + 1] + 1 if flag & _REPEAT else 1
        flags += [flag] * times
        at += 2 if flag & _REPEAT else 1
    xs, at = _along(data, at, flags, _X_BYTE, _X_SAME)
    ys, _ = _along(data, at, flags, _Y_BYTE, _Y_SAME)
    points = [(float(x), float(y), bool(flag & _ON)) for x, y, flag in zip(xs, ys, flags, strict=True)]
    return [points[start : end + 1] for start, end in zip((0, *(one + 1 for one in ends)), ends, strict=False)]


def _along(data: bytes, at: int, flags: list[int], byte: int, same: int) -> tuple[list[int], int]:
    """The places of all points in one direction; each is told as a difference from the one before."""
    place, found = 0, []
    for flag in flags:
        if flag & byte:
            place += data[at] if flag & same else -data[at]
            at += 1
        elif not flag & same:
            place += unpack_from(">h", data, at)[0]
            at += 2
        found.append(place)
    return found, at


def _put_together(face: str, data: bytes) -> list[Points]:
    """A letter of parts, such as one with its accent."""
    found, at, more = [], 10, True
    while more:
        flags, number = unpack_from(">HH", data, at)
        at += 4
        if not flags & _OFFSETS:
            raise ValueError(f"{face} hangs a part on a point, which is not read here")
        dx, dy = unpack_from(">hh" if flags & _WORDS else ">bb", data, at)
        at += 4 if flags & _WORDS else 2
        a, b, c, d = 1.0, 0.0, 0.0, 1.0
        if flags & _SCALE:
            a = d = unpack_from(">h", data, at)[0] / 16384
            at += 2
        elif flags & _TWO_SCALES:
            a, d = (one / 16384 for one in unpack_from(">hh", data, at))
            at += 4
        elif flags & _TWO_BY_TWO:
            a, b, c, d = (one / 16384 for one in unpack_from(">hhhh", data, at))
            at += 8
        for contour in _contours(face, number):
            found.append([(a * x + c * y + dx, b * x + d * y + dy, on) for x, y, on in contour])
        more = bool(flags & _MORE)
    return found


def _steps(contour: Points) -> Iterator[Step]:
    """One closed line; between two points off the line lies one on it."""
    full: Points = []
    for here, after in zip(contour, [*contour[1:], contour[0]], strict=True):
        full.append(here)
        if not here[2] and not after[2]:
            full.append(((here[0] + after[0]) / 2, (here[1] + after[1]) / 2, True))
    first = next(index for index, point in enumerate(full) if point[2])
    full = [*full[first:], *full[: first + 1]]
    yield Step("M", (full[0][:2],))
    index = 1
    while index < len(full):
        if full[index][2]:
            yield Step("L", (full[index][:2],))
            index += 1
        else:
            yield Step("Q", (full[index][:2], full[index + 1][:2]))
            index += 2
    yield Step("Z")
