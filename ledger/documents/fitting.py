"""Sets text into a panel: it breaks at commas and spaces, shrinks to the minimum, or is refused."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from reportlab.lib.units import mm

from ledger.documents.fonts import check_glyphs, width
from ledger.errors import Refused


@dataclass(frozen=True)
class Wanted:
    """One field to set: its text, and the sizes its type may take, largest first."""

    field: str
    text: str
    face: str
    largest: float
    smallest: float
    keep_names: bool = False  # break only behind a comma, so that no name is torn where that can be helped


@dataclass(frozen=True)
class SetField:
    """One field as it is set: its lines and the size of its type, in points."""

    field: str
    lines: tuple[str, ...]
    face: str
    size: float

    @property
    def leading(self) -> float:
        """From one base line to the next."""
        return self.size * 1.16

    @property
    def height(self) -> float:
        """How high it stands."""
        return self.leading * len(self.lines)


def break_lines(text: str, face: str, size: float, wide: float) -> list[str] | None:
    """Lines no wider than `wide` points, broken at spaces; None when a single word is too wide.

    A name is kept whole on a line where it fits one; no word is ever hyphenated.
    """
    lines: list[str] = []
    for given in text.split("\n"):
        line = ""
        for name in re.split(r"(?<=[,:]) ", given):
            whole = f"{line} {name}".strip()
            if width(whole, face, size) <= wide:
                line = whole
                continue
            if line and width(name, face, size) <= wide:
                lines.append(line)
                line = name
                continue
            for word in name.split(" "):
                longer = f"{line} {word}".strip()
                if width(longer, face, size) <= wide:
                    line = longer
                    continue
                if width(word, face, size) > wide:
                    return None
                lines.append(line)
                line = word
        lines.append(line)
    return lines


def fit(wanted: Sequence[Wanted], *, panel: str, wide: float, high: float, gap: float) -> tuple[SetField, ...]:
    """Set fields one under the other within so many points.

    All shrink together, step by step, each to its own minimum. Raises Refused naming the panel, the
    field and the millimetres missing.
    """
    for one in wanted:
        check_glyphs(one.text, one.field.replace("_", " "))
    steps = 24
    over, culprit = 0.0, wanted[0].field if wanted else ""
    for step in range(steps + 1):
        found = []
        for one in wanted:
            size = one.largest - (one.largest - one.smallest) * step / steps
            lines = break_lines(one.text, one.face, size, wide)
            if lines is None:
                culprit = one.field
                over = max(width(word, one.face, size) for word in one.text.split()) - wide
                break
            found.append(SetField(one.field, tuple(lines), one.face, size))
        else:
            total = sum(one.height for one in found) + gap * (len(found) - 1)
            if total <= high:
                return tuple(found)
            over = total - high
            culprit = max(found, key=lambda one: one.height).field
    raise Refused(
        f"The {culprit.replace('_', ' ')} does not fit the panel '{panel}': {over / mm:.1f} mm are missing even at the "
        "smallest type allowed. Take a larger layout (--layout band), or set it on a card that goes with the bar. "
        "Nothing was printed."
    )
