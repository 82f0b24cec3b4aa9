"""Steps of a path, from the figures of SVG 1.1 (W3C, chapters 8 and 9, from memory)."""

import re
from collections.abc import Callable, Mapping, Sequence
from math import acos, ceil, cos, degrees, hypot, pi, radians, sin, sqrt, tan

Matrix = tuple[float, float, float, float, float, float]
Point = tuple[float, float]
Step = tuple[str, tuple[Point, ...]]  # M and L with a point, C with two controls and an end, Z with none
MOST_STEPS = 50_000
_KAPPA = 4 / 3 * tan(pi / 8)  # a quarter of a circle as one curve
_NUMBER = re.compile(r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,2})?")
_TAKES = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "S": 4, "Q": 4, "T": 2, "A": 7, "Z": 0}


def times(one: Matrix, other: Matrix) -> Matrix:
    """The second, then the first."""
    a, b, c, d, e, f = one
    g, h, i, j, k, m = other
    return (a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * m + e, b * k + d * m + f)


def changed(steps: Sequence[Step], matrix: Matrix) -> tuple[Step, ...]:
    """The steps as a matrix moves them."""
    a, b, c, d, e, f = matrix
    return tuple((kind, tuple((a * x + c * y + e, b * x + d * y + f) for x, y in points)) for kind, points in steps)


def steps_of(local: str, attributes: Mapping[str, str], number: Callable[[str], float]) -> tuple[Step, ...]:
    """The steps of one figure. Raises ValueError for one that is not whole."""
    if local == "path":
        return path_steps(attributes.get("d", ""))

    def n(key: str, usual: str = "0") -> float:
        return number(attributes.get(key, usual))

    if local == "line":
        return (("M", ((n("x1"), n("y1")),)), ("L", ((n("x2"), n("y2")),)))
    if local in ("polyline", "polygon"):
        figures = [float(one) for one in _NUMBER.findall(attributes.get("points", ""))]
        if len(figures) % 2 or len(figures) > MOST_STEPS:
            raise ValueError("points")
        corners = list(zip(figures[::2], figures[1::2], strict=True))
        drawn: tuple[Step, ...] = tuple(("L" if at else "M", (one,)) for at, one in enumerate(corners))
        return (*drawn, ("Z", ())) if local == "polygon" and drawn else drawn
    if local == "rect":
        x, y, wide, high = n("x"), n("y"), n("width"), n("height")
        rx = n("rx", attributes.get("ry", "0"))
        ry = n("ry", attributes.get("rx", "0"))
        return _rounded(x, y, wide, high, min(rx, wide / 2), min(ry, high / 2)) if wide > 0 and high > 0 else ()
    rx, ry = (n("r"), n("r")) if local == "circle" else (n("rx"), n("ry"))
    return _rounded(n("cx") - rx, n("cy") - ry, 2 * rx, 2 * ry, rx, ry) if rx > 0 and ry > 0 else ()


def _rounded(x: float, y: float, wide: float, high: float, rx: float, ry: float) -> tuple[Step, ...]:
    """A rectangle with rounded corners; with radii of half its sides, an ellipse."""
    right, foot, kx, ky = x + wide, y + high, rx * (1 - _KAPPA), ry * (1 - _KAPPA)
    return (
        ("M", ((x + rx, y),)),
        ("L", ((right - rx, y),)),
        ("C", ((right - kx, y), (right, y + ky), (right, y + ry))),
        ("L", ((right, foot - ry),)),
        ("C", ((right, foot - ky), (right - kx, foot), (right - rx, foot))),
        ("L", ((x + rx, foot),)),
        ("C", ((x + kx, foot), (x, foot - ky), (x, foot - ry))),
        ("L", ((x, y + ry),)),
        ("C", ((x, y + ky), (x + kx, y), (x + rx, y))),
        ("Z", ()),
    )


def _orders(text: str) -> list[tuple[str, list[float]]]:
    """Every letter with the figures that follow it, so many at a time."""
    found: list[tuple[str, list[float]]] = []
    at, letter = 0, ""
    while at < len(text):
        sign = text[at]
        if sign.isspace() or sign == ",":
            at += 1
            continue
        if sign.isalpha():
            letter, at = sign, at + 1
            if letter.upper() == "Z":
                found.append((letter, []))
                continue
        if letter.upper() not in _TAKES or letter.upper() == "Z":
            raise ValueError(f"'{text[at - 1 : at + 10]}'")
        figures: list[float] = []
        while len(figures) < _TAKES[letter.upper()]:
            while at < len(text) and (text[at].isspace() or text[at] == ","):
                at += 1
            flag = letter.upper() == "A" and len(figures) in (3, 4)
            match = re.compile(r"[01]").match(text, at) if flag else _NUMBER.match(text, at)
            if match is None:
                raise ValueError(f"'{letter}' lacks figures")
            figures.append(float(match[0]))
            at = match.end()
        found.append((letter, figures))
        if len(found) > MOST_STEPS:
            raise ValueError("too many steps")
        letter = {"M": "L", "m": "l"}.get(letter, letter)
    return found


