"""What superfat the actual grams and lots give."""

import sqlite3
from dataclasses import dataclass

from ledger.domain.saponification import WHOLE_PPM, FatCharge, superfat_of


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


_SQL = """
SELECT p.role, v.lot_id, -sum(v.quantity) AS mass, l.sap_low_mg_per_kg AS lot_low, l.sap_high_mg_per_kg AS lot_high,
       l.purity_ppm AS lot_purity, l.certificate, mr.sap_low_mg_per_kg AS low, mr.sap_high_mg_per_kg AS high,
       mr.sap_source, mr.purity_ppm AS purity, mr.alkali_kind, mr.name
FROM movement v JOIN live_plan_line p ON p.id = v.plan_line_id JOIN lot l ON l.id = v.lot_id
JOIN material_revision mr ON mr.id =
  (SELECT max(r.id) FROM live_material_revision r WHERE r.material_id = l.material_id
   AND r.entry_id <= (SELECT max(w.entry_id) FROM movement w WHERE w.batch_id = v.batch_id))
WHERE v.batch_id = ? AND v.kind = 'consumed' GROUP BY p.role, v.lot_id HAVING mass > 0
"""


def lye_check(rows: sqlite3.Connection, batch_id: int) -> LyeCheck:
    """Reckon the superfat from what was weighed; material figures are those known when it was made."""
    charges: list[FatCharge] = []
    alkali = water = 0
    pure = 0
    kind: str | None = None
    purities: set[int] = set()
    figures: dict[int, str] = {}
    for row in rows.execute(_SQL, (batch_id,)):
        if row["role"] == "fat":
            own = row["lot_low"] is not None
            low, high = (row["lot_low"], row["lot_high"]) if own else (row["low"], row["high"])
            charges.append(FatCharge(row["name"], row["mass"], low, high))
            value = f"{low / 1000:g}" if low == high else f"{low / 1000:g} to {high / 1000:g}"
            source = row["certificate"] or "the lot's certificate" if own else row["sap_source"]
            figures[row["lot_id"]] = f"saponification value {value} mg KOH/g ({source})"
        elif row["role"] == "alkali":
            stated = row["lot_purity"] if row["lot_purity"] is not None else row["purity"]
            purity = stated if stated is not None else WHOLE_PPM
            kind = row["alkali_kind"]
            alkali += row["mass"]
            pure += row["mass"] * purity
            purities.add(purity)
            known = f"purity {purity / 10_000:g} %" if stated is not None else "no certificate, reckoned as pure"
            figures[row["lot_id"]] = known
        elif row["role"] == "liquid":
            water += row["mass"]
    open_lines = rows.execute(
        "SELECT count(*) FROM live_plan_line p WHERE p.batch_id = ? AND p.role IN ('fat', 'alkali') AND NOT EXISTS "
        "(SELECT 1 FROM live_movement v WHERE v.plan_line_id = p.id)",
        (batch_id,),
    ).fetchone()[0]
    superfat = None
    if charges and alkali and kind and not open_lines:
        mean = round(pure / alkali)
        superfat = superfat_of(charges, kind=kind, alkali_mg=alkali, purity_ppm=mean)
    return LyeCheck(
        fats_mg=sum(charge.mass_mg for charge in charges),
        alkali_mg=alkali,
        water_mg=water,
        alkali_kind=kind,
        purity_ppm=round(pure / alkali) if alkali else None,
        superfat_ppm=superfat,
        figures=figures,
    )
