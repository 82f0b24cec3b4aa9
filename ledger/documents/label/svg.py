"""Reads a small part of SVG as shapes: paths and simple figures, filled or drawn in plain colours, moved and turned.

A picture may come from anyone: whatever is more than a shape is refused with its name, and nothing is fetched.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import cos, radians, sin, sqrt, tan
from re import findall, fullmatch
from typing import Any
from xml.parsers import expat

from reportlab.lib.colors import getAllNamedColors

from ledger.documents.label.svg_path import Matrix, Step, changed, steps_of, times
from ledger.errors import Refused
from ledger.units.colour import BLACK

MOST_ELEMENTS = 5_000
_SVG = "http://www.w3.org/2000/svg"
_FIGURES = ("path", "rect", "circle", "ellipse", "line", "polyline", "polygon")
_GROUPS = ("svg", "g")
_PASSED_OVER = ("title", "desc", "metadata")
_UNITS = {"": 1.0, "px": 1.0, "mm": 96 / 25.4, "cm": 96 / 2.54, "in": 96.0, "pt": 96 / 72}


@dataclass(frozen=True)
class Shape:
    """One shape in units of the drawing, y down."""

    steps: tuple[Step, ...]
    fill: str | None
    stroke: str | None
    stroke_wide: float
    even_odd: bool


@dataclass(frozen=True)
class Drawing:
    """The shapes of a picture and the window on them: left, top, width, height."""

    window: tuple[float, float, float, float]
    shapes: tuple[Shape, ...]

    @property
    def colours(self) -> frozenset[str]:
        """Every colour in it."""
        return frozenset(ink for one in self.shapes for ink in (one.fill, one.stroke) if ink)


_State = tuple[Matrix, Mapping[str, str]]
_FIRST: _State = ((1.0, 0.0, 0.0, 1.0, 0.0, 0.0), {"fill": BLACK, "stroke": "none", "stroke-width": "1"})


class _Reader:
    def __init__(self, name: str) -> None:
        self.name = name
        self.states: list[_State] = [_FIRST]
        self.skipping = 0
        self.count = 0
        self.window: tuple[float, float, float, float] | None = None
        self.shapes: list[Shape] = []

    def bad(self, what: str) -> Refused:
        return Refused(
            f"The picture {self.name} {what}. A label takes paths and simple figures in plain colours: save it as a "
            "plain SVG with text turned into paths, or as a PNG of 300 dots an inch."
        )

    def start(self, tag: str, attributes: dict[str, str]) -> None:
        self.count += 1
        if self.count > MOST_ELEMENTS or len(self.states) > 60:
            raise self.bad(f"has more than {MOST_ELEMENTS} parts, or parts within parts without an end")
        space, _, local = tag.rpartition(" ")
        if self.skipping or space not in ("", _SVG) or local in _PASSED_OVER:
            self.skipping += 1
            return
        for key in attributes:
            short = key.rpartition(" ")[2]
            if short == "href" or short.startswith("on"):
                raise self.bad(f"has the attribute '{short}', which reaches beyond the picture")
        if local == "defs":
            self.states.append(self.states[-1])
            return
        if local not in _FIGURES and local not in _GROUPS:
            raise self.bad(f"has a '{local}', which is not drawn here")
        if self.window is None and local != "svg":
            raise self.bad("does not begin with svg")
        self.states.append(self._state(attributes))
        if local == "svg" and self.window is None:
            self.window = self._window(attributes)
        elif local in _FIGURES:
            self._figure(local, attributes)

    def end(self, _tag: str) -> None:
        if self.skipping:
            self.skipping -= 1
        else:
            self.states.pop()

    def _state(self, attributes: Mapping[str, str]) -> _State:
        matrix, style = self.states[-1]
        said = dict(attributes)
        for one in attributes.get("style", "").split(";"):
            key, colon, value = one.partition(":")
            if colon:
                said[key.strip()] = value.strip()
        for key in ("opacity", "fill-opacity", "stroke-opacity"):
            if self.number(said.get(key, "1")) < 1:
                raise self.bad("has a shape that is partly transparent")
        for key in ("clip-path", "mask", "filter"):
            if said.get(key, "none") != "none":
                raise self.bad(f"has a shape with '{key}'")
        keys = ("fill", "stroke", "stroke-width", "fill-rule", "display", "visibility")
        return times(matrix, self._matrix(said.get("transform", ""))), {
            **style,
            **{k: said[k] for k in keys if k in said},
        }

    def _matrix(self, text: str) -> Matrix:
        matrix = _FIRST[0]
        for kind, inside in findall(r"(\w+)\s*\(([^)]*)\)", text):
            n = [self.number(one) for one in inside.replace(",", " ").split()]
            try:
                matrix = times(matrix, _ONE[kind](*n))
            except (KeyError, TypeError):
                raise self.bad(f"has the transform '{kind}' with {len(n)} figures") from None
        return matrix

    def number(self, text: str) -> float:
        found = fullmatch(r"([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,2})?)(px|mm|cm|in|pt|)", text.strip())
        if found is None:
            raise self.bad(f"has '{text[:30]}' where a plain length belongs")
        return float(found[1]) * _UNITS[found[2]]

    def _window(self, attributes: Mapping[str, str]) -> tuple[float, float, float, float]:
        box = attributes.get("viewBox")
        if box:
            n = [self.number(one) for one in box.replace(",", " ").split()]
        else:
            n = [0.0, 0.0, self.number(attributes.get("width", "")), self.number(attributes.get("height", ""))]
        if len(n) != 4 or min(n[2:]) <= 0:
            raise self.bad("does not say how large it is (viewBox)")
        return n[0], n[1], n[2], n[3]

    def _colour(self, text: str) -> str | None:
        word = text.strip().lower()
        if word in ("none", "transparent"):
            return None
        if word == "currentcolor":
            return BLACK
        if found := fullmatch(r"#([0-9a-f]{3}|[0-9a-f]{6})", word):
            return word if len(word) == 7 else "#" + "".join(2 * one for one in found[1])
        if found := fullmatch(r"rgb\((\d{1,3}),\s*(\d{1,3}),\s*(\d{1,3})\)", word):
            return "#" + "".join(f"{min(int(one), 255):02x}" for one in found.groups())
        named = getAllNamedColors().get(word)
        if named is None:
            raise self.bad(f"has the fill '{text[:30]}', which is no plain colour")
        return "#" + str(named.hexval())[2:]

    def _figure(self, local: str, attributes: Mapping[str, str]) -> None:
        matrix, style = self.states[-1]
        if style.get("display") == "none" or style.get("visibility") == "hidden":
            return
        try:
            steps = steps_of(local, attributes, self.number)
        except ValueError as error:
            raise self.bad(f"has a {local} that cannot be drawn ({error})") from None
        fill, stroke = self._colour(style["fill"]), self._colour(style["stroke"])
        wide = self.number(style["stroke-width"]) * sqrt(abs(matrix[0] * matrix[3] - matrix[1] * matrix[2]))
        if steps and (fill or stroke):
            self.shapes.append(Shape(changed(steps, matrix), fill, stroke, wide, style.get("fill-rule") == "evenodd"))


_ONE: Mapping[str, Any] = {
    "matrix": lambda a, b, c, d, e, f: (a, b, c, d, e, f),
    "translate": lambda x, y=0.0: (1.0, 0.0, 0.0, 1.0, x, y),
    "scale": lambda x, y=None: (x, 0.0, 0.0, x if y is None else y, 0.0, 0.0),
    "rotate": lambda a, x=0.0, y=0.0: times(
        times(
            (1.0, 0.0, 0.0, 1.0, x, y), (cos(radians(a)), sin(radians(a)), -sin(radians(a)), cos(radians(a)), 0.0, 0.0)
        ),
        (1.0, 0.0, 0.0, 1.0, -x, -y),
    ),
    "skewX": lambda a: (1.0, 0.0, tan(radians(a)), 1.0, 0.0, 0.0),
    "skewY": lambda a: (1.0, tan(radians(a)), 0.0, 1.0, 0.0, 0.0),
}


def read_svg(content: bytes, name: str) -> Drawing:
    """The shapes of an SVG. Raises Refused naming what in it is more than that; no file or address is ever opened."""
    reader = _Reader(name)
    parser = expat.ParserCreate(namespace_separator=" ")
    parser.SetParamEntityParsing(expat.XML_PARAM_ENTITY_PARSING_NEVER)

    def refuse(*_: Any) -> int:
        raise reader.bad("has a document type or entities of its own")

    parser.StartDoctypeDeclHandler = parser.EntityDeclHandler = parser.ExternalEntityRefHandler = refuse
    parser.StartElementHandler, parser.EndElementHandler = reader.start, reader.end
    parser.ProcessingInstructionHandler = refuse
    try:
        parser.Parse(content, True)
    except expat.ExpatError as error:
        raise reader.bad(f"cannot be read: line {error.lineno}") from None
    if reader.window is None or not reader.shapes:
        raise reader.bad("has nothing to draw")
    return Drawing(reader.window, tuple(reader.shapes))
