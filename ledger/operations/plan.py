"""Plan a batch: lots chosen, lye reckoned for exactly those lots, numbered lines for the bench."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from ledger.domain.formulate import scaled_bars, targets, tolerance
from ledger.domain.recipe import Recipe, RecipeLine
from ledger.operations.allocate import FreeStock, Take, chosen_lots
from ledger.operations.combine import next_batch_code
from ledger.storage.book import Book
from ledger.storage.tables import Batch, PlanLine
from ledger.views.material import MaterialCard
from ledger.views.recipe import fat_charge, materials_named, recipe_by_code, recipe_version


@dataclass(frozen=True)
class PlanRequest:
    """What to make, how much fat (None: the recipe's own size), when, and lots chosen by hand."""

    recipe: str
    on: date
    fats_mg: int | None = None
    using: Mapping[str, str] | None = None  # material -> lot code


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
        taken = {named[line.material].id: named[line.material].name for line in recipe.lines}
        chosen = chosen_lots(tx.rows, request.using or {}, taken, request.on)
        stock = FreeStock(tx.rows, request.on, chosen)
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
        place = 0
        for line, takes in _fill(stock, recipe, named, request.fats_mg):
            role = named[line.material].kind if line.role == "part" else line.role
            for take in takes:
                place += 1
                low, high = tolerance(role, take.quantity)
                tx.add(
                    PlanLine(
                        batch_id=batch.id,
                        number=place,
                        role=role,
                        material_id=take.card.id,
                        lot_id=take.lot.id if take.lot else None,
                        target=take.quantity,
                        low=low,
                        high=high,
                        stage=line.stage,
                    )
                )
        tx.say(f"Planned batch {batch.code}, {recipe.name} version {number}.")
    return batch.code


def _fill(
    stock: FreeStock, recipe: Recipe, named: Mapping[str, MaterialCard], fats_mg: int | None
) -> list[tuple[RecipeLine, Sequence[Take]]]:
    """Every line with the lots it is filled from, in the order of work; the lye follows from the fats."""
    amounts = iter(targets(recipe, fats_total_mg=fats_mg))
    filled: list[tuple[RecipeLine, Sequence[Take]]] = []
    for line in recipe.lines:
        if recipe.alkali_kind and line.role in ("alkali", "liquid"):
            filled.append((line, ()))
            continue
        card, target = named[line.material], next(amounts).target
        filled.append((line, stock.wrap(card, target) if line.role == "packaging" else stock.take(card, target)))
    if not recipe.alkali_kind:
        return filled
    charges = [
        fat_charge(take.card, take.quantity, take.lot.sap_low_mg_per_kg, take.lot.sap_high_mg_per_kg)
        for line, takes in filled
        for take in takes
        if line.role == "fat" and take.lot
    ]
    alkali = named[recipe.of_role("alkali")[0].material]
    lye, first = stock.lye(recipe, charges, alkali)
    weigh = {"alkali": lye.alkali.weigh_mg, "liquid": lye.water_mg}
    return [
        (line, stock.take(named[line.material], weigh[line.role], first=first) if line.role in weigh else takes)
        for line, takes in filled
    ]
