"""Reading what was weighed: typed lines, a CSV file, or the prompt at the bench."""

import csv
import re
from collections.abc import Collection, Mapping, Sequence
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import typer

from ledger.cli.desk import Desk
from ledger.cli.show import ask, say, say_wrapped, warn
from ledger.errors import BadInput, LedgerError

if TYPE_CHECKING:
    from ledger.operations.weigh import Weighed
    from ledger.views.batch import BatchRow, PlanLineRow
    from ledger.views.lye_check import LyeCheck

# One part of a line weighed from named lots; a comma inside the weight is a decimal comma.
_PART = re.compile(r"\s*([^@]+)@\s*([^,@]+?)\s*(?:,|$)")


def parse_weights(text: str, line: "PlanLineRow", *, units: str) -> list["Weighed"]:
    """What was weighed on one line: '182.4 g', '182.4 g@L41-5', or two lots with a comma between.

    A number alone is in what the worksheet asks for. Raises BadInput for what cannot be read.
    """
    from ledger.domain.quantity import parse_mass
    from ledger.operations.weigh import Weighed

    parts: list[tuple[str, str | None]] = [(text, None)]
    if "@" in text:
        parts = [(weight, lot) for weight, lot in _PART.findall(text)]
        if _PART.sub("", text).strip():
            raise BadInput(f"'{text}' cannot be read; write each weight with its lot: 120 g@L7-2,62.4 g@L9-3.")
    found = []
    for weight, lot in parts:
        typed = weight.strip()
        if typed and typed[-1].isdigit():
            typed += " oz" if units == "us" else " g"
        found.append(Weighed(parse_mass(typed, what=f"the weight of {line.material}"), lot))
    return found


def unlikely(takes: Sequence["Weighed"], line: "PlanLineRow", units: str) -> str | None:
    """What to ask again about: an alkali a tenth off, anything else more than double or less than half."""
    from ledger.domain.quantity import show_mass

    total = sum(one.quantity for one in takes)
    lye_off = line.role == "alkali" and 10 * abs(total - line.target) > line.target
    if lye_off or total > 2 * line.target or 2 * total < line.target:
        found = show_mass(total, units) if total else "nothing"
        return f"Line {line.number} asks for {show_mass(line.target, units)} of {line.material}, not {found}"
    return None


def read_lines(
    texts: Sequence[str], path: Path | None, lines: Mapping[int, "PlanLineRow"], *, units: str, yes: bool
) -> dict[int, list["Weighed"]]:
    """The --line options and the CSV file together. Raises BadInput naming what cannot be read.

    A weight far from what its line asks for is refused until it is confirmed.
    """
    found = _read_csv(path, lines, units) if path else {}
    for text in texts:
        place, takes = _read_line(text, lines, units)
        if place in found:
            raise BadInput(f"Line {place} stands twice; for two lots write '3=120 g@L7-2,62.4 g@L9-3'.")
        found[place] = takes
    for place, takes in found.items():
        if not yes and (doubt := unlikely(takes, lines[place], units)):
            raise BadInput(f"{doubt}; look at the scale. If it is right, add --yes.")
    return found


def _read_line(text: str, lines: Mapping[int, "PlanLineRow"], units: str) -> tuple[int, list["Weighed"]]:
    number, separator, weight = text.partition("=")
    if not separator or not number.strip().isdecimal():
        raise BadInput(f"'{text}' is not a line; write it like --line '3=182.4 g'.")
    place = int(number)
    if place not in lines:
        raise BadInput(f"There is no line {place} to weigh; the lines are {min(lines)} to {max(lines)}.")
    return place, parse_weights(weight, lines[place], units=units)


def _read_csv(path: Path, lines: Mapping[int, "PlanLineRow"], units: str) -> dict[int, list["Weighed"]]:
    """A CSV file of line, weight and lot; two rows of one line are two lots, an empty weight is still open."""
    try:
        text = path.read_text(encoding="utf-8-sig").splitlines()
    except (OSError, UnicodeDecodeError) as error:
        raise BadInput(f"{path} cannot be read ({error}).") from None
    semicolons = bool(text) and ";" in text[0]  # what a spreadsheet writes where the comma is decimal
    reader = csv.DictReader(text, delimiter=";" if semicolons else ",")
    if not {"line", "weight"} <= set(reader.fieldnames or ()):
        raise BadInput(f"{path}, line 1: the columns are line, weight and, if needed, lot.")
    found: dict[int, list[Weighed]] = {}
    for row in reader:
        if not (row["weight"] or "").strip():
            continue
        lot = f"@{row['lot'].strip()}" if (row.get("lot") or "").strip() else ""
        try:
            place, takes = _read_line(f"{row['line']}={row['weight']}{lot}", lines, units)
        except LedgerError as error:
            raise BadInput(f"{path}, line {reader.line_num}: {error}") from None
        found.setdefault(place, []).extend(takes)
    return found


