"""What can be read at the bench: one row each, which the worksheet, the prompt, the limits and the record read."""

from collections.abc import Callable
from typing import Literal, NamedTuple

from ledger.domain.tools.bounds import FREE_ALKALI_PPM, Limits
from ledger.domain.tools.titre import EXAMPLE
from ledger.units.measures import degree_unit, scale_unit
from ledger.units.quantity import (
    parse_mass,
    parse_minutes,
    parse_ph,
    parse_share,
    parse_temperature,
    parse_volume,
    show_degrees,
    show_mass,
    show_share,
    show_temperature,
    show_volume,
)
from ledger.units.words import EquipmentKind, Process, ReadingUnit, Units


def _tenths(thousandths: int, _units: Units) -> str:
    return f"{thousandths / 1000:.1f}"


def _thousandths(ppm: int, _units: Units) -> str:
    return f"{show_share(ppm, 3)} as NaOH"


def _as_minutes(minutes: int, _units: Units) -> str:
    return f"{minutes} min"


class Answer(NamedTuple):
    """In what a reading is answered: words, a clock time, or a figure."""

    example: str
    hint: str  # behind the question at the prompt; where empty, what stands in the box
    box: Callable[[Units], str]  # what stands in the box on paper, by the system of units


class Figure(NamedTuple):
    """An answer with a number and a unit."""

    example: str
    hint: str
    box: Callable[[Units], str]
    unit: ReadingUnit  # in which it is kept
    parse: Callable[..., int]  # (text, *, what): raises BadInput
    show: Callable[[int, Units], str]
    apart: Callable[[int, Units], str]  # shows a difference of two
    tool: EquipmentKind | None = None
    between: tuple[int, int] | None = None  # what lies outside cannot be


class Choice(NamedTuple):
    """An answer that is one of a few words of the trade."""

    example: str
    hint: str
    box: Callable[[Units], str]
    words: tuple[str, ...]


WORDS = Answer("soda ash on top", "", lambda _: "")
TICK = WORDS._replace(example="yes", hint="yes or no", box=lambda _: "tick")
TRACE = Choice("light", "light, medium or thick", lambda _: "", ("light", "medium", "thick"))
CLOCK = Answer("14:05", "14:05, or now", lambda _: "clock")
MASS = Figure("1320 g", "", scale_unit, "mg", parse_mass, show_mass, show_mass, "scale")
# What lies outside cannot be: no unit a thousand times off is taken in silence (common practice, no source).
TEST_WEIGHT = MASS._replace(between=(10, 50_000_000))
POTFUL = MASS._replace(between=(1_000, 200_000_000))
BAR = MASS._replace(between=(1_000, 5_000_000))
VOLUME = Figure(
    "1080 mL", "mL", lambda units: "fl oz" if scale_unit(units) == "oz" else "mL", "uL", parse_volume, show_volume,
    show_volume,
)  # fmt: skip
DEGREES = Figure(
    "49 C", "with its unit, C or F", degree_unit, "milli-C", parse_temperature, show_temperature, show_degrees,
    "thermometer", (-40_000, 200_000),
)  # fmt: skip
ACIDITY = Figure("9.6", "9.6; meter, 1 % in water", lambda _: "pH", "milli-pH", parse_ph, _tenths, _tenths, "pH meter")
ALKALI = Figure(
    "0.03 %", f"0.03 %, or {EXAMPLE}", lambda _: "% as NaOH", "ppm", parse_share, _thousandths, _thousandths,
)  # fmt: skip
MINUTES = Figure("12 min", "minutes", lambda _: "min", "min", parse_minutes, _as_minutes, _as_minutes)
FIGURES: dict[ReadingUnit, Figure] = {one.unit: one for one in (MASS, VOLUME, DEGREES, ACIDITY, ALKALI, MINUTES)}


class Work(NamedTuple):
    """A batch as far as it decides what is read of it.

    `makes_lye` is False for a portion, whose fats and lye met in the batch it was divided from; `gives_bars` is False
    for a dough that is divided.
    """

    process: Process
    makes_lye: bool
    gives_bars: bool


def _mixes(work: Work) -> bool:
    return work.makes_lye and work.process in ("cold", "hot")


def _cooks(work: Work) -> bool:
    return work.makes_lye and work.process == "hot"


# Where in the work a reading stands, among the stages of the lines that are weighed.
START, MIX, COOK, POUR, SET = "start", "mix", "cook", "pour", "set"
STEP = "step"  # as what the tick of a step of her own is booked
_ASKED: dict[str, Callable[[Work], bool]] = {
    START: lambda _: True,
    MIX: _mixes,
    COOK: _cooks,
    POUR: lambda work: work.gives_bars,
    SET: lambda work: work.gives_bars,
}


