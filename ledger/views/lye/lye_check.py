"""What superfat the actual grams and lots give, and what alkali the fats as weighed take."""

import json
import sqlite3
from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from ledger.domain.lye.pot import Figures, Pot, open_acids, stated
from ledger.domain.lye.uncertainty import Superfat
from ledger.domain.recipe.formulate import Charge, alkali_need
from ledger.domain.recipe.recipe import IN_THE_FATS, RecipeLine
from ledger.rows.batch import BatchRow, PlanLineRow, batch_by_id, plan_lines, recipe_of
from ledger.rows.lot import lot_by_id
from ledger.rows.material import material_by_id
from ledger.rows.settings import settings
from ledger.units.words import Process, Role, Stage
from ledger.views.material.figures import figures_of, own_words, purity_open, sap_open


@dataclass(frozen=True)
class LyeCheck:
    """The lye of one batch as weighed; the superfat is None until all fats and the alkali are weighed."""

    fats_mg: int
    alkali_mg: int  # as sold, without the water of a stock lye
    water_mg: int  # in all the liquids, acids and a stock lye together
    alkali_kind: str | None  # NaOH, KOH, or both
    purity_ppm: int | None  # of all the alkali together
    superfat: Superfat | None
    before_addition: Superfat | None  # hot process: of the pot, before a fat held back goes in
    figures: dict[int, str]  # by lot: the saponification value or purity used, and where it stands
    stated: tuple[str, ...]  # whose each single figure is, and how far it is trusted

    @property
    def superfat_ppm(self) -> int | None:
        """The superfat as reckoned."""
        return self.superfat.nominal_ppm if self.superfat else None


@dataclass(frozen=True)
class Weighed:
    """So much of one lot that was weighed on lines of one role, and what was known of it then."""

    role: Role
    stage: Stage
    material_id: int
    lot_id: int
    mass_mg: int
    figures: Figures
    source: str


# The material's figures are those known when it was last weighed: a value mended later, or wrapping used
# later, does not change what the record says.
_SQL = """
SELECT v.batch_id AS went_into, p.role, p.stage, l.material_id, v.lot_id, -sum(v.quantity) AS mass,
       l.sap_low_mg_per_kg AS lot_low,
       l.sap_high_mg_per_kg AS lot_high, l.purity_ppm AS lot_purity, l.purity_high_ppm AS lot_purity_high,
       l.water_ppm AS lot_water, l.certificate, l.code, l.batch_id, mr.reference_key, mr.sap_low_mg_per_kg AS low,
       mr.sap_high_mg_per_kg AS high,
       mr.sap_source, mr.purity_ppm AS purity, mr.alkali_kind, mr.water_ppm AS water, mr.acid_koh_mg_per_kg, mr.name
FROM json_each(?) into_ CROSS JOIN movement v ON v.batch_id = into_.value
JOIN live_plan_line p ON p.id = v.plan_line_id JOIN lot l ON l.id = v.lot_id
JOIN material_revision mr ON mr.id =
  (SELECT max(r.id) FROM live_material_revision r WHERE r.material_id = l.material_id
   AND r.entry_id <= (SELECT max(w.entry_id) FROM movement w JOIN plan_line q ON q.id = w.plan_line_id
                      WHERE w.batch_id = v.batch_id AND q.role <> 'packaging'))
WHERE v.kind = 'consumed' AND p.role <> 'packaging'
GROUP BY v.batch_id, p.role, p.stage, v.lot_id HAVING mass > 0 ORDER BY min(p.number)
"""


def weighed_in(rows: sqlite3.Connection, batch_id: int) -> tuple[Weighed, ...]:
    """Everything weighed for a batch so far, wrapping apart; material figures are those known when it was made."""
    return weighed_in_each(rows, [batch_id])[batch_id]


def weighed_in_each(rows: sqlite3.Connection, batches: Collection[int]) -> dict[int, tuple[Weighed, ...]]:
    """Likewise for several batches, by the batch, in one statement."""
    found: dict[int, tuple[Weighed, ...]] = dict.fromkeys(batches, ())
    for row in rows.execute(_SQL, (json.dumps(list(batches)),)):
        found[row["went_into"]] += (_weighed(row),)
    return found


