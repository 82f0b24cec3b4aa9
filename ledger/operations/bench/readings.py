"""Log a temperature, a time, a pH, a weight, or what was seen."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import date

from ledger.domain.tools.limits import read_ph
from ledger.domain.tools.readings import ACIDITY, ALKALI, CLOCK, READINGS, STEP, TICK, WORDS, Choice, Figure
from ledger.domain.tools.titre import free_alkali
from ledger.errors import BadInput, Refused
from ledger.operations.bench.deviations import not_before_planned, settle_deviations
from ledger.operations.tools.checks import add_check
from ledger.rows.batch import BatchRow, find_batch
from ledger.rows.equipment import EquipmentRow, equipment_by_code, sole
from ledger.rows.reading import current_readings
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.tables.reading import Reading
from ledger.storage.transaction import Transaction
from ledger.units.dates import parse_clock, show_date
from ledger.units.measures import typed_otherwise
from ledger.units.names import near
from ledger.units.words import ReadingUnit, checked
from ledger.views.bench.bench import steps_of


@dataclass(frozen=True)
class ReadingValue:
    """One reading, ready to be booked."""

    what: str
    value: int | None = None
    unit: ReadingUnit | None = None
    at: str | None = None
    text: str | None = None
    method: str | None = None  # of a pH: how it was measured
    mark: str | None = None  # of a weighing: which marked bar; of a step of the recipe: which
    bars: int | None = None  # of a weighing: how many were weighed together
    on: date | None = None  # its own day, where it is not that of the entry
    typed: str | None = field(default=None, compare=False)  # of a figure: as it was typed


NOT_READ = "not read"  # said by '-', with the reason behind it


def read_reading(text: str) -> ReadingValue:
    """A reading as typed, such as 'lye temperature=49 C', or '-' for one that nobody read.

    How a pH was measured stands behind a semicolon: 'pH=9.6; 1 % in water, meter set at 7 and 10'. Raises BadInput
    for what cannot be, and for a pH so low that its method has to be named.
    """
    what, separator, typed = text.partition("=")
    what, typed = what.strip(), typed.strip()
    name = next((known for known in READINGS if known.casefold() == what.casefold()), None)
    if name is None:
        close = near(what, READINGS, 1)
        hint = f"did you mean {close[0]}?" if close else f"known: {', '.join(READINGS)}."
        raise BadInput(f"'{what}' is not something read at the bench; {hint}")
    if not separator or not typed:
        raise BadInput(f"What was the {name}? Write it like '{name}={READINGS[name].answer.example}'.")
    answer = READINGS[name].answer
    if typed.startswith("-") and answer is not WORDS:
        why = typed.lstrip("-").strip(" :,;")
        if not why[:1].isdigit():
            return ReadingValue(name, text=f"{NOT_READ}: {why}" if why else NOT_READ)
    if answer is CLOCK:
        return ReadingValue(name, at=parse_clock(typed))
    if isinstance(answer, Choice):
        return ReadingValue(name, text=checked(typed.casefold(), answer.words, what=f"a {name}"))
    if answer is TICK:
        said, mark, seen = (part.strip() for part in typed.partition(";"))
        ticked = {"y": "yes", "yes": "yes", "n": "no", "no": "no"}.get(said.casefold())
        if ticked is None:
            raise BadInput(f"'{typed}' is neither yes nor no; write y or n, and a note behind: 'n; the pot was wet'.")
        return ReadingValue(name, text=f"{ticked}; {seen}" if mark and seen else ticked)
    if not isinstance(answer, Figure):
        return ReadingValue(name, text=typed)
    if answer is ACIDITY:
        value, method = read_ph(typed)
        return ReadingValue(name, value, answer.unit, method=method)
    if answer is ALKALI:
        found = free_alkali(typed)
        return ReadingValue(name, found.ppm, answer.unit, method=found.titre)
    value = answer.parse(typed, what=f"the {name}")
    if answer.between and not answer.between[0] <= value <= answer.between[1]:
        raise BadInput(f"A {name} of {typed} cannot be; look at the number and the unit.")
    return ReadingValue(name, value, answer.unit, typed=typed)


def on_its_day(
    reading: ReadingValue, batch: BatchRow, *, said: date | None, today: date, correct: bool, late: bool = False
) -> ReadingValue:
    """The reading with its own day: the one she said; else today for what comes after the making of the batch.

    `late` says so of a step of the recipe, which may be of either.
    What belongs to the making keeps the day of its entry, and a correction the day of what it corrects.
    """
    made = batch.poured or batch.yield_lot_id is not None or (not batch.soap and not batch.open_lines)
    own = said or (today if made and (late or READINGS[reading.what].of != "making") and not correct else None)
    return replace(reading, on=own)


def log_readings(
    book: Book,
    code: str,
    readings: Sequence[ReadingValue],
    *,
    on: date,
    correct: bool = False,
    tools: Sequence[str] = (),
) -> None:
    """Book readings of one batch; a figure outside its limit opens a deviation.

    `tools` names the scale, thermometer or pH meter used, where she has several. Raises Refused for a discarded
    batch, for what was read already (unless this is a correction: then both stay to be read), or for a correction of
    what was not; BadInput for a day too early or an unknown tool.
    """
    with book.write("batch reading") as tx:
        batch = find_batch(tx.rows, code)
        last = add_readings(tx, batch, readings, on, correct=correct, tools=tools)
        settle_deviations(tx, batch.code, on=last, by=book.who)
        tx.say(f"Noted {', '.join(one.what for one in readings)} of batch {batch.code}.")


def add_readings(
    tx: Transaction,
    batch: BatchRow,
    readings: Sequence[ReadingValue],
    on: date,
    *,
    correct: bool = False,
    tools: Sequence[str] = (),
) -> date:
    """Add readings to an entry, each on its own day, else on the day given; returns the latest of these days.

    A correction keeps the day of what it corrects, unless it has one of its own. Raises like `log_readings`.
    """
    if batch.discarded:
        raise Refused(f"Batch {batch.code} was discarded; nothing more is read of it.")
    named, units = [equipment_by_code(tx.rows, one, on) for one in tools], settings(tx.rows).units
    asked = steps_of(tx.rows, batch)
    once = {(step.what, step.mark) for step in asked if step.mark or not READINGS[step.what].again}
    days = []
    for one in readings:
        mine = (one.what, one.mark)
        named_so = next((step.label for step in asked if step.own and mine == (step.what, step.mark)), None)
        if one.what == STEP and named_so is None:
            raise BadInput(f"Which step? Write its letter on the worksheet: --line 'd={one.text}'.")
        said = f"The step '{named_so}'" if named_so else f"The {one.what}"
        before = [row for row in current_readings(tx.rows, batch.id) if mine == (row.what, row.mark)]
        if before and mine in once and not correct:
            raise Refused(
                f"{said} of batch {batch.code} was booked already; to correct it, add --correct: both stay to be read."
            )
        if correct and not before:
            raise Refused(f"{said} of batch {batch.code} was not booked yet; leave out --correct.")
        if one.what == "poured" and batch.open_lines:
            raise Refused(
                f"Batch {batch.code} has lines still to be weighed, so it cannot be poured yet: "
                f"soapledger batch log {batch.code}"
            )
        own = one.on or (before[-1].on if correct else on)
        _not_too_early(batch, one.what, own)
        days.append(own)
        tx.add(
            Reading(
                batch_id=batch.id,
                on=own,
                at=one.at,
                what=one.what,
                value=one.value,
                unit=one.unit,
                text=one.typed if one.typed and typed_otherwise(one.typed, units) else one.text,
                corrects=before[-1].id if correct else None,
                mark=one.mark,
                method=one.method,
                bars=one.bars,
                equipment_id=_made_with(tx, one, own, named),
            )
        )
    return max(days, default=on)


def _not_too_early(batch: BatchRow, what: str, on: date) -> None:
    """Raise BadInput for a day before the batch was planned for, the loaf was made or the bars were cut.

    Refused for what is read of bars that are not cut yet.
    """
    not_before_planned(batch, on)
    of = READINGS[what].of
    if of in ("loaf", "bars") and on < batch.on:
        raise BadInput(f"Batch {batch.code} was made on {show_date(batch.on)}; look at --on.")
    if of == "bars" and batch.yielded_on is None:
        raise Refused(f"Batch {batch.code} is {batch.status}; it has no bars yet.")
    if of == "bars" and batch.yielded_on is not None and on < batch.yielded_on:
        raise BadInput(f"Batch {batch.code} was cut on {show_date(batch.yielded_on)}; look at --on.")


def _made_with(tx: Transaction, one: ReadingValue, on: date, named: Sequence[EquipmentRow]) -> int | None:
    """The tool a reading was made with: named, or the only one. A reading that tries its tool is a check of it."""
    kind = READINGS[one.what].tool
    if kind is None or one.value is None:
        return None
    tool = next((tool for tool in named if tool.kind == kind), None) or sole(tx.rows, kind, on)
    if tool is None:
        return None
    if READINGS[one.what].tries and tool.expected is not None and tool.tolerance is not None:
        add_check(tx, tool.id, on, tx.who, one.value)
    return tool.id
