"""Sets text into the panels of a label: it breaks at commas and spaces, shrinks to the minimum, or is refused."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from reportlab.lib.units import mm

from ledger.documents.fonts import check_glyphs, width
from ledger.errors import Refused

_STEPS = 24
LEADING = 1.16  # from one base line to the next, as a share of the type size
ASCENT = 0.92  # from the top of a line to its base line, accented capitals included


@dataclass(frozen=True)
class Wanted:
    """One field to set: its text, and the sizes its type may take, in points."""

    field: str
    text: str
    face: str
    largest: float
    smallest: float


@dataclass(frozen=True)
class Room:
    """One panel to fill, in points: fields that flow from its top, and fields that stand on its foot."""

    panel: str
    wide: float
    high: float
    top: tuple[Wanted, ...]
    foot: tuple[Wanted, ...]


@dataclass(frozen=True)
class SetLine:
    """One line as it is set; its base line in points below the top of the panel."""

    text: str
    face: str
    size: float
    base: float


@dataclass(frozen=True)
class _Missing:
    """What does not fit where, and by how many points."""

    panel: str
    field: str
    points: float
    way: str


def fit(rooms: Sequence[Room], *, gap: float, remedy: str) -> tuple[tuple[SetLine, ...], ...]:
    """The lines of every panel, in the largest type that fits them all.

    The type of all panels shrinks together, step by step, each field to its own minimum, so that the
    law's text has one size on the whole label. Raises Refused naming the panel, the field, the
    millimetres missing, and the remedy.
    """
    for room in rooms:
        for one in (*room.top, *room.foot):
            check_glyphs(one.text, one.field.replace("_", " "))
    missing = None
    for keep_names in (True, False):  # a name torn at a space only where the smallest type is too large otherwise
        for step in range(_STEPS + 1):
            found = [_fill(room, step / _STEPS, gap, keep_names) for room in rooms]
            missing = next((one for one in found if isinstance(one, _Missing)), None)
            if missing is None:
                return tuple(one for one in found if not isinstance(one, _Missing))
    assert missing is not None  # the smallest step was tried
    raise Refused(
        f"The panel '{missing.panel}' has no room for the {missing.field.replace('_', ' ')}: "
        f"{missing.points / mm:.1f} mm of {missing.way} are missing even at the smallest type allowed. "
        f"{remedy} Nothing was printed."
    )


def _fill(room: Room, shrunk: float, gap: float, keep_names: bool) -> tuple[SetLine, ...] | _Missing:
    """One panel at one step of shrinking, from 0 (largest) to 1 (smallest)."""
    lines: list[SetLine] = []
    at_foot = 0
    used = 0.0
    over = None
    for one in (*room.top, *room.foot):
        size = one.largest - (one.largest - one.smallest) * shrunk
        broken = break_lines(one.text, one.face, size, room.wide, keep_names=keep_names)
        if broken is None:
            widest = max(width(word, one.face, size) for word in one.text.split(" "))
            return _Missing(room.panel, one.field, widest - room.wide, "width")
        used += gap if used else 0.0
        for text in broken:
            lines.append(SetLine(text, one.face, size, used + ASCENT * size))
            used += LEADING * size
        at_foot += len(broken) if one in room.foot else 0
        if over is None and used > room.high:
            over = one.field
    if over is not None:
        return _Missing(room.panel, over, used - room.high, "height")
    cut, down = len(lines) - at_foot, room.high - used
    moved = (SetLine(line.text, line.face, line.size, line.base + down) for line in lines[cut:])
    return (*lines[:cut], *moved)


def break_lines(text: str, face: str, size: float, wide: float, *, keep_names: bool = True) -> list[str] | None:
    """Lines no wider than `wide` points, broken at spaces; None when a single word is too wide.

    A name (what stands between commas) is kept whole where one line can hold it; no word is hyphenated.
    """
    lines: list[str] = []
    line = ""
    for name in re.split(r"(?<=[,:]) ", text):
        one_line = keep_names and width(name, face, size) <= wide
        for part in [name] if one_line else name.split(" "):
            longer = f"{line} {part}".strip(" ")
            if width(longer, face, size) <= wide:
                line = longer
                continue
            if width(part, face, size) > wide:
                return None
            if line:
                lines.append(line)
            line = part
    lines.append(line)
    return lines
