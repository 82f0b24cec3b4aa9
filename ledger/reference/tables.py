"""The published figures, each with its source and whether the source was read."""

from collections.abc import Mapping
from fractions import Fraction
from functools import cache
from typing import NamedTuple

from ledger.domain.lye.fatty_acids import FattyAcid, FattyAcidRange
from ledger.domain.lye.saponification import KOH, MOLAR_MASS
from ledger.reference.shipped import table_rows
from ledger.units.words import AlkaliKind, checked


class ReferenceFat(NamedTuple):
    """One fat or wax; the range is the identity limit of the oil, not the error of any one lot."""

    key: str
    name: str
    sap_low_mg_per_kg: int
    sap_high_mg_per_kg: int
    ester: str  # "glyceride", "wax" or "acid": what the alkali sets free is glycerol, an alcohol, or water
    unsaponifiable_ppm: int | None  # the most its document allows
    inci: str | None
    inci_sodium: str | None
    inci_potassium: str | None
    source: str
    status: str  # "read", "read in a secondary text" or "memory"
    note: str
    aliases: tuple[str, ...]


class ReferenceAlkali(NamedTuple):
    """One alkali; its kind is NaOH or KOH."""

    key: str
    name: str
    kind: AlkaliKind
    inci: str
    note: str
    aliases: tuple[str, ...]


class ReferenceAcid(NamedTuple):
    """An acid that uses up alkali: mg KOH per kg of the pure acid, and the strength it is usually sold at."""

    key: str
    name: str
    formula: str
    koh_mg_per_kg: int
    strength_ppm: int | None  # None: it varies and must be given
    inci: str
    note: str
    aliases: tuple[str, ...]


class ReferenceLiquid(NamedTuple):
    """A liquid that stands for some of the water, with its share of water."""

    key: str
    name: str
    water_ppm: int
    density_mg_per_ml: int
    inci: str | None
    source: str
    status: str
    aliases: tuple[str, ...]


def _aliases(row: dict[str, str]) -> tuple[str, ...]:
    return tuple(word for word in row["aliases"].split(";") if word)


def percent_ppm(percent: str) -> int | None:
    """A share written in percent, in ppm; None where none is written."""
    return round(Fraction(percent) * 10_000) if percent else None


@cache
def fats() -> Mapping[str, ReferenceFat]:
    """Every fat, by its key."""
    return {
        row["key"]: ReferenceFat(
            key=row["key"],
            name=row["name"],
            sap_low_mg_per_kg=int(row["sap_low_mg_per_kg"]),
            sap_high_mg_per_kg=int(row["sap_high_mg_per_kg"]),
            ester=row["ester"],
            unsaponifiable_ppm=round(Fraction(row["unsaponifiable_g_per_kg"]) * 1000)
            if row["unsaponifiable_g_per_kg"]
            else None,
            inci=row["inci"] or None,
            inci_sodium=row["inci_sodium"] or None,
            inci_potassium=row["inci_potassium"] or None,
            source=f"{row['document']}; {row['source']}"
            if row["status"] != "memory"
            else f"{row['document']}, from memory, unverified",
            status=row["status"],
            note=row["note"],
            aliases=_aliases(row),
        )
        for row in table_rows("fats.csv")
    }


@cache
def _acid_values() -> Mapping[str, int]:
    return {row["key"]: int(row["low_mg_per_kg"]) for row in table_rows("acid_values.csv")}


def acid_value(key: str | None) -> int | None:
    """The least acid value of a published fat of wax esters or sterols, 0 where none is known; None for any other.

    In mg KOH per kg: free acid takes alkali at once, the esters of a wax only in hours of boiling.
    """
    fat = fats().get(key or "")
    return _acid_values().get(fat.key, 0) if fat and fat.ester == "wax" else None


@cache
def alkalis() -> Mapping[str, ReferenceAlkali]:
    """Both alkalis, by their key."""
    return {
        row["key"]: ReferenceAlkali(
            row["key"],
            row["name"],
            checked(row["kind"], MOLAR_MASS, what="an alkali"),
            row["inci"],
            row["note"],
            _aliases(row),
        )
        for row in table_rows("alkalis.csv")
    }


@cache
def acids() -> Mapping[str, ReferenceAcid]:
    """Every acid that uses up alkali, by its key; KOH per acid = acid groups × M(KOH) / M(acid)."""
    return {
        row["key"]: ReferenceAcid(
            key=row["key"],
            name=row["name"],
            formula=row["formula"],
            koh_mg_per_kg=round(int(row["protons"]) * KOH / Fraction(row["molar_mass"]) * 1_000_000),
            strength_ppm=percent_ppm(row["usual_strength_percent"]),
            inci=row["inci"],
            note=row["note"],
            aliases=_aliases(row),
        )
        for row in table_rows("acids.csv")
    }


@cache
def liquids() -> Mapping[str, ReferenceLiquid]:
    """Every liquid whose share of water is known, by its key."""
    found = {}
    for row in table_rows("liquids.csv"):
        water = percent_ppm(row["water_percent"])
        assert water is not None
        found[row["key"]] = ReferenceLiquid(
            row["key"],
            row["name"],
            water,
            round(Fraction(row["density_g_per_ml"]) * 1000),
            row["inci"] or None,
            row["source"],
            row["status"],
            _aliases(row),
        )
    return found


@cache
def fatty_acids() -> Mapping[str, FattyAcid]:
    """Every fatty acid, by its shorthand (C18:1), in the order of chain length."""
    return {row["acid"]: FattyAcid(row["name"], Fraction(row["molar_mass"])) for row in table_rows("acid_names.csv")}


@cache
def profiles() -> Mapping[str, tuple[FattyAcidRange, ...]]:
    """The published fatty-acid ranges of each fat that has them, by its key."""
    found: dict[str, list[FattyAcidRange]] = {}
    for row in table_rows("fatty_acids.csv"):
        low, high = percent_ppm(row["low_percent"]), percent_ppm(row["high_percent"])
        assert low is not None
        assert high is not None
        source = f"{row['document']}; {row['source']}"
        found.setdefault(row["fat"], []).append(FattyAcidRange(row["acid"], low, high, source, row["status"]))
    return {fat: tuple(ranges) for fat, ranges in found.items()}


Reference = ReferenceFat | ReferenceAlkali | ReferenceAcid | ReferenceLiquid