class BenchReading(NamedTuple):
    """One thing that is read at the bench.

    `when` is the stage at which worksheet and prompt ask for it, under its `label`; None: they never do. What is read
    `of` the loaf, cut or not, or of the bars has a day of its own, not that of the making, and so has what is seen at
    any time.
    Above `at_most` and below `at_least` it is outside; `limit` says in words what it is held against, where that is
    more than `at_most`.
    """

    what: str  # the reading it is booked as
    answer: Answer | Figure | Choice
    when: str | None = None
    label: str = ""
    note: str | None = None
    where: Callable[[Work], bool] | None = None  # asked only here, of the batches that have its stage
    again: bool = False  # read more than once
    of: Literal["making", "loaf", "bars", "any"] = "making"
    tries: EquipmentKind | None = None  # the tool it is a check of
    at_most: Callable[[Limits, Units], int | None] = lambda *_: None
    at_least: Callable[[Limits, Units], int | None] = lambda *_: None
    limit: Callable[[Limits, Units], str | None] | None = None

    @property
    def tool(self) -> EquipmentKind | None:
        """The tool it is booked with; a weighing names none, but for the one that tries the scale."""
        tool = self.answer.tool if isinstance(self.answer, Figure) and self.answer.unit != MASS.unit else None
        return self.tries or tool

    def asked_of(self, work: Work) -> bool:
        """Whether the worksheet of a batch asks for it."""
        return self.when is not None and _ASKED[self.when](work) and (self.where is None or self.where(work))

    def limit_words(self, limits: Limits, units: Units) -> str | None:
        """The limit it is held against, in words; None where there is none."""
        if self.limit:
            return self.limit(limits, units)
        if not isinstance(self.answer, Figure):
            return None
        return between(self.answer, self.at_least(limits, units), self.at_most(limits, units), units)


def between(answer: Figure, least: int | None, most: int | None, units: Units) -> str | None:
    """Between what a figure should lie, in words; None where neither end is set."""
    low, high = (None if one is None else answer.show(one, units) for one in (least, most))
    if low and high:
        return f"{low} to {high}"
    return f"at least {low}" if low else f"at most {high}" if high else None


def _met(limits: Limits, units: Units) -> str:
    return f"within {DEGREES.apart(limits.apart(units), units)} of each other"


def _lye(limits: Limits, units: Units) -> str:
    own = between(DEGREES, limits.lye_least_milli_c, limits.lye_milli_c, units)
    return _met(limits, units) + (f", {own}" if own else "")


def _cook(limits: Limits, _units: Units) -> str | None:
    return f"{limits.cook_minutes[0]} to {limits.cook_minutes[1]} min of cook" if limits.cook_minutes else None


def _acid(limits: Limits, _units: Units) -> str:
    least, most = limits.ph_least_thousandths, f"{limits.ph_thousandths / 1000:.1f} in 1 % solution"
    return f"at most {most}" if least is None else f"{least / 1000:.1f} to {most}"


def _bars(limits: Limits, units: Units) -> str | None:
    if not limits.bar_weight_mg:
        return None
    low, high = (show_mass(one, units) for one in limits.bar_weight_mg)
    return f"{low} to {high} at the cut"


# In the order of work, by what each is booked as.
READINGS = {row.what: row for row in (
    BenchReading("clean", TICK, START, "Bench, tools and moulds clean"),
    BenchReading("scale test", TEST_WEIGHT, START, "Scale reads the test weight", tries="scale"),
    BenchReading("pot tare", POTFUL, START, "Empty pot", "the cooking pot, before anything goes in", _cooks),
    BenchReading("lye temperature", DEGREES, MIX, "Lye temperature",
        at_most=lambda limits, _: limits.lye_milli_c, at_least=lambda limits, _: limits.lye_least_milli_c, limit=_lye),
    BenchReading("fats temperature", DEGREES, MIX, "Fats temperature", limit=_met),
    BenchReading("mixed", CLOCK),
    BenchReading("emulsion", MINUTES, MIX, "Emulsion after"),
    BenchReading("trace", MINUTES, MIX, "Trace after"),
    BenchReading("trace thickness", TRACE, again=True),
    BenchReading("dough volume", VOLUME),
    BenchReading("pot weight", MASS),
    BenchReading("pot before cook", MASS, COOK, "Pot with the dough"),
    BenchReading("cook start", CLOCK, COOK, "Cook from"),
    BenchReading("cook temperature", DEGREES, COOK, "Check in the cook", "more checks: write them below", again=True),
    BenchReading("cook end", CLOCK, COOK, "Cook to", limit=_cook),
    BenchReading("second cook start", CLOCK),
    BenchReading("second cook end", CLOCK),
    BenchReading("pot after cook", MASS, COOK, "Pot after the cook"),
    BenchReading("fragrance temperature", DEGREES, COOK, "Before the fragrance goes in",
        at_most=lambda limits, units: limits.fragrance(units),
        at_least=lambda limits, _: limits.fragrance_least_milli_c),
    BenchReading("moulding temperature", DEGREES),
    BenchReading("poured", CLOCK, POUR, "Poured at"),
    BenchReading("poured weight", POTFUL, POUR, "Weight in the mould", where=lambda work: work.process != "rebatch"),
    BenchReading("unmoulded", CLOCK, SET, "Unmoulded at", of="loaf"),
    BenchReading("unmoulded weight", MASS, SET, "Weight of the loaf", of="loaf"),
    BenchReading("bar weight", BAR, of="bars", limit=_bars),
    BenchReading("waste at the cut", MASS, of="bars"),
    BenchReading("spent solids", MASS, of="loaf"),
    BenchReading("pH", ACIDITY, of="loaf", at_most=lambda limits, _: limits.ph_thousandths,
        at_least=lambda limits, _: limits.ph_least_thousandths, limit=_acid),
    BenchReading("free alkali", ALKALI, of="bars", at_most=lambda *_: FREE_ALKALI_PPM),
    BenchReading("labour", MINUTES),
    BenchReading(STEP, TICK, again=True),
    BenchReading("observation", WORDS, of="any"),
)}  # fmt: skip
