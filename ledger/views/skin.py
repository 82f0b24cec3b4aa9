"""The skin limits of the fragrances in a recipe or a batch, against what their certificates allow."""

import sqlite3
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from ledger.domain.dates import show_date
from ledger.domain.names import near
from ledger.domain.quantity import show_share
from ledger.domain.saponification import WHOLE_PPM
from ledger.domain.skin_limits import Compared, FragranceIn, Limit, compare_limits
from ledger.views.batch import BatchRow, find_batch
from ledger.views.composition import Stages, batch_stages
from ledger.views.lye_check import meant_in
from ledger.views.material import material_list
from ledger.views.reading import day
from ledger.views.recipe import RecipeSheet


@dataclass(frozen=True)
class SkinCheck:
    """One fragrance or constituent against its limit, in ppm of the bar at its driest, and in words."""

    name: str
    share_ppm: int
    limit_ppm: int | None
    source: str | None
    verdict: str  # within, over, no certificate
    words: str


def recipe_skin_checks(rows: sqlite3.Connection, sheet: RecipeSheet, stages: Stages | None) -> tuple[SkinCheck, ...]:
    """The checks of a recipe, with what its materials contain in general; of each portion where the dough divides."""
    put_in = [
        (sheet.materials[one.line.material].id, one.target, one.line.portion)
        for one in sheet.targets
        if sheet.materials[one.line.material].kind == "fragrance"
    ]
    if not stages or not put_in:
        return ()
    whole = stages.driest.mass_mg
    if not sheet.recipe.portions:
        return skin_checks(rows, [(material, None, mass) for material, mass, _ in put_in], whole)
    shared = whole - sum(one.target for one in sheet.targets if one.line.portion)
    found: list[SkinCheck] = []
    for portion in sheet.recipe.portions:
        part = Fraction(portion.share_ppm, WHOLE_PPM)
        mine = [
            (material, None, mass if where else round(mass * part))
            for material, mass, where in put_in
            if where in (None, portion.name)
        ]
        own = sum(one.target for one in sheet.targets if one.line.portion == portion.name)
        found += skin_checks(rows, mine, round(shared * part) + own, where=f"portion {portion.name}: ")
    return tuple(found)


def batch_skin_checks(rows: sqlite3.Connection, batch: BatchRow) -> tuple[SkinCheck, ...]:
    """The checks of a batch, with what the lots used contain; what is still open counts at its target.

    A portion brings its share of the dough with it.
    """
    scents = {card.id for card in material_list(rows) if card.kind == "fragrance"}

    def fragrances(batch_id: int, part: Fraction) -> list[tuple[int, int | None, int]]:
        return [
            (one.material_id, one.lot_id or None, round(one.mass_mg * part))
            for one in meant_in(rows, batch_id)
            if one.material_id in scents
        ]

    used = fragrances(batch.id, Fraction(1))
    if batch.part_of is None:
        stages = batch_stages(rows, batch, meant=True) if used else None
        return skin_checks(rows, used, stages.driest.mass_mg if stages else None)
    whole = find_batch(rows, batch.part_of)
    stages = batch_stages(rows, whole, meant=True)
    if stages is None:
        return ()
    mine = meant_in(rows, batch.id)
    part = Fraction(sum(one.mass_mg for one in mine if one.role == "dough"), stages.before.mass_mg)
    used += fragrances(whole.id, part)
    added = sum(one.mass_mg for one in mine if one.role != "dough")
    return skin_checks(rows, used, round(stages.driest.mass_mg * part) + added)


def skin_checks(
    rows: sqlite3.Connection,
    fragrances: Iterable[tuple[int, int | None, int]],
    driest_mg: int | None,
    *,
    where: str = "",
) -> tuple[SkinCheck, ...]:
    """Check (material, lot, mg) against every limit; nothing where the driest bar is not known."""
    put_in = [_fragrance(rows, material, lot, mass) for material, lot, mass in fragrances if mass]
    if not put_in or not driest_mg:
        return ()
    latest = {
        row["constituent"].casefold(): row
        for row in rows.execute("SELECT * FROM live_skin_limit WHERE constituent IS NOT NULL ORDER BY id")
    }
    limits = {row["constituent"]: _limit(row) for row in latest.values()}
    return tuple(_check(one, where) for one in compare_limits(put_in, limits, driest_mg=driest_mg) if _says(one))


