"""Fits the panels of a label: each group of them in a size of its own, the law's text flowing from one to the next."""

from bisect import bisect_left
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from math import ceil

from reportlab.lib.units import mm

from ledger.documents.kit.fitting import (
    FACE,
    LAW,
    Filled,
    Missing,
    Picture,
    Room,
    Shrunk,
    Wanted,
    fill,
    plainly,
    set_text,
)
from ledger.documents.kit.fonts import check_glyphs
from ledger.errors import Refused

_STEPS = 24


class NoRoomOnFace(Refused):
    """What is to stand on the face does not fit there; set otherwise it may."""


def fit(rooms: Sequence[Room], *, gap: float, remedies: Callable[[], Mapping[str, str]]) -> tuple[Filled, ...]:
    """Every panel filled, in the largest type that fits all panels of its group.

    The type of a group shrinks together, step by step, each field to its own minimum, so that the law's text has one
    size; what is too long for a panel of it goes on in the next. A panel of the face is a group by itself, in which
    the name shrinks first. Raises Refused naming the panel, the field, the millimetres missing, and the remedies:
    that under the empty name and that for the field; they are asked for only then. It is NoRoomOnFace for the face.
    """
    for room in rooms:
        for one in (*room.top, *room.foot):
            if isinstance(one, Wanted):
                check_glyphs(one.text, plainly(one.field))
    filled: dict[int, Filled] = {}
    for group in dict.fromkeys(room.group for room in rooms):
        numbers = [index for index, room in enumerate(rooms) if room.group == group]
        for part in [[one] for one in numbers] if group == FACE else [numbers]:
            found = _fit_group([rooms[index] for index in part], group, gap)
            if isinstance(found, Missing):
                raise (NoRoomOnFace if group == FACE else Refused)(_said(found, remedies()))
            filled.update(zip(part, found, strict=True))
    return tuple(filled[index] for index in range(len(rooms)))


def _fit_group(rooms: Sequence[Room], group: str, gap: float) -> tuple[Filled, ...] | Missing:
    steps: list[Shrunk] = [(step / _STEPS, 0.0 if group == FACE else step / _STEPS) for step in range(_STEPS + 1)]
    if group == FACE:
        steps += [(1.0, step / _STEPS) for step in range(1, _STEPS + 1)]
    missing = None
    for keep_parts in (True, False):  # what is no list is torn at spaces only where it does not fit otherwise
        if group:  # what does not fit in the smallest type is not tried in every other
            missing = _laid(rooms, group, steps[-1], gap, keep_parts)
            if isinstance(missing, Missing):
                continue
        for step in steps:
            missing = _laid(rooms, group, step, gap, keep_parts)
            if not isinstance(missing, Missing):
                return missing
    assert isinstance(missing, Missing)  # the smallest step was tried
    return missing


def _laid(
    rooms: Sequence[Room], group: str, step: Shrunk, gap: float, keep_parts: bool
) -> tuple[Filled, ...] | Missing:
    """A group at one size, what is too long going on in the next panel of the law's text."""
    filled: list[Filled] = []
    over: tuple[Wanted | Picture, ...] = ()
    for index, room in enumerate(rooms):
        later = rooms[index + 1 :] if group == LAW else ()
        room, over = _share(replace(room, top=(*over, *room.top)), later, step, gap, keep_parts)
        found = fill(room, step, gap, keep_parts)
        if isinstance(found, Missing):
            return found
        filled.append(found)
    return tuple(filled)


def _share(
    room: Room, later: Sequence[Room], shrunk: Shrunk, gap: float, keep_parts: bool
) -> tuple[Room, tuple[Wanted | Picture, ...]]:
    """What a panel takes of what is to stand at its top, and what is left to the next ones.

    A field goes over whole where the next panel has the room for it; a long one is parted between two lines.
    """
    if not later or not isinstance(fill(room, shrunk, gap, keep_parts), Missing):
        return room, ()
    taken: tuple[Wanted | Picture, ...] = ()
    for index, one in enumerate(room.top):
        found = fill(replace(room, top=(*taken, one)), shrunk, gap, keep_parts)
        if isinstance(found, Missing) and found.way == "width":
            return room, ()  # smaller type keeps its words whole here
        if not isinstance(found, Missing):
            taken = (*taken, one)
            continue
        rest = room.top[index:]
        ahead = replace(later[0], top=(one, *later[0].top))
        if isinstance(one, Wanted) and one.splits and isinstance(fill(ahead, shrunk, gap, keep_parts), Missing):
            parts = _parted(one, room, taken, shrunk, gap, keep_parts)
            if parts:
                return replace(room, top=(*taken, parts[0])), (parts[1], *rest[1:])
        if taken or room.foot or not room.top:
            return replace(room, top=taken), rest
        return room, ()
    return room, ()


def _parted(
    one: Wanted, room: Room, taken: tuple[Wanted | Picture, ...], shrunk: Shrunk, gap: float, keep_parts: bool
) -> tuple[Wanted, Wanted] | None:
    """A text in two, as much of it as a panel still holds, two lines at least; None where it does not hold them."""
    block = set_text(one, room, shrunk, gap, keep_parts)
    if isinstance(block, Missing):
        return None
    lines = [line.text for line in block.filled.lines]
    if " ".join(lines) != one.text:  # a word was broken, and would be in two where its line ends elsewhere
        return None

    def held(kept: int) -> bool:
        first = replace(one, text=" ".join(lines[:kept]))
        return not isinstance(fill(replace(room, top=(*taken, first)), shrunk, gap, keep_parts), Missing)

    kept = bisect_left(range(2, len(lines) - 1), True, key=lambda many: not held(many)) + 1
    if kept < 2:
        return None
    return replace(one, text=" ".join(lines[:kept])), replace(one, text=" ".join(lines[kept:]))


def _said(missing: Missing, known: Mapping[str, str]) -> str:
    """Why a label is refused, and what to do."""
    remedy = [known.get("", ""), known.get(missing.field, "")]
    if missing.most != missing.field and missing.most in known:
        remedy.append(f"Most room there goes to the {plainly(missing.most)}. {known[missing.most]}")
    return (
        f"The panel '{missing.panel}' has no room for the {plainly(missing.field)}: "
        f"{ceil(missing.points / mm * 10) / 10:.1f} mm of {missing.way} are missing even at the smallest type allowed. "
        f"{' '.join(one for one in remedy if one)} Nothing was printed."
    )
