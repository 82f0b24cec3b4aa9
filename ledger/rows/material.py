"""The materials as they are known now, each figure with where it comes from."""

import json
import sqlite3
from collections.abc import Callable, Collection
from dataclasses import asdict, dataclass
from functools import cache

from ledger.units.names import match_name
from ledger.units.words import AlkaliKind, MaterialKind, in_pieces


@dataclass(frozen=True)
class MaterialCard:
    """One material; `counted` ones are pieces, all others are weighed."""

    id: int
    code: str
    name: str
    kind: MaterialKind
    inci: str | None
    reference_key: str | None
    sap_low_mg_per_kg: int | None
    sap_high_mg_per_kg: int | None
    sap_source: str | None
    alkali_kind: AlkaliKind | None
    purity_ppm: int | None
    density_mg_per_ml: int | None
    note: str | None
    inci_sodium: str | None
    inci_potassium: str | None
    acid_koh_mg_per_kg: int | None
    water_ppm: int | None

    @property
    def counted(self) -> bool:
        """Whether it is counted in pieces."""
        return in_pieces(self.kind)

    @property
    def dissolved(self) -> bool:
        """Whether it is a stock lye: an alkali that brings its own water."""
        return self.kind == "alkali" and self.water_ppm is not None


@dataclass(frozen=True)
class StockedMaterial(MaterialCard):
    """One material with what is on hand of it everywhere."""

    on_hand: int  # mg, or pieces


_SQL = """
SELECT m.id, m.code, m.kind, r.name, r.inci, r.reference_key, r.sap_low_mg_per_kg,
       r.sap_high_mg_per_kg, r.sap_source, r.alkali_kind, r.purity_ppm, r.density_mg_per_ml, r.note,
       r.inci_sodium, r.inci_potassium, r.acid_koh_mg_per_kg, r.water_ppm
FROM live_material m
JOIN live_material_revision r
  ON r.id = (SELECT max(id) FROM live_material_revision WHERE material_id = m.id)
"""
_ON_HAND = """
SELECT coalesce(sum(v.quantity), 0) FROM lot l JOIN movement v ON v.lot_id = l.id WHERE l.material_id = ?
"""


def material_list(rows: sqlite3.Connection) -> tuple[MaterialCard, ...]:
    """Every material, by name."""
    return tuple(MaterialCard(**dict(row)) for row in rows.execute(_SQL + "ORDER BY r.name COLLATE NOCASE"))


def with_stock(rows: sqlite3.Connection, card: MaterialCard) -> StockedMaterial:
    """A material with what is on hand of it."""
    return StockedMaterial(**asdict(card), on_hand=rows.execute(_ON_HAND, (card.id,)).fetchone()[0])


def materials_by_id(rows: sqlite3.Connection, numbers: Collection[int]) -> dict[int, MaterialCard]:
    """Several materials by their row numbers, in one statement."""
    found = rows.execute(
        _SQL + "WHERE m.id IN (SELECT value FROM json_each(?))", (json.dumps(sorted(numbers)),)
    ).fetchall()
    return {row["id"]: MaterialCard(**dict(row)) for row in found}


def material_by_id(rows: sqlite3.Connection, material_id: int) -> MaterialCard:
    """One material by its row number."""
    return materials_by_id(rows, [material_id])[material_id]


def material_by_code(rows: sqlite3.Connection, text: str) -> MaterialCard:
    """The material meant by a code, a name or the start of one. Raises BadInput with near matches."""
    return materials_named(rows)(text)


def materials_named(rows: sqlite3.Connection) -> Callable[[str], MaterialCard]:
    """What finds a material as `material_by_code` does, for many names: the materials are read once."""
    cards = {card.code: card for card in material_list(rows)}
    names = [(card.code, card.name) for card in cards.values()]

    @cache
    def named(text: str) -> MaterialCard:
        return cards[
            match_name(text, names, noun="material", add="soapledger material add NAME --kind fat --like olive")
        ]

    return named
