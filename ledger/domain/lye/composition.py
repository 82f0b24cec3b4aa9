"""What the soap is made of, by mass balance: what went in, what the lye made of it, and what dries away."""

from collections.abc import Iterable
from fractions import Fraction
from functools import lru_cache
from typing import Literal, NamedTuple

from ledger.domain.lye.saponification import KOH, MG_PER_KG, molar_mass
from ledger.errors import BadInput
from ledger.units.money import share_out
from ledger.units.quantity import WHOLE_PPM
from ledger.units.words import AlkaliKind, Process, UsedAs

# g/mol. A triglyceride and three alkalis give three soaps and one glycerol; a free acid or any other acid and one
# alkali give a salt and one water; a wax and one alkali give a soap and an alcohol, counted with the soap.
GLYCEROL = Fraction("92.094")
WATER = Fraction("18.015")
# The share of its water that a covered pot loses in a hot-process cook. Common practice, no source; a pot weighed
# before and after the cook replaces it.
COOK_LOSS_PPM = 100_000


class FatIn(NamedTuple):
    """A fat that went in: mg, its saponification value in mg KOH per kg, and what it is an ester of."""

    name: str
    mass_mg: int
    sap_mg_per_kg: Fraction
    ester: str = "glyceride"  # or "wax", or "acid"
    held_back: bool = False


class AlkaliIn(NamedTuple):
    """An alkali that went in: mg as weighed, the pure share, and the water it brought (a stock lye's)."""

    kind: AlkaliKind
    mass_mg: int
    purity_ppm: Fraction
    water_mg: Fraction = Fraction(0)


class OtherIn(NamedTuple):
    """Anything else: mg, its water, and the KOH it uses up as an acid, in mg."""

    name: str
    role: UsedAs
    mass_mg: int
    water_mg: Fraction = Fraction(0)
    acid_koh_mg: Fraction = Fraction(0)


class InTheSoap(NamedTuple):
    """One thing the soap holds, in mg."""

    what: str  # soap, glycerol, fat, alkali, salt, water, rest of the alkali, additive, fragrance ...
    name: str
    mass_mg: int


Dried = Literal["as weighed", "before drying", "at the cut", "after the cure", "at its driest", "dried"]


class Composition(NamedTuple):
    """All that is in the pot or the bar at one stage; the masses add up exactly."""

    stage: Dried
    parts: tuple[InTheSoap, ...]

    @property
    def mass_mg(self) -> int:
        """The whole."""
        return sum(one.mass_mg for one in self.parts)

    def of(self, what: str) -> int:
        """The mass of one kind of thing."""
        return sum(one.mass_mg for one in self.parts if one.what == what)


class Charged(NamedTuple):
    """Everything that went into one soap."""

    process: Process
    fats: tuple[FatIn, ...]
    alkalis: tuple[AlkaliIn, ...]
    others: tuple[OtherIn, ...]

    @property
    def mass_mg(self) -> int:
        """All that was weighed in."""
        parts: list[FatIn | AlkaliIn | OtherIn] = [*self.fats, *self.alkalis, *self.others]
        return sum(one.mass_mg for one in parts)


def as_weighed(charged: Charged) -> Composition:
    """What is in the pot before anything has reacted."""
    parts: list[tuple[str, str, Fraction]] = [("fat", one.name, Fraction(one.mass_mg)) for one in charged.fats]
    water = Fraction(0)
    for alkali in charged.alkalis:
        water += alkali.water_mg
        parts.append(("alkali", alkali.kind, alkali.mass_mg - alkali.water_mg))
    for other in charged.others:
        water += other.water_mg
        parts.append((other.role, other.name, other.mass_mg - other.water_mg))
    parts.append(("water", "water", water))
    return _composition("as weighed", parts, charged.mass_mg)


