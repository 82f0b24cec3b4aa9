"""The materials as they are known now, each figure with where it comes from."""

import json
import sqlite3
from collections.abc import Callable, Collection
from datetime import date
from functools import cache
from typing import NamedTuple

from ledger.rows.opened import day
from ledger.units.names import match_name
from ledger.units.words import AlkaliKind, MaterialKind, in_pieces


class MaterialCard(NamedTuple):
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


def on_hand(rows: sqlite3.Connection, material_id: int) -> int:
    """What is on hand of a material everywhere, in mg or pieces."""
    return int(rows.execute(_ON_HAND, (material_id,)).fetchone()[0])


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


def contents_of(
    rows: sqlite3.Connection, lots: Collection[tuple[int, int | None]]
) -> dict[tuple[int, int | None], dict[str, int]]:
    """What lots contain by their own statements, else what their materials do; in ppm by name, in one statement.

    A lot is asked for by its material and its row number, a material by itself with None. The latest statement counts
    whole: a name it leaves out is not in it.
    """
    asked = {*lots, *((material, None) for material, _ in lots)}
    latest: dict[tuple[int, int | None], tuple[int, dict[str, int]]] = {}
    for row in rows.execute(
        "SELECT c.material_id, c.lot_id, c.entry_id, c.name, c.share_ppm FROM json_each(?) w CROSS JOIN "
        "live_constituent c ON c.material_id = json_extract(w.value, '$[0]') "
        "AND c.lot_id IS json_extract(w.value, '$[1]') ORDER BY c.entry_id, c.id",
        (json.dumps(list(asked)),),
    ):
        one = row["material_id"], row["lot_id"]
        if one not in latest or latest[one][0] != row["entry_id"]:
            latest[one] = row["entry_id"], {}
        latest[one][1][row["name"]] = row["share_ppm"]
    found = {one: stated for one, (_, stated) in latest.items()}
    return {(material, lot): found.get((material, lot)) or found.get((material, None), {}) for material, lot in asked}


class SkinLimitRow(NamedTuple):
    """One certificate's limit on the skin."""

    limit_ppm: int
    certificate: str
    amendment: str | None
    category: str
    dated: date


def _limit(row: sqlite3.Row) -> SkinLimitRow:
    return SkinLimitRow(row["limit_ppm"], row["certificate"], row["amendment"], row["category"], day(row["dated"]))


def limits_of(rows: sqlite3.Connection, materials: Collection[int]) -> dict[int, list[SkinLimitRow]]:
    """Every limit stated of materials, the first booked first, by their row numbers, in one statement."""
    found: dict[int, list[SkinLimitRow]] = {material: [] for material in materials}
    query = "SELECT * FROM live_skin_limit WHERE material_id IN (SELECT value FROM json_each(?)) ORDER BY id"
    for row in rows.execute(query, (json.dumps(list(found)),)):
        found[row["material_id"]].append(_limit(row))
    return found


def constituent_limits(rows: sqlite3.Connection) -> list[tuple[str, SkinLimitRow]]:
    """Every limit stated of a constituent, with its name as it was booked, the first booked first."""
    found = rows.execute("SELECT * FROM live_skin_limit WHERE constituent IS NOT NULL ORDER BY id")
    return [(row["constituent"], _limit(row)) for row in found]


def constituents_known(rows: sqlite3.Connection) -> set[str]:
    """Every name of a constituent that was booked, with a limit or as what something contains."""
    found = rows.execute(
        "SELECT constituent FROM live_skin_limit WHERE constituent IS NOT NULL UNION SELECT name FROM live_constituent"
    )
    return {row[0] for row in found}


class MeantRow(NamedTuple):
    """What a person said that a name in statements is: an entry by its label name, or none."""

    material_id: int | None  # None: of whatever material
    name: str
    meant: str | None
    on: date
    by: str
    reason: str


def names_meant(rows: sqlite3.Connection) -> list[MeantRow]:
    """Everything that was said of a name, the first booked first."""
    found = rows.execute('SELECT material_id, name, meant, "on", "by", reason FROM live_name_meant ORDER BY id')
    return [MeantRow(row[0], row[1], row[2], day(row[3]), row[4], row[5]) for row in found]


class PeroxideRow(NamedTuple):
    """The peroxide value of a material or of one lot of it, and who says so."""

    material_id: int
    lot_code: str | None
    umol_per_l: int
    source: str


def peroxides(rows: sqlite3.Connection) -> list[PeroxideRow]:
    """Every peroxide value stated, the first booked first."""
    found = rows.execute(
        "SELECT p.material_id, l.code, p.umol_per_l, p.source FROM live_peroxide p LEFT JOIN lot l ON l.id = p.lot_id "
        "ORDER BY p.id"
    )
    return [PeroxideRow(*row) for row in found]


class Statement(NamedTuple):
    """That a material, or one lot of it, contains so much of something, and who says so."""

    name: str
    share_ppm: int
    source: str
    lot_code: str | None
    stated: str | None = None  # as the statement has it, where that is no plain percentage


def statements_of(rows: sqlite3.Connection, material_id: int) -> list[Statement]:
    """Every statement of what a material contains, the first booked first."""
    found = rows.execute(
        "SELECT c.name, c.share_ppm, c.source, l.code, c.stated FROM live_constituent c "
        "LEFT JOIN lot l ON l.id = c.lot_id WHERE c.material_id = ? ORDER BY c.id",
        (material_id,),
    )
    return [Statement(*row) for row in found]


def material_id(rows: sqlite3.Connection, code: str) -> int:
    """The row number of a material by its whole short name."""
    return int(rows.execute("SELECT id FROM live_material WHERE code = ?", (code,)).fetchone()[0])
