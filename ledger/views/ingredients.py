"""What went into a batch by INCI name, through infusions, combined drums and rebatched offcuts."""

import sqlite3
from collections import defaultdict
from fractions import Fraction

from ledger.domain.declaration import Part
from ledger.domain.money import share_out
from ledger.errors import BadInput
from ledger.views.lots import LotRow, lot_by_id

Key = tuple[str, str, str]  # INCI name, role, lot as received


def parts_of_batch(rows: sqlite3.Connection, batch_id: int) -> tuple[Part, ...]:
    """Every ingredient of a batch as it was added, in mg, down to the lot as received.

    Raises BadInput for a material without an INCI name.
    """
    masses: dict[Key, int] = defaultdict(int)
    for lot, used in _consumed(rows, batch_id):
        shares = _composition(rows, lot, frozenset())
        whole = Fraction(1_000_000_000)
        weights = [round(share * whole) for share in shares.values()]
        for key, mass in zip(shares, share_out(used, weights), strict=True):
            masses[key] += mass
    return tuple(Part(inci, mass, role, lot) for (inci, role, lot), mass in masses.items())


def _consumed(rows: sqlite3.Connection, batch_id: int) -> list[tuple[LotRow, int]]:
    found = rows.execute(
        "SELECT v.lot_id, -sum(v.quantity) AS used FROM movement v WHERE v.batch_id = ? AND v.kind = 'consumed' "
        "GROUP BY v.lot_id HAVING used > 0 ORDER BY min(v.id)",
        (batch_id,),
    ).fetchall()
    lots = [(lot_by_id(rows, row["lot_id"]), row["used"]) for row in found]
    return [(lot, used) for lot, used in lots if lot.kind != "packaging"]


def _composition(rows: sqlite3.Connection, lot: LotRow, above: frozenset[int]) -> dict[Key, Fraction]:
    """The shares of one lot, adding up to 1: itself if it was bought, else what its batch was made of.

    Of an infusion the botanicals do not count: the herb was strained out, and what was strained out is not
    an ingredient.
    """
    if lot.batch_id is None or lot.id in above:
        if lot.inci is None:
            raise BadInput(
                f"{lot.material} has no INCI name, and a label needs one: "
                f"soapledger material edit {lot.material_code} --inci NAME"
            )
        return {(lot.inci.upper(), lot.kind, lot.code): Fraction(1)}
    process = rows.execute("SELECT process FROM batch WHERE id = ?", (lot.batch_id,)).fetchone()[0]
    inputs = _consumed(rows, lot.batch_id)
    if process == "infusion":
        inputs = [(one, used) for one, used in inputs if one.kind != "botanical"]
        if not inputs:
            raise BadInput(f"Lot {lot.code} was made of botanicals alone; what it declares cannot be told.")
    whole = sum(used for _, used in inputs)
    shares: dict[Key, Fraction] = defaultdict(Fraction)
    for one, used in inputs:
        for key, share in _composition(rows, one, above | {lot.id}).items():
            shares[key] += share * Fraction(used, whole)
    return dict(shares)
