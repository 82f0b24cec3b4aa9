"""A batch divided at trace: each portion is a batch of its own, made of the dough and what goes into it alone."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict
from datetime import date

from ledger.domain.bench.worksheet import DOUGH, Filled, SheetLine, sheets_of_portions
from ledger.domain.recipe.recipe import Recipe
from ledger.errors import BadInput, Refused
from ledger.operations.recipe.recipes import dough_code, soap_code
from ledger.operations.stock.combine import next_batch_code
from ledger.operations.stock.receive import next_lot_code
from ledger.rows.batch import BatchRow, find_batch, plan_lines, portions_of
from ledger.rows.lot import place_of_kind
from ledger.rows.material import material_id
from ledger.rows.opened import Rows
from ledger.rows.reading import mass_in
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.tables.bench import Batch, PlanLine
from ledger.storage.transaction import Transaction
from ledger.storage.verbs import FirstDecision, Moved, NewLot
from ledger.units.dates import show_date
from ledger.units.money import share_out
from ledger.units.names import near
from ledger.units.quantity import show_mass
from ledger.units.scale import Scale


def plan_portions(tx: Transaction, batch: Batch, recipe: Recipe, filled: Filled, *, scale: Scale) -> None:
    """Plan a batch for each portion: the dough it takes, what goes into it alone, and its wrapping."""
    if not recipe.portions:
        return
    dough_id = material_id(tx.rows, dough_code(recipe.code))
    for sheet in sheets_of_portions(recipe, filled, batch.bars_planned, dough_id=dough_id, scale=scale):
        child = tx.add(
            Batch(
                code=next_batch_code(tx, batch.on),
                process="portion",
                recipe_version_id=batch.recipe_version_id,
                material_id=material_id(tx.rows, soap_code(recipe.code, sheet.portion)),
                on=batch.on,
                bars_planned=sheet.bars or None,
                part_of=batch.id,
                portion=sheet.portion.name,
            )
        )
        book_lines(tx, child, sheet.lines)


def book_lines(tx: Transaction, batch: Batch, lines: Iterable[SheetLine]) -> None:
    """Write the worksheet of a batch."""
    assert batch.id is not None
    for line in lines:
        tx.add(PlanLine(batch_id=batch.id, **asdict(line)))


def divide_batch(
    book: Book, code: str, masses: Mapping[str, int], *, on: date, by: str
) -> tuple[tuple[str, str, int], ...]:
    """Divide the dough of a batch at trace; returns (portion, its batch code, dough in mg).

    Without masses, all that went in is divided by the shares of the recipe. Raises Refused for a batch that has
    no portions, has lines open, or was divided; BadInput for an unknown or missing portion, or more than went in.
    """
    with book.write("batch divide") as tx:
        batch = find_batch(tx.rows, code)
        children = portions_of(tx.rows, batch.id)
        _may_divide(batch, children, on)
        put_in = mass_in(tx.rows, batch.id)
        given = _masses(tx.rows, children, masses, put_in)
        workshop = place_of_kind(tx.rows, "workshop")
        decided = FirstDecision("accepted", by, "divided at trace")
        dough = NewLot(next_lot_code(tx), batch.material_id, sum(given.values()), decided=decided)
        (lot_id,) = tx.open_lots([dough], place_id=workshop.id, on=on, batch_id=batch.id)
        parts = []
        for child in children:
            line = next(one for one in plan_lines(tx.rows, child.id) if one.role == DOUGH)
            parts.append(Moved(lot_id, -given[child.portion or ""], child.id, line.id))
        tx.move(parts, "consumed", place_id=workshop.id, on=on)
        tx.say(f"Divided batch {batch.code} into {', '.join(child.code for child in children)}.")
    return tuple((child.portion or "", child.code, given[child.portion or ""]) for child in children)


def _may_divide(batch: BatchRow, children: Sequence[BatchRow], on: date) -> None:
    if not children:
        raise Refused(f"Batch {batch.code} has no portions; its recipe says into which a dough divides ([[portion]]).")
    if batch.discarded or batch.yield_lot_id is not None:
        raise Refused(f"Batch {batch.code} is {batch.status}; it cannot be divided.")
    if batch.open_lines:
        raise Refused(
            f"Batch {batch.code} has lines still to be weighed before it is divided: soapledger batch log {batch.code}"
        )
    if on < batch.on:
        raise BadInput(f"Batch {batch.code} was still being made on {show_date(batch.on)}; look at --on.")
    gone = [child.code for child in children if child.discarded]
    if gone:
        raise Refused(f"Batch {gone[0]}, a portion of it, was discarded; the dough cannot go there.")


def _masses(rows: Rows, children: Sequence[BatchRow], masses: Mapping[str, int], put_in: int) -> dict[str, int]:
    names = [child.portion or "" for child in children]
    for name, mass in masses.items():
        if name not in names:
            close = near(name, names, 1)
            hint = f"did you mean {close[0]}?" if close else f"they are {', '.join(names)}."
            raise BadInput(f"There is no portion '{name}'; {hint}")
        if mass <= 0:
            raise BadInput(f"Portion {name} takes more than nothing.")
    if not masses:
        planned = [plan_lines(rows, child.id)[0].target for child in children]
        return dict(zip(names, share_out(put_in, planned), strict=True))
    if missing := [name for name in names if name not in masses]:
        raise BadInput(f"How much dough went into {missing[0]}? Write it as {missing[0]}=600g.")
    if (total := sum(masses.values())) > put_in:
        units = settings(rows).units
        raise BadInput(
            f"The portions weigh {show_mass(total, units)} and only {show_mass(put_in, units)} went in; weigh again."
        )
    return dict(masses)
