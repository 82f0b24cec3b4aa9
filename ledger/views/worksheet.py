"""What the bench needs for one planned batch: every line of work with its lot, target and tolerance."""

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True)
class PrintedFrom:
    """What a page was printed from: the last entry of the ledger, its UTC time, and the program."""

    entry: int
    recorded_at: str
    program: str


@dataclass(frozen=True)
class WeighLine:
    """One numbered thing to weigh or count out; quantities in mg, or pieces for packaging."""

    number: int
    role: str  # fat, alkali, liquid, additive, fragrance, colourant, botanical, rework, packaging
    material: str
    inci: str | None
    lot_code: str | None
    supplier: str | None
    supplier_lot: str | None
    best_before: date | None
    target: int
    low: int
    high: int
    stage: str  # "in the fats", "with the lye", "at trace", "after the cook", "packing"
    pieces: bool = False
    weighed: int | None = None


@dataclass(frozen=True)
class Worksheet:
    """The bench worksheet of one batch."""

    business: str
    units: str  # "metric" or "us"
    batch_code: str
    product: str
    recipe_code: str
    recipe_version: int
    process: str  # cold, hot, infusion, rebatch
    made_on: date
    lines: tuple[WeighLine, ...]
    fats_mg: int
    alkali_mg: int
    water_mg: int
    dough_mg: int
    superfat_ppm: int | None
    lye_concentration_ppm: int | None
    water_per_alkali_thousandths: int | None
    mould: str | None
    bars_planned: int | None
    net_weight_mg: int | None
    ready_days: int | None
    notes: tuple[str, ...]  # warnings that stay with the batch
    printed_from: PrintedFrom
