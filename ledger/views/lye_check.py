"""What superfat the actual grams and lots give, and what alkali the fats as weighed take."""

import sqlite3
from dataclasses import dataclass
from fractions import Fraction

from ledger.domain.saponification import WHOLE_PPM, FatCharge, alkali_for, superfat_of
from ledger.views.batch import BatchRow, plan_lines, recipe_of
from ledger.views.lots import lot_by_id


@dataclass(frozen=True)
class LyeCheck:
    """The lye of one batch as weighed; the superfat is None until all fats and the alkali are weighed."""

    fats_mg: int
    alkali_mg: int
    water_mg: int
    alkali_kind: str | None
    purity_ppm: int | None
    superfat_ppm: int | None
    figures: dict[int, str]  # by lot: the saponification value or purity used, and where it stands


# The material's figures are those known when it was last weighed: a value mended later, or wrapping used
# later, does not change what the record says.
_SQL = """
SELECT p.role, v.lot_id, -sum(v.quantity) AS mass, l.sap_low_mg_per_kg AS lot_low, l.sap_high_mg_per_kg AS lot_high,
       l.purity_ppm AS lot_purity, l.certificate, mr.sap_low_mg_per_kg AS low, mr.sap_high_mg_per_kg AS high,
       mr.sap_source, mr.purity_ppm AS purity, mr.alkali_kind, mr.name
FROM movement v JOIN live_plan_line p ON p.id = v.plan_line_id JOIN lot l ON l.id = v.lot_id
JOIN material_revision mr ON mr.id =
  (SELECT max(r.id) FROM live_material_revision r WHERE r.material_id = l.material_id
   AND r.entry_id <= (SELECT max(w.entry_id) FROM movement w JOIN plan_line q ON q.id = w.plan_line_id
                      WHERE w.batch_id = v.batch_id AND q.role <> 'packaging'))
WHERE v.batch_id = ? AND v.kind = 'consumed' AND p.role <> 'packaging'
GROUP BY p.role, v.lot_id HAVING mass > 0
"""


def lye_check(rows: sqlite3.Connection, batch_id: int) -> LyeCheck:
    """Reckon the superfat from what was weighed; material figures are those known when it was made."""
    charges: list[FatCharge] = []
    alkali = water = 0
    pure = 0
    kind: str | None = None
    figures: dict[int, str] = {}
    for row in rows.execute(_SQL, (batch_id,)):
        if row["role"] == "fat":
            charge = _charge(row)
            charges.append(charge)
            low, high = charge.sap_low_mg_per_kg, charge.sap_high_mg_per_kg
            value = f"{low / 1000:g}" if low == high else f"{low / 1000:g} to {high / 1000:g}"
            own = row["lot_low"] is not None
            source = row["certificate"] or "the lot's certificate" if own else row["sap_source"]
            figures[row["lot_id"]] = f"saponification value {value} mg KOH/g ({source})"
        elif row["role"] == "alkali":
            stated = row["lot_purity"] if row["lot_purity"] is not None else row["purity"]
            kind = row["alkali_kind"]
            alkali += row["mass"]
            pure += row["mass"] * (stated if stated is not None else WHOLE_PPM)
            known = f"purity {stated / 10_000:g} %" if stated is not None else "no certificate, reckoned as pure"
            figures[row["lot_id"]] = known
        elif row["role"] == "liquid":
            water += row["mass"]
    superfat = None
    mean = round(Fraction(pure, alkali)) if alkali else None
    if charges and mean and kind and not _open(rows, batch_id, "fat", "alkali"):
        superfat = superfat_of(charges, kind=kind, alkali_mg=alkali, purity_ppm=mean)
    return LyeCheck(
        fats_mg=sum(charge.mass_mg for charge in charges),
        alkali_mg=alkali,
        water_mg=water,
        alkali_kind=kind,
        purity_ppm=mean,
        superfat_ppm=superfat,
        figures=figures,
    )


@dataclass(frozen=True)
class AlkaliWanted:
    """The alkali on the worksheet, and what the fats as weighed take at the recipe's superfat; in mg."""

    planned_mg: int
    wanted_mg: int


def alkali_wanted(rows: sqlite3.Connection, batch: BatchRow) -> AlkaliWanted | None:
    """What to weigh of the alkali now that all fats are weighed; None before that and after it was weighed."""
    recipe = recipe_of(rows, batch)
    lines = [line for line in plan_lines(rows, batch.id) if line.role == "alkali"]
    if recipe is None or recipe.superfat_ppm is None or not lines or any(line.logged for line in lines):
        return None
    if _open(rows, batch.id, "fat", "fat"):
        return None
    charges = [_charge(row) for row in rows.execute(_SQL, (batch.id,)) if row["role"] == "fat"]
    if not charges:
        return None
    purities = []
    for line in lines:
        lot = lot_by_id(rows, line.lot_id) if line.lot_id else None
        stated = lot.purity_ppm if lot and lot.purity_ppm is not None else _purity(rows, line.material_id)
        purities.append(stated if stated is not None else WHOLE_PPM)
    assert recipe.alkali_kind
    need = alkali_for(
        charges,
        kind=recipe.alkali_kind,
        superfat_ppm=recipe.superfat_ppm,
        purity_ppm=max(purities),  # as planned: the purest errs towards more superfat
    )
    return AlkaliWanted(sum(line.target for line in lines), need.weigh_mg)


def _charge(row: sqlite3.Row) -> FatCharge:
    own = row["lot_low"] is not None
    low, high = (row["lot_low"], row["lot_high"]) if own else (row["low"], row["high"])
    return FatCharge(row["name"], row["mass"], low, high)


def _purity(rows: sqlite3.Connection, material_id: int) -> int | None:
    row = rows.execute(
        "SELECT purity_ppm FROM live_material_revision WHERE material_id = ? ORDER BY id DESC LIMIT 1", (material_id,)
    ).fetchone()
    return None if row[0] is None else int(row[0])


def _open(rows: sqlite3.Connection, batch_id: int, role: str, other: str) -> bool:
    """Whether a line of one of two roles is neither weighed nor left out."""
    row = rows.execute(
        "SELECT 1 FROM live_plan_line p WHERE p.batch_id = ? AND p.role IN (?, ?) "
        "AND NOT EXISTS (SELECT 1 FROM live_movement v WHERE v.plan_line_id = p.id) "
        "AND NOT EXISTS (SELECT 1 FROM live_reading g WHERE g.plan_line_id = p.id)",
        (batch_id, role, other),
    ).fetchone()
    return row is not None
