"""The prompt at the bench: every line still open, in the order of work, each answer stored at once."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import partial

from ledger.cli.bench.correct_prompt import ask_way, note_refused
from ledger.cli.bench.cut_prompt import after_the_pour
from ledger.cli.bench.in_hand import InHand, no_lot_here, other_material, really_in, stop, surely, take_in_hand
from ledger.cli.bench.lines import parse_weights, say_alkali_wanted, unlikely
from ledger.cli.bench.superfat import say_superfat, say_ways
from ledger.cli.kit.desk import Desk
from ledger.cli.kit.show import ask, warn
from ledger.cli.tools.equipment import warn_failed
from ledger.domain.bench.steps import Step, in_order
from ledger.domain.recipe.recipe import WITH_THE_LYE
from ledger.domain.tools.readings import CLOCK, MASS, READINGS, SET, TICK, Figure
from ledger.errors import Doubted, LedgerError
from ledger.operations.bench.readings import log_readings, on_its_day, read_reading
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.reference.cautions import cautions
from ledger.rows.batch import BatchRow, PlanLineRow, find_batch, plan_lines
from ledger.rows.decision import open_deviations
from ledger.rows.equipment import equipment_by_code, sole
from ledger.rows.lot import lot_by_id
from ledger.rows.reading import current_readings
from ledger.units.codes import looks_like_lot_code
from ledger.units.dates import show_date
from ledger.units.quantity import show_mass, with_scale_unit
from ledger.units.words import AS_PLANNED
from ledger.views.bench.bench import steps_of
from ledger.views.bench.worksheet import acid_in_jug, worksheet


@dataclass(frozen=True)
class _Asked:
    """One line of the worksheet as it is asked, and what books the answer.

    Where `typed`, Enter never books anything.
    """

    question: str
    when: str
    booked: bool
    past: bool  # its moment has gone: what was read before the pour is not asked after it
    book: Callable[[str, bool], bool | None]  # (answer, is it a correction) -> booked, left open, or None: ask again
    again: str  # the question once an answer was refused, when Enter books nothing any more
    firm: str  # and what may be typed then
    hold: Callable[[str], InHand]  # what a lot's code puts into her hand; raises where it may not go in
    before: Callable[[], None] | None = None
    typed: bool = False


def prompt_bench(
    here: Desk, code: str, made: date, said: date | None, *, anyway: str | None, tools: Sequence[str] = ()
) -> None:
    """Ask for what is still open, then for the cut and what was seen.

    Enter takes the target or leaves a reading open, '-' says that nobody read it, 's' skips, 'b' goes back to the one
    before (as a correction, where Enter leaves what is booked), 'q' stops. Once an answer to a line was refused, Enter
    books nothing there any more; nor ever of lye and fragrance, nor of a lot whose code was typed or scanned.
    What comes after the pour is asked once the pour is booked: dated `said`, or today.
    """
    batch = find_batch(here.rows(), code)
    asked = _asked(here, batch, made, said, anyway, tools)
    if any(not one.past for one in asked):
        warn(f"Batch {batch.code}, made on {show_date(batch.made_on or made)} (another day: --on).")
        warn("Enter takes the target, but of lye and fragrance: type what the scale shows.")
        warn("0 is left out, - not read, s skips, b goes back, q stops.")
        warn("Another lot: 182.4 g@L41-5; two: 120 g@L7-2,62.4 g@L9-3; unknown: 9 g@unknown.")
        warn("Or type or scan a lot's code first: it is in your hand, and its weight is asked.")
    position, back = _next(asked, 0, set()), False
    seen_open = _numbers(here, batch)
    passed: set[int] = set()
    refused: set[int] = set()  # for good
    again = False  # the answer before this one was refused
    held: InHand | None = None
    while position < len(asked):
        one = asked[position]
        if one.before and not back and not held:
            one.before()
        booked = one.booked or position in passed
        usual = one.again if booked or position in refused else one.question
        typed = ask(held.question if held else usual, default="")
        word = typed.casefold()
        if word == "q":
            stop(batch.code)
        if word == "b":
            position, back, again, held = max(position - 1, 0), True, False, None
            continue
        if not word and (again or held or (not booked and (one.typed or position in refused))):
            warn(f"  Enter books nothing here now. Type {one.firm}; s skips, b goes back, q stops.")
            continue
        if not word and booked:
            warn("  It stays as it is booked.")
        elif word != "s":
            try:
                if looks_like_lot_code(typed):
                    held = None  # whatever it was: another is in her hand now
                    held, again = one.hold(typed), False
                    continue
                answer = one.book(f"{typed}@{held.code}" if held and "@" not in typed else typed, booked)
            except LedgerError as error:
                warn(f"  {error}")
                answer = None
            if answer is None:
                refused.add(position)
                again = True
                continue
            seen_open = _say_new(here, batch, seen_open)
            if answer:
                passed.add(position)
                asked = _asked(here, batch, made, said, anyway, tools)  # a way out may have set other targets
        position, back, again, held = _next(asked, position + 1, passed), False, False, None
    after_the_pour(here, code, batch, (said or here.today) if batch.poured else made)


def _next(asked: list[_Asked], start: int, passed: set[int]) -> int:
    return next((i for i in range(start, len(asked)) if not asked[i].past and i not in passed), len(asked))


def _asked(
    here: Desk, batch: BatchRow, made: date, said: date | None, anyway: str | None, tools: Sequence[str]
) -> list[_Asked]:
    """The lines and the steps together; the steps after the pour only once it was booked."""
    known = {(one.what, one.mark) for one in current_readings(here.rows(), batch.id)}
    found = [
        _line(here, batch, line, made, anyway) for line in plan_lines(here.rows(), batch.id) if line.role != "packaging"
    ]
    done = batch.yield_lot_id is not None
    for step in steps_of(here.rows(), batch):
        if step.when != SET or (batch.poured and not done):
            booked = (step.what, step.mark) in known
            past = done or booked or (batch.poured and step.when != SET)
            found.append(_step(here, batch, step, made, said, tools, booked=booked, past=past))
    return in_order(found, lambda one: one.when)


def _line(here: Desk, batch: BatchRow, line: PlanLineRow, made: date, anyway: str | None) -> _Asked:
    units = here.settings.units
    lot = f", lot {lot_by_id(here.rows(), line.lot_id).code}" if line.lot_id is not None else ""
    asked = f"{show_mass(line.target, units)} (OK {show_mass(line.low, units)} to {show_mass(line.high, units)})"
    meant: set[str] = set()  # other materials that she said are in the pot

    def hold(typed: str) -> InHand:
        found = take_in_hand(here, line, typed, batch.code, made, asked)
        meant.add(found.material)
        return found

    def book(typed: str, correct: bool) -> bool | None:
        takes = parse_weights(here, typed, line) if typed else [Weighed(line.target, note=AS_PLANNED)]
        doubt = unlikely(takes, line, units)
        if doubt and not surely(f"{doubt}. ", batch.code):
            note_refused(here, batch, line, takes, "typed and taken back", made)
            return None
        other = other_material(here, line, takes)
        if other and other not in meant and really_in(other, line, batch.code) != "pot":
            return None
        try:
            check = weigh(
                here.book(), batch.code, {line.number: takes}, on=made, by=here.who, correct=correct, anyway=anyway,
                instead=other is not None,
            )  # fmt: skip
        except Doubted as error:
            warn(f"  {error}")
            note_refused(here, batch, line, takes, "typed and refused", made)
            return ask_way(here, batch, line, takes, made, anyway) or None
        if other:
            say_superfat(check)
            say_ways(check, batch, plan_lines(here.rows(), batch.id))
        return True

    question = f"{line.number}. {line.material}{lot}: {asked}"
    return _Asked(
        question,
        line.stage,
        line.logged,
        line.logged,
        book,
        question,
        "the weight, or 0 where it is left out",
        hold,
        lambda: _before_line(here, batch, line),
        typed=line.always_read,
    )


def _before_line(here: Desk, batch: BatchRow, line: PlanLineRow) -> None:
    """At the alkali, and at an acid that an older plan has after it: the cautions; and how much alkali is wanted."""
    if line.stage != WITH_THE_LYE:
        return
    lines = worksheet(here.rows(), batch.code, program="").lines
    acid = cautions().by_step.get("acid", ()) if acid_in_jug(lines) else ()
    this = next(one for one in lines if one.number == line.number)
    if line.role == "alkali":
        for text in (*cautions().by_step.get("lye", ())[:1], *acid):
            warn(f"  ! {text}")
        say_alkali_wanted(here, batch)
    elif this.acid and any(one.role == "alkali" and one.number < line.number for one in lines):
        for text in acid:
            warn(f"  ! {text}")


def _step(
    here: Desk,
    batch: BatchRow,
    step: Step,
    on: date,
    said: date | None,
    tools: Sequence[str],
    *,
    booked: bool,
    past: bool,
) -> _Asked:
    row = READINGS[step.what]
    tick, scale = row.answer is TICK, None
    if row.tries == "scale":
        named = [equipment_by_code(here.rows(), one, on) for one in tools]
        scale = next((one for one in named if one.kind == "scale"), None) or sole(here.rows(), "scale", on)
    target = show_mass(scale.expected, here.settings.units) if scale and scale.expected is not None else None
    usual = "yes" if tick else target or "still open"

    def book(typed: str, correct: bool) -> bool | None:
        if tick:
            value = read_reading(f"{row.what}={typed or 'yes'}")
        elif not typed and not target:
            return False
        else:
            if row.answer is CLOCK and typed.casefold() == "now":
                typed = here.clock_now
            typed = typed or target or ""
            if isinstance(row.answer, Figure) and row.answer.unit == MASS.unit:
                typed = with_scale_unit(typed, here.settings.units)
            value = read_reading(f"{row.what}={typed}")
        if scale and scale.expected and value.value and not scale.expected <= 2 * value.value <= 4 * scale.expected:
            asked = f"The scale should read {target}, not {show_mass(value.value, here.settings.units)}. "
            if not surely(asked, batch.code):
                return None
        late = step.own and step.when == SET
        value = on_its_day(
            replace(value, mark=step.mark), batch, said=said, today=here.today, correct=correct, late=late
        )
        log_readings(here.book(), batch.code, (value,), on=on, correct=correct, tools=tools)
        if row.tries:
            warn_failed(here, on)
        return True

    hint = row.answer.hint or row.answer.box(here.settings.units)
    label = f"{step.letter}. {step.label} ({f'{step.note}; ' if step.own and step.note else ''}{hint}"
    again, firm = f"{label})", "y or n" if tick else "it, or - where nobody read it"
    typed = tick and step.own  # which of her own words safety hangs on is not known here
    question = again if typed else f"{label}; Enter: {usual})"
    no_lot = partial(no_lot_here, what=step.label)
    return _Asked(question, step.when, booked, past, book, again=again, firm=firm, typed=typed, hold=no_lot)


def _numbers(here: Desk, batch: BatchRow) -> set[int]:
    return {one.id for one in open_deviations(here.rows(), batch.id)}


def _say_new(here: Desk, batch: BatchRow, known: set[int]) -> set[int]:
    found = open_deviations(here.rows(), batch.id)
    for one in found:
        if one.id not in known:
            warn(f"  Outside: {one.found}. It is deviation {one.number}, to be decided before release.")
    return {one.id for one in found}
