"""What can be done about a weight that was wrong, before lye and fats have met."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from ledger.domain.pot import Figures, Pot
from ledger.domain.recipe import IN_THE_FATS, WITH_THE_LYE
from ledger.domain.saponification import WHOLE_PPM, demand_koh
from ledger.domain.uncertainty import Superfat

POUR, LYE, FATS = "pour", "lye", "fats"


@dataclass(frozen=True)
class InPot:
    """One line of the batch: what is in, or is still to be weighed, in mg."""

    number: int
    role: str
    material: str
    stage: str
    in_demand: bool
    mass_mg: int
    target_mg: int
    logged: bool
    figures: Figures


@dataclass(frozen=True)
class Way:
    """One way out: the lines as they would then be, and the superfat that gives; why not, where it is none."""

    name: str  # pour, lye or fats
    lines: tuple[InPot, ...]
    superfat: Superfat | None
    why_not: str | None = None

    def changes(self, before: Sequence[InPot]) -> tuple[tuple[InPot, int], ...]:
        """(line, mg more or less) for every line that differs."""
        was = {one.number: one.mass_mg for one in before}
        return tuple((one, one.mass_mg - was[one.number]) for one in self.lines if one.mass_mg != was[one.number])


@dataclass(frozen=True)
class Case:
    """A batch with one wrong weight in it."""

    process: str
    superfat_ppm: int
    lines: tuple[InPot, ...]  # with the wrong line as it really is
    wrong: int
    scale_step_mg: int

    def superfat(self, lines: Sequence[InPot]) -> Superfat:
        """Of the pot as it cooks, where a fat is held back from it, else of all the fats."""
        return _pot(self, lines).lowest()

    @property
    def line(self) -> InPot:
        """The line that was weighed wrongly."""
        return next(one for one in self.lines if one.number == self.wrong)


def ways(case: Case, free_mg: Mapping[str, int]) -> tuple[Way, Way, Way]:
    """Pour as it is; less or more of the lye; more fats, as far as they are free (mg by material). In this order."""
    dry = sum(one.mass_mg for one in case.lines if one.role == "alkali")
    water = sum(one.mass_mg for one in case.lines if one.role == "liquid" and one.stage == WITH_THE_LYE)
    if water < dry and all(one.figures.water_ppm is None for one in case.lines if one.role == "alkali"):
        pour = Way(POUR, case.lines, None, "there is less water than alkali, and it does not dissolve")
    else:
        pour = Way(POUR, case.lines, case.superfat(case.lines))
    return pour, _by_lye(case), _by_fats(case, free_mg)


def _pot(case: Case, lines: Sequence[InPot]) -> Pot:
    fats = [one for one in lines if one.role == "fat" and one.mass_mg]
    return Pot(
        case.process,
        tuple(one.figures.fat(one.mass_mg) for one in fats if one.stage == IN_THE_FATS),
        tuple(one.figures.fat(one.mass_mg) for one in fats if one.stage != IN_THE_FATS),
        tuple(one.figures.alkali(one.mass_mg) for one in lines if one.role == "alkali"),
        _acids(lines),
        case.scale_step_mg,
    )


def _acids(lines: Sequence[InPot], *, matched: bool = False) -> Fraction:
    """The KOH that acids use up, or only those for which the recipe adds alkali, in mg."""
    found = (one for one in lines if one.role == "additive" and (one.in_demand or not matched))
    return sum((one.figures.acid_koh_mg(one.mass_mg) for one in found), Fraction(0))


def _demand(lines: Sequence[InPot]) -> Fraction:
    """What the fats that the lye is reckoned for take, as mg KOH."""
    return demand_koh([one.figures.fat(one.mass_mg) for one in lines if one.role == "fat" and one.in_demand])


def _wanted(case: Case) -> Fraction:
    """The alkali, as mg KOH, that gives the superfat of the recipe with the fats and acids as they are."""
    return _demand(case.lines) * (WHOLE_PPM - case.superfat_ppm) / WHOLE_PPM + _acids(case.lines, matched=True)


def _worth(lines: Sequence[InPot]) -> Fraction:
    return sum((one.figures.alkali(one.mass_mg).koh_mg for one in lines if one.role == "alkali"), Fraction(0))


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
    return Way(LYE, tuple(lines), case.superfat(lines))


def _by_lye(case: Case) -> Way:
    """Less or more lye: of the solution where it is made, else of the alkalis still to be weighed, all alike."""
    if case.line.role == "liquid":
        return _more_water(case)
    made = lye_is_made(case)
    wanted, worth = _wanted(case), _worth(case.lines)
    if _fits(case) or worth == 0:
        return Way(LYE, case.lines, None, "the lye fits as it is")
    still = [one for one in case.lines if one.role == "alkali" and not _is_in(case, one)]
    left = wanted - (worth - _worth(still))  # what is still to come of it, as mg KOH
    lines = []
    for one in case.lines:
        mass = one.mass_mg
        if made and (one.role == "alkali" or (one.role == "liquid" and one.stage == WITH_THE_LYE)):
            mass = round(mass * wanted / worth)  # the solution keeps its strength
        elif one in still:
            mass = max(round(mass * left / (_worth(still) or 1)), 0)
            if mass == 0:
                return Way(LYE, case.lines, None, "the alkali that is in already is more than the fats take")
        lines.append(replace(one, mass_mg=mass))
    return Way(LYE, tuple(lines), case.superfat(lines))


def _by_fats(case: Case, free_mg: Mapping[str, int]) -> Way:
    """More fats to meet the lye: the one that is short, or all of them in their proportions."""
    wanted, worth = _wanted(case), _worth(case.lines)
    if worth <= wanted or _fits(case):
        why = "the lye fits as it is" if _fits(case) else "more fat would only raise the superfat further"
        return Way(FATS, case.lines, None, why)
    if case.line.role == "fat":
        lines = [replace(one, mass_mg=one.target_mg) if one.number == case.wrong else one for one in case.lines]
    else:
        more = (worth - _acids(case.lines, matched=True)) / (wanted - _acids(case.lines, matched=True))
        lines = [replace(one, mass_mg=round(one.mass_mg * more)) if one.role == "fat" else one for one in case.lines]
    way = Way(FATS, tuple(lines), case.superfat(lines))
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
