"""A recipe, read from her own small TOML file."""

import re
from dataclasses import dataclass
from functools import lru_cache

from ledger.domain.quantity import show_mass
from ledger.domain.recipe_file import Part, RecipeFile
from ledger.domain.saponification import WHOLE_PPM, WaterRule
from ledger.errors import Refused

CURE_DAYS = 28  # common practice, no source: 4-6 weeks for cold process
USABLE_FROM_DAYS = 7  # hot process: 1-2 weeks until usable; common practice, no source
BEST_BEFORE_MONTHS = 24  # the maker's own figure until her durability assessment gives one; no source

# When an additive or a fragrance may go in, in the order of work; the last is meant where none is written.
_STAGES = {
    "cold": ("in the fats", "with the lye", "at trace"),
    "hot": ("in the fats", "with the lye", "at trace", "after the cook"),
    "rebatch": ("in the pot",),
}


@dataclass(frozen=True)
class RecipeLine:
    """One material of a recipe: by mass, by share of the fats (ppm), or by pieces per bar."""

    role: str  # fat, liquid, alkali, additive, fragrance, part, rework, packaging
    material: str
    stage: str
    mass_mg: int | None = None
    share_ppm: int | None = None
    per_bar: int | None = None
    note: str | None = None


@dataclass(frozen=True)
class Recipe:
    """A recipe as written; quantities follow from it and from the fats in hand."""

    name: str
    code: str
    process: str
    lines: tuple[RecipeLine, ...]  # in the order of work; the alkali and the water of a soap have no amount
    superfat_ppm: int | None
    fats_total_mg: int | None
    alkali_kind: str | None
    water_rule: WaterRule | None
    cure_days: int
    usable_from_days: int | None
    best_before_months: int
    mould: str | None
    bars: int | None
    net_weight_mg: int | None
    work_minutes: int | None
    yields: str | None  # the material an infusion gives
    infusion_days: int | None

    def of_role(self, role: str) -> tuple[RecipeLine, ...]:
        """The lines of one role, in order."""
        return tuple(line for line in self.lines if line.role == role)


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
    return Recipe(
        name=name,
        code=code,
        process=process,
        lines=lines,
        superfat_ppm=_superfat(source) if soap else None,
        fats_total_mg=_fats_total(source, lines) if soap else None,
        alkali_kind=_alkali_kind(source) if soap else None,
        water_rule=_water_rule(source) if soap else None,
        cure_days=cure_days,
        usable_from_days=_usable_from(source, process, cure_days),
        best_before_months=source.whole(head, "best_before_months", "") or BEST_BEFORE_MONTHS,
        mould=source.maybe_word(mould, "name", "mould"),
        bars=source.whole(mould, "bars", "mould"),
        net_weight_mg=source.weight(mould, "net_weight", "mould"),
        work_minutes=source.whole(source.one("work"), "minutes", "work"),
        yields=source.word(infusion, "yields", "infusion") if process == "infusion" else None,
        infusion_days=source.whole(infusion, "days", "infusion"),
    )


def _superfat(source: RecipeFile) -> int:
    value = source.number(source.data, "superfat", "", 0, 49, or_nothing=True)
    if value is None:
        raise source.bad("", 0, "superfat is missing; write superfat = 5 (percent of the alkali withheld).")
    return round(value * 10_000)


def _fats_total(source: RecipeFile, lines: tuple[RecipeLine, ...]) -> int:
    stated = source.weight(source.data, "fats_total", "")
    masses = [line.mass_mg for line in lines if line.role == "fat" and line.mass_mg is not None]
    if not masses:
        if stated is None:
            raise source.bad("", 0, 'fats are by percent, so write fats_total = "1000 g" as well.')
        return stated
    if stated is not None and stated != sum(masses):
        raise source.bad(
            "", 0, f"the fats add up to {show_mass(sum(masses))}; write that, or leave it out.", "fats_total"
        )
    return sum(masses)


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


def _alkali_kind(source: RecipeFile) -> str:
    kind = source.word(source.one("alkali"), "kind", "alkali")
    if kind not in ("NaOH", "KOH"):
        raise source.bad("alkali", 0, f"kind '{kind}' is not an alkali known here; write NaOH or KOH.", "kind")
    return kind


