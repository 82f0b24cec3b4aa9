"""What can be done about a weight that was wrong, before lye and fats have met."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from ledger.domain.lye.pot import Figures, Pot, open_acids
from ledger.domain.lye.saponification import demand_koh
from ledger.domain.lye.uncertainty import Superfat
from ledger.domain.recipe.recipe import AFTER_THE_COOK, WITH_THE_LYE
from ledger.units.quantity import WHOLE_PPM
from ledger.units.words import Process, Role, Stage

POUR, LYE, FATS = "pour", "lye", "fats"
OTHER = -1  # from here down: what is in of another material than its line asks for, which stays as it is


@dataclass(frozen=True)
class InPot:
    """One line of the batch: what is in, or is still to be weighed, in mg."""

    number: int
    role: Role
    material: str
    stage: Stage
    in_demand: bool
    mass_mg: int
    target_mg: int
    logged: bool
    figures: Figures


@dataclass(frozen=True)
class Way:
    """One way out: the lines as they would then be, and the superfat that gives; why not, where it is none.

    `burns` is a way that is none because lye is, or may be, left over.
    """

    name: str  # pour, lye or fats
    lines: tuple[InPot, ...]
    superfat: Superfat | None  # of the pot as it cooks, where a fat is held back from it: whether it burns
    why_not: str | None = None
    burns: bool = False
    becomes: Superfat | None = None  # over all the fats: what the bar is

    def changes(self, before: Sequence[InPot]) -> tuple[tuple[InPot, int], ...]:
        """(line, mg more or less) for every line that differs."""
        was = {one.number: one.mass_mg for one in before}
        return tuple((one, one.mass_mg - was[one.number]) for one in self.lines if one.mass_mg != was[one.number])


@dataclass(frozen=True)
class Case:
    """A batch with one wrong weight in it."""

    process: Process
    superfat_ppm: int
    lines: tuple[InPot, ...]  # with the wrong line as it really is
    wrong: int
    scale_step_mg: int
    decided: bool = False  # someone decided that its superfat is likely to be nothing

    def pot(self, lines: Sequence[InPot]) -> Pot:
        """What of some lines bears on the lye."""
        fats = [one for one in lines if one.role == "fat" and one.mass_mg]
        return Pot(
            self.process,
            tuple(one.figures.fat(one.mass_mg, self.process) for one in fats if one.stage != AFTER_THE_COOK),
            tuple(one.figures.fat(one.mass_mg, self.process) for one in fats if one.stage == AFTER_THE_COOK),
            tuple(one.figures.alkali(one.mass_mg) for one in lines if one.role == "alkali"),
            _acids(lines),
            self.scale_step_mg,
            open_acids((one.figures, one.mass_mg) for one in lines),
        )

    def meant(self) -> Superfat:
        """The superfat over all the fats, had every line been weighed at its target."""
        return self.pot([replace(one, mass_mg=one.target_mg) for one in self.lines]).superfat()

    @property
    def line(self) -> InPot:
        """The line that was weighed wrongly."""
        return next(one for one in self.lines if one.number == self.wrong)


def ways(case: Case, free_mg: Mapping[str, int]) -> tuple[Way, Way, Way]:
    """Pour as it is; less or more of the lye; more fats, as far as they are free (mg by material). In this order."""
    pour = _safe(case, Way(POUR, case.lines, None))
    return pour, _safe(case, _by_lye(case)), _safe(case, _by_fats(case, free_mg))


def _safe(case: Case, way: Way) -> Way:
    """The way with its superfat; none where the alkali would not dissolve, or where no plan would be made of it."""
    if way.why_not is not None:
        return way
    jug = [one for one in way.lines if one.stage == WITH_THE_LYE]
    dry = any(one.role == "alkali" and one.figures.water_ppm is None for one in jug)
    water, alkali = lye_parts(jug)
    if dry and water < alkali:
        return replace(way, why_not="there is less water than alkali, and it does not dissolve")
    pot = case.pot(way.lines)
    found = pot.lowest()
    if found.nominal_ppm >= WHOLE_PPM:
        return replace(way, why_not="the acids take all of the lye, and no fat turns to soap")
    way = replace(way, superfat=found, becomes=pot.superfat())
    if found.likely_low_ppm > 0 or (case.decided and found.nominal_ppm > 0):
        return way
    return replace(way, why_not=what_it_means(found), burns=True)


def lye_parts(lines: Sequence[InPot]) -> tuple[int, int]:
    """(water, dry alkali) of the lines that are in the jug, in mg: the water of liquids, acids and a stock lye."""
    water = alkali = Fraction(0)
    for one in lines:
        if one.role == "alkali":
            brought = one.figures.water_mg(one.mass_mg) if one.figures.water_ppm is not None else Fraction(0)
            water, alkali = water + brought, alkali + one.mass_mg - brought
        elif one.role == "liquid" or one.figures.acid_koh_mg_per_kg is not None:
            water += one.figures.water_mg(one.mass_mg)
    return round(water), round(alkali)


def _acids(lines: Sequence[InPot], *, matched: bool = False) -> Fraction:
    """The KOH that acids use up, or only those for which the recipe adds alkali, in mg."""
    found = (one for one in lines if not matched or (one.role == "additive" and one.in_demand))
    return sum((one.figures.acid_koh_mg(one.mass_mg) for one in found), Fraction(0))


def _demand(lines: Sequence[InPot], process: Process) -> Fraction:
    """What the fats that the lye is reckoned for take, as mg KOH."""
    return demand_koh([one.figures.fat(one.mass_mg, process) for one in lines if one.role == "fat" and one.in_demand])


def _wanted(case: Case) -> Fraction:
    """The alkali, as mg KOH, that gives the superfat of the recipe with the fats and acids as they are."""
    return _demand(case.lines, case.process) * (WHOLE_PPM - case.superfat_ppm) / WHOLE_PPM + _acids(
        case.lines, matched=True
    )


def _worth(lines: Sequence[InPot]) -> Fraction:
    return sum((one.figures.alkali(one.mass_mg).koh_mg for one in lines if one.role == "alkali"), Fraction(0))


def _in_jug(case: Case) -> list[InPot]:
    """What is in the jug once the lye is made: all that stands before the last alkali, and what was weighed since."""
    last = max(one.number for one in case.lines if one.role == "alkali")
    jug = [one for one in case.lines if one.stage == WITH_THE_LYE]
    return [one for one in jug if one.number <= last or _is_in(case, one)]


def _is_in(case: Case, line: InPot) -> bool:
    """Whether a line is weighed: logged, or the wrong one, of which it is known what is really in."""
    return line.logged or line.number == case.wrong


def lye_is_made(case: Case) -> bool:
    """Whether every alkali is in the jug."""
    return all(_is_in(case, one) for one in case.lines if one.role == "alkali")


def _fits(case: Case) -> bool:
    """Whether the alkali is what the fats and acids want, to a step of the scale for each line of it."""
    alkalis = [one for one in case.lines if one.role == "alkali"]
    step = sum((one.figures.alkali(case.scale_step_mg).koh_mg for one in alkalis), Fraction(0))
    return abs(_worth(case.lines) - _wanted(case)) <= step


def _more_water(case: Case) -> Way:
    """Water that was short is made up before the lye is used; water that was too much dries out of the bar."""
    line = case.line
    if line.mass_mg >= line.target_mg:
        return Way(LYE, case.lines, None, "water cannot be taken out of the lye; the bars will take longer to dry")
    lines = [replace(one, mass_mg=one.target_mg) if one.number == case.wrong else one for one in case.lines]
    return Way(LYE, tuple(lines), None)


def _by_lye(case: Case) -> Way:
    """Less or more lye: of all that is in the jug where it is made, else of the alkalis still to be weighed, alike."""
    if case.line.role == "liquid":
        return _more_water(case)
    worth = _worth(case.lines)
    if _fits(case) or worth == 0:
        return Way(LYE, case.lines, None, "the lye fits as it is")
    if lye_is_made(case):
        return _by_jug(case)
    still = [one for one in case.lines if one.role == "alkali" and not _is_in(case, one)]
    left = _wanted(case) - (worth - _worth(still))  # what is still to come of it, as mg KOH
    lines = []
    for one in case.lines:
        mass = one.mass_mg
        if one in still:
            mass = max(round(mass * left / (_worth(still) or 1)), 0)
            if mass == 0:
                return Way(LYE, case.lines, None, "the alkali that is in already is more than the fats take")
        lines.append(replace(one, mass_mg=mass))
    return Way(LYE, tuple(lines), None)


def _by_jug(case: Case) -> Way:
    """A share of the whole jug, acid and all; or more lye, mixed as it was meant.

    What counts is the alkali net of the acid in the jug, for a share of the jug brings both. With the alkali W, all
    acid in the jug A and the alkali wanted B (for fats and acids, as KOH), the share poured is (B - A) / (W - A): it
    brings the fats what the plan brings them. More lye makes up B - W by the targets of what is in the jug.
    """
    jug = _in_jug(case)
    if any(one.number <= OTHER for one in jug):
        why = "what is in the jug is not what the worksheet asks for; a person decides, or mix it anew"
        return Way(LYE, case.lines, None, why)
    if still := [one for one in jug if not _is_in(case, one)]:
        named = " and ".join(f"line {one.number} ({one.material})" for one in still)
        return Way(LYE, case.lines, None, f"log what is in the jug first: {named}")
    acid = _acids(jug)
    wanted, there = _wanted(case) - acid, _worth(jug) - acid
    meant = [replace(one, mass_mg=one.target_mg) for one in jug]
    by_target = _worth(meant) - _acids(meant)
    if wanted <= 0 or (there < wanted and by_target <= 0):
        return Way(LYE, case.lines, None, "the acid in the jug takes up all of its alkali")
    share, more = (wanted / there, Fraction(0)) if there >= wanted else (1, (wanted - there) / by_target)
    then = {one.number: round(one.mass_mg * share + one.target_mg * more) for one in jug}
    return Way(LYE, tuple(replace(one, mass_mg=then.get(one.number, one.mass_mg)) for one in case.lines), None)


def _by_fats(case: Case, free_mg: Mapping[str, int]) -> Way:
    """More fats to meet the lye: the one that is short, or all of them in their proportions."""
    wanted, worth = _wanted(case), _worth(case.lines)
    if worth <= wanted or _fits(case):
        why = "the lye fits as it is" if _fits(case) else "more fat would only raise the superfat further"
        return Way(FATS, case.lines, None, why)
    if case.line.role == "fat":
        lines = [replace(one, mass_mg=one.target_mg) if one.number == case.wrong else one for one in case.lines]
    else:
        own = [one for one in case.lines if one.role == "fat" and one.number > OTHER]
        acids = _acids(case.lines, matched=True)
        other = (
            (_demand(case.lines, case.process) - _demand(own, case.process))
            * (WHOLE_PPM - case.superfat_ppm)
            / WHOLE_PPM
        )
        if wanted - acids <= other:
            return Way(FATS, case.lines, None, "none of the fats that the worksheet asks for is in")
        more = (worth - acids - other) / (wanted - acids - other)
        lines = [replace(one, mass_mg=round(one.mass_mg * more)) if one in own else one for one in case.lines]
    way = Way(FATS, tuple(lines), None)
    more_of: dict[str, int] = {}
    for one, mass in way.changes(case.lines):
        more_of[one.material] = more_of.get(one.material, 0) + mass
    for material, mass in more_of.items():
        if mass > free_mg.get(material, 0):
            free = f"{free_mg.get(material, 0) / 1000:g} g"
            return Way(FATS, case.lines, None, f"it takes {mass / 1000:.1f} g more of {material}, and {free} is free")
    return way


def what_it_means(superfat: Superfat) -> str:
    """What pouring it as it is means for the bar (common practice, no source)."""
    if superfat.nominal_ppm <= 0:
        return "lye is left over and the bars would burn: do not pour it"
    if superfat.likely_low_ppm <= 0:
        return "lye may be left over and the bars burn: do not pour it without testing every bar"
    if superfat.nominal_ppm < 20_000:
        return "a hard, drying bar with little to spare; test it before it is passed"
    if superfat.nominal_ppm <= 80_000:
        return "an ordinary bar"
    if superfat.nominal_ppm <= 150_000:
        return "a softer bar that lathers less and goes rancid sooner"
    return "a soft, greasy bar that will not keep; use it up soon, or rebatch it"
