"""Walks a recipe file: which words it may hold, what stands under them, and on which line."""

import re
import tomllib
from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from ledger.domain.names import near
from ledger.domain.quantity import parse_mass
from ledger.errors import BadInput

Part = Mapping[str, Any]

# The parts of a file and the words each takes; "" is the head of the file.
_WORDS: dict[str, tuple[str, ...]] = {
    "": ("name", "code", "process", "superfat", "fats_total", "best_before_months"),
    "alkali": ("material", "kind", "percent_of_demand"),
    "water": ("material", "per_alkali", "lye_concentration", "of_fats", "grams"),
    "fat": ("material", "percent", "grams", "when", "in_demand", "note"),
    "liquid": ("material", "percent_of_fats", "grams", "when", "note"),
    "portion": ("name", "percent", "bars"),
    "additive": ("material", "percent_of_fats", "grams", "when", "add_alkali", "portion", "note"),
    "fragrance": ("material", "percent_of_fats", "grams", "when", "portion", "note"),
    "part": ("material", "grams", "note"),
    "rework": ("material", "grams", "note"),
    "infusion": ("yields", "days", "declare", "carried_percent", "carried_source"),
    "label": (
        "declaration",
        "fragrance",
        "function",
        "precautions",
        "claims",
        "origin",
        "after_opening_months",
        "gtin",
    ),
    "blend": ("yields",),
    "cure": ("days", "usable_from_days", "water_left", "driest_water", "weekly_loss_percent", "weigh_every_days"),
    "mould": ("name", "size", "bars", "net_weight"),
    "limits": (
        "lye_fats_apart",
        "lye_temperature",
        "cook_minutes",
        "fragrance_temperature",
        "bar_weight",
        "pH",
        "loss_percent",
    ),
    "release": ("checks",),
    "work": ("minutes",),
    "packaging": ("material", "per_bar"),
}
_ONCE = ("label", "release", "limits", "water", "infusion", "blend", "cure", "mould", "work")
_EVERY = ("name", "code", "process", "best_before_months", "work", "packaging")
_SOAP = (
    *_EVERY, "superfat", "fats_total", "alkali", "water", "fat", "liquid", "additive", "fragrance", "portion", "cure",
    "mould", "label", "limits", "release",
)  # fmt: skip
# What each process has a use for. An infusion takes its parts alone: what was strained out is not declared, so
# whatever stays in the oil goes into the soap, where it is.
_PLACE: dict[str, tuple[str, ...]] = {
    "cold": _SOAP,
    "hot": _SOAP,
    "infusion": (*_EVERY, "part", "infusion"),
    "blend": (*_EVERY, "part", "blend"),
    "rebatch": (*_EVERY, "rework", "water", "additive", "fragrance", "cure", "mould", "label", "limits", "release"),
}