def path_steps(text: str) -> tuple[Step, ...]:
    """The steps of a path's description. Raises ValueError for one that is not whole."""
    steps: list[Step] = []
    x = y = begin_x = begin_y = 0.0
    control: Point | None = None  # the last one, which S and T mirror
    before = ""
    for letter, n in _orders(text):
        kind, from_x, from_y = letter.upper(), (x if letter.islower() else 0.0), (y if letter.islower() else 0.0)
        if not steps and kind != "M":
            raise ValueError("no M at its beginning")
        if kind == "Z":
            steps.append(("Z", ()))
            x, y = begin_x, begin_y
        elif kind == "H":
            x = n[0] + from_x
            steps.append(("L", ((x, y),)))
        elif kind == "V":
            y = n[0] + from_y
            steps.append(("L", ((x, y),)))
        elif kind == "A":
            end = (n[5] + from_x, n[6] + from_y)
            steps += _arc((x, y), n[0], n[1], n[2], bool(n[3]), bool(n[4]), end)
            x, y = end
        else:
            points = [(px + from_x, py + from_y) for px, py in zip(n[::2], n[1::2], strict=True)]
            mirrored = (2 * x - control[0], 2 * y - control[1]) if control and before in _LIKE[kind] else (x, y)
            if kind in "ST":
                points.insert(0, mirrored)
            if kind in "QT":
                control, (end_x, end_y) = points[0], points[1]
                first = (x + 2 / 3 * (control[0] - x), y + 2 / 3 * (control[1] - y))
                second = (end_x + 2 / 3 * (control[0] - end_x), end_y + 2 / 3 * (control[1] - end_y))
                points = [first, second, (end_x, end_y)]
            elif kind in "CS":
                control = points[1]
            steps.append(("C" if len(points) == 3 else kind, tuple(points)))
            x, y = points[-1]
            if kind == "M":
                begin_x, begin_y = x, y
        before = kind
    return tuple(steps)


_LIKE = {"S": "CS", "T": "QT", "C": "", "Q": "", "M": "", "L": ""}


def _arc(start: Point, rx: float, ry: float, tilt: float, large: bool, sweep: bool, end: Point) -> list[Step]:
    """An arc of an ellipse as curves: SVG 1.1, appendix F.6.5 and F.6.6, from memory."""
    rx, ry = abs(rx), abs(ry)
    if start == end:
        return []
    if not rx or not ry:
        return [("L", (end,))]
    c, s = cos(radians(tilt)), sin(radians(tilt))
    dx, dy = (start[0] - end[0]) / 2, (start[1] - end[1]) / 2
    x, y = c * dx + s * dy, -s * dx + c * dy
    grown = max(1.0, sqrt((x / rx) ** 2 + (y / ry) ** 2))
    rx, ry = rx * grown, ry * grown
    under = max(0.0, (rx * ry) ** 2 - (rx * y) ** 2 - (ry * x) ** 2) / ((rx * y) ** 2 + (ry * x) ** 2)
    root = sqrt(under) * (1 if large != sweep else -1)
    mid_x, mid_y = root * rx * y / ry, -root * ry * x / rx
    first = _turn(1, 0, (x - mid_x) / rx, (y - mid_y) / ry)
    across = _turn((x - mid_x) / rx, (y - mid_y) / ry, (-x - mid_x) / rx, (-y - mid_y) / ry)
    across += 360 if sweep and across < 0 else -360 if not sweep and across > 0 else 0
    pieces = max(1, ceil(abs(across) / 90 - 1e-9))
    each = radians(across / pieces)
    reach = 4 / 3 * tan(each / 4)
    centre = (c * mid_x - s * mid_y + (start[0] + end[0]) / 2, s * mid_x + c * mid_y + (start[1] + end[1]) / 2)
    found: list[Step] = []
    for index in range(pieces):
        a, b = radians(first) + index * each, radians(first) + (index + 1) * each
        unit = ((cos(a) - reach * sin(a), sin(a) + reach * cos(a)), (cos(b) + reach * sin(b), sin(b) - reach * cos(b)),
                (cos(b), sin(b)))  # fmt: skip
        found.append(
            ("C", tuple((c * rx * u - s * ry * v + centre[0], s * rx * u + c * ry * v + centre[1]) for u, v in unit))
        )
    return found


def _turn(ux: float, uy: float, vx: float, vy: float) -> float:
    """The angle from one direction to another, in degrees."""
    share = (ux * vx + uy * vy) / (hypot(ux, uy) * hypot(vx, vy))
    return degrees(acos(max(-1.0, min(1.0, share)))) * (-1 if ux * vy - uy * vx < 0 else 1)
