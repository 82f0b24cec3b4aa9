"""What superfat the actual grams and lots give, and what alkali the fats as weighed take."""

from collections.abc import Collection, Sequence

from ledger.domain.bench.alkali import AlkaliWanted, wanted
from ledger.domain.lye.pot import Figures
from ledger.domain.lye.weighed import LyeCheck, Weighed, checked, role_of
from ledger.reference.tables import acid_value
from ledger.rows.batch import BatchRow, PlanLineRow, batch_by_id, plan_lines
from ledger.rows.lot import lot_by_id
from ledger.rows.material import material_by_id
from ledger.rows.opened import Rows
from ledger.rows.reading import WeighedRow, weighed_into
from ledger.rows.recipe import recipe_of
from ledger.rows.settings import settings
from ledger.views.material.figures import figures_of, own_words, purity_open, sap_open


def weighed_in(rows: Rows, batch_id: int) -> tuple[Weighed, ...]:
    """Everything weighed for a batch so far, wrapping apart; material figures are those known when it was made."""
    return weighed_in_each(rows, [batch_id])[batch_id]


def weighed_in_each(rows: Rows, batches: Collection[int]) -> dict[int, tuple[Weighed, ...]]:
    """Likewise for several batches, by the batch, in one statement."""
    found: dict[int, tuple[Weighed, ...]] = dict.fromkeys(batches, ())
    for row in weighed_into(rows, batches):
        found[row.went_into] += (_weighed(row),)
    return found


def _weighed(row: WeighedRow) -> Weighed:
    own_sap, own_purity = row.lot_low is not None, row.lot_purity is not None
    own = own_words(row.code, worked_out=row.batch_id is not None)
    figures = Figures(
        name=row.name,
        sap_low_mg_per_kg=row.lot_low if own_sap else row.low,
        sap_high_mg_per_kg=row.lot_high if own_sap else row.high,
        alkali_kind=row.alkali_kind,
        purity_low_ppm=row.lot_purity if own_purity else row.purity,
        purity_high_ppm=row.lot_purity_high if own_purity else None,
        water_ppm=row.lot_water if row.lot_water is not None else row.water,
        acid_koh_mg_per_kg=row.acid_koh_mg_per_kg,
        sap_open_mg_per_kg=0 if own_sap else sap_open(row.low, row.high, row.reference_key),
        purity_open_ppm=0 if own_purity else purity_open(row.purity, row.alkali_kind),
        sap_of=own if own_sap else None,
        purity_of=own if own_purity else None,
        acid_value_mg_per_kg=acid_value(row.reference_key),
    )
    source = row.certificate or "the lot's certificate" if own_sap or own_purity else row.sap_source or ""
    role = row.role if row.material_id == row.asked_id else role_of(row.kind, figures)
    return Weighed(role, row.stage, row.material_id, row.lot_id, row.mass, figures, source)


def meant_in(rows: Rows, batch_id: int) -> tuple[Weighed, ...]:
    """What was weighed for a batch so far, and what is still open at its target."""
    return (*weighed_in(rows, batch_id), *_still_open(rows, plan_lines(rows, batch_id)))


def _still_open(rows: Rows, lines: Sequence[PlanLineRow]) -> tuple[Weighed, ...]:
    return tuple(
        Weighed(line.role, line.stage, line.material_id, line.lot_id or 0, line.target, _figures(rows, line), "")
        for line in lines
        if not line.logged and line.role != "packaging"
    )


def lye_check(rows: Rows, batch_id: int) -> LyeCheck:
    """Reckon the superfat from what was weighed; an acid that got alkali and goes in later counts with its target."""
    lines = plan_lines(rows, batch_id)
    return checked(
        weighed_in(rows, batch_id),
        _still_open(rows, lines),
        batch_by_id(rows, batch_id).process,
        settings(rows).scale_step_mg,
        in_demand={(line.material_id, line.stage) for line in lines if line.in_demand and not line.logged},
    )


def alkali_wanted(rows: Rows, batch: BatchRow) -> tuple[AlkaliWanted, ...]:
    """What to weigh of each alkali now that the fats are weighed; nothing before that, or once it is weighed."""
    recipe, lines = recipe_of(rows, batch), plan_lines(rows, batch.id)
    if recipe is None or not recipe.soap or any(line.role == "alkali" and line.logged for line in lines):
        return ()
    counted = {(line.material_id, line.stage): bool(line.in_demand) for line in lines}
    return wanted(recipe, weighed_in(rows, batch.id), _still_open(rows, lines), counted)


def _figures(rows: Rows, line: PlanLineRow) -> Figures:
    """The figures of the lot on the worksheet, or of its material."""
    lot = lot_by_id(rows, line.lot_id) if line.lot_id else None
    return figures_of(material_by_id(rows, line.material_id), lot)
