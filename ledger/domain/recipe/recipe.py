"""A recipe as its maker wrote it: what goes in, when, and what it is to become."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from ledger.domain.lye.saponification import WaterRule
from ledger.domain.recipe.mould import Mould
from ledger.domain.tools.bounds import Limits
from ledger.domain.tools.readings import COOK, MIX, POUR, READINGS, SET, START, STEP
from ledger.units.words import AlkaliKind, Process, Role, Stage

CURE_DAYS = 28  # common practice, no source: 4-6 weeks for cold process
USABLE_FROM_DAYS = 7  # hot process: 1-2 weeks until usable; common practice, no source
BEST_BEFORE_MONTHS = 24  # the maker's own figure until her durability assessment gives one; no source

# What a bar still holds when its cure ends, and at its driest on the shelf: the maker's own figures until her
# weighings give others; common practice, no source.
WATER_LEFT_PPM, DRIEST_WATER_PPM = 100_000, 80_000

# When a bar counts as steady in weight, and how often marked bars are weighed until then; common practice, no source.
WEEKLY_LOSS_PPM, WEIGH_EVERY_DAYS = 5_000, 7

IN_THE_FATS: Stage = "in the fats"
WITH_THE_LYE: Stage = "with the lye"
AT_TRACE: Stage = "at trace"
AFTER_THE_COOK: Stage = "after the cook"
# When an additive or a fragrance may go in, in the order of work; the last is meant where none is written.
STAGES: dict[Process, tuple[Stage, ...]] = {
    "cold": (IN_THE_FATS, WITH_THE_LYE, AT_TRACE),
    "hot": (IN_THE_FATS, WITH_THE_LYE, AT_TRACE, AFTER_THE_COOK),
    "rebatch": ("in the pot",),
}
# The times of the work at which nothing is weighed, in the words of a step, and as the worksheet knows them.
STEP_TIMES = {
    "at the start": START,
    "at mixing": MIX,
    "in the cook": COOK,
    "at the pour": POUR,
    "at unmoulding": SET,
}


class RecipeLine(NamedTuple):
    """One material of a recipe: by mass, by share of the fats (ppm), or by pieces per bar."""

    role: Role
    material: str
    stage: Stage
    mass_mg: int | None = None
    share_ppm: int | None = None
    per_bar: int | None = None
    note: str | None = None
    kind: AlkaliKind | None = None  # of an alkali
    in_demand: bool = True  # of a fat held back: whether the lye is reckoned for it too
    add_alkali: bool | None = None  # of an acid: whether alkali is added for it, or the superfat rises
    portion: str | None = None  # of what goes into one portion of a divided batch

    @property
    def fills_up(self) -> bool:
        """Whether it is the water of the lye, which is reckoned and not written."""
        return self.role == "liquid" and self.mass_mg is None and self.share_ppm is None

    @property
    def held_back(self) -> bool:
        """Whether it is a fat that goes in later than the others."""
        return self.role == "fat" and self.stage != IN_THE_FATS

    @property
    def after_cook(self) -> bool:
        """Whether it is a fat that is not in the pot while it cooks."""
        return self.role == "fat" and self.stage == AFTER_THE_COOK


class Portion(NamedTuple):
    """One portion of a batch divided at trace, with its share of the dough."""

    name: str
    share_ppm: int
    bars: int | None


class OwnStep(NamedTuple):
    """One step in the maker's own words: ticked, or answered with a reading that may have limits in its own unit."""

    number: int  # in the order they are written, from 1
    text: str
    when: str  # a stage of the lines, or one of the readings
    reading: str | None = None
    least: int | None = None
    most: int | None = None

    @property
    def what(self) -> str:
        """What its answer is booked as."""
        return self.reading or STEP

    @property
    def mark(self) -> str | None:
        """What tells its answer from others booked alike; None for a reading that a batch has once."""
        return f"step {self.number}" if self.what == STEP or READINGS[self.what].again else None


class Herb(NamedTuple):
    """What an infusion declares of the herb that was strained out: a name, and a mass where one was carried over."""

    inci: str
    carried_ppm: int  # of the oil; 0: a trace, named last
    source: str


AS_ADDED, AS_SAPONIFIED = "as added", "as saponified"
TOGETHER, EACH_BY_NAME = "parfum", "each by name"


class LabelWishes(NamedTuple):
    """What the maker decided about the label of a soap."""

    declaration: str = AS_ADDED
    fragrance: str = EACH_BY_NAME
    function: str = "Soap"
    precautions: tuple[str, ...] = ()
    claims: str | None = None
    origin: str | None = None
    after_opening_months: int | None = None
    gtin: str | None = None
    opening_matters: bool | None = None  # None: nobody decided
    list_ingredients: bool = False  # where no law asks for it too
    line: str | None = None  # of her own, under the name; else that of her settings
    use: str | None = None  # "for hands and kitchen"
    colour: str | None = None  # of the product, as "#7a8f3c"
    picture: str | None = None  # by the name of its file, attached to the recipe


class Recipe(NamedTuple):
    """A recipe as written; quantities follow from it and from the fats in hand."""

    name: str
    code: str
    process: Process
    lines: tuple[RecipeLine, ...]  # by stage, in the order of work; the alkali and the water of a soap have no amount
    superfat_ppm: int | None
    fats_total_mg: int | None
    alkali_shares_ppm: Mapping[AlkaliKind, int]  # mole for mole; empty where no soap is made
    water_rule: WaterRule | None
    cure_days: int
    usable_from_days: int | None
    water_left_ppm: int  # of the bar when its cure ends
    driest_water_ppm: int  # of the bar at its driest within its stock life
    weekly_loss_ppm: int  # below which a bar is steady in weight
    weigh_every_days: int  # marked bars on the rack
    best_before_months: int
    mould: str | None
    mould_size: Mould | None
    bars: int | None
    net_weight_mg: int | None
    work_minutes: int | None
    yields: str | None  # the material an infusion or a blend gives
    infusion_days: int | None
    herb: Herb | None
    label: LabelWishes
    portions: tuple[Portion, ...]
    limits: Limits
    release_checks: tuple[str, ...]  # what is looked at before the bars are released
    steps: tuple[OwnStep, ...] = ()
    net_weight: str | None = None  # as she wrote it, in the unit it was decided in

    @property
    def soap(self) -> bool:
        """Whether fats and lye make soap in it."""
        return bool(self.alkali_shares_ppm)

    def of_role(self, role: Role) -> tuple[RecipeLine, ...]:
        """The lines of one role, in order."""
        return tuple(line for line in self.lines if line.role == role)


def held_back_words(process: Process, held: Sequence[tuple[str, Stage]]) -> list[str]:
    """What becomes of the fats held back (name, stage), in the words of their process; nothing where none is."""
    late = " and ".join(name for name, stage in held if stage == AFTER_THE_COOK)
    traced = " and ".join(name for name, stage in held if stage != AFTER_THE_COOK)
    found = [f"{late} goes in after the cook and mostly stays as it is, if the cook has finished."] if late else []
    if traced:
        of = "does not stay as the superfat in cold process"
        if process == "hot":
            of = "is in the pot while it cooks and does not stay as the superfat"
        found.append(f"{traced} {of}: what is left is a share of every fat, not the named one.")
    return found
