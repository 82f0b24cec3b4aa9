"""Plan a batch: lots chosen, lye reckoned for exactly those lots, numbered lines for the bench."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from ledger.domain.dates import show_date
from ledger.domain.formulate import Lye, lye_for, scaled_bars, targets, tolerance
from ledger.domain.quantity import show_mass
from ledger.domain.recipe import Recipe
from ledger.domain.saponification import FatCharge
from ledger.errors import BadInput, Refused
from ledger.operations.combine import next_batch_code
from ledger.storage.book import Book, Transaction
from ledger.storage.tables import Batch, PlanLine
from ledger.views.lots import Available, available, find_lot
from ledger.views.material import MaterialCard, material_by_code
from ledger.views.reading import Rows
from ledger.views.recipe import fat_charge, materials_named, recipe_by_code, recipe_version
from ledger.views.settings import settings


@dataclass(frozen=True)
class PlanRequest:
    """What to make, how much fat (None: the recipe's own size), when, and lots chosen by hand."""

    recipe: str
    on: date
    fats_mg: int | None = None
    using: Mapping[str, str] | None = None  # material -> lot code


@dataclass(frozen=True)
class _Take:
    """So much of one lot for one line."""

    role: str
    card: MaterialCard
    lot_id: int | None
    lot_code: str | None
    target: int
    stage: str
    sap: tuple[int | None, int | None] = (None, None)


def plan_batch(book: Book, request: PlanRequest) -> str:
    """Plan a batch from the lots in hand and return its code.

    Lots are taken first to expire first out; a line that one lot cannot fill is split over the next.
    The alkali follows the saponification value of each lot (its certificate's, else its material's)
    and the purity of the alkali in hand. Raises Refused for too little in stock, a lot out of date, or
    too little water; BadInput for an unknown recipe, material or lot.
    """
    with book.write("batch plan") as tx:
        card = recipe_by_code(tx.rows, request.recipe)
        version_id, number, recipe = recipe_version(tx.rows, card)
        named = materials_named(tx.rows, recipe, file=f"recipe {card.code}")
        using = _chosen(tx.rows, request.using or {}, request.on)
        by_line: dict[tuple[str, str], list[_Take]] = {}
        for target in targets(recipe, fats_total_mg=request.fats_mg):
            line, material = target.line, named[target.line.material]
            role = material.kind if line.role == "part" else line.role
            key = (line.role, line.material)
            if line.role == "packaging":
                by_line[key] = _wrapping(tx, material, target.target, request.on)
            else:
                by_line[key] = _fill(tx, role, material, target.target, line.stage, request.on, using)
        if recipe.alkali_kind:
            charges = [
                fat_charge(take.card, take.target, *take.sap)
                for line in recipe.of_role("fat")
                for take in by_line["fat", line.material]
            ]
            alkali_line, water_line = recipe.of_role("alkali")[0], recipe.of_role("liquid")[0]
            alkali = named[alkali_line.material]
            if alkali.alkali_kind != recipe.alkali_kind:
                raise BadInput(
                    f"The recipe reckons with {recipe.alkali_kind}, but {alkali.name} is "
                    f"{alkali.alkali_kind or 'no alkali'}; mend the recipe or the material."
                )
            lye, alkali_using = _lye(tx, recipe, charges, alkali, request.on, using)
            by_line["alkali", alkali_line.material] = _fill(
                tx, "alkali", alkali, lye.alkali.weigh_mg, alkali_line.stage, request.on, alkali_using
            )
            by_line["liquid", water_line.material] = _fill(
                tx, "liquid", named[water_line.material], lye.water_mg, water_line.stage, request.on, using
            )
        batch = tx.add(
            Batch(
                code=next_batch_code(tx, request.on),
                process=recipe.process,
                recipe_version_id=version_id,
                material_id=card.material_id,
                on=request.on,
                bars_planned=scaled_bars(recipe, request.fats_mg),
            )
        )
        assert batch.id is not None
        takes = [take for line in recipe.lines for take in by_line[line.role, line.material]]
        for place, take in enumerate(takes, 1):
            low, high = tolerance(take.role, take.target)
            tx.add(
                PlanLine(
                    batch_id=batch.id,
                    number=place,
                    role=take.role,
                    material_id=take.card.id,
                    lot_id=take.lot_id,
                    target=take.target,
                    low=low,
                    high=high,
                    stage=take.stage,
                )
            )
        tx.say(f"Planned batch {batch.code}, {recipe.name} version {number}.")
    return batch.code


def _chosen(rows: Rows, using: Mapping[str, str], on: date) -> dict[int, str]:
    chosen = {}
    for word, code in using.items():
        card, lot = material_by_code(rows, word), find_lot(rows, code, on=on)
        if lot.material_id != card.id:
            raise BadInput(f"Lot {lot.code} is {lot.material}, not {card.name}; look at --using.")
        if lot.status != "accepted":
            raise Refused(f"Lot {lot.code} is {lot.status}; accept it first: soapledger lot accept {lot.code}")
        if lot.best_before and lot.best_before < on:
            raise Refused(f"Lot {lot.code} was best before {show_date(lot.best_before)}; choose another.")
        chosen[card.id] = lot.code
    return chosen


def _in_hand(tx: Transaction, card: MaterialCard, on: date, using: Mapping[int, str]) -> list[Available]:
    found = list(available(tx.rows, card.id, on=on))
    if chosen := using.get(card.id):
        found.sort(key=lambda one: one.lot.code != chosen)
    return found


def _lye(
    tx: Transaction,
    recipe: Recipe,
    charges: Sequence[FatCharge],
    card: MaterialCard,
    on: date,
    using: Mapping[int, str],
) -> tuple[Lye, dict[int, str]]:
    """The lye, and which alkali lot to begin with.

    One lot that holds enough is taken alone, at its own purity. Where none does, the purest of the lots
    is reckoned with, which errs towards more superfat.
    """
    found = _in_hand(tx, card, on, using)
    if not found:
        raise Refused(_shortage(tx.rows, card, 0, None, on))
    purities = [one.lot.purity_ppm if one.lot.purity_ppm is not None else card.purity_ppm for one in found]
    for one, purity in zip(found, purities, strict=True):
        lye = lye_for(recipe, charges, purity_ppm=purity)
        if one.free >= lye.alkali.weigh_mg:
            return lye, {card.id: one.lot.code}
    known = [purity for purity in purities if purity is not None]
    highest = max(known) if len(known) == len(purities) else None
    return lye_for(recipe, charges, purity_ppm=highest), dict(using)


def _fill(
    tx: Transaction,
    role: str,
    card: MaterialCard,
    target: int,
    stage: str,
    on: date,
    using: Mapping[int, str],
) -> list[_Take]:
    """Takes lots until the line is filled."""
    takes, left = [], target
    for one in _in_hand(tx, card, on, using):
        if left <= 0:
            break
        part = min(one.free, left)
        lot = one.lot
        sap = (lot.sap_low_mg_per_kg, lot.sap_high_mg_per_kg)
        takes.append(_Take(role, card, lot.id, lot.code, part, stage, sap))
        left -= part
    if left > 0:
        raise Refused(_shortage(tx.rows, card, target - left, target, on))
    return takes


def _shortage(rows: Rows, card: MaterialCard, free: int, target: int | None, on: date) -> str:
    units = settings(rows).units
    asked = f", and {show_mass(target, units)} is needed" if target is not None else ""
    waiting = rows.execute(
        "SELECT l.code FROM live_lot l WHERE l.material_id = ? AND NOT EXISTS "
        "(SELECT 1 FROM live_decision d WHERE d.lot_id = l.id)",
        (card.id,),
    ).fetchall()
    hint = f" Lot {waiting[0][0]} waits in quarantine." if waiting else ""
    held = rows.execute(
        "SELECT l.code FROM live_lot l WHERE l.material_id = ? AND (SELECT d.verdict FROM live_decision d "
        "WHERE d.lot_id = l.id ORDER BY d.id DESC LIMIT 1) = 'on hold'",
        (card.id,),
    ).fetchall()
    hint += f" Lot {held[0][0]} is on hold." if held else ""
    late = rows.execute(
        "SELECT l.code, l.best_before FROM live_lot l WHERE l.material_id = ? AND l.best_before < ? AND "
        "(SELECT sum(quantity) FROM movement WHERE lot_id = l.id) > 0 ORDER BY l.id",
        (card.id, on.isoformat()),
    ).fetchall()
    if late:
        hint += f" Lot {late[0][0]} is out of date (best before {show_date(date.fromisoformat(late[0][1]))})."
    return (
        f"{card.name}: {show_mass(free, units)} of accepted stock is free{asked}.{hint} "
        "Receive more, or plan a smaller batch with --fats."
    )


def _wrapping(tx: Transaction, card: MaterialCard, target: int, on: date) -> list[_Take]:
    """Packaging is wanted only at packing, so what is short now is no reason to refuse."""
    if target <= 0:
        return []
    found = available(tx.rows, card.id, on=on)
    first = found[0].lot if found and found[0].free >= target else None
    return [_Take("packaging", card, first.id if first else None, first.code if first else None, target, "packing")]
