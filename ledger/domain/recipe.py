"""A recipe, read from her own small TOML file."""

import re
import tomllib
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from ledger.domain.names import near
from ledger.domain.quantity import parse_mass, show_share
from ledger.domain.saponification import WHOLE_PPM, WaterRule
from ledger.errors import BadInput, Refused

PROCESSES = ("cold", "hot", "infusion", "rebatch")
STAGES = ("in the fats", "with the lye", "at trace", "after the cook")
CURE_DAYS = 28  # common practice, no source: 4-6 weeks for cold process
USABLE_FROM_DAYS = 7  # hot process: 1-2 weeks until usable; common practice, no source
BEST_BEFORE_MONTHS = 24  # the maker's own figure until her durability assessment gives one; no source

_TOP: dict[str, Collection[str]] = {
    "": (
        "name", "code", "process", "superfat", "fats_total", "best_before_months",
        "alkali", "water", "fat", "additive", "fragrance", "part", "rework",
        "infusion", "cure", "mould", "work", "packaging",
    ),
    "alkali": ("material", "kind"),
    "water": ("material", "per_alkali", "lye_concentration", "of_fats", "grams"),
    "fat": ("material", "percent", "grams", "note"),
    "additive": ("material", "percent_of_fats", "grams", "when", "note"),
    "fragrance": ("material", "percent_of_fats", "grams", "when", "note"),
    "part": ("material", "grams", "note"),
    "rework": ("material", "grams", "note"),
    "infusion": ("yields", "days"),
    "cure": ("days", "usable_from_days"),
    "mould": ("name", "bars", "net_weight"),
    "work": ("minutes",),
    "packaging": ("material", "per_bar"),
}  # fmt: skip


@dataclass(frozen=True)
class RecipeLine:
    """One material of a recipe: by mass, by share of the fats (ppm), or by pieces per bar."""

    role: str  # fat, alkali, liquid, additive, fragrance, botanical, rework, packaging
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
    lines: tuple[RecipeLine, ...]  # in the order of work; the alkali and the water have no amount
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


class _Reader:
    """Walks a parsed file and knows where each part of it stands."""

    def __init__(self, text: str, file: str) -> None:
        self.file = file
        self.text = text
        try:
            self.data = tomllib.loads(text)
        except tomllib.TOMLDecodeError as error:
            place = re.search(r"\(at (.*)\)", str(error))
            what = re.sub(r" \(at .*\)", "", str(error))
            where = place[1] if place else "the end"
            raise BadInput(f"{file}, {where}: the file cannot be read ({what}).") from None

    def line_of(self, table: str, index: int = 0) -> str:
        """Where the n-th [table] or [[table]] stands, for a message."""
        seen = -1
        for number, line in enumerate(self.text.splitlines(), 1):
            if re.match(rf"\s*\[\[?\s*{re.escape(table)}\s*\]\]?", line):
                seen += 1
                if seen == index:
                    return f"{self.file}, line {number} [{table}]"
        return f"{self.file} [{table}]" if table else self.file

    def bad(self, table: str, index: int, message: str) -> BadInput:
        """A message with its place."""
        return BadInput(f"{self.line_of(table, index)}: {message}")

    def check_keys(self) -> None:
        """Raise BadInput for a word no recipe has, with what was probably meant."""
        for table, known in _TOP.items():
            for index, part in enumerate(self.tables(table) if table else [self.data]):
                for key in part:
                    if key not in known:
                        close = near(key, known, 1)
                        hint = f"did you mean {close[0]}?" if close else f"known: {', '.join(known)}."
                        raise self.bad(table, index, f"'{key}' is not known here; {hint}")

    def tables(self, name: str) -> list[dict[str, Any]]:
        """The tables of one name, whether written once or several times."""
        found = self.data.get(name, [])
        many = found if isinstance(found, list) else [found]
        if not all(isinstance(one, dict) for one in many):
            raise BadInput(f"{self.file}: '{name}' is a part of its own; write it as [{name}].")
        return many

    def one(self, name: str) -> dict[str, Any]:
        """The one table of a name, or an empty one."""
        found = self.tables(name)
        return found[0] if found else {}

    def text_of(self, part: Mapping[str, Any], key: str, table: str, index: int = 0) -> str:
        """A word that must be there."""
        value = part.get(key)
        if not isinstance(value, str) or not value.strip():
            raise self.bad(table, index, f'{key} is missing; write {key} = "…".')
        return value.strip()

    def number(self, part: Mapping[str, Any], key: str, table: str, index: int, top: int) -> Fraction | None:
        """A number above zero and at most `top`, exactly as written; None where it is left out."""
        value = part.get(key)
        if value is None:
            return None
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            raise self.bad(table, index, f"{key} is a number; write it without quotes or unit.")
        if not 0 < value <= top:
            raise self.bad(table, index, f"{key} = {value} cannot be; it lies above 0 and at most at {top}.")
        return Fraction(str(value))

    def whole(self, part: Mapping[str, Any], key: str, table: str, index: int = 0) -> int | None:
        """A whole number above zero; None where it is left out."""
        value = self.number(part, key, table, index, 100_000)
        if value is not None and value.denominator != 1:
            raise self.bad(table, index, f"{key} is a whole number.")
        return None if value is None else int(value)

    def mass(self, part: Mapping[str, Any], key: str, table: str, index: int) -> int | None:
        """Grams as a plain number, in mg; None where it is left out."""
        value = self.number(part, key, table, index, 1_000_000)
        return None if value is None else round(value * 1000)

    def weight(self, part: Mapping[str, Any], key: str, table: str) -> int | None:
        """A weight with its unit, in mg; None where it is left out."""
        if key not in part:
            return None
        value = part[key]
        if not isinstance(value, str):
            raise self.bad(table, 0, f'{key} is a weight with its unit, such as {key} = "1000 g".')
        try:
            return parse_mass(value, what=key)
        except BadInput as error:
            raise self.bad(table, 0, str(error)) from None


