"""The limits a recipe sets for what is read while its soap is made, and what lies outside them."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from ledger.domain.tools.bounds import PH_TO_QUESTION, Limits
from ledger.domain.tools.readings import DEGREES, READINGS, BenchReading, Figure
from ledger.errors import BadInput
from ledger.units.quantity import parse_ph, show_degrees, show_mass, show_share, show_temperature
from ledger.units.words import Units

_DAY = 24 * 60


class LineRead(NamedTuple):
    """One numbered line as it was weighed, with its OK from-to, in mg."""

    number: int
    material: str
    used: int
    low: int
    high: int
    left_out: bool
    others: tuple[str, ...] = ()  # what else went in on it: of another material, or of a lot nobody knows


class Read(NamedTuple):
    """What was weighed and read of one batch: figures by name, clock times as 14:05, readings corrected left out."""

    lines: Sequence[LineRead] = ()
    figures: Mapping[str, Sequence[int]] = {}
    last: Mapping[tuple[str, str | None], int] = {}  # figures by name and mark
    clocks: Mapping[str, str] = {}
    second_cook: bool = False  # a second stage of the cook is to come
    bars_mg: Sequence[int] = ()  # weighed at the cut
    loss_ppm: int | None = None
    loss_mg: int = 0


class Outside(NamedTuple):
    """One thing outside its limit: which, and in words what it was and by how much."""

    subject: str
    found: str


def outside(limits: Limits, read: Read, units: Units) -> tuple[Outside, ...]:
    """Everything outside its limit, in the order of work; a figure at its limit is inside."""
    return (
        *_weights(read, units),
        *_temperatures(limits, read, units),
        *_cook(limits, read),
        *_made(limits, read, units),
    )


def limit_of(limits: Limits, what: str, units: Units) -> str | None:
    """The limit a reading is held against, in words; None where there is none."""
    return READINGS[what].limit_words(limits, units) if what in READINGS else None


def read_ph(typed: str) -> tuple[int, str | None]:
    """A pH in thousandths and how it was measured, which stands behind a semicolon.

    Raises BadInput for a figure that cannot be, and for one so low that its method has to be named.
    """
    figure, _, method = (part.strip() for part in typed.partition(";"))
    value = parse_ph(figure)
    if value < PH_TO_QUESTION and not method:
        raise BadInput(
            f"A pH of {figure} is low for true soap (common practice, no source), so the method is in question; "
            f"write it behind: 'pH={figure}; 1 % in water, meter set at 7 and 10'."
        )
    return value, method or None


def cook_length(start: str, end: str) -> int:
    """Minutes from one clock time to the other, over midnight where the end is earlier."""
    first, last = (60 * int(one[:2]) + int(one[3:]) for one in (start, end))
    return (last - first) % _DAY


def _weights(read: Read, units: Units) -> list[Outside]:
    found = []
    for line in read.lines:
        if line.others:
            named = " and ".join(line.others)
            words = (
                f"{line.material} was asked for, and {named} went in; what the bars may be used for a person decides"
            )
            found.append(Outside(f"line {line.number}, what went in", words))
        window = f"OK {show_mass(line.low, units)} to {show_mass(line.high, units)}"
        if line.left_out:
            found.append(Outside(f"line {line.number}", f"{line.material} was left out ({window})"))
        elif not line.low <= line.used <= line.high:
            off = line.used - line.high if line.used > line.high else line.low - line.used
            way = "over" if line.used > line.high else "under"
            what = f"line {line.number} in all" if line.others else line.material
            words = f"{what} {show_mass(line.used, units)}, {show_mass(off, units)} {way} ({window})"
            found.append(Outside(f"line {line.number}", words))
    return found


def _last(read: Read, what: str) -> int | None:
    return read.figures[what][-1] if read.figures.get(what) else None


def _over(one: BenchReading, limits: Limits, read: Read, units: Units) -> list[Outside]:
    value, answer = _last(read, one.what), one.answer
    if value is None or not isinstance(answer, Figure):
        return []
    found = beyond(answer, value, one.at_least(limits, units), one.at_most(limits, units), units)
    return [Outside(one.what, f"{one.what} {found}")] if found else []


def beyond(answer: Figure, value: int, least: int | None, most: int | None, units: Units) -> str | None:
    """A figure outside its limits and by how much, in words; None for one within, or at one of them."""
    if most is not None and value > most:
        off = f"{answer.apart(value - most, units)} over {answer.show(most, units)}"
    elif least is not None and value < least:
        off = f"{answer.apart(least - value, units)} under {answer.show(least, units)}"
    else:
        return None
    return f"{answer.show(value, units)}, {off}"


def _temperatures(limits: Limits, read: Read, units: Units) -> list[Outside]:
    found = []
    for one in READINGS.values():
        if one.answer is DEGREES:
            found += _over(one, limits, read, units)
        if one.what == "fats temperature":
            found += _apart(limits, read, units)
    return found


def _apart(limits: Limits, read: Read, units: Units) -> list[Outside]:
    lye, fats = _last(read, "lye temperature"), _last(read, "fats temperature")
    if lye is None or fats is None or abs(lye - fats) <= limits.apart(units):
        return []
    apart, limit = (show_degrees(one, units) for one in (abs(lye - fats), limits.apart(units)))
    words = f"lye {show_temperature(lye, units)}, fats {show_temperature(fats, units)}: {apart} apart, limit {limit}"
    return [Outside("lye and fats apart", words)]


def _cook(limits: Limits, read: Read) -> list[Outside]:
    start, end = read.clocks.get("cook start"), read.clocks.get("cook end")
    if not limits.cook_minutes or not start or not end:
        return []
    again, done = (read.clocks.get(f"second cook {one}") for one in ("start", "end"))
    if (read.second_cook or again) and not (again and done):
        return []
    minutes = cook_length(start, end) + (cook_length(again, done) if again and done else 0)
    low, high = limits.cook_minutes
    if low <= minutes <= high:
        return []
    off = f"{minutes - high} min over {high}" if minutes > high else f"{low - minutes} min under {low}"
    return [Outside("cook", f"cooked {minutes} min, {off} min")]


def _made(limits: Limits, read: Read, units: Units) -> list[Outside]:
    found = []
    if limits.bar_weight_mg:
        low, high = limits.bar_weight_mg
        bad = [one for one in read.bars_mg if not low <= one <= high]
        if bad:
            shown = ", ".join(show_mass(one, units) for one in bad)
            window = f"limit {show_mass(low, units)} to {show_mass(high, units)}"
            found.append(Outside("bar weight", f"bars of {shown} at the cut ({window})"))
    for one in READINGS.values():
        if one.answer is not DEGREES:
            found += _over(one, limits, read, units)
    if read.loss_ppm is not None and read.loss_ppm > limits.loss_ppm:
        lost = f"{show_mass(read.loss_mg, units)} ({show_share(read.loss_ppm)})"
        words = f"{lost} of what went in is not accounted for, limit {show_share(limits.loss_ppm)}"
        found.append(Outside("loss", words))
    return found
