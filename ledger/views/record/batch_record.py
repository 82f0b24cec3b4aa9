"""Everything known of one batch, from the supplier's drum to the last bar."""

from dataclasses import dataclass
from datetime import date

from ledger.domain.bench.decision import Deviation
from ledger.domain.bench.mass_balance import MassBalance
from ledger.domain.lye.uncertainty import Superfat
from ledger.rows.complaint import BatchComplaint
from ledger.rows.decision import Deviation
from ledger.rows.kept import Attached, Sample
from ledger.rows.movement import BackOnSale
from ledger.rows.settings import PrintedFrom
from ledger.units.words import Process, Units, UsedAs
from ledger.views.cure.cure_forecast import Forecast, Weighing


@dataclass(frozen=True)
class UsedMaterial:
    """One lot that went in; quantities in mg, or pieces for packaging."""

    number: int | None
    role: UsedAs
    material: str
    inci: str | None
    lot_code: str
    supplier: str | None
    supplier_lot: str | None  # None: unknown (or our own growing or making, see `origin`)
    origin: str  # "supplier", "own", "batch"
    lot_status: str
    certificate: str | None  # the saponification value or purity used, with where it came from
    target: int | None
    used: int
    low: int | None
    high: int | None
    pieces: bool
    weighed_by: str
    weighed_at: str  # UTC timestamp of the entry


@dataclass(frozen=True)
class RecordedReading:
    """One thing observed or measured while making or curing."""

    on: date
    at: str | None
    what: str
    value: str  # with its unit, as it is printed
    by: str
    entry: int
    limit: str | None = None
    method: str | None = None  # of a pH: method, dilution, calibration
    tool: str | None = None  # what it was read with, where that is known
    corrected: bool = False  # a later reading stands in for it


@dataclass(frozen=True)
class FinishedLook:
    """One point of the checklist as it was looked at before the release."""

    on: date
    what: str
    found: str
    good: bool | None  # None: words of an earlier ledger, from which it cannot be told
    by: str


@dataclass(frozen=True)
class RecordedDecision:
    """One decision by a named person."""

    on: date
    what: str  # accepted, rejected, on hold, passed for packing, released, discarded
    subject: str
    by: str
    reason: str | None
    entry: int
    superseded: bool


@dataclass(frozen=True)
class Yielded:
    """One lot the batch gave: bars (pieces) or a mass."""

    lot_code: str
    material: str
    quantity: int
    pieces: bool
    mass_mg: int | None
    place: str
    on: date
    status: str


@dataclass(frozen=True)
class WhereBars:
    """How many bars are or went where; `left` tells those no longer in our hands."""

    where: str  # "on hand", "at a stall", "retained", "returned", "sold", "dispatched", "given", "wasted"
    detail: str
    on: date | None
    count: int
    left: bool


@dataclass(frozen=True)
class PrintedLabels:
    """One label run."""

    on: date
    layout: str
    market: str
    count: int
    text_digest: str
    by: str
    run: int
    used: int | None = None  # None until they were counted
    spoiled: int | None = None
    returned: int | None = None
    approved: str | None = None  # by whom, on which day


@dataclass(frozen=True)
class BatchRecord:
    """The batch record as it stands."""

    business: str
    units: Units
    batch_code: str
    product: str
    recipe_code: str | None
    recipe_version: int | None
    process: Process
    status: str
    draft: bool  # not yet released (or rejected): marked across the head
    as_known: bool  # as an earlier entry knew it, not as it stands
    planned_on: date
    made_on: date | None
    cut_on: date | None
    ready_on: date | None
    usable_from: date | None
    fats_mg: int
    alkali_mg: int
    water_mg: int
    alkali_kind: str | None
    alkali_purity_ppm: int | None
    superfat_nominal_ppm: int | None
    superfat_actual_ppm: int | None
    superfat: Superfat | None  # as weighed, with how low it may lie
    before_addition: Superfat | None  # hot process: of the pot, before a fat held back goes in
    lye_concentration_ppm: int | None
    mass_in_mg: int
    mass_out_mg: int | None  # None until the cut
    bars_planned: int | None
    bars_cut: int | None
    net_weight_mg: int | None
    materials: tuple[UsedMaterial, ...]
    corrections: tuple[str, ...]  # what corrected lines were logged as before
    readings: tuple[RecordedReading, ...]
    decisions: tuple[RecordedDecision, ...]
    deviations: tuple[Deviation, ...]
    not_logged: tuple[str, ...]  # steps of the worksheet that nobody booked
    balance: MassBalance
    loss_limit_ppm: int | None
    checks: tuple[FinishedLook, ...]
    samples: tuple[Sample, ...]
    complaints: tuple[BatchComplaint, ...]
    weighings: tuple[Weighing, ...]
    forecast: Forecast | None
    yields: tuple[Yielded, ...]
    whereabouts: tuple[WhereBars, ...]
    labels: tuple[PrintedLabels, ...]
    attachments: tuple[Attached, ...]
    warnings: tuple[str, ...]
    printed_from: PrintedFrom
    back_on_sale: tuple[BackOnSale, ...] = ()  # once on the returns shelf; counted wherever they are since
