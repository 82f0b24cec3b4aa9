"""What the bench needs for one batch: every line of work with its lot, target and tolerance."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction

from ledger.domain.bench.steps import Step
from ledger.domain.lye.pot import stated
from ledger.domain.lye.saponification import lye_concentration
from ledger.domain.lye.uncertainty import Superfat
from ledger.domain.lye.weighed import dry_alkali, pot_as_weighed, water_of
from ledger.domain.recipe.recipe import WITH_THE_LYE
from ledger.domain.tools.limits import limit_of
from ledger.rows.batch import find_batch, plan_lines
from ledger.rows.lot import lots_by_id
from ledger.rows.material import materials_by_id
from ledger.rows.opened import Rows
from ledger.rows.recipe import recipe_of
from ledger.rows.settings import PrintedFrom, printed_from, settings
from ledger.units.words import Process, Role, Stage, Units
from ledger.views.bench.batch_notes import notes_before, notes_that_stay
from ledger.views.bench.bench import steps_of
from ledger.views.lye.lye_check import meant_in
from ledger.views.recipe.hazards import hazards_of
from ledger.views.recipe.outlived import outlived_as_planned


@dataclass(frozen=True)
class WeighLine:
    """One numbered thing to weigh or count out; quantities in mg, or pieces for packaging."""

    number: int
    role: Role
    material: str
    inci: str | None
    lot_code: str | None
    supplier: str | None
    supplier_lot: str | None
    best_before: date | None
    target: int
    low: int
    high: int
    stage: Stage
    pieces: bool = False
    weighed: int | None = None
    acid: bool = False  # which uses up alkali, with heat


def acid_in_jug(lines: Iterable[WeighLine]) -> bool:
    """Whether an acid goes in with the lye."""
    return any(line.acid and line.stage == WITH_THE_LYE for line in lines)


@dataclass(frozen=True)
class Worksheet:
    """The bench worksheet of one batch."""

    business: str
    units: Units
    batch_code: str
    product: str
    recipe_code: str
    recipe_version: int
    process: Process
    gives_bars: bool
    made_on: date
    lines: tuple[WeighLine, ...]
    steps: tuple[Step, ...]  # what is ticked and read, lettered
    limits: Mapping[str, str]  # what a step is held against, in words, by what it is booked as
    fats_mg: int
    alkali_mg: int
    water_mg: int
    dough_mg: int
    superfat_ppm: int | None
    superfat: Superfat | None  # from the lots chosen, with how low it may lie
    before_addition: Superfat | None  # hot process: of the pot, before a fat held back goes in
    lye_concentration_ppm: int | None
    water_per_alkali_thousandths: int | None
    mould: str | None
    bars_planned: int | None
    net_weight_mg: int | None
    ready_days: int | None
    notes: tuple[str, ...]  # warnings that stay with the batch
    printed_from: PrintedFrom
    strain_on: date | None = None  # of an infusion: the day its recipe gives it
    stated: tuple[str, ...] = ()  # whose each single figure of the lye is, and how far it is trusted
    outlived: tuple[str, ...] = ()  # oils that are best before an earlier day than the bars

    @property
    def caustic(self) -> bool:
        """Whether lye is made or raw dough handled: not where oils are steeped or melted together."""
        return self.process not in ("infusion", "blend") or any(line.role == "alkali" for line in self.lines)


def worksheet(rows: Rows, code: str, *, program: str) -> Worksheet:
    """The worksheet of one batch; raises like `find_batch`."""
    batch = find_batch(rows, code)
    recipe = recipe_of(rows, batch)
    own = settings(rows)
    lines = []
    planned = plan_lines(rows, batch.id)
    lots = lots_by_id(rows, {line.lot_id for line in planned if line.lot_id is not None})
    cards = materials_by_id(rows, {line.material_id for line in planned})
    for line in planned:
        lot = lots.get(line.lot_id or 0)
        lines.append(
            WeighLine(
                number=line.number,
                role=line.role,
                material=line.material,
                inci=line.inci,
                lot_code=lot.code if lot else None,
                supplier=lot.supplier if lot else None,
                supplier_lot=lot.supplier_number if lot else None,
                best_before=lot.best_before if lot else None,
                target=line.target,
                low=line.low,
                high=line.high,
                stage=line.stage,
                pieces=line.counted,
                weighed=line.used if line.logged else None,
                acid=line.role == "additive" and cards[line.material_id].acid_koh_mg_per_kg is not None,
            )
        )

    def total(*roles: Role) -> int:
        return sum(line.target for line in lines if line.role in roles)

    meant = meant_in(rows, batch.id)
    pot = None
    if batch.process in ("cold", "hot"):
        pot = pot_as_weighed(meant, batch.process, own.scale_step_mg)
    fats, alkali, water = total("fat"), dry_alkali(meant), water_of(meant)
    hazards = []
    if pot and alkali:
        jug = lye_concentration(water_of(one for one in meant if one.stage == WITH_THE_LYE), alkali)
        put_in = [(cards[line.material_id], line.stage, line.target) for line in planned if line.role != "packaging"]
        mould = recipe.mould if recipe else None
        hazards = hazards_of(batch.process, put_in, fats, pot.superfat().nominal_ppm, jug, mould)
    asked = steps_of(rows, batch)
    return Worksheet(
        business=own.business,
        units=own.units,
        batch_code=batch.code,
        product=batch.product,
        recipe_code=batch.recipe_code or "",
        recipe_version=batch.recipe_version or 0,
        process=batch.process,
        gives_bars=batch.soap,
        made_on=batch.on,
        lines=tuple(lines),
        steps=asked,
        limits={
            step.what: words for step in asked if recipe and (words := limit_of(recipe.limits, step.what, own.units))
        },
        fats_mg=fats,
        alkali_mg=alkali,
        water_mg=water,
        dough_mg=sum(line.target for line in lines if not line.pieces),
        superfat_ppm=recipe.superfat_ppm if recipe and batch.part_of is None else None,
        superfat=pot.superfat() if pot else None,
        before_addition=pot.before_addition() if pot else None,
        lye_concentration_ppm=lye_concentration(water, alkali) if alkali else None,
        water_per_alkali_thousandths=round(Fraction(water * 1000, alkali)) if alkali else None,
        mould=recipe.mould if recipe else None,
        bars_planned=batch.bars_planned,
        net_weight_mg=recipe.net_weight_mg if recipe else None,
        ready_days=batch.cure_days,
        notes=tuple(hazards + notes_before(rows, batch) + notes_that_stay(rows, batch, pot.lowest() if pot else None)),
        printed_from=printed_from(rows, program),
        strain_on=batch.on + timedelta(days=recipe.infusion_days) if recipe and recipe.infusion_days else None,
        stated=stated((one.figures for one in meant), batch.process),
        outlived=outlived_as_planned(rows, batch),
    )
