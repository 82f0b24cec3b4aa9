"""Reading what was weighed and read from typed lines or a CSV file, and what is said of the lye."""

import csv
import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from ledger.cli.kit.desk import Desk
from ledger.cli.kit.measured import read_amount
from ledger.cli.kit.show import say
from ledger.domain.bench.steps import Step
from ledger.errors import BadInput, LedgerError
from ledger.operations.bench.readings import ReadingValue, read_reading
from ledger.operations.bench.weigh import Weighed
from ledger.rows.batch import BatchRow, PlanLineRow
from ledger.rows.lot import find_lot
from ledger.rows.material import MaterialCard, material_by_code, material_by_id
from ledger.units.given import read_given_text
from ledger.units.measures import typed_otherwise
from ledger.units.quantity import is_volume, show_mass, thousandfold, with_scale_unit
from ledger.units.words import MEASURED, READ_AS, Units
from ledger.views.lye.lye_check import alkali_wanted

# One part of a line weighed from named lots; a comma inside the weight is a decimal comma.
_PART = re.compile(r"\s*([^@]+)@\s*([^,@]+?)\s*(?:,|$)")


def parse_weights(here: Desk, text: str, line: PlanLineRow) -> list[Weighed]:
    """What was weighed on one line: '182.4 g', '182.4 g@L41-5', or two lots with a comma between.

    A number alone is in what the worksheet asks for; '600 g@unknown' is of a lot nobody knows, and a material behind
    it says of which. A volume is reckoned by the density of what went in. Raises BadInput for what cannot be read.
    """
    parts: list[tuple[str, str | None]] = [(text, None)]
    if "@" in text:
        parts = [(weight, lot) for weight, lot in _PART.findall(text)]
        if _PART.sub("", text).strip():
            raise BadInput(f"'{text}' cannot be read; write each weight with its lot: 120 g@L7-2,62.4 g@L9-3.")
    found = []
    for weight, lot in parts:
        word, _, material = (lot or "").partition(" ")
        unknown = word.casefold() == "unknown"
        named = (material.strip() or line.material) if unknown else None
        typed = with_scale_unit(weight.strip(), here.settings.units)
        what = f"the weight of {line.material}"
        mass = read_amount(typed, _what_is_in(here, line, named, lot), here.settings.units, what=what)
        found.append(Weighed(mass, None if unknown else lot, _note(typed, here.settings.units), named))
    return found


def _note(typed: str, units: Units) -> str | None:
    """How a weight was come by, where its figure alone would not say it."""
    if is_volume(typed):
        return MEASURED.format(typed)
    return f"{READ_AS}{typed}" if typed_otherwise(typed, units) else None


def _what_is_in(here: Desk, line: PlanLineRow, named: str | None, lot: str | None) -> MaterialCard:
    if named is None and lot:
        return material_by_code(here.rows(), find_lot(here.rows(), lot).material_code)
    return material_by_code(here.rows(), named) if named else material_by_id(here.rows(), line.material_id)


def unlikely(takes: Sequence[Weighed], line: PlanLineRow, units: Units) -> str | None:
    """What to ask again about: an alkali a tenth off, anything else more than double or less than half."""
    total = sum(one.quantity for one in takes)
    lye_off = line.role == "alkali" and 10 * abs(total - line.target) > line.target
    if lye_off or total > 2 * line.target or 2 * total < line.target:
        found = show_mass(total, units) if total else "nothing"
        doubt = f"Line {line.number} asks for {show_mass(line.target, units)} of {line.material}, not {found}"
        return f"{doubt}{thousandfold(total, line.target, units)}"
    return None


