"""A wrong weight in a batch that is not mixed yet, with the ways out and what each comes to."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from ledger.domain.bench.correction import OTHER, Case, InPot, Way, lye_is_made, lye_parts, ways, what_it_means
from ledger.domain.lye.pot import Figures
from ledger.domain.lye.saponification import lye_concentration
from ledger.domain.lye.weighed import role_of
from ledger.domain.recipe.recipe import IN_THE_FATS, WITH_THE_LYE
from ledger.domain.recipe.scaling import Dough
from ledger.errors import BadInput, Refused
from ledger.rows.batch import BatchRow, PlanLineRow, plan_lines
from ledger.rows.decision import decided
from ledger.rows.lot import available, lots_by_id
from ledger.rows.material import materials_by_id
from ledger.rows.movement import taken_on
from ledger.rows.opened import Rows
from ledger.rows.reading import first_of
from ledger.rows.recipe import recipe_of
from ledger.rows.settings import settings
from ledger.units.quantity import show_mass, show_share
from ledger.units.words import LIKELY_NOTHING, Units
from ledger.views.material.figures import figures_of

# Once one of these was logged, lye and fats have met.
MET = ("mixed", "trace", "cook start", "poured")


@dataclass(frozen=True)
class Advice:
    """One way out: the lines to change (number, material, mg more or less), and what the batch then is."""

    way: str
    possible: bool
    words: str
    changes: tuple[tuple[int, str, int], ...]
    solution_mg: int  # lye solution to leave out (below zero) or to add
    nominal_ppm: int | None
    likely_low_ppm: int | None
    all_low_ppm: int | None
    becomes_ppm: int | None  # the superfat over all the fats; the three before are of the pot as it cooks
    dough_mg: int
    bars: int | None
    overfull_ul: int  # what does not fit the mould


@dataclass(frozen=True)
class Correction:
    """A wrong line, and the three ways out in their order."""

    batch_code: str
    line: int
    material: str
    meant_mg: int
    actual_mg: int
    beside: tuple[tuple[str, int], ...]  # what else is in on that line, and stays: material, mg
    superfat_meant_ppm: int
    becomes_meant_ppm: int  # over all the fats, with every line at its target
    advice: tuple[Advice, ...]


def correction(rows: Rows, batch: BatchRow, line: int, actual_mg: int) -> Correction:
    """What can be done about it. Raises Refused once lye and fats have met, BadInput for a line that does not bear on
    the lye or an unknown one."""
    case = correction_case(rows, batch, line, actual_mg)
    found = correction_ways(rows, batch, case)
    wrong = case.line
    return Correction(
        batch.code,
        line,
        wrong.material,
        wrong.target_mg,
        actual_mg,
        tuple((other.material, other.mass_mg) for at, other in _others(rows, plan_lines(rows, batch.id)) if at == line),
        case.superfat_ppm,
        case.meant().nominal_ppm,
        tuple(_advice(rows, batch, case, way) for way in found),
    )


def correction_case(rows: Rows, batch: BatchRow, line: int, actual_mg: int) -> Case:
    """The batch as it is with that line as it really was; raises like `correction`."""
    _not_met(rows, batch)
    recipe = recipe_of(rows, batch)
    if recipe is None or recipe.superfat_ppm is None:
        raise Refused(
            f"Batch {batch.code} holds no fats and lye to bring together; mend a weight with: batch log --correct"
        )
    lines = {one.number: one for one in plan_lines(rows, batch.id) if one.role != "packaging"}
    if line not in lines:
        raise BadInput(f"Batch {batch.code} has no line {line}; its lines are 1 to {max(lines)}.")
    cards = materials_by_id(rows, {one.material_id for one in lines.values()})
    lots = lots_by_id(rows, {one.lot_id for one in lines.values() if one.lot_id is not None})
    others = _others(rows, lines.values())
    in_pot = tuple(
        _in_pot(
            one,
            figures_of(cards[one.material_id], lots.get(one.lot_id or 0)),
            sum(other.mass_mg for at, other in others if at == one.number),
        )
        for one in lines.values()
    )
    in_pot += tuple(other for _, other in others)
    wrong = next(one for one in in_pot if one.number == line)
    bears = wrong.role in ("fat", "alkali") or (wrong.role == "liquid" and wrong.stage == WITH_THE_LYE)
    if not bears and wrong.figures.acid_koh_mg_per_kg is None:
        raise BadInput(
            f"Line {line} ({wrong.material}) does not bear on the lye; log what it weighed: "
            f"soapledger batch log {batch.code} --line '{line}={actual_mg / 1000:g} g'"
        )
    if actual_mg <= 0:
        raise BadInput(f"How much {wrong.material} is really in? Write line {line} as {line}=160 g.")
    return Case(
        batch.process,
        recipe.superfat_ppm,
        tuple(replace(one, mass_mg=actual_mg) if one.number == line else one for one in in_pot),
        line,
        settings(rows).scale_step_mg,
        decided=("superfat", LIKELY_NOTHING) in decided(rows, batch_id=batch.id),
    )


def correction_ways(rows: Rows, batch: BatchRow, case: Case) -> tuple[Way, Way, Way]:
    """The ways out, with what is free of each fat on the day of the batch.

    What the wrong line was booked or meant to take, and did not, is free as well.
    """
    free = {}
    lines = plan_lines(rows, batch.id)
    for line in lines:
        if line.role == "fat":
            free[line.material] = sum(max(one.free, 0) for one in available(rows, line.material_id, on=batch.on))
    wrong = next(line for line in lines if line.number == case.wrong)
    if wrong.role == "fat":
        free[wrong.material] += (wrong.used if wrong.logged else wrong.target) - case.line.mass_mg
    return ways(case, free)


def _not_met(rows: Rows, batch: BatchRow) -> None:
    """Raise Refused where it is too late to correct a weight."""
    if batch.discarded or batch.yield_lot_id is not None:
        raise Refused(f"Batch {batch.code} is {batch.status}; its weights are mended with: batch log --correct")
    met = first_of(rows, batch.id, MET)
    if met:
        raise Refused(
            f"Lye and fats of batch {batch.code} have met ('{met}' is logged), so no weight can be put right any "
            f"more. Log what went in with: soapledger batch log {batch.code} --line LINE=GRAMS --correct; where lye is "
            f"left over, give it up: soapledger batch discard {batch.code} --reason ..."
        )


def _others(rows: Rows, lines: Iterable[PlanLineRow]) -> list[tuple[int, InPot]]:
    """What is in of another material than its line asks for, by the line: as what it is, to stay as it is."""
    found: list[tuple[int, InPot]] = []
    for line in lines:
        taken = {lot: mass for lot, mass in (taken_on(rows, line.id) if line.logged else {}).items() if mass > 0}
        lots = lots_by_id(rows, taken)
        cards = materials_by_id(rows, {lot.material_id for lot in lots.values()} - {line.material_id})
        for lot_id, mass in taken.items():
            if card := cards.get(lots[lot_id].material_id):
                figures = figures_of(card, lots[lot_id])
                role = role_of(card.kind, figures)
                number = OTHER - len(found)
                found.append((line.number, InPot(number, role, card.name, line.stage, True, mass, mass, True, figures)))
    return found


def _in_pot(line: PlanLineRow, figures: Figures, others_mg: int) -> InPot:
    return InPot(
        number=line.number,
        role=line.role,
        material=line.material,
        stage=line.stage,
        in_demand=bool(line.in_demand),
        mass_mg=line.used - others_mg if line.logged else line.target,
        target_mg=line.target,
        logged=line.logged,
        figures=figures,
    )


def _advice(rows: Rows, batch: BatchRow, case: Case, way: Way) -> Advice:
    changes = way.changes(case.lines)
    units = settings(rows).units
    solution = sum(mass for one, mass in changes if one.role != "fat")
    dough, overfull, bars = _size(rows, batch, way)
    found = way.superfat
    return Advice(
        way=way.name,
        possible=way.why_not is None,
        words=_words(case, way, changes, solution, units),
        changes=tuple((one.number, one.material, mass) for one, mass in changes),
        solution_mg=solution,
        nominal_ppm=found.nominal_ppm if found else None,
        likely_low_ppm=found.likely_low_ppm if found else None,
        all_low_ppm=found.all_low_ppm if found else None,
        becomes_ppm=way.becomes.nominal_ppm if way.becomes else None,
        dough_mg=dough,
        bars=bars,
        overfull_ul=overfull,
    )


def _words(case: Case, way: Way, changes: tuple[tuple[InPot, int], ...], solution: int, units: Units) -> str:
    if way.why_not is not None:
        shown = f"with a superfat of {show_share(way.superfat.nominal_ppm, 2)}, " if way.superfat else ""
        if way.superfat and way.superfat.nominal_ppm > 0:
            shown += f"likely as low as {show_share(way.superfat.likely_low_ppm, 2)}, "
        return f"not a way out: {shown}{way.why_not}"
    if way.name == "pour":
        assert way.becomes
        if case.line.role == "liquid":
            return f"pour it as it is: {_lye_words(case)}"
        return f"pour it as it is: {what_it_means(way.becomes)}"
    if way.name == "fats":
        later = {one.number: "" if one.stage == IN_THE_FATS else f" {one.stage}" for one, _ in changes}
        return "add " + ", ".join(
            f"{show_mass(mass, units)} of {one.material}{later[one.number]}" for one, mass in changes
        )
    if case.line.role == "liquid":
        return (
            f"put {show_mass(solution, units)} of {case.line.material} into a second jug and pour the lye slowly into "
            "it, never the liquid onto the lye"
        )
    if not lye_is_made(case):
        return "weigh " + ", ".join(
            f"{show_mass(one.mass_mg, units)} of {one.material} in place of {show_mass(one.target_mg, units)}"
            for one, _ in changes
        )
    if solution < 0:
        return f"leave {show_mass(-solution, units)} of the lye solution in the jug"
    last = sorted(changes, key=lambda change: change[0].role == "alkali")  # the alkali into all the others
    parts = ", ".join(f"{show_mass(mass, units)} of {one.material}" for one, mass in last)
    return f"mix {show_mass(solution, units)} more lye as it was meant ({parts}) and use it too"


def _lye_words(case: Case) -> str:
    """How strong the lye is with the water as it is, all of it, and what that means (common practice, no source)."""
    water, alkali = lye_parts(case.lines)
    shown = f"the lye is then {show_share(lye_concentration(water, alkali))}"
    meant = case.line.target_mg
    effect = "it traces faster and dries sooner" if case.line.mass_mg < meant else "it traces slower and dries longer"
    return f"{shown}; {effect}"


def _size(rows: Rows, batch: BatchRow, way: Way) -> tuple[int, int, int | None]:
    """The dough, what of it does not fit the mould, and the bars it gives."""
    recipe = recipe_of(rows, batch)
    masses = {one.number: one for one in way.lines}
    fats = sum(one.mass_mg for one in masses.values() if one.role == "fat")
    alkali = sum(one.mass_mg for one in masses.values() if one.role == "alkali")
    water = sum(one.mass_mg for one in masses.values() if one.role == "liquid")
    whole = sum(one.mass_mg for one in masses.values())
    planned = sum(one.target_mg for one in masses.values() if one.number > OTHER)  # what came instead was not planned
    volume = Dough(fats, alkali, water, whole - fats - alkali - water).volume_ul()
    mould = recipe.mould_size if recipe else None
    bars = round(batch.bars_planned * whole / planned) if batch.bars_planned else None
    return whole, max(volume - mould.volume_ul, 0) if mould else 0, bars