def read_recipe(text: str, *, file: str) -> Recipe:
    """Read a recipe file.

    Raises BadInput with file and line for what cannot be read, Refused when percentages do not add
    up to 100.
    """
    reader = _Reader(text, file)
    reader.check_keys()
    data = reader.data
    process = reader.text_of(data, "process", "")
    if process not in PROCESSES:
        raise reader.bad("", 0, f"process '{process}' is not known; write one of {', '.join(PROCESSES)}.")
    name = reader.text_of(data, "name", "")
    code = reader.text_of(data, "code", "")
    if not re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", code):
        raise reader.bad("", 0, f"code '{code}' takes small letters, digits and dashes only.")
    soap = process in ("cold", "hot")
    lines = _soap_lines(reader, process) if soap else _other_lines(reader, process)
    cure, mould, infusion = reader.one("cure"), reader.one("mould"), reader.one("infusion")
    superfat = data.get("superfat")
    if soap and (isinstance(superfat, bool) or not isinstance(superfat, (int, float))):
        raise reader.bad("", 0, "superfat is missing; write superfat = 5 (percent of the alkali withheld).")
    if isinstance(superfat, (int, float)) and not 0 <= superfat < 50:
        raise reader.bad("", 0, f"superfat = {superfat} cannot be; it lies between 0 and 50 percent.")
    fats_total = reader.weight(data, "fats_total", "")
    if soap and fats_total is None:
        by_grams = [line.mass_mg for line in lines if line.role == "fat"]
        if None in by_grams:
            raise reader.bad("", 0, 'fats are by percent, so write fats_total = "1000 g" as well.')
        fats_total = sum(mass for mass in by_grams if mass is not None)
    usable = reader.whole(cure, "usable_from_days", "cure")
    yields = reader.text_of(infusion, "yields", "infusion") if process == "infusion" else None
    return Recipe(
        name=name,
        code=code,
        process=process,
        lines=lines,
        superfat_ppm=round(Fraction(str(superfat)) * 10_000) if soap else None,
        fats_total_mg=fats_total,
        alkali_kind=_alkali_kind(reader) if soap else None,
        water_rule=_water_rule(reader) if soap else None,
        cure_days=reader.whole(cure, "days", "cure") or CURE_DAYS,
        usable_from_days=usable or (USABLE_FROM_DAYS if process == "hot" else None),
        best_before_months=reader.whole(data, "best_before_months", "") or BEST_BEFORE_MONTHS,
        mould=mould.get("name"),
        bars=reader.whole(mould, "bars", "mould"),
        net_weight_mg=reader.weight(mould, "net_weight", "mould"),
        work_minutes=reader.whole(reader.one("work"), "minutes", "work"),
        yields=yields,
        infusion_days=reader.whole(infusion, "days", "infusion"),
    )


def _alkali_kind(reader: _Reader) -> str:
    alkali = reader.one("alkali")
    kind = reader.text_of(alkali, "kind", "alkali")
    if kind not in ("NaOH", "KOH"):
        raise reader.bad("alkali", 0, f"kind '{kind}' is not an alkali known here; write NaOH or KOH.")
    return kind


def _water_rule(reader: _Reader) -> WaterRule:
    water = reader.one("water")
    rules = [key for key in ("per_alkali", "lye_concentration", "of_fats") if key in water]
    if len(rules) != 1:
        raise reader.bad("water", 0, "write one of per_alkali = 2.0, lye_concentration = 33 or of_fats = 38.")
    kind = rules[0]
    value = reader.number(water, kind, "water", 0, 20 if kind == "per_alkali" else 99)
    assert value is not None  # the key is there
    scale = WHOLE_PPM if kind == "per_alkali" else 10_000
    return WaterRule(kind, round(value * scale))