def prompt_lines(here: Desk, batch: "BatchRow", made: date, *, anyway: str | None) -> None:
    """Ask for every line still open and then for the readings; each answer is stored at once.

    Enter takes the target, 's' skips a line, 'b' goes back to the one before (as a correction), 'q' stops.
    """
    from ledger.domain.dates import show_date
    from ledger.domain.quantity import show_mass
    from ledger.operations.weigh import Weighed, weigh
    from ledger.views.batch import plan_lines

    units = here.settings.units
    lines = [one for one in plan_lines(here.rows(), batch.id) if one.role != "packaging"]
    codes = {
        row["id"]: row["code"]
        for row in here.rows().execute("SELECT id, code FROM lot WHERE id IN (SELECT lot_id FROM plan_line)")
    }
    done = {index for index, one in enumerate(lines) if one.logged}
    position = next((index for index in range(len(lines)) if index not in done), len(lines))
    if position < len(lines):
        warn(f"Batch {batch.code}, made on {show_date(made)} (another day: --on).")
        warn("Enter takes the target; 0 is left out, s skips, b goes back, q stops. Another lot: 182.4 g@L41-5")
    while position < len(lines):
        line = lines[position]
        if line.role == "alkali":
            say_alkali_wanted(here, batch)
        lot = f", lot {codes[line.lot_id]}" if line.lot_id else ""
        window = f"OK {show_mass(line.low, units)} to {show_mass(line.high, units)}"
        question = f"{line.number}. {line.material}{lot}: {show_mass(line.target, units)} ({window})"
        typed = ask(question, default="")
        if typed.casefold() == "q":
            say(f"Stopped; what you logged is kept. Go on with: soapledger batch log {batch.code}")
            raise typer.Exit
        if typed.casefold() == "b":
            position = max(position - 1, 0)
            continue
        if typed.casefold() != "s":
            try:
                takes = parse_weights(typed, line, units=units) if typed else [Weighed(line.target)]
                doubt = unlikely(takes, line, units)
                if doubt and ask(f"  {doubt}. Is it right? yes or no", default="no").casefold() not in ("y", "yes"):
                    continue
                correct = position in done
                weigh(
                    here.book(),
                    batch.code,
                    {line.number: takes},
                    on=made,
                    by=here.who,
                    correct=correct,
                    anyway=anyway,
                )
            except LedgerError as error:
                warn(f"  {error}")
                continue
            done.add(position)
            say_outside(here, batch, [line.number])
        position = next((index for index in range(position + 1, len(lines)) if index not in done), len(lines))
    _prompt_readings(here, batch, made)


def _prompt_readings(here: Desk, batch: "BatchRow", made: date) -> None:
    from ledger.operations.readings import log_readings, read_reading
    from ledger.views.batch import find_batch

    if batch.process not in ("cold", "hot"):
        return
    wanted = ["lye temperature", "fats temperature", "trace"]
    wanted += ["cook start", "cook end", "fragrance temperature"] if batch.process == "hot" else []
    wanted += ["poured"]
    known = {
        row["what"] for row in here.rows().execute("SELECT what FROM live_reading WHERE batch_id = ?", (batch.id,))
    }
    for what in wanted:
        if what in known or (what == "poured" and find_batch(here.rows(), batch.code).open_lines):
            continue
        while True:
            typed = ask(f"{what} (Enter to leave it out)", default="")
            if typed.casefold() == "q":
                say(f"Stopped; what you logged is kept. Go on with: soapledger batch log {batch.code}")
                raise typer.Exit
            if not typed:
                break
            try:
                log_readings(here.book(), batch.code, (read_reading(f"{what}={typed}"),), on=made)
                break
            except LedgerError as error:
                warn(f"  {error}")


def say_outside(here: Desk, batch: "BatchRow", numbers: Collection[int]) -> None:
    """The lines just logged that weigh more or less than OK from-to."""
    from ledger.domain.quantity import show_mass
    from ledger.views.batch import plan_lines

    units = here.settings.units
    for line in plan_lines(here.rows(), batch.id):
        if line.number in numbers and line.outside:
            window = f"{show_mass(line.low, units)} to {show_mass(line.high, units)}"
            warn(f"Line {line.number}, {line.material}: {show_mass(line.used, units)} is outside OK {window}.")


def say_alkali_wanted(here: Desk, batch: "BatchRow") -> None:
    """Before the alkali is weighed: what the fats as weighed take, where the worksheet says another figure."""
    from ledger.domain.quantity import show_mass
    from ledger.views.lye_check import alkali_wanted

    units = here.settings.units
    for lye in alkali_wanted(here.rows(), batch):
        if show_mass(lye.wanted_mg, units) != show_mass(lye.planned_mg, units):
            say(
                f"The fats as weighed take {show_mass(lye.wanted_mg, units)} of {lye.material} for the superfat of the "
                f"recipe; the worksheet says {show_mass(lye.planned_mg, units)}."
            )


def say_superfat(check: "LyeCheck") -> None:
    """The superfat that the actual grams and lots give, with how low it may lie."""
    from ledger.domain.quantity import show_share
    from ledger.domain.uncertainty import all_low_warning

    for pot, found in (("in the pot, before the fat held back goes in,", check.before_addition), ("", check.superfat)):
        if found is not None:
            say_wrapped(
                f"As weighed, from these lots, the superfat {pot + ' ' if pot else ''}is "
                f"{show_share(found.nominal_ppm, 2)}; likely low {show_share(found.likely_low_ppm, 2)}, "
                f"all low {show_share(found.all_low_ppm, 2)}."
            )
    if warning := all_low_warning(check.before_addition or check.superfat):
        say_wrapped(warning)
