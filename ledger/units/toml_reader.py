"""One reader of the small TOML files she writes: which words they may hold, what stands under them, and where."""

import re
import tomllib
from collections.abc import Callable, Mapping
from datetime import date, datetime
from fractions import Fraction
from functools import lru_cache
from pathlib import Path
from typing import Any, TypeVar

from ledger.errors import BadInput
from ledger.units.given import read_given_text
from ledger.units.names import near
from ledger.units.quantity import parse_mass
from ledger.units.signs import refuse_unseen

T = TypeVar("T")
_MOST_MG = 1_000_000_000
_LONGEST_BITS = 128  # no figure of the trade is near it, and a longer one could not be shown


@lru_cache(maxsize=32)  # a file is looked through for unseen signs and then read, and a report asked several times
def _parsed(text: str) -> dict[str, Any]:
    """What stands in a text; whoever has it reads it and changes nothing."""
    return tomllib.loads(text)


def toml_text(path: Path) -> str:
    """A TOML file of hers as it stands. Raises BadInput for one not to be read, or a sign that is not seen in it.

    Such a sign may be written by its number, so the texts are looked at as well; a fault of TOML is told by its reader.
    """
    text = read_given_text(path)
    try:
        found = _parsed(text)
    except (ValueError, RecursionError):
        return text
    _refuse_unseen_in(found, path.name)
    return text


def _refuse_unseen_in(value: Any, where: str) -> None:
    if isinstance(value, str):
        refuse_unseen(" ".join(value.split()), where)
    elif isinstance(value, dict):
        for key, one in value.items():
            _refuse_unseen_in(key, where)
            _refuse_unseen_in(one, f"{where}, {key}")
    elif isinstance(value, list):
        for one in value:
            _refuse_unseen_in(one, where)


class TomlFile:
    """A parsed file that knows where each part of it stands, for messages with file, line and [part]."""

    words: Mapping[str, tuple[str, ...]] = {}  # the parts of a file and the words each takes; "" is its head
    once: tuple[str, ...] = ()  # the parts that stand in it once
    noun = "file"

    def __init__(self, text: str, file: str) -> None:
        """Raises BadInput with line and column for what is not TOML."""
        text = text.removeprefix("\ufeff")  # some editors put a byte order mark first
        self.file, self._lines = file, text.splitlines()
        try:
            self.data = _parsed(text)
        except tomllib.TOMLDecodeError as error:
            place = re.search(r"\(at (?:end of document|(.*))\)", str(error))
            what = re.sub(r" \(at .*\)", "", str(error))
            where = place[1] if place and place[1] else f"line {len(self._lines)}, the end"
            raise BadInput(f"{file}, {where}: the file cannot be read ({what}).") from None
        except (ValueError, RecursionError):  # a number of thousands of digits, brackets thousands deep
            raise BadInput(
                f"{file}: the file cannot be read; a number in it is too long, or its brackets too deep."
            ) from None
        self.head = TomlPart(self, "", 0, self.data)

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

    def check(self) -> None:
        """Raise BadInput for a word no such file has, with what was probably meant, and for a part written twice."""
        for table, known in self.words.items():
            allowed = known if table else (*known, *filter(None, self.words))
            for part in self.parts(table) if table else [self.head]:
                for key, value in part.data.items():
                    if key in allowed:
                        continue
                    message = f"'{key}' is not known here; {self._meant(key, table, allowed)}"
                    inner = value[0] if isinstance(value, list) and value else value
                    at = TomlPart(self, key, 0, {}) if not table and isinstance(inner, dict) else part
                    raise at.bad(message, key)
        for table in self.once:
            if len(many := self.parts(table)) > 1:
                raise many[1].bad(f"{table} stands here a second time; a {self.noun} has one.")

    def _meant(self, key: str, table: str, allowed: tuple[str, ...]) -> str:
        if table and key in self.words[""]:
            return "it belongs at the head of the file, above the first line in brackets."
        close = near(key, allowed, 1)
        return f"did you mean {close[0]}?" if close else f"known: {', '.join(allowed)}."

    def parts(self, name: str) -> "list[TomlPart]":
        """The parts of one name, whether written once or several times. Raises BadInput for a bare value."""
        found = self.data.get(name, [])
        many = found if isinstance(found, list) else [found]
        if not all(isinstance(one, dict) for one in many):
            written = f"[{name}]" if name in self.once else f"[[{name}]]"
            raise self.head.bad(f"'{name}' is a part of its own; write it as {written}.", name)
        return [TomlPart(self, name, index, one) for index, one in enumerate(many)]

    def one(self, name: str) -> "TomlPart":
        """The one part of a name, or an empty one."""
        return next(iter(self.parts(name)), TomlPart(self, name, 0, {}))


