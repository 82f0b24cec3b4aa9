"""Book a wrong weight as it really was, and the way out that was taken."""

from collections.abc import Sequence
from datetime import date

from ledger.domain.bench.correction import InPot, Way
from ledger.domain.bench.decision import undecided
from ledger.domain.bench.superfat import as_weighed_doubt, burning_doubt
from ledger.domain.lye.weighed import LyeCheck
from ledger.domain.recipe.formulate import tolerance
from ledger.errors import BadInput, Refused
from ledger.operations.bench.deviations import WAY_OUT, settle_deviations
from ledger.operations.bench.superfat_guard import keep_or_refuse
from ledger.operations.bench.weigh import Weighed, book_line, may_be_weighed
from ledger.rows.batch import BatchRow, PlanLineRow, find_batch, plan_lines
from ledger.rows.decision import decided
from ledger.rows.lot import LotRow, available, lots_by_id, place_of_kind
from ledger.rows.movement import taken_on
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.tables.bench import PlanTarget
from ledger.storage.tables.reading import Reading
from ledger.storage.transaction import Transaction
from ledger.storage.verbs import Moved
from ledger.units.names import near
from ledger.units.quantity import show_mass
from ledger.units.scale import Scale
from ledger.units.words import AS_RECKONED, Units
from ledger.views.bench.correction import correction_case, correction_ways
from ledger.views.lye.lye_check import lye_check

WAYS = ("pour", "lye", "fats")


def correct_batch(
    book: Book,
    code: str,
    line: int,
    actual_mg: int,
    *,
    take: str,
    on: date,
    by: str,
    anyway: str | None = None,
    of_lots: Sequence[Weighed] = (),
) -> LyeCheck:
    """Book the line as it really was and every other line as the way taken leaves it, in one entry.

    `take` is pour, lye or fats; `of_lots` is the weight by its lots, where they are not those of the worksheet. Lye
    solution left in the jug is booked as waste; lines not weighed yet get a new target. Raises Refused like
    `correction`, and for a way that is none; BadInput for an unknown one, or for a day before the one the batch was
    planned for.
    """
    if take not in WAYS:
        close = near(take, WAYS, 1)
        raise BadInput(
            f"'{take}' is not a way out; {f'did you mean {close[0]}?' if close else 'write pour, lye or fats.'}"
        )
    with book.write("batch correct") as tx:
        batch = find_batch(tx.rows, code)
        case = correction_case(tx.rows, batch, line, actual_mg)
        may_be_weighed(batch, on)
        way = correction_ways(tx.rows, batch, case)[WAYS.index(take)]
        burning = burning_doubt(batch.code, take, way.superfat) if way.burns and way.superfat else None
        if burning is None and way.why_not is not None:
            raise Refused(f"'{take}' is not a way out here: {way.why_not}.")
        if burning and not (anyway or "").strip() and undecided([burning], decided(tx.rows, batch_id=batch.id)):
            raise Refused(burning.words)
        lines = {one.number: one for one in plan_lines(tx.rows, batch.id) if one.role != "packaging"}
        takes = of_lots or _takes(tx, batch, lines[line], actual_mg)
        book_line(tx, batch, lines[line], takes, on=on, correct=lines[line].logged, instead=True)
        scale = settings(tx.rows).scale
        for changed, more in way.changes(case.lines):
            _change(tx, batch, lines[changed.number], changed, more, scale=scale, on=on)
        units = settings(tx.rows).units
        words = f"line {line} was {show_mass(actual_mg, units)}; way taken: {take}"
        tx.add(Reading(batch_id=batch.id, on=on, what="correction", text=f"{words}{_listed(case.lines, way, units)}"))
        settle_deviations(tx, batch.code, on=on, by=by, why=WAY_OUT)
        check = lye_check(tx.rows, batch.id)
        keep_or_refuse(tx, batch.id, as_weighed_doubt(batch.code, check) or burning, anyway=anyway, on=on, by=by)
        tx.say(f"Corrected batch {batch.code}: {words}.")
    return check


def _listed(before: tuple[InPot, ...], way: Way, units: Units) -> str:
    changes = [
        f"line {one.number} {'+' if more > 0 else '−'}{show_mass(abs(more), units)}"
        for one, more in way.changes(before)
    ]
    return f" ({', '.join(changes)})" if changes else ""


def _weigh(tx: Transaction, batch: BatchRow, line: PlanLineRow, mass_mg: int, on: date) -> None:
    """The line at another mass, as reckoned; what its lots lack comes from the next accepted lot."""
    takes = _takes(tx, batch, line, mass_mg, AS_RECKONED)
    book_line(tx, batch, line, takes, on=on, correct=line.logged, instead=True)


def _takes(tx: Transaction, batch: BatchRow, line: PlanLineRow, mass_mg: int, note: str | None = None) -> list[Weighed]:
    """From the lots the line has, first what it already took of each, then what is free."""
    used = taken_on(tx.rows, line.id)
    lots = lots_by_id(tx.rows, [*used, *([line.lot_id] if line.lot_id is not None else [])])
    took = {lots[lot].code: mass for lot, mass in used.items() if mass > 0 and _own(line, lots[lot])}
    others = [
        Weighed(mass, lots[lot].code, note) for lot, mass in used.items() if mass > 0 and not _own(line, lots[lot])
    ]
    free = {one.lot.code: one.free for one in available(tx.rows, line.material_id, on=batch.on)}
    if not line.logged and line.lot_id is not None:  # what this line itself means to take is not free, but it may
        own = lots[line.lot_id].code
        free = {own: free.get(own, 0) + line.target, **{code: n for code, n in free.items() if code != own}}
    takes, left = others, mass_mg
    for code, there in (*took.items(), *((code, max(there, 0)) for code, there in free.items())):
        if (part := min(left, there)) > 0:
            takes.append(Weighed(part, code, note))
            left -= part
    if left > 0:
        units = settings(tx.rows).units
        raise Refused(f"There is {show_mass(left, units)} too little of {line.material} for that; count the lots.")
    return takes


def _own(line: PlanLineRow, lot: LotRow) -> bool:
    """Whether a lot is of the material that a line asks for; what else is in stays in."""
    return lot.material_id == line.material_id


def _change(
    tx: Transaction, batch: BatchRow, line: PlanLineRow, to: InPot, more: int, *, scale: Scale, on: date
) -> None:
    """One line as the way out leaves it."""
    now = next(one for one in plan_lines(tx.rows, batch.id) if one.number == line.number)
    before = taken_on(tx.rows, line.id)
    lots = lots_by_id(tx.rows, before)
    target = to.mass_mg + sum(mass for lot, mass in before.items() if not _own(line, lots[lot]))  # what stays in
    low, high = tolerance(line.role, target, scale=scale)
    tx.add(PlanTarget(plan_line_id=line.id, target=target, low=low, high=high))
    if not now.logged:
        return
    _weigh(tx, batch, now, to.mass_mg, on)
    if more < 0:  # the lye left in the jug does not go back into its lots
        workshop = place_of_kind(tx.rows, "workshop")
        after, note = taken_on(tx.rows, line.id), f"lye of batch {batch.code} left in the jug"
        left = [
            Moved(lot_id, -gone, note=note)
            for lot_id, used in before.items()
            if (gone := used - after.get(lot_id, 0)) > 0
        ]
        tx.move(left, "wasted", place_id=workshop.id, on=on)
