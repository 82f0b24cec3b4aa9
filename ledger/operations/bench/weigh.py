"""Log what was weighed: the actual grams of each line, from the lot that was really used."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from ledger.domain.bench.decision import Doubt
from ledger.domain.bench.superfat import as_weighed_doubt
from ledger.domain.lye.weighed import LyeCheck
from ledger.errors import BadInput, Refused
from ledger.operations.bench.deviations import settle_deviations
from ledger.operations.bench.hold import hold_what_came_of_it
from ledger.operations.bench.readings import ReadingValue, add_readings
from ledger.operations.bench.superfat_guard import keep_or_refuse
from ledger.operations.bench.unknown_lot import lot_of_nobody
from ledger.operations.material.skin import over_the_limit
from ledger.rows.batch import BatchRow, PlanLineRow, find_batch, plan_lines
from ledger.rows.lot import LotRow, find_lot, lot_by_id, on_hand_at, place_of_kind
from ledger.rows.material import material_by_code, material_by_id
from ledger.rows.movement import taken_on
from ledger.rows.opened import Rows
from ledger.rows.reading import first_of
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.tables.reading import Reading
from ledger.storage.transaction import Transaction
from ledger.storage.verbs import Moved
from ledger.units.dates import show_best_before, show_date
from ledger.units.quantity import show_mass
from ledger.units.words import AS_PLANNED, Units
from ledger.views.bench.correction import MET
from ledger.views.lye.lye_check import lye_check
from ledger.views.recipe.skin import batch_skin_checks, bears_on_the_skin

_KEEP = "If it is in already, book it with --anyway REASON, which is kept."


@dataclass(frozen=True)
class Weighed:
    """So much (mg) of one lot; no lot means the one on the worksheet. `note` says how it was come by.

    `of` names the material where its lot is not known.
    """

    quantity: int
    lot_code: str | None = None
    note: str | None = None
    of: str | None = None


def weigh(
    book: Book,
    code: str,
    weighed: Mapping[int, Sequence[Weighed]],
    *,
    on: date,
    by: str,
    correct: bool = False,
    anyway: str | None = None,
    readings: Sequence[ReadingValue] = (),
    tools: Sequence[str] = (),
    instead: bool = False,
    found_on: date | None = None,
) -> LyeCheck:
    """Book the actual grams of some lines, and what was read, in one entry; say what superfat they give.

    A line weighed again is a correction, booked as the difference so that both stay to be read; nothing
    (0) means that the line was left out. `instead` says that lots of another material really went in. What is in is
    booked then, whatever superfat it gives, and so is what comes out once the soap is poured (`found_on` that day):
    the deviation stays, and bars that are cut are held. Raises Refused when a lot holds too little, was not accepted or
    is out of date, when a line was weighed already and this is no correction, after the cut, or when the
    superfat is not likely to be above zero (unless `anyway` gives a reason, which is kept as a decision).
    """
    with book.write("batch log") as tx:
        batch = find_batch(tx.rows, code)
        may_be_weighed(batch, on, correct=correct)
        lines = {line.number: line for line in plan_lines(tx.rows, batch.id) if line.role != "packaging"}
        for number, takes in weighed.items():
            if number not in lines:
                raise BadInput(f"Batch {batch.code} has no line {number}; its lines are 1 to {max(lines)}.")
            book_line(tx, batch, lines[number], takes, on=on, correct=correct, instead=instead)
        check = lye_check(tx.rows, batch.id)
        # once lye and fats have met, a fact, which no refusal takes out of the pot
        is_in = instead or (correct and first_of(tx.rows, batch.id, MET) is not None)
        if not is_in and any(_bears_on_the_lye(tx.rows, lines[number]) for number in weighed):
            keep_or_refuse(tx, batch.id, as_weighed_doubt(batch.code, check), anyway=anyway, on=on, by=by)
        if not is_in and any(
            bears_on_the_skin(tx.rows, lines[number].material_id, lines[number].lot_id) for number in weighed
        ):
            checks = batch_skin_checks(tx.rows, batch)
            if over := over_the_limit(checks):
                of = tuple(one.words for one in checks if one.verdict == "over")
                keep_or_refuse(tx, batch.id, Doubt("skin", f"{over} {_KEEP}", of), anyway=anyway, on=on, by=by)
        last = on
        if readings:
            last = max(on, add_readings(tx, find_batch(tx.rows, code), readings, on, correct=correct, tools=tools))
        settle_deviations(tx, batch.code, on=last, by=by)
        if batch.yield_lot_id is not None:
            hold_what_came_of_it(tx, batch, on=found_on or on, by=by)
        numbers = ", ".join(str(number) for number in sorted(weighed))
        read = f"; noted {', '.join(one.what for one in readings)}" if readings else ""
        tx.say(f"Weighed line {numbers} of batch {batch.code}{' (correction)' if correct else ''}{read}.")
    return check


def _bears_on_the_lye(rows: Rows, line: PlanLineRow) -> bool:
    """Fats, alkalis and what uses up alkali do."""
    return line.role in ("fat", "alkali") or material_by_id(rows, line.material_id).acid_koh_mg_per_kg is not None


def may_be_weighed(batch: BatchRow, on: date, *, correct: bool = False) -> None:
    """Raise Refused for a batch that is done or given up, BadInput for a day before the one it was planned for.

    Of a soap that is cut, what really went in can still be corrected.
    """
    if batch.discarded:
        raise Refused(f"Batch {batch.code} was discarded; nothing more goes in.")
    if batch.yield_lot_id is not None and not (correct and batch.process in ("cold", "hot")):
        raise Refused(
            f"Batch {batch.code} is {batch.status}; nothing more goes in after that."
            + (" If something else went in than was logged, add --correct." if batch.process in ("cold", "hot") else "")
        )
    if on < batch.planned_on:
        raise BadInput(
            f"Batch {batch.code} was planned for {show_date(batch.planned_on)}; the day it was made cannot "
            "be before that. Give the day with --on."
        )


def book_line(
    tx: Transaction,
    batch: BatchRow,
    line: PlanLineRow,
    takes: Sequence[Weighed],
    *,
    on: date,
    correct: bool,
    instead: bool = False,
) -> None:
    """Book one line from its lots; one weighed before is corrected by the difference. Raises like `weigh`."""
    units = settings(tx.rows).units
    if line.logged and not correct:
        raise Refused(
            f"Line {line.number} ({line.material}) was weighed already: {show_mass(line.used, units)}. "
            "To correct it, add --correct; both stay to be read."
        )
    if correct and not line.logged:
        raise Refused(f"Line {line.number} ({line.material}) was not weighed yet; leave out --correct.")
    if line.always_read and any(take.note == AS_PLANNED for take in takes):
        raise Refused(f"Line {line.number} ({line.material}) is read from the scale; write what it showed.")
    workshop = place_of_kind(tx.rows, "workshop")
    wanted: dict[int, int] = {}
    if not any(take.quantity for take in takes):
        _leave_out(tx, batch, line, on)
        takes = ()
    for take in takes:
        if take.quantity <= 0:
            raise BadInput(f"Line {line.number} ({line.material}) takes more than nothing of each lot.")
        lot = _lot(tx, batch, line, take, on, instead=instead)
        wanted[lot.id] = wanted.get(lot.id, 0) + take.quantity
    before = taken_on(tx.rows, line.id)
    taken = []
    for lot_id in sorted({*wanted, *before}):
        more = wanted.get(lot_id, 0) - before.get(lot_id, 0)
        if more == 0:
            continue
        if more > 0:
            _may_take(tx.rows, lot_by_id(tx.rows, lot_id, on=on), workshop.id, more, on, units)
        note = next((take.note for take in takes if take.note), None)
        taken.append(Moved(lot_id, -more, batch.id, line.id, note=note or ("correction" if correct else None)))
    tx.move(taken, "consumed", place_id=workshop.id, on=on)


def _leave_out(tx: Transaction, batch: BatchRow, line: PlanLineRow, on: date) -> None:
    """A line of which nothing went in; a soap without its lye is none."""
    if line.role in ("alkali", "liquid") and batch.process in ("cold", "hot"):
        raise Refused(f"Line {line.number} ({line.material}) cannot be left out of a soap; write its weight.")
    words = f"line {line.number}, {line.material}"
    tx.add(Reading(batch_id=batch.id, on=on, what="left out", text=words, plan_line_id=line.id))


def _lot(tx: Transaction, batch: BatchRow, line: PlanLineRow, take: Weighed, on: date, *, instead: bool) -> LotRow:
    rows = tx.rows
    if take.of is not None:
        card = material_by_code(rows, take.of)
        if card.id != line.material_id and not instead:
            raise another_material(batch.code, line, card.name, f"{take.quantity / 1000:g} g@unknown {card.name}")
        return lot_of_nobody(tx, batch, card, take.quantity, on)
    if take.lot_code is None:
        if line.lot_id is None and line.role == "dough":
            raise Refused(
                "The dough was not divided yet: log the whole batch first, then divide it: soapledger batch divide CODE"
            )
        if line.lot_id is None:
            raise BadInput(f"Line {line.number} ({line.material}) has no lot yet; write it as 100 g@L41-5.")
        return lot_by_id(rows, line.lot_id, on=on)
    lot = find_lot(rows, take.lot_code, on=on)
    if lot.material_id != line.material_id and not instead:
        raise another_material(batch.code, line, lot.material, f"{take.quantity / 1000:g} g@{lot.code}", lot.code)
    if lot.counted:
        raise BadInput(f"Lot {lot.code} is {lot.material}, which is counted in pieces and not weighed.")
    return lot


def another_material(batch: str, line: PlanLineRow, name: str, typed: str, lot: str | None = None) -> Refused:
    """The refusal of another material than a line asks for, with the way to say that it really went in."""
    what = f"lot {lot} is {name}" if lot else f"{name} is another material"
    return Refused(
        f"Line {line.number} asks for {line.material}, and {what}. If the code is wrong, write the right one. "
        f"If {name} really went in: soapledger batch log {batch} --line '{line.number}={typed}' --instead"
        f"{' --correct' if line.logged else ''}"
    )


def may_go_in(lot: LotRow, on: date) -> None:
    """Raise Refused for a lot that is not accepted or was best before a day earlier than `on`."""
    if lot.status != "accepted":
        accept = f": soapledger lot accept {lot.code}" if lot.status == "quarantine" else "."
        raise Refused(f"Lot {lot.code} ({lot.material}) is {lot.status}; only accepted lots go into a batch{accept}")
    if lot.best_before and lot.best_before < on:
        raise Refused(
            f"Lot {lot.code} ({lot.material}) was best before {show_best_before(lot.best_before)}; use another."
        )


def _may_take(rows: Rows, lot: LotRow, place_id: int, asked: int, on: date, units: Units) -> None:
    may_go_in(lot, on)
    held = min(on_hand_at(rows, lot.id, place_id, on=on), on_hand_at(rows, lot.id, place_id))
    if asked > held:
        raise Refused(
            f"Lot {lot.code} ({lot.material}) holds {show_mass(held, units)}, and {show_mass(asked, units)} was "
            f"asked for. Split the line over two lots, e.g. {show_mass(held, units)}@{lot.code},… , or count the lot."
        )
