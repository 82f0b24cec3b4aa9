"""Reads a recipe from her own small TOML file."""

import re
from functools import lru_cache

from ledger.domain.mould import Mould, parse_mould
from ledger.domain.recipe import (
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
from ledger.domain.recipe_file import Part, RecipeFile
from ledger.domain.recipe_label import read_herb, read_label
from ledger.domain.recipe_limits import read_limits
from ledger.domain.recipe_lye import read_alkali_shares, read_fats_total, read_superfat, read_water_rule
from ledger.domain.recipe_portions import bars_of, read_portions
from ledger.domain.recipe_release import read_release_checks
from ledger.domain.saponification import WHOLE_PPM
from ledger.errors import BadInput, Refused


@lru_cache(maxsize=256)  # a list of batches asks for the same few texts again and again
def read_recipe(text: str, *, file: str) -> Recipe:
    """Read a recipe file.

    Raises BadInput with file and line for what cannot be read or does not belong to the process;
    Refused when percentages do not add up to 100, or the alkali gets less water than its own mass.
    """
    source = RecipeFile(text, file)
    process = source.check_words()
    head = source.data
    name, code = source.word(head, "name", ""), source.word(head, "code", "")
    if not re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", code):
        raise source.bad("", 0, f"code '{code}' takes small letters, digits and dashes only.", "code")
    soap = process in ("cold", "hot")
    lines = _soap_lines(source, process) if soap else _other_lines(source, process)
    cure, mould, infusion = source.one("cure"), source.one("mould"), source.one("infusion")
    cure_days = source.whole(cure, "days", "cure") or CURE_DAYS
    water_left, driest = _bar_water(source)
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
        usable_from_days=_usable_from(source, process, cure_days),
        water_left_ppm=water_left,
        driest_water_ppm=driest,
        weekly_loss_ppm=source.percent(cure, "weekly_loss_percent", "cure", 0) or WEEKLY_LOSS_PPM,
        weigh_every_days=source.whole(cure, "weigh_every_days", "cure") or WEIGH_EVERY_DAYS,
        best_before_months=_months(source),
        mould=source.maybe_word(mould, "name", "mould"),
        mould_size=_mould_size(source),
        bars=source.whole(mould, "bars", "mould") or bars_of(portions),
        net_weight_mg=source.weight(mould, "net_weight", "mould"),
        work_minutes=source.whole(source.one("work"), "minutes", "work"),
        yields=source.word(source.one(process), "yields", process) if process in ("infusion", "blend") else None,
        infusion_days=source.whole(infusion, "days", "infusion"),
        herb=read_herb(source),
        label=read_label(source),
        portions=portions,
        limits=read_limits(source, process),
        release_checks=read_release_checks(source),
    )


def _months(source: RecipeFile) -> int:
    """How many months from the making the bars keep."""
    value = source.number(source.data, "best_before_months", "", 0, 600)
    if value is not None and value.denominator != 1:
        raise source.bad("", 0, "best_before_months is a whole number.", "best_before_months")
    return BEST_BEFORE_MONTHS if value is None else int(value)


def _usable_from(source: RecipeFile, process: str, cure_days: int) -> int | None:
    days = source.whole(source.one("cure"), "usable_from_days", "cure")
    if days is None:
        return min(USABLE_FROM_DAYS, cure_days) if process == "hot" else None
    if days > cure_days:
        raise source.bad(
            "cure", 0, f"soap usable from day {days} would be so after its cure of {cure_days} days; look at both.",
            "usable_from_days",
        )  # fmt: skip
    return days


def _bar_water(source: RecipeFile) -> tuple[int, int]:
    """The water of the bar when its cure ends, and at its driest, in ppm."""
    cure = source.one("cure")
    left, driest = (source.percent(cure, key, "cure", 0) for key in ("water_left", "driest_water"))
    left = WATER_LEFT_PPM if left is None else left
    driest = min(DRIEST_WATER_PPM, left) if driest is None else driest
    if not driest <= left < 500_000:
        raise source.bad("cure", 0, "the water left lies below 50 %, and driest_water is no more than water_left.")
    return left, driest


def _mould_size(source: RecipeFile) -> Mould | None:
    mould = source.one("mould")
    text = source.maybe_word(mould, "size", "mould")
    try:
        return parse_mould(text) if text else None
    except BadInput as error:
        raise source.bad("mould", 0, str(error), "size") from None


def _soap_lines(source: RecipeFile, process: str) -> tuple[RecipeLine, ...]:
    fats = [_fat(source, part, index, process) for index, part in enumerate(source.tables("fat"))]
    if not fats:
        raise source.bad("", 0, "a soap needs fats; write a [[fat]] part for each.")
    _check_fats(source, fats)
    extras = [
        *(one for one in fats if one.held_back),
        *_extras(source, "liquid", process),
        *_extras(source, "additive", process),
        *_extras(source, "fragrance", process),
    ]
    water = RecipeLine("liquid", source.word(source.one("water"), "material", "water"), WITH_THE_LYE)
    alkalis = [
        RecipeLine(
            "alkali",
            source.word(part, "material", "alkali", index),
            WITH_THE_LYE,
            kind=source.word(part, "kind", "alkali", index),
        )
        for index, part in enumerate(source.tables("alkali"))
    ]
    lye = {WITH_THE_LYE: (water, *alkalis)}
    in_order = [
        line
        for stage in STAGES[process]
        for line in (*lye.get(stage, ()), *(one for one in extras if one.stage == stage))
    ]
    return (*(one for one in fats if not one.held_back), *in_order, *_packaging(source))


