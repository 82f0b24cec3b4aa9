"""Reads a recipe from her own small TOML file."""

import re
from functools import lru_cache

from ledger.domain.lye.saponification import MOLAR_MASS
from ledger.domain.recipe.file import RecipeFile
from ledger.domain.recipe.mould import parse_mould
from ledger.domain.recipe.of_limits import read_limits
from ledger.domain.recipe.of_lye import read_alkali_shares, read_fats_total, read_superfat, read_water_rule
from ledger.domain.recipe.of_portions import bars_of, read_portions
from ledger.domain.recipe.of_release import read_release_checks
from ledger.domain.recipe.of_steps import read_steps
from ledger.domain.recipe.on_the_label import read_herb, read_label
from ledger.domain.recipe.recipe import (
    BEST_BEFORE_MONTHS,
    CURE_DAYS,
    DRIEST_WATER_PPM,
    IN_THE_FATS,
    STAGES,
    USABLE_FROM_DAYS,
    WATER_LEFT_PPM,
    WEEKLY_LOSS_PPM,
    WEIGH_EVERY_DAYS,
    WITH_THE_LYE,
    Recipe,
    RecipeLine,
)
from ledger.errors import Refused
from ledger.units.quantity import WHOLE_PPM
from ledger.units.toml_reader import TomlPart
from ledger.units.words import Process, Role, known


@lru_cache(maxsize=256)  # a list of batches asks for the same few texts again and again
def read_recipe(text: str, *, file: str) -> Recipe:
    """Read a recipe file.

    Raises BadInput with file and line for what cannot be read or does not belong to the process;
    Refused when percentages do not add up to 100, or the alkali gets less water than its own mass.
    """
    source = RecipeFile(text, file)
    process, head = source.process(), source.head
    name, code = head.word("name"), head.word("code")
    if not re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", code):
        raise head.bad(f"code '{code}' takes small letters, digits and dashes only.", "code")
    soap = process in ("cold", "hot")
    lines = _soap_lines(source, process) if soap else _other_lines(source, process)
    cure, mould = source.one("cure"), source.one("mould")
    cure_days = cure.whole("days") or CURE_DAYS
    water_left, driest = _bar_water(cure)
    portions = read_portions(source)
    return Recipe(
        name=name,
        code=code,
        process=process,
        lines=lines,
        superfat_ppm=read_superfat(source) if soap else None,
        fats_total_mg=read_fats_total(source, lines) if soap else None,
        alkali_shares_ppm=read_alkali_shares(source) if soap else {},
        water_rule=read_water_rule(source) if soap else None,
        cure_days=cure_days,
        usable_from_days=_usable_from(cure, process, cure_days),
        water_left_ppm=water_left,
        driest_water_ppm=driest,
        weekly_loss_ppm=cure.share("weekly_loss_percent") or WEEKLY_LOSS_PPM,
        weigh_every_days=cure.whole("weigh_every_days") or WEIGH_EVERY_DAYS,
        best_before_months=head.whole("best_before_months", 600) or BEST_BEFORE_MONTHS,
        mould=mould.maybe_word("name"),
        mould_size=mould.read("size", parse_mould),
        bars=mould.whole("bars") or bars_of(portions),
        net_weight_mg=mould.weight("net_weight"),
        net_weight=mould.maybe_word("net_weight"),
        work_minutes=source.one("work").whole("minutes"),
        yields=source.one(process).word("yields") if process in ("infusion", "blend") else None,
        infusion_days=source.one("infusion").whole("days"),
        herb=read_herb(source),
        label=read_label(source),
        portions=portions,
        limits=read_limits(source, process),
        release_checks=read_release_checks(source),
        steps=read_steps(source, process),
    )


def _usable_from(cure: TomlPart, process: Process, cure_days: int) -> int | None:
    days = cure.whole("usable_from_days")
    if days is None:
        return min(USABLE_FROM_DAYS, cure_days) if process == "hot" else None
    if days > cure_days:
        raise cure.bad(
            f"soap usable from day {days} would be so after its cure of {cure_days} days; look at both.",
            "usable_from_days",
        )
    return days


def _bar_water(cure: TomlPart) -> tuple[int, int]:
    """The water of the bar when its cure ends, and at its driest, in ppm."""
    left, driest = (cure.share(key) for key in ("water_left", "driest_water"))
    left = WATER_LEFT_PPM if left is None else left
    driest = min(DRIEST_WATER_PPM, left) if driest is None else driest
    if not driest <= left < 500_000:
        raise cure.bad("the water left lies below 50 %, and driest_water is no more than water_left.")
    return left, driest


def _soap_lines(source: RecipeFile, process: Process) -> tuple[RecipeLine, ...]:
    fats = [_fat(part, process) for part in source.parts("fat")]
    if not fats:
        raise source.head.bad("a soap needs fats; write a [[fat]] part for each.")
    _check_fats(source, fats)
    extras = [
        *(one for one in fats if one.held_back),
        *_extras(source, "liquid", process),
        *_extras(source, "additive", process),
        *_extras(source, "fragrance", process),
    ]
    water = RecipeLine("liquid", source.one("water").word("material"), WITH_THE_LYE)
    alkalis = [
        RecipeLine("alkali", part.word("material"), WITH_THE_LYE, kind=known(part.word("kind"), MOLAR_MASS))
        for part in source.parts("alkali")
    ]
    lye = {WITH_THE_LYE: (water, *alkalis)}
    in_order = [
        line
        for stage in STAGES[process]
        for line in (*lye.get(stage, ()), *(one for one in extras if one.stage == stage))
    ]
    return (*(one for one in fats if not one.held_back), *in_order, *_packaging(source))


