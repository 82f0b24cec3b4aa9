"""What went into a batch, through infusions, combined drums, stock lye, portions and rebatched offcuts."""

from collections import defaultdict

from ledger.domain.label.declaration import Part
from ledger.domain.recipe.recipe import AS_SAPONIFIED
from ledger.rows.batch import BatchRow, find_batch
from ledger.rows.material import materials_by_id
from ledger.rows.opened import Rows
from ledger.units.money import share_out
from ledger.units.words import Process
from ledger.views.recipe.saponified import saponified_parts
from ledger.views.stock.bases import Base
from ledger.views.stock.made_of import Compositions, Key

_SHARES = 10**12  # fine enough that no milligram of a batch goes astray


def bases_of_batch(rows: Rows, batch_id: int, compositions: Compositions | None = None) -> tuple[Base, ...]:
    """Everything in a batch down to the lots as received, in mg, adding up to what went in; no lot of less than one.

    An answer about several batches hands the compositions it remembers.
    """
    made = compositions or Compositions(rows, of=[batch_id])
    masses: dict[Key, int] = defaultdict(int)
    for one in made.taken_by(batch_id):
        weights = made.weights(one.lot, _SHARES)
        for (lot, held, herb), mass in zip(weights, share_out(one.used_mg, list(weights.values())), strict=True):
            masses[lot, one.held_back or held, herb] += mass
    return tuple(Base(made.lots[lot], mass, held, herb) for (lot, held, herb), mass in masses.items() if mass)


def bases_of_lot(made: Compositions, lot_id: int, mass_mg: int) -> tuple[Base, ...]:
    """So much of one lot down to the lots as received, in mg; raises BadInput where that cannot be told."""
    weights = made.weights(made.lot(lot_id), _SHARES)
    masses = share_out(mass_mg, list(weights.values()))
    return tuple(
        Base(made.lots[lot], mass, held, herb) for (lot, held, herb), mass in zip(weights, masses, strict=True)
    )


def parts_of_batch(rows: Rows, batch_id: int, made: Compositions | None = None) -> tuple[Part, ...]:
    """Every ingredient of a batch as it was added, in mg, down to the lot as received.

    Raises BadInput for a material without an INCI name.
    """
    return tuple(
        Part(one.inci, one.mass_mg, "botanical" if one.carried else one.lot.kind, one.lot.code)
        for one in bases_of_batch(rows, batch_id, made)
    )


def declared_parts(rows: Rows, batch: BatchRow, policy: str, made: Compositions | None = None) -> tuple[Part, ...]:
    """What the declaration lists, as added or as saponified by the recipe's policy; raises like `parts_of_batch`."""
    if policy != AS_SAPONIFIED:
        return parts_of_batch(rows, batch.id, made)
    bases = bases_of_batch(rows, batch.id, made)
    if not {"fat", "alkali"} <= {one.lot.kind for one in bases}:
        return parts_of_batch(rows, batch.id, made)
    return saponified_parts(bases, materials_by_id(rows, {one.lot.material_id for one in bases}), _process(rows, batch))


def _process(rows: Rows, batch: BatchRow) -> Process:
    """Cold or hot, by the batch itself or the one whose dough it is a portion of."""
    return find_batch(rows, batch.part_of).process if batch.part_of else batch.process
