"""Reads a supplier's statement of what an oil contains: as it is typed, or as the CSV file the supplier sends."""

import csv
import io
import re
from collections.abc import Sequence
from pathlib import Path
from typing import Literal, NamedTuple

from ledger.cli.kit.heard import hear
from ledger.errors import BadInput
from ledger.reference.allergens import allergen_named, is_cas_number, plain
from ledger.units.given import read_given_text
from ledger.units.quantity import parse_number

ShareUnit = Literal["percent", "ppm"]
_PPM_IN: dict[ShareUnit, int] = {"percent": 10_000, "ppm": 1}
_UNITS: dict[str, ShareUnit] = {
    "%": "percent",
    "percent": "percent",
    "prozent": "percent",
    "ppm": "ppm",
    "mg/kg": "ppm",
}
_NONE = ("none", "absent", "not present", "not detected", "nil", "keine", "absence")
_SILENT = ("", "-", "\u2013", "\u2014", "n/a", "na", "nd", "n.d.", "n. d.")  # neither how much nor that it is none
# Words of a heading, as suppliers write them (common practice, no source).
_NAMES = ("name", "allergen", "allergène", "substance", "substanz", "constituent", "constituant", "component",
          "ingredient", "chemical", "inci", "stoff", "bezeichnung")  # fmt: skip
_SHARES = ("%", "percent", "prozent", "ppm", "mg/kg", "share", "concentration", "konzentration", "content", "amount",
           "level", "gehalt", "anteil", "teneur", "max", "value", "wert")  # fmt: skip
_MOST_BEFORE = 30  # lines that may stand before the headings


class Stated(NamedTuple):
    """One line of a statement: the name as it will be kept, its share, and how both were written."""

    name: str
    share_ppm: int
    written: str | None  # the share, where it is no plain percentage
    line: int = 0
    called: str = ""  # everything that the line calls it


class Sheet(NamedTuple):
    """What was understood of a file: its lines, and those that say neither how much nor that it is none."""

    lines: tuple[Stated, ...]
    silent: tuple[str, ...] = ()
    before: int = 0  # how many lines stand before the headings
    read_as: str = ""  # the columns that were read


def read_share(text: str, *, what: str, unit: ShareUnit | None = "percent") -> tuple[int, str | None]:
    """A share in ppm, and as it was written where it is no plain percentage. Raises BadInput.

    Of a bound and of a range the highest counts; what is not nothing is never less than one part per million.
    """
    typed = " ".join(text.split())
    if typed.casefold() in _NONE:
        return 0, None
    body = re.sub(r"^(<=|<|\u2264|max\.?|up to|bis)\s*", "", typed, flags=re.IGNORECASE)
    bound = body != typed
    if body and not re.search(r"[\d<]", body):
        raise BadInput(
            f"{what} is said as '{typed}', which is no figure. Ask the supplier for the most there may be and write "
            "that, as <0.01; write none where there is none."
        )
    if re.match(r"(>|\u2265|~|\u2248|ca\b|about\b|approx|etwa\b|environ\b)", body, re.IGNORECASE):
        raise BadInput(
            f"{what} is said as '{typed}', which leaves open how much there may be. Ask the supplier for the most, and "
            "write that: 0.5, or <0.5."
        )
    number, own = body, unit
    if ending := re.search(r"\s*(%|percent|ppm|mg/kg)(\s*w/w)?$", body, re.IGNORECASE):
        number, own = body[: ending.start()], _UNITS[ending[1].casefold()]
    parts = re.split(r"\s*[-\u2013]\s*", number.strip()) if re.match(r"\s*\d", number) else [number]
    values = [parse_number(part, what=what) for part in parts]
    if len(values) > 2 or values[0] > values[-1]:
        raise BadInput(f"{what} cannot be read from '{typed}'; write 0.5, <0.01, or 0.1-0.5 with the lower one first.")
    if own is None:
        raise BadInput(f"{what}, '{typed}': percent or ppm? Write the unit, or add --unit percent or --unit ppm.")
    ppm = values[-1] * _PPM_IN[own]
    as_percent = own == "percent" and not bound and len(values) == 1 and ppm == round(ppm)
    written = None if as_percent else f"{typed}{'' if ending else ' %' if own == 'percent' else ' ppm'}"
    return (max(1, round(ppm)) if ppm else 0), written


def read_typed(shares: Sequence[str]) -> Sheet:
    """A statement as it is typed, name=percent; raises BadInput for a name twice, however it is written."""
    found: dict[str, Stated] = {}
    for text in shares:
        name, separator, share = (part.strip() for part in text.replace("<=", "\u2264").rpartition("="))
        if not separator or not name or plain(name) in found:
            raise BadInput(f"'{text}' is not a constituent with its percent, once; write linalool=32.")
        found[plain(name)] = Stated(name, *read_share(share, what=f"the share of {name}"), called=name)
    return Sheet(tuple(found.values()))


