"""Sets text and marks into the panels of a label: it breaks at commas and spaces, shrinks, or is refused."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from math import ceil, inf
from typing import Literal

from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas

from ledger.documents.kit.fonts import FIGURE_HEIGHT, check_glyphs, width
from ledger.documents.kit.lines import break_lines, reach, tears
from ledger.errors import Refused

_STEPS = 24
_CAPITAL = FIGURE_HEIGHT / 1000  # figures and capitals are equally high in this face
_CLOSE = 1.0  # from line to line of a net quantity that keeps its own space round it


@dataclass(frozen=True)
class Picture:
    """A mark or a printed code of a size of its own, in points, quiet zone included.

    `draw` takes the canvas, left, bottom and height; `least` is how far it may shrink, as a share.
    """

    field: str
    wide: float
    high: float
    draw: Callable[[Canvas, float, float, float], None]
    least: float = 1.0


@dataclass(frozen=True)
class Wanted:
    """One field to set: its text, and the sizes its type may take, in points."""

    field: str
    text: str
    face: str
    largest: float
    smallest: float
    names: bool = False  # a list: a name that fits a line is never torn
    clear: bool = False  # a letter's height kept free above and below, twice the width of an N at the sides
    mark: Picture | None = None  # stands before it


@dataclass(frozen=True)
class Near:
    """How far the next print beyond a panel lies from its edges, in points."""

    left: float = inf
    right: float = inf
    above: float = inf
    below: float = inf


@dataclass(frozen=True)
class Room:
    """One panel to fill, in points: fields that flow from its top, and fields that stand on its foot."""

    panel: str
    wide: float
    high: float
    top: tuple[Wanted | Picture, ...]
    foot: tuple[Wanted | Picture, ...]
    centred: bool = False
    near: Near = Near()


@dataclass(frozen=True)
class SetLine:
    """One line as it is set; its base line in points below the top of the panel."""

    text: str
    face: str
    size: float
    base: float
    x: float = 0.0


@dataclass(frozen=True)
class SetFigure:
    """One mark or code as it is set, in points from the left and the top of the panel."""

    figure: Picture
    x: float
    top: float
    high: float


@dataclass(frozen=True)
class Filled:
    """One panel as it is set."""

    lines: tuple[SetLine, ...] = ()
    figures: tuple[SetFigure, ...] = ()

    def moved(self, right: float, down: float) -> "Filled":
        """The same, further right and down."""
        return Filled(
            tuple(replace(one, x=one.x + right, base=one.base + down) for one in self.lines),
            tuple(replace(one, x=one.x + right, top=one.top + down) for one in self.figures),
        )

    def __add__(self, other: "Filled") -> "Filled":
        return Filled(self.lines + other.lines, self.figures + other.figures)


@dataclass(frozen=True)
class _Block:
    """One field as it is set at one size, and how far the next print must stay off."""

    field: str
    high: float
    filled: Filled
    above: float = 0.0
    below: float = 0.0


@dataclass(frozen=True)
class _Missing:
    """What does not fit where, by how many points, and which field takes most of that panel."""

    panel: str
    field: str
    points: float
    way: Literal["width", "height"]
    most: str


def fit(rooms: Sequence[Room], *, gap: float, remedies: Callable[[], Mapping[str, str]]) -> tuple[Filled, ...]:
    """Every panel filled, in the largest type that fits them all.

    The type of all panels shrinks together, step by step, each field to its own minimum, so that the
    law's text has one size on the whole label. Raises Refused naming the panel, the field, the
    millimetres missing, and the remedies: that under the empty name and
    that for the field; they are asked for only then.
    """
    for room in rooms:
        for one in (*room.top, *room.foot):
            if isinstance(one, Wanted):
                check_glyphs(one.text, _plain(one.field))
    missing = None
    for keep_parts in (True, False):  # what is no list is torn at spaces only where it does not fit otherwise
        for step in range(_STEPS + 1):
            found = [_fill(room, step / _STEPS, gap, keep_parts) for room in rooms]
            missing = next((one for one in found if isinstance(one, _Missing)), None)
            if missing is None:
                return tuple(one for one in found if not isinstance(one, _Missing))
    assert missing is not None  # the smallest step was tried
    known = remedies()
    remedy = [known.get("", ""), known.get(missing.field, "")]
    if missing.most != missing.field and missing.most in known:
        remedy.append(f"Most room there goes to the {_plain(missing.most)}. {known[missing.most]}")
    raise Refused(
        f"The panel '{missing.panel}' has no room for the {_plain(missing.field)}: "
        f"{ceil(missing.points / mm * 10) / 10:.1f} mm of {missing.way} are missing even at the smallest type allowed. "
        f"{' '.join(one for one in remedy if one)} Nothing was printed."
    )


def _plain(field: str) -> str:
    """How a field is called in a sentence."""
    called = {
        "leaflet": "hand-with-book mark",
        "after_opening": "open-jar mark",
        "code": "printed code",
        "best_before": "best-before date",
        "responsible": "responsible person",
    }
    return called.get(field, field.replace("_", " "))


def _fill(room: Room, shrunk: float, gap: float, keep_parts: bool) -> Filled | _Missing:
    """One panel at one step of shrinking, from 0 (largest) to 1 (smallest)."""
    blocks: list[_Block] = []
    for one in (*room.top, *room.foot):
        block = _figure(one, room, shrunk) if isinstance(one, Picture) else _text(one, room, shrunk, gap, keep_parts)
        if isinstance(block, _Missing):
            return block
        blocks.append(block)
    tops: list[float] = []
    used, over = 0.0, None
    for block, before in zip(blocks, [None, *blocks], strict=False):
        used += max(gap, before.below, block.above) if before else max(0.0, block.above - room.near.above)
        tops.append(used)
        used += block.high
        if over is None and used > room.high + 1e-6:
            over = block.field
    if blocks:
        used += max(0.0, blocks[-1].below - room.near.below)
    if used > room.high + 1e-6:
        most = max(blocks, key=lambda block: block.high).field
        return _Missing(room.panel, over or blocks[-1].field, used - room.high, "height", most)
    filled = Filled()
    for index, (block, top) in enumerate(zip(blocks, tops, strict=True)):
        filled += block.filled.moved(0.0, top if index < len(room.top) else top + room.high - used)
    return filled


def _figure(one: Picture, room: Room, shrunk: float) -> _Block | _Missing:
    scale = 1 - (1 - one.least) * shrunk
    wide, high = one.wide * scale, one.high * scale
    if wide > room.wide + 1e-6:
        return _Missing(room.panel, one.field, wide - room.wide, "width", one.field)
    x = (room.wide - wide) / 2 if room.centred else 0.0
    return _Block(one.field, high, Filled((), (SetFigure(one, x, 0.0, high),)))


def _text(one: Wanted, room: Room, shrunk: float, gap: float, keep_parts: bool) -> _Block | _Missing:
    size = one.largest - (one.largest - one.smallest) * shrunk
    letter, side = (_CAPITAL * size, 2 * width("N", one.face, size)) if one.clear else (0.0, 0.0)
    left, right = max(0.0, side - room.near.left), max(0.0, side - room.near.right)
    if one.clear and room.centred:
        left = right = max(left, right)
    mark = one.mark
    left += mark.wide + gap if mark else 0.0
    wide = room.wide - left - right
    broken = break_lines(one.text, one.face, size, wide, keep_names=one.names or keep_parts)
    if (
        broken
        and one.names
        and shrunk < 1
        and tears(one.text, one.face, size, wide)
        and not tears(one.text, one.face, one.smallest, wide)
    ):
        return _Missing(room.panel, one.field, 0.0, "width", one.field)  # smaller type keeps the names whole
    if broken is None:
        widest = max(width(word, one.face, size) for word in one.text.split(" "))
        return _Missing(room.panel, one.field, widest - wide, "width", one.field)
    longest = max(width(text, one.face, size) for text in broken)
    inset = (wide - longest) / 2 if room.centred else 0.0
    ascent, descent = reach(one.text)
    leading = (_CLOSE if one.clear else ascent + descent) * size
    text_high = (ascent + descent) * size + (len(broken) - 1) * leading
    high = max(text_high, mark.high) if mark else text_high
    down = (high - text_high) / 2 + ascent * size
    lines = tuple(
        SetLine(
            text,
            one.face,
            size,
            down + index * leading,
            left + inset + ((longest - width(text, one.face, size)) / 2 if room.centred else 0.0),
        )
        for index, text in enumerate(broken)
    )
    figures = (SetFigure(mark, inset, (high - mark.high) / 2, mark.high),) if mark else ()
    above = letter - (ascent - _CAPITAL) * size if one.clear else 0.0
    return _Block(one.field, high, Filled(lines, figures), above, letter)