def _weighed(row: sqlite3.Row) -> Weighed:
    own_sap, own_purity = row["lot_low"] is not None, row["lot_purity"] is not None
    own = own_words(row["code"], worked_out=row["batch_id"] is not None)
    figures = Figures(
        name=row["name"],
        sap_low_mg_per_kg=row["lot_low"] if own_sap else row["low"],
        sap_high_mg_per_kg=row["lot_high"] if own_sap else row["high"],
        alkali_kind=row["alkali_kind"],
        purity_low_ppm=row["lot_purity"] if own_purity else row["purity"],
        purity_high_ppm=row["lot_purity_high"] if own_purity else None,
        water_ppm=row["lot_water"] if row["lot_water"] is not None else row["water"],
        acid_koh_mg_per_kg=row["acid_koh_mg_per_kg"],
        sap_open_mg_per_kg=0 if own_sap else sap_open(row["low"], row["high"], row["reference_key"]),
        purity_open_ppm=0 if own_purity else purity_open(row["purity"], row["alkali_kind"]),
        sap_of=own if own_sap else None,
        purity_of=own if own_purity else None,
    )
    source = row["certificate"] or "the lot's certificate" if own_sap or own_purity else row["sap_source"] or ""
    return Weighed(row["role"], row["stage"], row["material_id"], row["lot_id"], row["mass"], figures, source)


def meant_in(rows: sqlite3.Connection, batch_id: int) -> tuple[Weighed, ...]:
    """What was weighed for a batch so far, and what is still open at its target."""
    still = [
        Weighed(line.role, line.stage, line.material_id, line.lot_id or 0, line.target, _figures(rows, line), "")
        for line in plan_lines(rows, batch_id)
        if not line.logged and line.role != "packaging"
    ]
    return (*weighed_in(rows, batch_id), *still)


def pot_as_weighed(weighed: Iterable[Weighed], process: Process, scale_step_mg: int) -> Pot:
    """What of it bears on the lye."""
    found = list(weighed)
    fats = [one for one in found if one.role == "fat"]
    return Pot(
        process,
        tuple(one.figures.fat(one.mass_mg) for one in fats if one.stage == IN_THE_FATS),
        tuple(one.figures.fat(one.mass_mg) for one in fats if one.stage != IN_THE_FATS),
        tuple(one.figures.alkali(one.mass_mg) for one in found if one.role == "alkali"),
        sum((one.figures.acid_koh_mg(one.mass_mg) for one in found if one.role == "additive"), Fraction(0)),
        scale_step_mg,
        open_acids((one.figures, one.mass_mg) for one in found if one.role == "additive"),
    )


def lye_check(rows: sqlite3.Connection, batch_id: int) -> LyeCheck:
    """Reckon the superfat from what was weighed; an acid that got alkali and goes in later counts with its target."""
    weighed = weighed_in(rows, batch_id)
    batch = batch_by_id(rows, batch_id)
    alkalis = [one for one in weighed if one.role == "alkali"]
    total = sum(one.mass_mg for one in alkalis)
    pure = sum((one.mass_mg * one.figures.alkali(one.mass_mg).purity_ppm for one in alkalis), Fraction(0))
    superfat = before = None
    fats = [one for one in weighed if one.role == "fat"]
    open_lines = [line for line in plan_lines(rows, batch_id) if not line.logged and line.role in ("fat", "alkali")]
    if fats and alkalis and all(line.held_back for line in open_lines):
        pot = pot_as_weighed((*weighed, *_acids_to_come(rows, batch_id)), batch.process, settings(rows).scale_step_mg)
        superfat = None if open_lines else pot.superfat()
        before = pot.cooking() if open_lines or pot.held else None
    return LyeCheck(
        fats_mg=sum(one.mass_mg for one in fats),
        alkali_mg=dry_alkali(weighed),
        water_mg=water_of(weighed),
        alkali_kind=" and ".join(dict.fromkeys(one.figures.alkali_kind or "" for one in alkalis)) or None,
        purity_ppm=round(pure / total) if total else None,
        superfat=superfat,
        before_addition=before,
        figures={one.lot_id: words for one in weighed if (words := _words(one))},
        stated=stated(one.figures for one in weighed),
    )


def _acids_to_come(rows: sqlite3.Connection, batch_id: int) -> list[Weighed]:
    """The acids still open for which the recipe adds alkali, which is weighed before them."""
    still = {one.material_id for one in plan_lines(rows, batch_id) if one.in_demand and not one.logged}
    meant = meant_in(rows, batch_id)[len(weighed_in(rows, batch_id)) :]
    return [one for one in meant if one.role == "additive" and one.material_id in still]


