"""Reads one layout file; every fault names the file, the key and the reason."""

import tomllib
from pathlib import Path
from typing import Any

from ledger.domain.names import near
from ledger.errors import BadInput
from ledger.reference.shipped import templates

# Which shipped files are layouts and which are sheets; the first beginning is left out of a name.
_BEGINNINGS = {"label": ("label-", "notice-", "ticket-", "card-"), "sheet": ("sheet-",)}


def shipped(kind: str) -> tuple[str, ...]:
    """The names of the layouts ('label') or sheets ('sheet') that come with the program."""
    return tuple(
        sorted(
            path.stem.removeprefix(f"{kind}-")
            for beginning in _BEGINNINGS[kind]
            for path in templates().glob(f"{beginning}*.toml")
        )
    )


def layout_path(name: str, kind: str) -> Path:
    """Where a file of her own or a shipped one lies."""
    if name.endswith(".toml"):
        return Path(name)
    if any(name.startswith(beginning) for beginning in _BEGINNINGS[kind][1:]):
        return templates() / f"{name}.toml"
    return templates() / f"{kind}-{name}.toml"


class LayoutFile:
    """One layout file and the questions that are asked of it."""

    def __init__(self, name: str, kind: str) -> None:
        path = layout_path(name, kind)
        self.name = path.name
        if not path.exists():
            known = shipped(kind)
            close = near(name, known, 1)
            hint = f" Did you mean {close[0]}?" if close else ""
            raise BadInput(
                f"There is no {kind} '{name}'.{hint} Choose from {', '.join(known)}, or name a file of your own."
            )
        try:
            self.data: dict[str, Any] = tomllib.loads(path.read_text(encoding="utf-8"))
        except (tomllib.TOMLDecodeError, UnicodeDecodeError, OSError) as error:
            raise BadInput(f"{self.name} cannot be read: {error}.") from None
        if self.data.get("what") != kind:
            raise BadInput(f'{self.name}, what: this file is no {kind}; write what = "{kind}" in it.')

    def fault(self, key: str, reason: str) -> BadInput:
        """The fault of one key."""
        return BadInput(f"{self.name}, {key}: {reason}")

    def keys(self, part: dict[str, Any], known: tuple[str, ...], where: str = "") -> None:
        """Raise for a key nobody knows."""
        for key in part:
            if key not in known:
                close = near(key, known, 1)
                hint = f"did you mean {close[0]}?" if close else f"known are {', '.join(known)}."
                raise self.fault(f"{where}{key}", f"not known here; {hint}")

    def number(
        self,
        part: dict[str, Any],
        key: str,
        low: float,
        high: float,
        where: str = "",
        default: float | None = None,
    ) -> float:
        """A number within bounds; the default where it is left out and there is one."""
        value = part.get(key, default)
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            raise self.fault(f"{where}{key}", f"a number is missing, such as {key} = {low:g}.")
        if not low <= value <= high:
            raise self.fault(f"{where}{key}", f"{value} does not lie between {low:g} and {high:g}.")
        return float(value)

    def numbers(self, part: dict[str, Any], key: str, low: float, high: float) -> tuple[float, ...]:
        """A list of numbers within bounds; empty where it is left out."""
        values = part.get(key, [])
        if not isinstance(values, list):
            raise self.fault(key, f"a list of numbers is meant, such as {key} = [60.0].")
        return tuple(self.number({key: value}, key, low, high) for value in values)

    def truth(self, part: dict[str, Any], key: str, where: str = "") -> bool:
        """True or false; false where it is left out."""
        value = part.get(key, False)
        if not isinstance(value, bool):
            raise self.fault(f"{where}{key}", "write true or false.")
        return value

    def choice(
        self, part: dict[str, Any], key: str, known: tuple[str, ...], default: str | None, where: str = ""
    ) -> str:
        """One of a few words; the default where it is left out and there is one."""
        value = part.get(key, default)
        if value not in known:
            raise self.fault(f"{where}{key}", f"write one of {', '.join(known)}.")
        return str(value)

    def words(self, part: dict[str, Any], key: str, known: tuple[str, ...], where: str = "") -> tuple[str, ...]:
        """A list of known words; empty where it is left out."""
        values = part.get(key, [])
        if not isinstance(values, list):
            raise self.fault(f"{where}{key}", f'a list is meant, such as {key} = ["{known[0]}"].')
        for word in values:
            if word not in known:
                close = near(str(word), known, 1)
                hint = f"did you mean {close[0]}?" if close else f"known are {', '.join(known)}."
                raise self.fault(f"{where}{key}", f"'{word}' is not known; {hint}")
        return tuple(values)