def _soap_lines(reader: _Reader, process: str) -> tuple[RecipeLine, ...]:
    fats = [_fat(reader, part, index) for index, part in enumerate(reader.tables("fat"))]
    if not fats:
        raise reader.bad("", 0, "a soap needs fats; write a [[fat]] part for each.")
    _check_percentages(reader, fats)
    late = "after the cook" if process == "hot" else "at trace"
    extras = _extras(reader, "additive", "at trace" if process == "cold" else late)
    scents = _extras(reader, "fragrance", late)
    lye = [
        RecipeLine("liquid", reader.text_of(reader.one("water"), "material", "water"), "with the lye"),
        RecipeLine("alkali", reader.text_of(reader.one("alkali"), "material", "alkali"), "with the lye"),
    ]

    def staged(stage: str) -> list[RecipeLine]:
        return [line for line in (*extras, *scents) if line.stage == stage]

    return (
        *fats,
        *staged("in the fats"),
        *lye,
        *staged("with the lye"),
        *staged("at trace"),
        *staged("after the cook"),
        *_packaging(reader),
    )


def _other_lines(reader: _Reader, process: str) -> tuple[RecipeLine, ...]:
    table = "part" if process == "infusion" else "rework"
    role = "part" if process == "infusion" else "rework"
    lines = []
    for index, part in enumerate(reader.tables(table)):
        mass = reader.mass(part, "grams", table, index)
        if mass is None:
            raise reader.bad(table, index, "grams is missing; write grams = 500.")
        material = reader.text_of(part, "material", table, index)
        lines.append(RecipeLine(role, material, "in the pot", mass, note=part.get("note")))
    if not lines:
        raise reader.bad("", 0, f"write a [[{table}]] part for each thing that goes in.")
    water = reader.one("water")
    if water:
        mass = reader.mass(water, "grams", "water", 0)
        if mass is None:
            raise reader.bad("water", 0, "here the water is by weight; write grams = 60.")
        lines.append(RecipeLine("liquid", reader.text_of(water, "material", "water"), "in the pot", mass))
    extras = (
        *_extras(reader, "additive", "in the pot"),
        *_extras(reader, "fragrance", "in the pot"),
    )
    for line in extras:
        if line.mass_mg is None:
            raise reader.bad(line.role, 0, f"{line.material} is by weight here; write grams = 5.")
    return (*lines, *extras, *_packaging(reader))


def _fat(reader: _Reader, part: Mapping[str, Any], index: int) -> RecipeLine:
    material = reader.text_of(part, "material", "fat", index)
    percent = reader.number(part, "percent", "fat", index, 100)
    mass = reader.mass(part, "grams", "fat", index)
    if (percent is None) == (mass is None):
        raise reader.bad("fat", index, f"{material} needs either percent = 40 or grams = 400.")
    share = None if percent is None else round(percent * 10_000)
    return RecipeLine("fat", material, "in the fats", mass, share, note=part.get("note"))


def _check_percentages(reader: _Reader, fats: list[RecipeLine]) -> None:
    shares = [line.share_ppm for line in fats if line.share_ppm is not None]
    if shares and len(shares) != len(fats):
        raise reader.bad("fat", 0, "some fats are by percent and some by grams; write all one way.")
    if shares and (total := sum(shares)) != WHOLE_PPM:
        off = show_share(abs(WHOLE_PPM - total), 2)
        raise Refused(
            f"{reader.line_of('fat')}: the fats add up to {show_share(total, 2)}, not 100 %; "
            f"{off} {'is missing' if total < WHOLE_PPM else 'is too much'}."
        )


def _extras(reader: _Reader, table: str, default_stage: str) -> list[RecipeLine]:
    found = []
    for index, part in enumerate(reader.tables(table)):
        material = reader.text_of(part, "material", table, index)
        percent = reader.number(part, "percent_of_fats", table, index, 100)
        mass = reader.mass(part, "grams", table, index)
        if (percent is None) == (mass is None):
            raise reader.bad(table, index, f"{material} needs either percent_of_fats = 2 or grams = 20.")
        stage = part.get("when", default_stage)
        if stage not in (*STAGES, default_stage):
            raise reader.bad(table, index, f"when = '{stage}' is not known; write one of {', '.join(STAGES)}.")
        share = None if percent is None else round(percent * 10_000)
        found.append(RecipeLine(table, material, stage, mass, share, note=part.get("note")))
    return found


def _packaging(reader: _Reader) -> list[RecipeLine]:
    return [
        RecipeLine(
            "packaging",
            reader.text_of(part, "material", "packaging", index),
            "packing",
            per_bar=reader.whole(part, "per_bar", "packaging", index) or 1,
        )
        for index, part in enumerate(reader.tables("packaging"))
    ]