class RecipeFile:
    """A parsed file that knows where each part of it stands, for messages with file and line."""

    def __init__(self, text: str, file: str) -> None:
        """Raises BadInput with line and column for what is not TOML."""
        self.file = file
        self._lines = text.splitlines()
        try:
            self.data = tomllib.loads(text.removeprefix("\ufeff"))  # some editors put a byte order mark first
        except tomllib.TOMLDecodeError as error:
            place = re.search(r"\(at (?:end of document|(.*))\)", str(error))
            what = re.sub(r" \(at .*\)", "", str(error))
            where = place[1] if place and place[1] else f"line {len(self._lines)}, the end"
            raise BadInput(f"{file}, {where}: the file cannot be read ({what}).") from None
        except (ValueError, RecursionError):  # a number of thousands of digits, brackets thousands deep
            raise BadInput(
                f"{file}: the file cannot be read; a number in it is too long, or its brackets too deep."
            ) from None

    def place(self, table: str, index: int = 0, key: str | None = None) -> str:
        """Where the n-th [table] or [[table]] stands, or a word under it."""
        name, seen, current, header = f" [{table}]" if table else "", -1, "", None
        for number, line in enumerate(self._lines, 1):
            if found := re.match(r"\s*\[\[?\s*([\w-]+)\s*\]\]?", line):
                current = found[1]
                seen += current == table
                if current == table and seen == index:
                    header = number
                continue
            under = current == table and seen == (index if table else -1)
            if under and key and re.match(rf"\s*[\"']?{re.escape(key)}[\"']?\s*[=.]", line):
                return f"{self.file}, line {number}{name}"
        return f"{self.file}, line {header}{name}" if header else f"{self.file}{name}"

    def bad(self, table: str, index: int, message: str, key: str | None = None) -> BadInput:
        """A message with its place."""
        return BadInput(f"{self.place(table, index, key)}: {message}")

    def check_words(self) -> str:
        """The process, once every word in the file is one that it takes.

        Raises BadInput for a word no recipe has, with what was probably meant; for a part written
        twice; and for a part that this process has no use for, so that nothing is passed over in silence.
        """
        for table, known in _WORDS.items():
            allowed = (*known, *_WORDS) if table == "" else known
            for index, part in enumerate(self.tables(table) if table else [self.data]):
                for key in part:
                    if key not in allowed:
                        close = near(key, allowed, 1)
                        hint = f"did you mean {close[0]}?" if close else f"known: {', '.join(filter(None, allowed))}."
                        if not table and isinstance(part[key], (dict, list)):
                            raise self.bad(key, 0, f"'{key}' is not known here; {hint}")
                        raise self.bad(table, index, f"'{key}' is not known here; {hint}", key)
        process = self.word(self.data, "process", "")
        if process not in _PLACE:
            raise self.bad("", 0, f"process '{process}' is not known; write one of {', '.join(_PLACE)}.", "process")
        for key in self.data:
            if key not in _PLACE[process]:
                table, word = (key, None) if key in _WORDS else ("", key)
                raise self.bad(table, 0, f"{key} has no place in the {process} process; take it out.", word)
        for table in _ONCE:
            if len(self.tables(table)) > 1:
                raise self.bad(table, 1, f"{table} stands here a second time; a recipe has one.")
        return process

    def tables(self, name: str) -> list[dict[str, Any]]:
        """The parts of one name, whether written once or several times. Raises BadInput for a bare value."""
        found = self.data.get(name, [])
        many = found if isinstance(found, list) else [found]
        if not all(isinstance(one, dict) for one in many):
            written = f"[{name}]" if name in _ONCE else f"[[{name}]]"
            raise self.bad("", 0, f"'{name}' is a part of its own; write it as {written}.", name)
        return many

    def one(self, name: str) -> dict[str, Any]:
        """The one part of a name, or an empty one."""
        found = self.tables(name)
        return found[0] if found else {}

    def word(self, part: Part, key: str, table: str, index: int = 0) -> str:
        """A word that must be there, on one line. Raises BadInput."""
        found = self.maybe_word(part, key, table, index)
        if not found:
            raise self.bad(table, index, f'{key} is missing; write {key} = "…".')
        return found

    def maybe_word(self, part: Part, key: str, table: str, index: int = 0) -> str | None:
        """A word, on one line; None where it is left out. Raises BadInput for anything but text."""
        value = part.get(key)
        if value is None:
            return None
        if not isinstance(value, str):
            raise self.bad(table, index, f'{key} is a word, in quotes; write {key} = "…".', key)
        return " ".join(value.split()) or None

    def flag(self, part: Part, key: str, table: str, index: int) -> bool | None:
        """A yes or no; None where it is left out. Raises BadInput for anything but true or false."""
        value = part.get(key)
        if value is not None and not isinstance(value, bool):
            raise self.bad(table, index, f"{key} is a yes or no; write {key} = true or {key} = false.", key)
        return value

    def number(
        self, part: Part, key: str, table: str, index: int, top: int, *, or_nothing: bool = False
    ) -> Fraction | None:
        """A number above zero (or zero itself) up to `top`, exactly as written; None where it is left out."""
        value = part.get(key)
        if value is None:
            return None
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            raise self.bad(table, index, f"{key} is a number; write it without quotes or unit.", key)
        if not 0 <= value <= top or not (value or or_nothing):
            least = "from" if or_nothing else "above"
            raise self.bad(table, index, f"{key} = {value} cannot be; write a number {least} 0 up to {top}.", key)
        return Fraction(str(value))

    def whole(self, part: Part, key: str, table: str, index: int = 0) -> int | None:
        """A whole number above zero; None where it is left out."""
        value = self.number(part, key, table, index, 100_000)
        if value is not None and value.denominator != 1:
            raise self.bad(table, index, f"{key} is a whole number.", key)
        return None if value is None else int(value)

    def percent(self, part: Part, key: str, table: str, index: int) -> int | None:
        """A percentage in ppm; None where it is left out."""
        return self._scaled(part, key, table, index, 100, 10_000)

    def mass(self, part: Part, key: str, table: str, index: int = 0) -> int | None:
        """Grams as a plain number, in mg; None where it is left out."""
        return self._scaled(part, key, table, index, 1_000_000, 1000)

    def _scaled(self, part: Part, key: str, table: str, index: int, top: int, scale: int) -> int | None:
        value = self.number(part, key, table, index, top)
        if value is None:
            return None
        if not (scaled := round(value * scale)):
            raise self.bad(table, index, f"{key} = {part[key]} is too little to be weighed or reckoned.", key)
        return scaled

    def weight(self, part: Part, key: str, table: str) -> int | None:
        """A weight with its unit, in mg; None where it is left out."""
        if key not in part:
            return None
        value = part[key]
        if not isinstance(value, str):
            raise self.bad(table, 0, f'{key} is a weight with its unit, such as {key} = "1000 g".', key)
        try:
            weight = parse_mass(value, what=key)
        except BadInput as error:
            raise self.bad(table, 0, str(error), key) from None
        if not weight:
            raise self.bad(table, 0, f"{key} is nothing; write it above 0 g.", key)
        return weight