def _fat(source: RecipeFile, part: Part, index: int, process: str) -> RecipeLine:
    material = source.word(part, "material", "fat", index)
    share, mass = source.percent(part, "percent", "fat", index), source.mass(part, "grams", "fat", index)
    if (share is None) == (mass is None):
        raise source.bad("fat", index, f"{material} needs either percent = 40 or grams = 400.")
    stage = source.maybe_word(part, "when", "fat", index) or IN_THE_FATS
    later = [one for one in STAGES[process] if one not in (IN_THE_FATS, WITH_THE_LYE)]
    if stage != IN_THE_FATS and stage not in later:
        allowed = " or ".join(f'"{one}"' for one in later)
        raise source.bad("fat", index, f"a fat is held back until {allowed}, not '{stage}'.", "when")
    in_demand = source.flag(part, "in_demand", "fat", index)
    if stage != IN_THE_FATS and in_demand is None:
        raise source.bad(
            "fat", index, f"{material} is held back; say whether the lye is reckoned for it too: in_demand = true, "
            "or in_demand = false where it comes on top.",
        )  # fmt: skip
    if stage == IN_THE_FATS and in_demand is not None:
        raise source.bad(
            "fat", index, "in_demand is for a fat that is held back; add when, or take it out.", "in_demand"
        )
    note = source.maybe_word(part, "note", "fat", index)
    return RecipeLine("fat", material, stage, mass, share, note=note, in_demand=in_demand is not False)


def _check_fats(source: RecipeFile, fats: list[RecipeLine]) -> None:
    named: set[str] = set()
    for index, line in enumerate(fats):
        if line.material in named:
            raise source.bad("fat", index, f"{line.material} stands here a second time; write one [[fat]] for it.")
        named.add(line.material)
    shares = [line.share_ppm for line in fats if line.share_ppm is not None]
    if shares and len(shares) != len(fats):
        raise source.bad("fat", 0, "some fats are by percent and some by grams; write all one way.")
    if all(line.held_back for line in fats):
        raise source.bad("fat", 0, "every fat is held back; the lye needs fats to meet.")
    if shares and (total := sum(shares)) != WHOLE_PPM:
        off = f"{abs(WHOLE_PPM - total) / 10_000:.7g} % is {'missing' if total < WHOLE_PPM else 'too much'}"
        raise Refused(f"{source.place('fat')}: the fats add up to {total / 10_000:.7g} %, not 100 %; {off}.")


def _other_lines(source: RecipeFile, process: str) -> tuple[RecipeLine, ...]:
    role = "part" if process in ("infusion", "blend") else "rework"
    lines = [
        RecipeLine(
            role,
            source.word(part, "material", role, index),
            "in the pot",
            _grams(source, part, role, index, "500"),
            note=source.maybe_word(part, "note", role, index),
        )
        for index, part in enumerate(source.tables(role))
    ]
    if not lines:
        raise source.bad("", 0, f"write a [[{role}]] part for each thing that goes in.")
    if role == "part":
        return (*lines, *_packaging(source))
    if water := source.one("water"):
        mass = _grams(source, water, "water", 0, "60")
        lines.append(RecipeLine("liquid", source.word(water, "material", "water"), "in the pot", mass))
    return (
        *lines,
        *_extras(source, "additive", process),
        *_extras(source, "fragrance", process),
        *_packaging(source),
    )


def _grams(source: RecipeFile, part: Part, table: str, index: int, example: str) -> int:
    for key in part:
        if key not in ("material", "grams", "when", "note"):
            raise source.bad(table, index, f"here it is by weight; write grams = {example} in place of {key}.", key)
    mass = source.mass(part, "grams", table, index)
    if mass is None:
        raise source.bad(table, index, f"grams is missing; write grams = {example}.")
    return mass


def _extras(source: RecipeFile, table: str, process: str) -> list[RecipeLine]:
    found: list[RecipeLine] = []
    stages = [one for one in STAGES[process] if table != "liquid" or one != IN_THE_FATS]
    usual = stages[0] if table == "liquid" else stages[-1]  # milk goes in with the lye, anything else last
    for index, part in enumerate(source.tables(table)):
        material = source.word(part, "material", table, index)
        if process == "rebatch":
            _grams(source, part, table, index, "5")
        share, mass = source.percent(part, "percent_of_fats", table, index), source.mass(part, "grams", table, index)
        if (share is None) == (mass is None):
            raise source.bad(table, index, f"{material} needs either percent_of_fats = 2 or grams = 20.")
        stage = source.maybe_word(part, "when", table, index) or usual
        if stage not in stages:
            allowed = " or ".join(f'"{one}"' for one in stages)
            raise source.bad(
                table, index, f"when = '{stage}' is no time in the {process} process; write {allowed}.", "when"
            )
        portion = source.maybe_word(part, "portion", table, index)
        if portion and stage in (IN_THE_FATS, WITH_THE_LYE):
            raise source.bad(
                table, index, f"a portion is divided off at trace, after '{stage}'; look at when.", "portion"
            )
        found.append(
            RecipeLine(
                table,
                material,
                stage,
                mass,
                share,
                note=source.maybe_word(part, "note", table, index),
                add_alkali=source.flag(part, "add_alkali", table, index),
                portion=portion,
            )
        )
    return found


def _packaging(source: RecipeFile) -> list[RecipeLine]:
    return [
        RecipeLine(
            "packaging",
            source.word(part, "material", "packaging", index),
            "packing",
            per_bar=source.whole(part, "per_bar", "packaging", index) or 1,
        )
        for index, part in enumerate(source.tables("packaging"))
    ]