class TomlPart:
    """One part of a file, or its head: what stands under its words. What is left out is None.

    Every method raises BadInput with the place for what is of the wrong kind.
    """

    def __init__(self, source: TomlFile, table: str, index: int, data: Mapping[str, Any]) -> None:
        self._source, self._table, self._index, self.data = source, table, index, data

    def place(self, key: str | None = None) -> str:
        """Where it stands, or a word under it: file, line, [part]."""
        return self._source.place(self._table, self._index, key)

    def bad(self, message: str, key: str | None = None) -> BadInput:
        """A message with its place."""
        return BadInput(f"{self.place(key)}: {message}")

    def word(self, key: str) -> str:
        """A word that must be there, on one line."""
        found = self.maybe_word(key)
        if not found:
            raise self.bad(f'{key} is missing; write {key} = "…".')
        return found

    def maybe_word(self, key: str) -> str | None:
        """A word, on one line."""
        value = self.data.get(key)
        if value is None:
            return None
        if not isinstance(value, str):
            raise self.bad(f'{key} is a word, in quotes; write {key} = "…".', key)
        return " ".join(value.split()) or None

    def read(self, key: str, parse: Callable[[str], T]) -> T | None:
        """A word that something else reads; its fault gets the place."""
        text = self.maybe_word(key)
        try:
            return parse(text) if text else None
        except BadInput as error:
            raise self.bad(str(error), key) from None

    def choice(self, key: str, known: tuple[str, ...]) -> str | None:
        """One of a few words."""
        value = self.maybe_word(key)
        if value is not None and value not in known:
            raise self.bad(f"{key} is one of {' or '.join(repr(one) for one in known)}.", key)
        return value

    def flag(self, key: str) -> bool | None:
        """A yes or no."""
        value = self.data.get(key)
        if value is not None and not isinstance(value, bool):
            raise self.bad(f"{key} is a yes or no; write {key} = true or {key} = false.", key)
        return value

    def number(self, key: str, top: float, *, least: float | None = None) -> Fraction | None:
        """A number above zero, or from `least`, up to `top`, exactly as written."""
        value = self.data.get(key)
        if value is None:
            return None
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            raise self.bad(f"{key} is a number; write it without quotes or unit.", key)
        if not (0 if least is None else least) <= value <= top or (least is None and not value):
            long = isinstance(value, int) and value.bit_length() > _LONGEST_BITS
            shown = f"{key} cannot be as large as that" if long else f"{key} = {value} cannot be"
            lowest = "above 0" if least is None else f"from {least:.10g}"
            raise self.bad(f"{shown}; write a number {lowest} up to {top:.10g}.", key)
        return Fraction(str(value))

    def whole(self, key: str, top: int = 100_000) -> int | None:
        """A whole number above zero."""
        value = self.number(key, top)
        if value is not None and value.denominator != 1:
            raise self.bad(f"{key} is a whole number.", key)
        return None if value is None else int(value)

    def share(self, key: str, *, least: int | None = None, exact: bool = False) -> int | None:
        """A percentage in ppm; `exact` refuses more than four decimals, where rounding would move a limit."""
        value = self.number(key, 100, least=least)
        if exact and value is not None and (value * 10_000).denominator != 1:
            raise self.bad(f"{key} = {self.data[key]} is too fine; write four decimals at the most.", key)
        return self._scaled(key, value, 10_000)

    def mass(self, key: str) -> int | None:
        """Grams as a plain number, or in quotes a weight in another unit (grams = "1 lb 12 oz"), in mg."""
        if isinstance(self.data.get(key), str):
            weight = self.weight(key)
            if weight is not None and weight > _MOST_MG:
                raise self.bad(f"{key} = {self.data[key]} cannot be; write a weight up to 1000 kg.", key)
            return weight
        return self._scaled(key, self.number(key, _MOST_MG // 1000), 1000)

    def _scaled(self, key: str, value: Fraction | None, scale: int) -> int | None:
        if value and not round(value * scale):
            raise self.bad(f"{key} = {self.data[key]} is too little to be weighed or reckoned.", key)
        return None if value is None else round(value * scale)

    def weight(self, key: str) -> int | None:
        """A weight with its unit, in mg, above zero."""
        value = self.data.get(key)
        if value is None:
            return None
        if not isinstance(value, str):
            raise self.bad(f'{key} is a weight with its unit, such as {key} = "1000 g".', key)
        try:
            weight = parse_mass(value, what=key)
        except BadInput as error:
            raise self.bad(str(error), key) from None
        if not weight:
            raise self.bad(f"{key} is nothing; write it above 0 g.", key)
        return weight

    def day(self, key: str) -> date:
        """A day that must be there."""
        found = self.maybe_day(key)
        if found is None:
            raise self.bad(f"{key} is missing; write {key} = 2026-03-03, the day without quotes.")
        return found

    def maybe_day(self, key: str) -> date | None:
        """A day."""
        value = self.data.get(key)
        if value is None:
            return None
        if isinstance(value, datetime) or not isinstance(value, date):
            raise self.bad(f"{key} is a day, without quotes or time; write {key} = 2026-03-03.", key)
        return value

    def listed(self, key: str, example: str, *, needed: bool = False) -> tuple[str, ...] | None:
        """Words in brackets, each once and on one line, none of them blank; one at the least where they are needed."""
        value = self.data.get(key)
        if value is None and needed:
            raise self.bad(f"{key} is missing; write {key} = {example}.")
        if value is None:
            return None
        if (
            not isinstance(value, list)
            or (needed and not value)
            or not all(isinstance(one, str) and one.strip() for one in value)
        ):
            raise self.bad(f"{key} is a list of words in quotes; write {key} = {example}.", key)
        return tuple(dict.fromkeys(" ".join(one.split()) for one in value))

    def each(self, key: str, says: str, many: int | None = None) -> "tuple[TomlPart, ...]":
        """What stands in brackets, each to be read by itself; `says` is the fault of anything else or not so many."""
        value = self.data.get(key, [])
        if not isinstance(value, list) or (key in self.data and many not in (None, len(value))):
            raise self.bad(says, key)
        return tuple(TomlPart(self._source, self._table, self._index, {key: one}) for one in value)

    def pair(self, key: str, example: str, read: "Callable[[TomlPart], int | None]") -> tuple[int, int] | None:
        """A range, from and to."""
        ends = self.each(key, f"{key} is a range, from and to; write {key} = {example}.", 2)
        if not ends:
            return None
        low, high = (read(one) or 0 for one in ends)
        if low > high:
            raise self.bad(f"{key} runs from the lower to the higher; write {key} = {example}.", key)
        return low, high
