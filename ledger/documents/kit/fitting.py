"""Sets text and marks into one panel of a label at one size: it breaks at commas and spaces."""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from math import inf
from typing import Literal

from reportlab.pdfgen.canvas import Canvas

from ledger.documents.kit.fonts import FIGURE_HEIGHT, width
from ledger.documents.kit.lines import break_lines, reach, tears

FACE, LAW = "face", "law"  # groups of panels
MOST_LINES = 3  # of a name on a face
_CAPITAL = FIGURE_HEIGHT / 1000  # figures and capitals are equally high in this face
_CLOSE = 0.9  # from line to line of a net quantity that keeps its own space round it


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
    splits: bool = False  # may go on in the next panel
    yields: bool = False  # on a face this shrinks first
    breaks: tuple[str, ...] = ()  # words that may go on in the next line, with their joints: Haut-reizungen


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
    right: bool = False
    middle: bool = False  # what is set stands in the middle of its height
    near: Near = Near()
    group: str = ""  # the rooms of a group have one size of type: the face, the law's text, the tag


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
class Block:
    """One field as it is set at one size, and how far the next print must stay off."""

    field: str
    high: float
    filled: Filled
    above: float = 0.0
    below: float = 0.0


@dataclass(frozen=True)
class Missing:
    """What does not fit where, by how many points, and which field takes most of that panel."""

    panel: str
    field: str
    points: float
    way: Literal["width", "height"]
    most: str


Shrunk = tuple[float, float]  # what yields, and the rest: from 0 (largest) to 1 (smallest)


def plainly(field: str) -> str:
    """How a field is called in a sentence."""
    called = {
        "leaflet": "hand-with-book mark",
        "after_opening": "open-jar mark",
        "code": "printed code",
        "best_before": "best-before date",
        "responsible": "responsible person",
        "business": "name you trade under",
        "line": "line of your own",
        "use": "words on what it is for",
        "web": "code of the web address",
        "to": "address it goes to",
        "sender": "address of the sender",
    }
    return called.get(field, field.replace("_", " "))


def fill(room: Room, shrunk: Shrunk, gap: float, keep_parts: bool) -> Filled | Missing:
    """One panel at one step of shrinking."""
    blocks: list[Block] = []
    for one in (*room.top, *room.foot):
        block = _figure(one, room, shrunk) if isinstance(one, Picture) else set_text(one, room, shrunk, gap, keep_parts)
        if isinstance(block, Missing):
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
        return Missing(room.panel, over or blocks[-1].field, used - room.high, "height", most)
    filled, left = Filled(), (room.high - used) / 2 if room.middle and not room.foot else 0.0
    for index, (block, top) in enumerate(zip(blocks, tops, strict=True)):
        filled += block.filled.moved(0.0, top + left if index < len(room.top) else top + room.high - used)
    return filled


def _share_before(room: Room) -> float:
    """Which share of the room left over stands before a line."""
    return 0.5 if room.centred else 1.0 if room.right else 0.0


def _figure(one: Picture, room: Room, shrunk: Shrunk) -> Block | Missing:
    scale = 1 - (1 - one.least) * shrunk[1]
    wide, high = one.wide * scale, one.high * scale
    if wide > room.wide + 1e-6:
        return Missing(room.panel, one.field, wide - room.wide, "width", one.field)
    x = (room.wide - wide) * _share_before(room)
    return Block(one.field, high, Filled((), (SetFigure(one, x, 0.0, high),)))


def _at_hyphens(one: Wanted, size: float, wide: float) -> list[str] | None:
    """Lines broken after a hyphen or a slash between letters too; never within an ingredient, a number or a code."""
    parted = re.sub(r"(?<=[^\W\d][-/])(?=[^\W\d])", "\x1f ", one.text)
    lines = break_lines(parted, one.face, size, wide, keep_names=False)
    return [line.replace("\x1f ", "").rstrip("\x1f") for line in lines] if lines else None


def _at_joints(one: Wanted, size: float, wide: float) -> list[str] | None:
    """Lines in which a word too long for one goes on in the next, where its language lets it; never an ingredient."""
    joints = {word.replace("-", "").casefold(): word.split("-") for word in one.breaks}
    parted = []
    for word in one.text.split(" "):
        core = re.sub(r"^\W+|\W+$", "", word)
        if width(word, one.face, size) <= wide or core.casefold() not in joints:
            parted.append(word)
            continue
        at, ends = word.index(core), [0]
        for part in joints[core.casefold()]:
            ends.append(ends[-1] + len(part))
        begins = 0
        while width(word[begins:], one.face, size) > wide:
            fitting = [at + end for end in ends[1:-1] if at + end > begins]
            fitting = [end for end in fitting if width(f"{word[begins:end]}-", one.face, size) <= wide]
            if not fitting:
                return None
            parted.append(f"{word[begins : fitting[-1]]}-")
            begins = fitting[-1]
        parted.append(word[begins:])
    return break_lines(" ".join(parted), one.face, size, wide, keep_names=False) if one.breaks else None


def _even(one: Wanted, size: float, wide: float, broken: list[str], keep_parts: bool) -> list[str]:
    """The same number of lines, as even in length as they go: a name is read as one thing."""
    for share in (0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95):
        other = break_lines(one.text, one.face, size, share * wide, keep_names=keep_parts)
        if other and len(other) == len(broken):
            return other
    return broken


def set_text(one: Wanted, room: Room, shrunk: Shrunk, gap: float, keep_parts: bool) -> Block | Missing:
    """One text as it is set in a panel at one size."""
    by = shrunk[0] if one.yields else shrunk[1]
    size = one.largest - (one.largest - one.smallest) * by
    letter, side = (_CAPITAL * size, 2 * width("N", one.face, size)) if one.clear else (0.0, 0.0)
    left, right = max(0.0, side - room.near.left), max(0.0, side - room.near.right)
    if one.clear and room.centred:
        left = right = max(left, right)
    mark = one.mark
    left += mark.wide + gap if mark else 0.0
    wide = room.wide - left - right
    broken = break_lines(one.text, one.face, size, wide, keep_names=one.names or keep_parts)
    if broken is None and room.group and not one.names:
        broken = _at_hyphens(one, size, wide) or _at_joints(one, size, wide)
    if (
        broken
        and one.names
        and by < 1
        and tears(one.text, one.face, size, wide)
        and not tears(one.text, one.face, one.smallest, wide)
    ):
        return Missing(room.panel, one.field, 0.0, "width", one.field)  # smaller type keeps the names whole
    if broken is None:
        widest = max(width(word, one.face, size) for word in one.text.split(" "))
        return Missing(room.panel, one.field, widest - wide, "width", one.field)
    if room.group == FACE:
        if one.yields and len(broken) > MOST_LINES:
            return Missing(room.panel, one.field, (len(broken) - MOST_LINES) * size, "height", one.field)
        broken = broken if one.clear else _even(one, size, wide, broken, keep_parts)
    widths = [width(text, one.face, size) for text in broken]
    longest = max(widths)
    before = _share_before(room)
    inset = (wide - longest) * before
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
            left + inset + (longest - reached) * before,
        )
        for index, (text, reached) in enumerate(zip(broken, widths, strict=True))
    )
    figures = (SetFigure(mark, inset, (high - mark.high) / 2, mark.high),) if mark else ()
    above = letter - (ascent - _CAPITAL) * size if one.clear else 0.0
    return Block(one.field, high, Filled(lines, figures), above, letter)