def dry_alkali(weighed: Iterable[Weighed]) -> int:
    """The alkali as sold, without the water of a stock lye, in mg."""
    return round(sum((one.mass_mg - _water(one) for one in weighed if one.role == "alkali"), Fraction(0)))


def water_of(weighed: Iterable[Weighed]) -> int:
    """The water in all the liquids and acids, and in a stock lye, in mg."""
    wet = (one for one in weighed if one.role in ("alkali", "liquid") or one.figures.acid_koh_mg_per_kg is not None)
    return round(sum((_water(one) for one in wet), Fraction(0)))


def _water(one: Weighed) -> Fraction:
    """The water it brings: that of a liquid, of a weak acid, or of a stock lye."""
    if one.role == "alkali" and one.figures.water_ppm is None:
        return Fraction(0)
    return one.figures.water_mg(one.mass_mg)


def _words(one: Weighed) -> str:
    """The figure the lye was reckoned with, and where it stands."""
    figures = one.figures
    if one.role == "fat":
        return f"saponification value {figures.sap_words()} mg KOH/g ({one.source})"
    if one.role == "alkali":
        if figures.purity_low_ppm is None:
            return "no certificate, reckoned as pure"
        word = "strength" if figures.water_ppm is not None else "purity"
        own = f" ({one.source})" if figures.purity_of else ""
        return f"{word} {figures.purity_words()}{own}"
    if figures.acid_koh_mg_per_kg is not None:
        used = f"uses up {figures.acid_koh_mg_per_kg / 1_000_000:.4g} g KOH per g of pure acid"
        return f"{used}; strength {figures.purity_words()}" if figures.purity_low_ppm is not None else used
    return ""


@dataclass(frozen=True)
class AlkaliWanted:
    """One alkali on the worksheet, and what the fats as weighed take at the recipe's superfat; in mg."""

    material: str
    planned_mg: int
    wanted_mg: int


def alkali_wanted(rows: sqlite3.Connection, batch: BatchRow) -> tuple[AlkaliWanted, ...]:
    """What to weigh of each alkali now that the fats are weighed; nothing before that, or once it is weighed.

    A fat or an acid that goes in later counts with its target.
    """
    recipe = recipe_of(rows, batch)
    lines = plan_lines(rows, batch.id)
    alkalis = [line for line in lines if line.role == "alkali"]
    if recipe is None or not recipe.soap or not alkalis or any(line.logged for line in alkalis):
        return ()
    if any(line.role == "fat" and not line.held_back and not line.logged for line in lines):
        return ()
    charges = _charges(rows, batch, lines)
    if not any(one.line.role == "fat" for one in charges):
        return ()
    found = []
    for kind in recipe.alkali_shares_ppm:
        mine = [(line, _figures(rows, line)) for line in alkalis]
        mine = [(line, figures) for line, figures in mine if figures.alkali_kind == kind]
        if not mine:
            continue
        purest = max((figures for _, figures in mine), key=lambda one: one.alkali(0).purity_ppm)  # as planned
        need = alkali_need(recipe, charges, purest)
        found.append(AlkaliWanted(mine[0][0].material, sum(line.target for line, _ in mine), need.weigh_mg))
    return tuple(found)


def _charges(rows: sqlite3.Connection, batch: BatchRow, lines: Sequence[PlanLineRow]) -> list[Charge]:
    """Fats and acids as weighed; those not weighed yet at their targets."""
    counted = {line.material_id: bool(line.in_demand) for line in lines}
    return [
        Charge(
            RecipeLine(
                one.role,
                one.figures.name,
                one.stage,
                in_demand=counted.get(one.material_id, True),
                add_alkali=counted.get(one.material_id, True),
            ),
            one.mass_mg,
            one.figures,
        )
        for one in meant_in(rows, batch.id)
        if one.role in ("fat", "additive")
    ]


def _figures(rows: sqlite3.Connection, line: PlanLineRow) -> Figures:
    """The figures of the lot on the worksheet, or of its material."""
    lot = lot_by_id(rows, line.lot_id) if line.lot_id else None
    return figures_of(material_by_id(rows, line.material_id), lot)