def read_lines(
    here: Desk,
    texts: Sequence[str],
    path: Path | None,
    lines: Mapping[int, PlanLineRow],
    letters: Mapping[str, Step],
    *,
    yes: bool,
) -> tuple[dict[int, list[Weighed]], list[ReadingValue]]:
    """The --line options and the CSV file together: what was weighed by number, what was read by letter.

    `letters` gives what each letter of the worksheet stands for. Raises BadInput naming what cannot be read; a
    weight far from what its line asks for is refused until it is confirmed.
    """
    readings: list[ReadingValue] = []
    found = _read_csv(here, path, lines, letters, readings) if path else {}
    for text in texts:
        if reading := _read_letter(text, letters):
            readings.append(reading)
            continue
        place, takes = _read_line(here, text, lines)
        if place in found:
            raise BadInput(f"Line {place} stands twice; for two lots write '3=120 g@L7-2,62.4 g@L9-3'.")
        found[place] = takes
    for place, takes in found.items():
        if not yes and (doubt := unlikely(takes, lines[place], here.settings.units)):
            raise BadInput(f"{doubt}; look at the scale. If it is right, add --yes.")
    return found, readings


def _read_letter(text: str, letters: Mapping[str, Step]) -> ReadingValue | None:
    """A line of the worksheet that has a letter, such as 'c=49 C'; None for one with a number."""
    sign, separator, typed = (part.strip() for part in text.partition("="))
    if not separator or not sign.isalpha():
        return None
    if sign.casefold() not in letters:
        raise BadInput(f"There is no line {sign} on this worksheet; its letters are a to {list(letters)[-1]}.")
    step = letters[sign.casefold()]
    return replace(read_reading(f"{step.what}={typed}"), mark=step.mark)


def _read_line(here: Desk, text: str, lines: Mapping[int, PlanLineRow]) -> tuple[int, list[Weighed]]:
    number, separator, weight = text.partition("=")
    if not separator or not number.strip().isdecimal():
        raise BadInput(f"'{text}' is not a line; write it like --line '3=182.4 g'.")
    place = int(number)
    if place not in lines:
        raise BadInput(f"There is no line {place} to weigh; the lines are {min(lines)} to {max(lines)}.")
    return place, parse_weights(here, weight, lines[place])


def _read_csv(
    here: Desk,
    path: Path,
    lines: Mapping[int, PlanLineRow],
    letters: Mapping[str, Step],
    readings: list[ReadingValue],
) -> dict[int, list[Weighed]]:
    """A CSV file of line, weight and lot; two rows of one line are two lots, an empty weight is still open.

    A line may be a letter, and its weight then what was read; what is read is added to `readings`.
    """
    text = read_given_text(path).splitlines()
    semicolons = bool(text) and ";" in text[0]  # what a spreadsheet writes where the comma is decimal
    reader = csv.DictReader(text, delimiter=";" if semicolons else ",")
    if not {"line", "weight"} <= set(reader.fieldnames or ()):
        raise BadInput(f"{path}, line 1: the columns are line, weight and, if needed, lot.")
    found: dict[int, list[Weighed]] = {}
    for row in reader:
        if any(row.get(None) or ()):
            raise BadInput(
                f"{path}, line {reader.line_num}: there are more values than columns; put quotes round one that has a "
                "comma in it."
            )
        if not (row["weight"] or "").strip():
            continue
        lot = f"@{row['lot'].strip()}" if (row.get("lot") or "").strip() else ""
        try:
            if reading := _read_letter(f"{row['line']}={row['weight']}", letters):
                readings.append(reading)
                continue
            place, takes = _read_line(here, f"{row['line']}={row['weight']}{lot}", lines)
        except LedgerError as error:
            raise BadInput(f"{path}, line {reader.line_num}: {error}") from None
        found.setdefault(place, []).extend(takes)
    return found


def say_alkali_wanted(here: Desk, batch: BatchRow) -> None:
    """Before the alkali is weighed: what the fats as weighed take, where the worksheet says another figure."""
    units = here.settings.units
    for lye in alkali_wanted(here.rows(), batch):
        if show_mass(lye.wanted_mg, units) != show_mass(lye.planned_mg, units):
            say(
                f"The fats as weighed take {show_mass(lye.wanted_mg, units)} of {lye.material} for the superfat of the "
                f"recipe; the worksheet says {show_mass(lye.planned_mg, units)}."
            )