def _water_rule(source: RecipeFile) -> WaterRule:
    water = source.one("water")
    rules = [key for key in ("per_alkali", "lye_concentration", "of_fats", "grams") if key in water]
    if len(rules) != 1 or rules == ["grams"]:
        raise source.bad("water", 0, "write one of per_alkali = 2.0, lye_concentration = 33 or of_fats = 38.")
    kind = rules[0]
    value = source.number(water, kind, "water", 0, 20 if kind == "per_alkali" else 99)
    assert value is not None  # the key is there
    if (kind == "per_alkali" and value < 1) or (kind == "lye_concentration" and value > 50):
        raise Refused(
            f"{source.place('water', 0, kind)}: that is less water than the alkali weighs, and it would not "
            "dissolve; write per_alkali = 1.0 or lye_concentration = 50 at the least (2.0 or 33 are usual)."
        )
    return WaterRule(kind, round(value * (WHOLE_PPM if kind == "per_alkali" else 10_000)))


def _soap_lines(source: RecipeFile, process: str) -> tuple[RecipeLine, ...]:
    fats = [_fat(source, part, index) for index, part in enumerate(source.tables("fat"))]
    if not fats:
        raise source.bad("", 0, "a soap needs fats; write a [[fat]] part for each.")
    _check_fats(source, fats)
    extras = [*_extras(source, "additive", process), *_extras(source, "fragrance", process)]
    lye = {
        "with the lye": (
            RecipeLine("liquid", source.word(source.one("water"), "material", "water"), "with the lye"),
            RecipeLine("alkali", source.word(source.one("alkali"), "material", "alkali"), "with the lye"),
        )
    }
    in_order = [
        line
        for stage in _STAGES[process]
        for line in (*lye.get(stage, ()), *(one for one in extras if one.stage == stage))
    ]
    return (*fats, *in_order, *_packaging(source))


def _fat(source: RecipeFile, part: Part, index: int) -> RecipeLine:
    material = source.word(part, "material", "fat", index)
    share, mass = source.percent(part, "percent", "fat", index), source.mass(part, "grams", "fat", index)
    if (share is None) == (mass is None):
        raise source.bad("fat", index, f"{material} needs either percent = 40 or grams = 400.")
    return RecipeLine("fat", material, "in the fats", mass, share, note=source.maybe_word(part, "note", "fat", index))


def _check_fats(source: RecipeFile, fats: list[RecipeLine]) -> None:
    named: set[str] = set()
    for index, line in enumerate(fats):
        if line.material in named:
            raise source.bad("fat", index, f"{line.material} stands here a second time; write one [[fat]] for it.")
        named.add(line.material)
    shares = [line.share_ppm for line in fats if line.share_ppm is not None]
    if shares and len(shares) != len(fats):
        raise source.bad("fat", 0, "some fats are by percent and some by grams; write all one way.")
    if shares and (total := sum(shares)) != WHOLE_PPM:
        off = f"{abs(WHOLE_PPM - total) / 10_000:.7g} % is {'missing' if total < WHOLE_PPM else 'too much'}"
        raise Refused(f"{source.place('fat')}: the fats add up to {total / 10_000:.7g} %, not 100 %; {off}.")


def _other_lines(source: RecipeFile, process: str) -> tuple[RecipeLine, ...]:
    role = "part" if process == "infusion" else "rework"
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
    if process == "infusion":
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
    found = []
    stages = _STAGES[process]
    for index, part in enumerate(source.tables(table)):
        material = source.word(part, "material", table, index)
        if process == "rebatch":
            _grams(source, part, table, index, "5")
        share, mass = source.percent(part, "percent_of_fats", table, index), source.mass(part, "grams", table, index)
        if (share is None) == (mass is None):
            raise source.bad(table, index, f"{material} needs either percent_of_fats = 2 or grams = 20.")
        stage = source.maybe_word(part, "when", table, index) or stages[-1]
        if stage not in stages:
            allowed = " or ".join(f'"{one}"' for one in stages)
            raise source.bad(
                table, index, f"when = '{stage}' is no time in the {process} process; write {allowed}.", "when"
            )
        note = source.maybe_word(part, "note", table, index)
        found.append(RecipeLine(table, material, stage, mass, share, note=note))
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
