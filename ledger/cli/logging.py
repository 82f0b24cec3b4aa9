"""Reading what was weighed: typed lines, a CSV file, or the prompt at the bench."""

import csv
from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import typer

from ledger.cli.desk import Desk
from ledger.cli.show import ask, say, warn
from ledger.errors import BadInput, LedgerError

if TYPE_CHECKING:
    from ledger.operations.weigh import Weighed
    from ledger.views.batch import BatchRow, PlanLineRow
    from ledger.views.lye_check import LyeCheck


def parse_weights(text: str, line: "PlanLineRow", *, yes: bool) -> list["Weighed"]:
    """What was weighed on one line: '182.4 g', '182.4 g@L41-5', or two lots with a comma between.

    Raises BadInput, also for a weight far from its target that was not confirmed.
    """
    from ledger.domain.quantity import parse_mass, show_mass
    from ledger.operations.weigh import Weighed

    found = []
    for part in text.split(",") if "@" in text else [text]:
        weight, _, lot = part.partition("@")
        typed = weight.strip()
        if typed and typed[-1].isdigit():
            typed += " g"  # the worksheet asks for grams
        found.append(Weighed(parse_mass(typed, what=f"the weight of {line.material}"), lot.strip() or None))
    total = sum(one.quantity for one in found)
    if not yes and line.target and (total > 2 * line.target or 2 * total < line.target):
        raise BadInput(
            f"Line {line.number} asks for {show_mass(line.target)} of {line.material}, and {show_mass(total)} "
            "is far from it; look at the scale. If it is right, add --yes."
        )
    return found


def parse_lines(texts: list[str], lines: Mapping[int, "PlanLineRow"], *, yes: bool) -> dict[int, list["Weighed"]]:
    """The --line options. Raises BadInput naming the one that cannot be read."""
    found: dict[int, list[Weighed]] = {}
    for text in texts:
        number, separator, weight = text.partition("=")
        if not separator or not number.strip().isdigit():
            raise BadInput(f"'{text}' is not a line; write it like --line '3=182.4 g'.")
        place = int(number)
        if place not in lines:
            raise BadInput(f"There is no line {place} to weigh; the lines are {min(lines)} to {max(lines)}.")
        if place in found:
            raise BadInput(f"Line {place} stands twice; for two lots write '3=120 g@L7-2,62.4 g@L9-3'.")
        found[place] = parse_weights(weight, lines[place], yes=yes)
    return found


def read_lines_csv(path: Path, lines: Mapping[int, "PlanLineRow"], *, yes: bool) -> dict[int, list["Weighed"]]:
    """A CSV file of line, weight and lot. Raises BadInput with file and line."""
    try:
        reader = csv.DictReader(path.read_text(encoding="utf-8-sig").splitlines())
    except (OSError, UnicodeDecodeError) as error:
        raise BadInput(f"{path} cannot be read ({error}).") from None
    if not {"line", "weight"} <= set(reader.fieldnames or ()):
        raise BadInput(f"{path}, line 1: the columns are line, weight and, if needed, lot.")
    found: dict[int, list[Weighed]] = {}
    for row in reader:
        where = f"{path}, line {reader.line_num}"
        lot = f"@{row['lot'].strip()}" if row.get("lot") else ""
        try:
            one = parse_lines([f"{row['line']}={row['weight']}{lot}"], lines, yes=yes)
        except BadInput as error:
            raise BadInput(f"{where}: {error}") from None
        for number, takes in one.items():
            found.setdefault(number, []).extend(takes)
    return found


def prompt_lines(here: Desk, batch: "BatchRow", made: date, *, anyway: str | None) -> None:
    """Ask for every line still open and then for the readings; each answer is stored at once.

    Enter takes the target, 's' skips a line, 'b' goes back to the one before (as a correction), 'q' stops.
    """
    from ledger.domain.quantity import show_mass
    from ledger.operations.weigh import weigh
    from ledger.views.batch import plan_lines

    units = here.settings.units
    lines = [one for one in plan_lines(here.rows(), batch.id) if one.role != "packaging"]
    codes = {
        row["id"]: row["code"]
        for row in here.rows().execute("SELECT id, code FROM lot WHERE id IN (SELECT lot_id FROM plan_line)")
    }
    waiting = [index for index, one in enumerate(lines) if not one.logged]
    if waiting:
        warn("Enter takes the target; s skips, b goes back one line, q stops. Another lot: 182.4 g@L41-5")
    position = waiting[0] if waiting else len(lines)
    done = {index for index, one in enumerate(lines) if one.logged}
    while position < len(lines):
        line = lines[position]
        lot = f", lot {codes[line.lot_id]}" if line.lot_id else ""
        window = f"OK {show_mass(line.low, units)} to {show_mass(line.high, units)}"
        typed = ask(f"{line.number}. {line.material}{lot}, {window}", default=show_mass(line.target, units))
        if typed.casefold() == "q":
            say(f"Stopped; what you logged is kept. Go on with: soapledger batch log {batch.code}")
            raise typer.Exit
        if typed.casefold() == "b" and position > 0:
            position -= 1
            continue
        if typed.casefold() not in ("s", "b"):
            try:
                if typed == show_mass(line.target, units):
                    from ledger.operations.weigh import Weighed

                    takes = [Weighed(line.target)]
                else:
                    takes = parse_weights(typed, line, yes=False)
                weigh(
                    here.book(),
                    batch.code,
                    {line.number: takes},
                    on=made,
                    by=here.who,
                    correct=position in done,
                    anyway=anyway,
                )
            except LedgerError as error:
                warn(f"  {error}")
                continue
            done.add(position)
        position += 1
        while position < len(lines) and position in done:
            position += 1
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
                raise typer.Exit
            if not typed:
                break
            try:
                log_readings(here.book(), batch.code, (read_reading(f"{what}={typed}"),), on=made)
                break
            except LedgerError as error:
                warn(f"  {error}")


def say_superfat(check: "LyeCheck") -> None:
    """The superfat that the actual grams and lots give, in a sentence."""
    from ledger.domain.quantity import show_share

    if check.superfat_ppm is not None:
        say(f"As weighed, from these lots, the superfat is {show_share(check.superfat_ppm, 2)}.")