def read_statement(path: Path, unit: ShareUnit | None) -> Sheet:
    """A supplier's file, whatever separates its columns. Raises BadInput naming the line that cannot be read."""
    text = hear(read_given_text(path))
    for separator in ("\t", ";", ","):
        cells, amiss = _cells(path, text, separator)
        for place, (number, row) in enumerate(cells[:_MOST_BEFORE]):
            if found := _columns(path, number, row, unit):
                if amiss:
                    raise BadInput(
                        f"{path}, line {amiss}: a quotation mark is not closed, or more follows a closed one. Mend "
                        "that line, else what stands behind it is lost. Nothing of the file was booked."
                    )
                return _sheet(path, cells[place + 1 :], number - 1, found)
    raise BadInput(
        f"{path} has no line of headings that is understood: one column for the name or the CAS number, and one for "
        "the share, headed as in: name; CAS; percent. Write them above the figures."
    )


def _cells(path: Path, text: str, separator: str) -> tuple[list[tuple[int, list[str]]], int | None]:
    """The rows of a table with the lines they end on, and the line on which its quotation marks are amiss."""
    rows: list[tuple[int, list[str]]] = []
    strictly = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True)
    try:
        rows += ((strictly.line_num, [" ".join(cell.split()) for cell in row]) for row in strictly)
    except csv.Error as error:
        if "field larger" in str(error):
            raise BadInput(f"{path} cannot be read as a table ({error}).") from None
        return rows, rows[-1][0] + 1 if rows else 1
    return rows, None


class _Columns(NamedTuple):
    name: int | None
    cas: int | None
    share: int
    unit: ShareUnit | None
    words: str
    wide: int  # how many columns have a heading


def _columns(path: Path, line: int, row: Sequence[str], unit: ShareUnit | None) -> _Columns | None:
    """Which column is which, by the headings; nothing for a line that is none of headings."""
    heads = [head.casefold() for head in row]
    cas = next((i for i, head in enumerate(heads) if re.search(r"\bcas\b", head)), None)
    named = [i for i, head in enumerate(heads) if i != cas and any(word in head for word in _NAMES)]
    shares = [
        i
        for i, head in enumerate(heads)
        if i != cas and i not in named[:1] and not re.search(r"\d", head) and any(word in head for word in _SHARES)
    ]
    if not shares or (cas is None and not named):
        return None
    highest = [i for i in shares if "max" in heads[i]] or shares
    if len(highest) > 1:
        listed = ", ".join(f"'{row[i]}'" for i in highest)
        raise BadInput(f"{path}, line {line}: which column is the share? {listed} could be; leave one of them.")
    share = highest[0]
    own = next((_UNITS[word] for word in ("%", "percent", "prozent", "ppm", "mg/kg") if word in heads[share]), unit)
    name = named[0] if named else None
    used = [row[i] for i in (name, cas, share) if i is not None]
    wide = max(i for i, head in enumerate(heads) if head) + 1
    return _Columns(name, cas, share, own, f"{', '.join(used)}{f' in {own}' if own else ''}", wide)


def _sheet(path: Path, cells: Sequence[tuple[int, Sequence[str]]], before: int, columns: _Columns) -> Sheet:
    lines: list[Stated] = []
    silent: list[str] = []
    seen: dict[str, int] = {}
    for number, row in cells:
        if not any(row):
            continue
        try:
            if any(row[columns.wide :]):
                raise BadInput(
                    f"it has more cells than there are headings, '{', '.join(row)}'; a figure with a comma in it "
                    "stands in quotes, or is written with a point."
                )
            name, cas, share = (_cell(row, i) for i in (columns.name, columns.cas, columns.share))
            kept, called = _named(name, cas)
            if share.casefold() in _SILENT:
                silent.append(called)
                continue
            if plain(kept) in seen:
                raise BadInput(f"{called} stands on line {seen[plain(kept)]} already; leave one of them.")
            seen[plain(kept)] = number
            found = read_share(share, what=f"the share of {called}", unit=columns.unit)
            lines.append(Stated(kept, *found, number, called))
        except BadInput as error:
            raise BadInput(f"{path}, line {number}: {error} Nothing of the file was booked.") from None
    if not lines:
        raise BadInput(f"{path} states no share of anything, so nothing was booked.")
    return Sheet(tuple(lines), tuple(silent), before, columns.words)


def _cell(row: Sequence[str], column: int | None) -> str:
    return row[column] if column is not None and column < len(row) else ""


def _named(name: str, cas: str) -> tuple[str, str]:
    """The name to keep, and all that a line calls it: the one of name and number that is known here, the name first."""
    numbers = re.findall(r"\d+-\d\d-\d", cas)
    if wrong := [one for one in numbers if not is_cas_number(one)]:
        raise BadInput(f"{wrong[0]} is no CAS number, its last digit does not fit; look at the statement again.")
    if not name and not numbers:
        raise BadInput("it names nothing, neither by name nor by CAS number.")
    called = ", ".join(filter(None, [name, *numbers]))
    known = {found.name: one for one in [*reversed(numbers), name] if one and (found := allergen_named(one))}
    if len(known) > 1:
        which = " and ".join(f"{written} is {entry}" for entry, written in known.items())
        raise BadInput(f"name and number are not of the same entry: {which}. Ask the supplier.")
    return (next(iter(known.values())) if known else name or numbers[0]), called
