"""Reads one layout file; every fault names the file, the line and the reason."""

import os
from pathlib import Path
from typing import Any, Literal

from ledger.errors import BadInput
from ledger.reference.shipped import templates
from ledger.units.names import near
from ledger.units.toml_reader import TomlFile, TomlPart, toml_text

FileKind = Literal["label", "sheet"]
# Which shipped files are layouts and which are sheets; the first beginning is left out of a name.
_BEGINNINGS: dict[FileKind, tuple[str, ...]] = {
    "label": ("label-", "sticker-", "notice-", "ticket-", "card-", "lot-", "parcel-"),
    "sheet": ("sheet-",),
}


def shipped(kind: FileKind) -> tuple[str, ...]:
    """The names of the layouts ('label') or sheets ('sheet') that come with the program."""
    return tuple(
        sorted(
            path.stem.removeprefix(f"{kind}-")
            for beginning in _BEGINNINGS[kind]
            for path in templates().glob(f"{beginning}*.toml")
        )
    )


def layout_path(name: str, kind: FileKind) -> Path:
    """Where a file of her own or a shipped one lies."""
    if name.endswith(".toml"):
        return Path(name)
    if any(name.startswith(beginning) for beginning in _BEGINNINGS[kind][1:]):
        return templates() / f"{name}.toml"
    return templates() / f"{kind}-{name}.toml"


class LayoutFile(TomlFile):
    """One layout or sheet as its file was parsed; what it may say is in the `words` of its kind."""

    kind: FileKind

    def __init__(self, name: str) -> None:
        """Raises BadInput where there is no such file, or where it is of another kind or has a word too many."""
        kind, path = self.kind, layout_path(name, self.kind)
        if not os.path.exists(path):  # false too for a name that is too long for a file
            known = shipped(kind)
            close = near(name, known, 1)
            hint = f" Did you mean {close[0]}?" if close else ""
            raise BadInput(
                f"There is no {kind} '{name}'.{hint} Choose from {', '.join(known)}, or name a file of your own."
            )
        super().__init__(toml_text(path), path.name)
        if self.data.get("what") != kind:
            raise fault(self.head, "what", f'this file is no {kind}; write what = "{kind}" in it.')
        self.check()


def fault(part: TomlPart, key: str, reason: str) -> BadInput:
    """The fault of one key, with its place."""
    return BadInput(f"{part.place(key)}, {key}: {reason}")


def length(part: TomlPart, key: str, low: float, high: float, usual: float | None = None) -> float:
    """A number within bounds; the usual one where it is left out and there is one. Raises BadInput."""
    value = part.number(key, high, least=low)
    if value is None and usual is None:
        raise part.bad(f"{key} is missing; write {key} = {low:g}.")
    return float(usual if value is None else value)  # type: ignore[arg-type]


def lengths(part: TomlPart, key: str, low: float, high: float) -> tuple[float, ...]:
    """A list of numbers within bounds; empty where it is left out. Raises BadInput."""
    many = part.each(key, f"{key} is a list of numbers; write {key} = [60.0].")
    return tuple(length(one, key, low, high) for one in many)


def figures(part: TomlPart, key: str, many: int, wide: float, high: float, what: str) -> tuple[Any, ...]:
    """Lists of so many figures, left, top, width and perhaps height, each within the label."""
    meant = f"{key} is a list of {what}."
    found = tuple(tuple(length(n, key, 0, 280) for n in one.each(key, meant, many)) for one in part.each(key, meant))
    for left, top, across, *down in found:
        if left + across > wide + 0.01 or top + sum(down) > high + 0.01:
            raise fault(part, key, "it reaches beyond its label.")
    return found


def one_figure(part: TomlPart, key: str, wide: float, high: float) -> Any:
    """One left, top, width and height within the label; None where it is left out."""
    meant = f"{key} is a left, a top, a width and a height; write {key} = [6.5, 15.0, 53.0, 18.0]."
    found = tuple(length(one, key, 0, 280) for one in part.each(key, meant, 4))
    if found and (found[0] + found[2] > wide + 0.01 or found[1] + found[3] > high + 0.01):
        raise fault(part, key, "it reaches beyond its label.")
    return found or None


def rounds_of(head: TomlPart, wide: float, high: float) -> tuple[tuple[float, float, float], ...]:
    """The circles to be cut out, each within the label."""
    meant = "rounds_mm is a list of circles, each [x, y, diameter]; write rounds_mm = [[25, 25, 40]]."
    rounds = []
    for one in head.each("rounds_mm", meant):
        x, y, across = (length(n, "rounds_mm", 0, max(wide, high)) for n in one.each("rounds_mm", meant, 3))
        if min(x, y) < across / 2 - 0.01 or x + across / 2 > wide + 0.01 or y + across / 2 > high + 0.01:
            raise fault(head, "rounds_mm", f"the round of {across:g} mm reaches beyond its label.")
        rounds.append((x, y, across))
    return tuple(rounds)


def choice(part: TomlPart, key: str, known: tuple[str, ...], usual: str | None = None) -> str:
    """One of a few words; the usual one where it is left out and there is one. Raises BadInput."""
    value = part.maybe_word(key) or usual
    if value not in known:
        raise fault(part, key, f"write one of {', '.join(known)}.")
    return str(value)


def known_words(part: TomlPart, key: str, known: tuple[str, ...]) -> tuple[str, ...]:
    """A list of known words; empty where it is left out. Raises BadInput."""
    found = part.each(key, f'{key} is a list of words in quotes; write {key} = ["{known[0]}"].')
    words = tuple(one.word(key) for one in found)
    for word in words:
        if word not in known:
            close = near(word, known, 1)
            hint = f"did you mean {close[0]}?" if close else f"known are {', '.join(known)}."
            raise fault(part, key, f"'{word}' is not known; {hint}")
    return words