def _fat(part: TomlPart, process: Process) -> RecipeLine:
    material, share, mass = part.word("material"), part.share("percent"), part.mass("grams")
    if (share is None) == (mass is None):
        raise part.bad(f"{material} needs either percent = 40 or grams = 400.")
    when = part.maybe_word("when") or IN_THE_FATS
    later = [one for one in STAGES[process] if one not in (IN_THE_FATS, WITH_THE_LYE)]
    stage = known(when, (IN_THE_FATS, *later))
    if stage is None:
        allowed = " or ".join(f'"{one}"' for one in later)
        raise part.bad(f"a fat is held back until {allowed}, not '{when}'.", "when")
    in_demand = part.flag("in_demand")
    if stage != IN_THE_FATS and in_demand is None:
        raise part.bad(
            f"{material} is held back; say whether the lye is reckoned for it too: in_demand = true, "
            "or in_demand = false where it comes on top."
        )
    if stage == IN_THE_FATS and in_demand is not None:
        raise part.bad("in_demand is for a fat that is held back; add when, or take it out.", "in_demand")
    note = part.maybe_word("note")
    return RecipeLine("fat", material, stage, mass, share, note=note, in_demand=in_demand is not False)


def _check_fats(source: RecipeFile, fats: list[RecipeLine]) -> None:
    named: set[tuple[str, str]] = set()
    parts = source.parts("fat")
    for part, line in zip(parts, fats, strict=True):
        if (line.material, line.stage) in named:
            raise part.bad(
                f"{line.material} stands here a second time; write one [[fat]] for it, or another when for this part."
            )
        named.add((line.material, line.stage))
    shares = [line.share_ppm for line in fats if line.share_ppm is not None]
    if shares and len(shares) != len(fats):
        raise parts[0].bad("some fats are by percent and some by grams; write all one way.")
    if all(line.held_back for line in fats):
        raise parts[0].bad("every fat is held back; the lye needs fats to meet.")
    if shares and (total := sum(shares)) != WHOLE_PPM:
        off = f"{abs(WHOLE_PPM - total) / 10_000:.7g} % is {'missing' if total < WHOLE_PPM else 'too much'}"
        raise Refused(f"{parts[0].place()}: the fats add up to {total / 10_000:.7g} %, not 100 %; {off}.")


def _other_lines(source: RecipeFile, process: Process) -> tuple[RecipeLine, ...]:
    role: Role = "part" if process in ("infusion", "blend") else "rework"
    lines = [
        RecipeLine(
            role,
            part.word("material"),
            "in the pot",
            _grams(part, "500"),
            note=part.maybe_word("note"),
        )
        for part in source.parts(role)
    ]
    if not lines:
        raise source.head.bad(f"write a [[{role}]] part for each thing that goes in.")
    if role == "part":
        return (*lines, *_packaging(source))
    if (water := source.one("water")).data:
        mass = _grams(water, "60")
        lines.append(RecipeLine("liquid", water.word("material"), "in the pot", mass))
    return (
        *lines,
        *_extras(source, "additive", process),
        *_extras(source, "fragrance", process),
        *_packaging(source),
    )


def _grams(part: TomlPart, example: str) -> int:
    for key in part.data:
        if key not in ("material", "grams", "when", "note"):
            raise part.bad(f"here it is by weight; write grams = {example} in place of {key}.", key)
    mass = part.mass("grams")
    if mass is None:
        raise part.bad(f"grams is missing; write grams = {example}.")
    return mass


def _extras(source: RecipeFile, table: Role, process: Process) -> list[RecipeLine]:
    found: list[RecipeLine] = []
    stages = [one for one in STAGES[process] if table != "liquid" or one != IN_THE_FATS]
    usual = stages[0] if table == "liquid" else stages[-1]  # milk goes in with the lye, anything else last
    for part in source.parts(table):
        material = part.word("material")
        if process == "rebatch":
            _grams(part, "5")
        share, mass = part.share("percent_of_fats"), part.mass("grams")
        if (share is None) == (mass is None):
            raise part.bad(f"{material} needs either percent_of_fats = 2 or grams = 20.")
        when = part.maybe_word("when") or usual
        stage = known(when, stages)
        if stage is None:
            allowed = " or ".join(f'"{one}"' for one in stages)
            raise part.bad(f"when = '{when}' is no time in the {process} process; write {allowed}.", "when")
        portion = part.maybe_word("portion")
        if portion and stage in (IN_THE_FATS, WITH_THE_LYE):
            raise part.bad(f"a portion is divided off at trace, after '{stage}'; look at when.", "portion")
        found.append(
            RecipeLine(
                table,
                material,
                stage,
                mass,
                share,
                note=part.maybe_word("note"),
                add_alkali=part.flag("add_alkali"),
                portion=portion,
            )
        )
    return found


def _packaging(source: RecipeFile) -> list[RecipeLine]:
    return [
        RecipeLine("packaging", part.word("material"), "packing", per_bar=part.whole("per_bar") or 1)
        for part in source.parts("packaging")
    ]