def _says(one: Compared) -> bool:
    return one.limit is not None or one.share_ppm > 0


def _fragrance(rows: sqlite3.Connection, material_id: int, lot_id: int | None, mass_mg: int) -> FragranceIn:
    name = rows.execute(
        "SELECT name FROM live_material_revision WHERE material_id = ? ORDER BY id DESC LIMIT 1", (material_id,)
    ).fetchone()[0]
    row = rows.execute(
        "SELECT * FROM live_skin_limit WHERE material_id = ? ORDER BY id DESC LIMIT 1", (material_id,)
    ).fetchone()
    return FragranceIn(name, mass_mg, _limit(row) if row else None, contains(rows, material_id, lot_id))


def contains(rows: sqlite3.Connection, material_id: int, lot_id: int | None) -> dict[str, int]:
    """What a lot contains by its own statement, else what its material does; in ppm by name.

    The latest statement counts whole: a name it leaves out is not in it.
    """
    for lot in dict.fromkeys((lot_id, None)):
        found = rows.execute(
            "SELECT name, share_ppm FROM live_constituent WHERE material_id = ? AND lot_id IS ? AND entry_id = "
            "(SELECT max(entry_id) FROM live_constituent WHERE material_id = ? AND lot_id IS ?) ORDER BY id",
            (material_id, lot, material_id, lot),
        ).fetchall()
        if found:
            return {row["name"]: row["share_ppm"] for row in found}
    return {}


def _limit(row: sqlite3.Row) -> Limit:
    return Limit(row["limit_ppm"], row["certificate"], row["amendment"], row["category"], day(row["dated"]))


def _check(one: Compared, where: str) -> SkinCheck:
    share = show_share(round(one.share_ppm), 3)
    if one.limit is None:
        return SkinCheck(
            one.name,
            round(one.share_ppm),
            None,
            None,
            "no certificate",
            f"{where}{one.name}, {share} of the bar at its driest: no certificate says how much may be on the skin; "
            f'ask its supplier, then: soapledger material limit "{one.name}" PERCENT --certificate NUMBER --category 9',
        )
    source = f"{one.limit.source}, {show_date(one.limit.dated)}"
    verb = "is over" if one.over else "is within"
    return SkinCheck(
        one.name,
        round(one.share_ppm),
        one.limit.limit_ppm,
        source,
        "over" if one.over else "within",
        f"{where}{one.name}, {share} of the bar at its driest, {verb} the {show_share(one.limit.limit_ppm, 3)} "
        f"of {source}.",
    )


def constituent_doubt(rows: sqlite3.Connection, name: str) -> str | None:
    """A sentence for a name close to one that a limit or another statement has, and not the same; else None."""
    known = {
        row[0]
        for row in rows.execute(
            "SELECT constituent FROM live_skin_limit WHERE constituent IS NOT NULL "
            "UNION SELECT name FROM live_constituent"
        )
    }
    if any(name.casefold() == one.casefold() for one in known):
        return None
    close = near(name, known, 1)
    if not close:
        return None
    return f"'{name}' is not a name known here; did you mean {close[0]}? A limit finds it only by its own name."


def stated(rows: sqlite3.Connection, material_id: int) -> list[str]:
    """What a material contains by each statement, and its limit on the skin, in words."""
    found = []
    for row in rows.execute(
        "SELECT c.name, c.share_ppm, c.source, l.code FROM live_constituent c LEFT JOIN lot l ON l.id = c.lot_id "
        "WHERE c.material_id = ? ORDER BY c.id",
        (material_id,),
    ):
        where = f", lot {row['code']}" if row["code"] else ""
        found.append(f"contains {row['name']} {show_share(row['share_ppm'], 2)}{where} [{row['source']}]")
    row = rows.execute(
        "SELECT * FROM live_skin_limit WHERE material_id = ? ORDER BY id DESC LIMIT 1", (material_id,)
    ).fetchone()
    if row:
        limit = _limit(row)
        found.append(f"on the skin at most {show_share(limit.limit_ppm, 3)} [{limit.source}, {show_date(limit.dated)}]")
    return found
