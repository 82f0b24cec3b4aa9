"""The materials as they are known now, each figure with where it comes from."""

import sqlite3
from dataclasses import dataclass

from ledger.domain.names import match_name


@dataclass(frozen=True)
class MaterialCard:
    """One material; `counted` ones are pieces, all others are weighed."""

    id: int
    code: str
    name: str
    kind: str
    inci: str | None
    reference_key: str | None
    sap_low_mg_per_kg: int | None
    sap_high_mg_per_kg: int | None
    sap_source: str | None
    alkali_kind: str | None
    purity_ppm: int | None
    density_mg_per_ml: int | None
    note: str | None
    inci_sodium: str | None
    inci_potassium: str | None
    acid_koh_mg_per_kg: int | None
    water_ppm: int | None
    on_hand: int  # mg, or pieces

    @property
    def counted(self) -> bool:
        """Whether it is counted in pieces."""
        return self.kind in ("packaging", "soap")

    @property
    def dissolved(self) -> bool:
        """Whether it is a stock lye: an alkali that brings its own water."""
        return self.kind == "alkali" and self.water_ppm is not None


_SQL = """
SELECT m.id, m.code, m.kind, r.name, r.inci, r.reference_key, r.sap_low_mg_per_kg,
       r.sap_high_mg_per_kg, r.sap_source, r.alkali_kind, r.purity_ppm, r.density_mg_per_ml, r.note,
       r.inci_sodium, r.inci_potassium, r.acid_koh_mg_per_kg, r.water_ppm,
       (SELECT coalesce(sum(v.quantity), 0) FROM lot l JOIN movement v ON v.lot_id = l.id
        WHERE l.material_id = m.id) AS on_hand
FROM live_material m
JOIN live_material_revision r
  ON r.id = (SELECT max(id) FROM live_material_revision WHERE material_id = m.id)
ORDER BY r.name COLLATE NOCASE
"""


def material_list(rows: sqlite3.Connection) -> tuple[MaterialCard, ...]:
    """Every material, by name."""
    return tuple(MaterialCard(**dict(row)) for row in rows.execute(_SQL))


def material_by_id(rows: sqlite3.Connection, material_id: int) -> MaterialCard:
    """One material by its row number."""
    return next(card for card in material_list(rows) if card.id == material_id)


def material_by_code(rows: sqlite3.Connection, text: str) -> MaterialCard:
    """The material meant by a code, a name or the start of one. Raises BadInput with near matches."""
    cards = material_list(rows)
    code = match_name(
        text,
        [(card.code, card.name) for card in cards],
        noun="material",
        add="soapledger material add NAME --kind fat --like olive",
    )
    return next(card for card in cards if card.code == code)
