"""Walks an assessment file: which words it may hold, its days, its lists and its shares, each with its line."""

from datetime import date, datetime

from ledger.domain.names import near
from ledger.domain.recipe_file import Part, RecipeFile

_BOUNDS = ("inci", "lowest_percent", "highest_percent")
# The parts of a file and the words each takes; "" is the head of the file.
_WORDS: dict[str, tuple[str, ...]] = {
    "": ("assessor", "reference", "on", "until", "process", "markets", "superfat", "durability_months"),
    "ingredient": _BOUNDS,
    "fragrance": _BOUNDS,
    "notification": ("market", "reference", "on"),
}


class AssessmentFile(RecipeFile):
    """A parsed file of an assessment; it is written as a recipe is, and its faults are named as a recipe's are."""

    def check(self) -> None:
        """Raise BadInput for a word no assessment has, with what was probably meant."""
        for table, known in _WORDS.items():
            allowed = known if table else (*known, *filter(None, _WORDS))
            for index, part in enumerate(self.tables(table) if table else [self.data]):
                for key, value in part.items():
                    if key in allowed:
                        continue
                    message = f"'{key}' is not known here; {_hint(key, table, allowed)}"
                    inner = value[0] if isinstance(value, list) and value else value
                    if isinstance(inner, dict):
                        raise self.bad(key, 0, message)
                    raise self.bad(table, index, message, key)

    def day(self, part: Part, key: str, table: str, index: int = 0) -> date:
        """A day that must be there. Raises BadInput."""
        found = self.maybe_day(part, key, table, index)
        if found is None:
            raise self.bad(table, index, f"{key} is missing; write {key} = 2026-03-03, the day without quotes.")
        return found

    def maybe_day(self, part: Part, key: str, table: str, index: int = 0) -> date | None:
        """A day; None where it is left out. Raises BadInput for anything but a day."""
        value = part.get(key)
        if value is None:
            return None
        if isinstance(value, datetime) or not isinstance(value, date):
            raise self.bad(table, index, f"{key} is a day, without quotes or time; write {key} = 2026-03-03.", key)
        return value

    def listed(self, key: str, example: str) -> tuple[str, ...]:
        """One word or more in brackets at the head of the file, in small letters, each once. Raises BadInput."""
        value = self.data.get(key)
        if value is None:
            raise self.bad("", 0, f"{key} is missing; write {key} = {example}.")
        if not isinstance(value, list) or not value or not all(isinstance(one, str) and one.strip() for one in value):
            raise self.bad("", 0, f"{key} is a list of words in quotes; write {key} = {example}.", key)
        return tuple(dict.fromkeys(one.strip().lower() for one in value))

    def share(self, part: Part, key: str, table: str, index: int, *, or_nothing: bool = False) -> int | None:
        """A percentage in ppm, exactly as written; None where it is left out.

        Raises BadInput for more than four decimals, since rounding would move a limit.
        """
        value = self.number(part, key, table, index, 100, or_nothing=or_nothing)
        if value is None:
            return None
        ppm = value * 10_000
        if ppm.denominator != 1:
            raise self.bad(table, index, f"{key} = {part[key]} is too fine; write four decimals at the most.", key)
        return int(ppm)


def _hint(key: str, table: str, allowed: tuple[str, ...]) -> str:
    if table and key in _WORDS[""]:
        return "it belongs at the head of the file, above the first [[part]]."
    close = near(key, allowed, 1)
    return f"did you mean {close[0]}?" if close else f"known: {', '.join(allowed)}."
