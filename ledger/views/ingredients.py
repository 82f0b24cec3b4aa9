"""What went into a batch, through infusions, combined drums, stock lye, portions and rebatched offcuts."""

import sqlite3
from collections import defaultdict
from fractions import Fraction

from ledger.domain.declaration import Part
from ledger.domain.money import share_out
from ledger.domain.recipe import AS_SAPONIFIED, IN_THE_FATS
from ledger.domain.recipe_reading import read_recipe
from ledger.errors import BadInput
from ledger.views.bases import Base
from ledger.views.batch import BatchRow, find_batch
from ledger.views.lots import LotRow, lot_by_id
from ledger.views.material import material_list
from ledger.views.saponified import saponified_parts

_SHARES = 10**12  # fine enough that no milligram of a batch goes astray


Key = tuple[int, bool, str | None]


def bases_of_batch(rows: sqlite3.Connection, batch_id: int) -> tuple[Base, ...]:
    """Everything in a batch down to the lots as received, in mg, adding up to what went in."""
    masses: dict[Key, int] = defaultdict(int)
    for lot, used, held in _consumed(rows, batch_id):
        shares = _composition(rows, lot, held, frozenset())
        weights = [round(share * _SHARES) for share in shares.values()]
        for key, mass in zip(shares, share_out(used, weights), strict=True):
            masses[key] += mass
    return tuple(Base(lot_by_id(rows, lot), mass, held, herb) for (lot, held, herb), mass in masses.items())


def bases_of_lot(rows: sqlite3.Connection, lot_id: int, mass_mg: int) -> tuple[Base, ...]:
    """So much of one lot down to the lots as received, in mg; raises BadInput where that cannot be told."""
    shares = _composition(rows, lot_by_id(rows, lot_id), False, frozenset())
    masses = share_out(mass_mg, [round(share * _SHARES) for share in shares.values()])
    return tuple(
        Base(lot_by_id(rows, lot), mass, held, herb) for (lot, held, herb), mass in zip(shares, masses, strict=True)
    )


def parts_of_batch(rows: sqlite3.Connection, batch_id: int) -> tuple[Part, ...]:
    """Every ingredient of a batch as it was added, in mg, down to the lot as received.

    Raises BadInput for a material without an INCI name.
    """
    return tuple(
        Part(one.inci, one.mass_mg, "botanical" if one.carried else one.lot.kind, one.lot.code)
        for one in bases_of_batch(rows, batch_id)
    )


def _consumed(rows: sqlite3.Connection, batch_id: int) -> list[tuple[LotRow, int, bool]]:
    """(lot, mg, whether it is a fat held back) of what a batch took, wrapping apart."""
    found = rows.execute(
        "SELECT v.lot_id, -sum(v.quantity) AS used, p.role, p.stage FROM movement v "
        "LEFT JOIN plan_line p ON p.id = v.plan_line_id WHERE v.batch_id = ? AND v.kind = 'consumed' "
        "GROUP BY v.lot_id, p.role, p.stage HAVING used > 0 ORDER BY min(v.id)",
        (batch_id,),
    ).fetchall()
    lots = [
        (lot_by_id(rows, row["lot_id"]), row["used"], row["role"] == "fat" and row["stage"] != IN_THE_FATS)
        for row in found
    ]
    return [one for one in lots if one[0].kind != "packaging"]


def _composition(rows: sqlite3.Connection, lot: LotRow, held: bool, above: frozenset[int]) -> dict[Key, Fraction]:
    """The shares of one lot, adding up to 1: itself if it was bought, else what its batch was made of.

    Of an infusion the botanicals do not count: the herb was strained out, and what was strained out is not
    an ingredient, but for what the maker says was carried over.
    """
    if lot.batch_id is None or lot.id in above:
        return {(lot.id, held, None): Fraction(1)}
    batch = rows.execute(
        "SELECT b.process, v.source FROM batch b LEFT JOIN recipe_version v ON v.id = b.recipe_version_id "
        "WHERE b.id = ?",
        (lot.batch_id,),
    ).fetchone()
    inputs = _consumed(rows, lot.batch_id)
    shares: dict[Key, Fraction] = defaultdict(Fraction)
    rest = Fraction(1)
    if batch["process"] == "infusion":
        herbs = [one for one in inputs if one[0].kind == "botanical"]
        inputs = [one for one in inputs if one[0].kind != "botanical"]
        if not inputs:
            raise BadInput(f"Lot {lot.code} was made of botanicals alone; what it declares cannot be told.")
        herb = read_recipe(batch["source"], file="recipe").herb
        if herb and herbs:
            carried = Fraction(herb.carried_ppm, 1_000_000)
            shares[herbs[0][0].id, False, herb.inci] += carried
            rest -= carried
    whole = sum(used for _, used, _ in inputs)
    for one, used, held_there in inputs:
        for key, share in _composition(rows, one, held or held_there, above | {lot.id}).items():
            shares[key] += rest * share * Fraction(used, whole)
    return dict(shares)


def declared_parts(rows: sqlite3.Connection, batch: BatchRow, policy: str) -> tuple[Part, ...]:
    """What the declaration lists, as added or as saponified by the recipe's policy; raises like `parts_of_batch`."""
    if policy != AS_SAPONIFIED:
        return parts_of_batch(rows, batch.id)
    bases = [one for one in bases_of_batch(rows, batch.id) if one.mass_mg]
    if not {"fat", "alkali"} <= {one.lot.kind for one in bases}:
        return parts_of_batch(rows, batch.id)
    return saponified_parts(bases, {card.id: card for card in material_list(rows)}, _process(rows, batch))


def _process(rows: sqlite3.Connection, batch: BatchRow) -> str:
    """Cold or hot, by the batch itself or the one whose dough it is a portion of."""
    return find_batch(rows, batch.part_of).process if batch.part_of else batch.process
