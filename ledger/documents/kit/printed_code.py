"""Printed codes as bars and squares: QR, Code 128 and EAN-13, each with its quiet zone."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from itertools import groupby

from reportlab.graphics.barcode.code128 import Code128Auto
from reportlab.graphics.barcode.qr import QrCodeWidget
from reportlab.pdfgen.canvas import Canvas

from ledger.documents.kit.fonts import FIGURE_HEIGHT, REGULAR, check_glyphs, register, width
from ledger.errors import Refused


@dataclass(frozen=True)
class Kind:
    """One kind of code: how wide its narrowest bar or square (X) may be, in mm."""

    least_mm: float
    usual_mm: float
    most_mm: float


# EAN-13: X 0.264 to 0.660 mm, nominal 0.330 (GS1 General Specifications, from memory, unverified). The least X of
# the other two is a house rule: three dots of a printer of 300 dots an inch, and four for squares.
KINDS = {"qr": Kind(0.34, 0.42, 2.0), "code128": Kind(0.254, 0.30, 1.0), "ean13": Kind(0.264, 0.33, 0.66)}

QR_QUIET = 4  # ISO/IEC 18004, from memory
_128_QUIET = 10  # ISO/IEC 15417, from memory
_EAN_LEFT, _EAN_RIGHT = 11, 7  # ISO/IEC 15420, from memory
_EAN_HIGH = 69  # 22.85 mm at X 0.330
_GUARD = 5  # how far the guard bars of EAN-13 reach down beside the figures
_FIGURES = 7.5  # how high the figures under the bars stand; all in X


@dataclass(frozen=True)
class Symbol:
    """A code ready to draw, in X from its left and top, its quiet zone included."""

    wide: float
    high: float
    bars: tuple[tuple[float, float, float, float], ...]  # left, top, width, height
    figures: tuple[tuple[str, float, float], ...] = ()  # text, middle, width it may take
    figures_base: float = 0.0

    def draw(self, canvas: Canvas, left: float, bottom: float, high: float) -> None:
        """Draw it so high, in points."""
        x = high / self.high
        path = canvas.beginPath()
        for bar_left, top, bar_wide, bar_high in self.bars:
            path.rect(left + bar_left * x, bottom + high - (top + bar_high) * x, bar_wide * x, bar_high * x)
        canvas.drawPath(path, stroke=0, fill=1)
        for text, middle, room in self.figures:
            size = _FIGURES * x * 1000 / FIGURE_HEIGHT
            size *= min(1.0, room * x / width(text, REGULAR, size))
            canvas.setFont(REGULAR, size)
            canvas.drawCentredString(left + middle * x, bottom + high - self.figures_base * x, text)


@cache
def symbol(kind: str, text: str) -> Symbol:
    """The code of a text. Raises Refused for a text the kind cannot hold."""
    register()
    check_glyphs(text, "code")
    return {"qr": qr, "code128": _code128, "ean13": _ean13}[kind](text)


def qr(text: str) -> Symbol:
    """The squares of a QR code, for a paper too, which prints whatever its code is."""
    widget = QrCodeWidget(text, barLevel="M", barBorder=0)
    widget.qr.make()
    side = widget.qr.getModuleCount() + 2 * QR_QUIET
    bars = tuple(
        (float(at + QR_QUIET), float(row + QR_QUIET), float(length), 1.0)
        for row, squares in enumerate(widget.qr.modules)
        for at, length in _dark(squares)
    )
    return Symbol(float(side), float(side), bars)


def _code128(text: str) -> Symbol:
    if not text or not all(" " <= sign <= "~" for sign in text):
        raise Refused(f"Code 128 holds letters without accents, figures and signs; '{text}' is none of that. Use a QR.")
    code = Code128Auto(text, quiet=0)
    code.validate()
    code.encode()
    squares = "".join(str(int(sign.isupper())) * (ord(sign.upper()) - ord("A") + 1) for sign in code.decompose())
    wide = len(squares) + 2 * _128_QUIET
    high = max(0.15 * len(squares), 24.0)
    bars = tuple((float(at + _128_QUIET), 0.0, float(n), high) for at, n in _dark([s == "1" for s in squares]))
    base = high + 2 + _FIGURES
    return Symbol(float(wide), base + 1, bars, ((text, wide / 2, float(len(squares))),), base)


# ISO/IEC 15420, from memory: a figure of the left half reads by set A or B, which the first figure chooses.
_SET_A = ("0001101", "0011001", "0010011", "0111101", "0100011", "0110001", "0101111", "0111011", "0110111", "0001011")
_SETS = ("AAAAAA", "AABABB", "AABBAB", "AABBBA", "ABAABB", "ABBAAB", "ABBBAA", "ABABAB", "ABABBA", "ABBABA")


def _ean13(text: str) -> Symbol:
    gtin = text.zfill(13) if len(text) == 12 else text
    if len(gtin) != 13 or not (gtin.isascii() and gtin.isdigit()) or _check_figure(gtin[:12]) != gtin[12]:
        raise Refused(
            f"EAN-13 holds a trade number (GTIN) of 13 figures with its check figure; '{text}' is none. "
            'Give the product its GTIN, or write code = "qr" in the layout.'
        )
    right = {figure: "".join("10"[int(bit)] for bit in _SET_A[int(figure)]) for figure in "0123456789"}
    left = "".join(
        _SET_A[int(figure)] if one == "A" else right[figure][::-1]
        for figure, one in zip(gtin[1:7], _SETS[int(gtin[0])], strict=True)
    )
    squares = f"101{left}01010{''.join(right[figure] for figure in gtin[7:])}101"
    bars = []
    for at, length in _dark([square == "1" for square in squares]):
        guard = at < 3 or 45 <= at < 50 or at >= 92
        bars.append((float(at + _EAN_LEFT), 0.0, float(length), float(_EAN_HIGH + (_GUARD if guard else 0))))
    base = _EAN_HIGH + 2 + _FIGURES
    figures = ((gtin[0], _EAN_LEFT / 2, 7.0), (gtin[1:7], _EAN_LEFT + 24.5, 40.0), (gtin[7:], _EAN_LEFT + 70.5, 40.0))
    return Symbol(float(_EAN_LEFT + 95 + _EAN_RIGHT), base + 1, tuple(bars), figures, base)


def _check_figure(first: str) -> str:
    """The check figure of a GTIN: weights 1 and 3 in turn, up to the next ten."""
    return str(-sum(int(figure) * (3 if index % 2 else 1) for index, figure in enumerate(first)) % 10)


def _dark(squares: list[bool]) -> Iterator[tuple[int, int]]:
    """Where each run of dark squares begins, and how many they are."""
    at = 0
    for dark, run in groupby(bool(square) for square in squares):
        length = len(list(run))
        if dark:
            yield at, length
        at += length