@lru_cache(maxsize=256)  # one answer about a batch asks for it several times: its allergens, its weight, its water
def reacted(charged: Charged) -> Composition:
    """What the lye makes of it once it has met all it can: mass in equals mass out.

    Acids take their alkali first. In cold process a share of every fat is left; in hot process a fat held back
    stays as it is, unless the pot still holds alkali for it. Glycerol: 92.094 / (3 × M(MOH)) g per g of alkali.
    """
    worth: dict[AlkaliKind, Fraction] = {}
    for one in charged.alkalis:  # a line may be split over two lots of one alkali
        pure = one.mass_mg * one.purity_ppm / WHOLE_PPM
        worth[one.kind] = worth.get(one.kind, Fraction(0)) + pure * KOH / molar_mass(one.kind)
    total = sum(worth.values(), Fraction(0))
    share = {kind: part / total if total else Fraction(0) for kind, part in worth.items()}
    acids = sum((one.acid_koh_mg for one in charged.others), Fraction(0))
    to_acids = min(acids, total)
    left = total - to_acids
    parts: list[tuple[str, str, Fraction]] = []
    water = Fraction(0)
    cooking = [one for one in charged.fats if not (one.held_back and charged.process == "hot")]
    later = [one for one in charged.fats if one not in cooking]
    for fats in (cooking, later):
        demand = sum((one.mass_mg * one.sap_mg_per_kg / MG_PER_KG for one in fats), Fraction(0))
        used = min(left, demand)
        left -= used
        for fat in fats:
            made, formed = _saponified(fat, used / demand if demand else Fraction(0), share)
            parts += made
            water += formed
    for kind, part in share.items():
        parts.append(("alkali left over", kind, left * part * molar_mass(kind) / KOH))
    for alkali in charged.alkalis:
        pure = alkali.mass_mg * alkali.purity_ppm / WHOLE_PPM
        parts.append(("rest of the alkali", alkali.kind, alkali.mass_mg - pure - alkali.water_mg))
        water += alkali.water_mg
    for other in charged.others:
        took = other.acid_koh_mg / acids * to_acids if acids else Fraction(0)
        base = sum((took * part * molar_mass(kind) / KOH for kind, part in share.items()), Fraction(0))
        formed = took / KOH * WATER
        water += other.water_mg + formed
        name = f"salt of {other.name}" if took else other.name
        parts.append(("salt" if took else other.role, name, other.mass_mg - other.water_mg + base - formed))
    parts.append(("water", "water", water))
    return _composition("before drying", parts, charged.mass_mg)


def soap_of(fat: str, kind: AlkaliKind) -> str:
    """What the soap of a fat with one alkali is called in a composition."""
    return f"{'sodium' if kind == 'NaOH' else 'potassium'} soap of {fat}"


def _saponified(
    fat: FatIn, fraction: Fraction, share: dict[AlkaliKind, Fraction]
) -> tuple[list[tuple[str, str, Fraction]], Fraction]:
    """The soaps and glycerol of one fat of which a fraction reacts, what is left of it, and the water set free."""
    parts: list[tuple[str, str, Fraction]] = []
    glycerol = water = Fraction(0)
    gone = fat.mass_mg * fraction
    for kind, part in share.items():
        alkali = gone * part * fat.sap_mg_per_kg / MG_PER_KG * molar_mass(kind) / KOH
        moles = alkali / molar_mass(kind)
        freed = moles * GLYCEROL / 3 if fat.ester == "glyceride" else Fraction(0)
        formed = moles * WATER if fat.ester == "acid" else Fraction(0)
        parts.append(
            (
                "soap",
                soap_of(fat.name, kind),
                gone * part + alkali - freed - formed,
            )
        )
        glycerol += freed
        water += formed
    parts.append(("glycerol", "glycerol", glycerol))
    parts.append(("fat", fat.name, fat.mass_mg - gone))
    return parts, water


def _composition(stage: Dried, parts: Iterable[tuple[str, str, Fraction]], whole: int) -> Composition:
    """Equal names merged and rounded to whole milligrams that add up to the whole."""
    merged: dict[tuple[str, str], Fraction] = {}
    for what, name, mass in parts:
        merged[what, name] = merged.get((what, name), Fraction(0)) + mass
    masses = share_out(whole, [round(mass * MG_PER_KG) for mass in merged.values()])
    found = [InTheSoap(what, name, mass) for (what, name), mass in zip(merged, masses, strict=True)]
    return Composition(stage, tuple(one for one in found if one.mass_mg))


def without_water(composition: Composition, lost_mg: int, *, stage: Dried) -> Composition:
    """The same after so much water is gone. Raises BadInput for more than it holds."""
    if lost_mg > composition.of("water"):
        raise BadInput("More water is gone than there was; look at the weights of the pot again.")
    parts = [one._replace(mass_mg=one.mass_mg - lost_mg) if one.what == "water" else one for one in composition.parts]
    return Composition(stage, tuple(parts))


def dried_to(composition: Composition, water_ppm: int, *, stage: Dried) -> Composition:
    """The same with so much of it water; one that is drier already stays as it is."""
    dry = composition.mass_mg - composition.of("water")
    wanted = round(Fraction(dry * water_ppm, WHOLE_PPM - water_ppm))
    return without_water(composition, max(composition.of("water") - wanted, 0), stage=stage)
