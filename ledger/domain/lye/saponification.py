"""How much alkali the fats take, and what superfat the alkali weighed leaves."""

from collections.abc import Iterable
from fractions import Fraction
from typing import Literal, NamedTuple

from ledger.errors import BadInput, Refused
from ledger.units.quantity import WHOLE_PPM
from ledger.units.words import AlkaliKind

# Molar masses in g/mol, summed from the abridged standard atomic weights (IUPAC 2021):
# Na 22.98977, K 39.0983, O 15.999, H 1.008.
NAOH = Fraction("39.99677")
KOH = Fraction("56.1053")
MOLAR_MASS: dict[AlkaliKind, Fraction] = {"NaOH": NAOH, "KOH": KOH}
MG_PER_KG = 1_000_000
# No alkali sold for soap is half something else (NaOH at least 95 %, KOH at least 85 %: Ph. Eur. and USP, from
# memory, unverified); a figure below is a slip such as 0.99 for 99, which would ask for a hundredfold of lye.
LEAST_PURITY_PPM = 500_000
# A stock lye is a solution: weaker than 5 % it would drown the dough, and above 60 % NaOH comes out of it again
# (a saturated solution holds a little over 50 % at 20 °C; from memory, unverified).
LEAST_STRENGTH_PPM, MOST_STRENGTH_PPM = 50_000, 600_000
WaterBy = Literal["per_alkali", "lye_concentration", "of_fats"]


def check_purity(purity_ppm: int, *, what: str, dissolved: bool = False) -> None:
    """Raise BadInput for a purity that no alkali sold for soap has, or a strength that no stock lye has."""
    if dissolved:
        if not LEAST_STRENGTH_PPM <= purity_ppm <= MOST_STRENGTH_PPM:
            raise BadInput(
                f"A strength of {purity_ppm / 10_000:g} % cannot be for {what}; a stock lye holds between 5 and 60 % "
                "of alkali, so write 50 for half and half."
            )
    elif not LEAST_PURITY_PPM <= purity_ppm <= WHOLE_PPM:
        raise BadInput(
            f"A purity of {purity_ppm / 10_000:g} % cannot be for {what}; it lies between 50 and 100 %, "
            "so write 99 for 99 %."
        )


class FatCharge(NamedTuple):
    """One fat in the pot: its mass, and its saponification value in mg KOH per kg of fat, as a range."""

    name: str
    mass_mg: int
    sap_low_mg_per_kg: int
    sap_high_mg_per_kg: int
    slow: bool = False  # of wax esters or sterols, in cold process: no certificate says how much of it turns to soap

    @property
    def sap_mg_per_kg(self) -> Fraction:
        """The middle of its range, which the lye is reckoned with."""
        return Fraction(self.sap_low_mg_per_kg + self.sap_high_mg_per_kg, 2)

    @property
    def demand_koh_mg(self) -> Fraction:
        """Pure KOH that saponifies all of it, at the middle of its range, in mg."""
        return self.mass_mg * self.sap_mg_per_kg / MG_PER_KG


class AlkaliCharge(NamedTuple):
    """One alkali in the jug, as weighed: its purity as a range (the same twice where one figure is known)."""

    name: str
    kind: AlkaliKind
    mass_mg: int
    purity_low_ppm: int
    purity_high_ppm: int

    @property
    def purity_ppm(self) -> Fraction:
        """The middle of its range, which the lye is reckoned with."""
        return Fraction(self.purity_low_ppm + self.purity_high_ppm, 2)

    @property
    def koh_mg(self) -> Fraction:
        """The pure KOH it is worth, mole for mole, in mg."""
        return self.mass_mg * self.purity_ppm / WHOLE_PPM * KOH / molar_mass(self.kind)


class AlkaliNeed(NamedTuple):
    """What to weigh of one alkali: pure, and the product as sold, in mg."""

    kind: AlkaliKind
    demand_mg: int  # pure alkali that would take up its share of everything
    pure_mg: int  # pure alkali after the superfat was withheld, and with what acids use up
    weigh_mg: int  # of the product, at its purity


def molar_mass(kind: AlkaliKind) -> Fraction:
    """The molar mass of an alkali in g/mol."""
    return MOLAR_MASS[kind]


def demand_koh(fats: Iterable[FatCharge]) -> Fraction:
    """Pure KOH, in mg, that saponifies all the fats: mass × saponification value."""
    return sum((fat.demand_koh_mg for fat in fats), Fraction(0))


def alkali_for(
    fats: Iterable[FatCharge],
    *,
    kind: AlkaliKind,
    superfat_ppm: int,
    share_ppm: int = WHOLE_PPM,
    purity_ppm: int | Fraction = WHOLE_PPM,
    acids_koh_mg: Fraction = Fraction(0),
) -> AlkaliNeed:
    """What to weigh of one alkali for a superfat, the share of the fats' alkali demand that is withheld.

    `share_ppm` is the share of the demand that this kind meets, mole for mole; `acids_koh_mg` the alkali, as
    KOH, to add for acids that use it up. Raises BadInput for a purity or a superfat that cannot be.
    """
    if not 0 < purity_ppm <= WHOLE_PPM:
        raise BadInput("The purity of the alkali lies above 0 and at most at 100 %.")
    if not 0 <= superfat_ppm < WHOLE_PPM:
        raise BadInput("The superfat lies between 0 and 100 %.")
    full = demand_koh(fats)
    if full <= 0:
        raise BadInput("There is nothing in the pot that takes up alkali; look at the fats and their values.")
    factor = molar_mass(kind) / KOH * Fraction(share_ppm, WHOLE_PPM)
    pure = (full * (WHOLE_PPM - superfat_ppm) / WHOLE_PPM + acids_koh_mg) * factor
    return AlkaliNeed(kind, round(full * factor), round(pure), round(pure * WHOLE_PPM / purity_ppm))


def superfat_of(
    fats: Iterable[FatCharge], alkalis: Iterable[AlkaliCharge], *, acids_koh_mg: Fraction = Fraction(0)
) -> int:
    """The superfat, in ppm, that so much alkali leaves once acids took theirs; below zero is too much alkali.

    Raises BadInput when there is no fat.
    """
    full = demand_koh(fats)
    if full == 0:
        raise BadInput("There is no fat in the pot to reckon a superfat with.")
    worth = sum((alkali.koh_mg for alkali in alkalis), Fraction(0)) - acids_koh_mg
    return round((1 - worth / full) * WHOLE_PPM)


class WaterRule(NamedTuple):
    """How the water is reckoned: per mass of alkali, by lye concentration, or as a share of the fats."""

    kind: WaterBy
    value_ppm: int  # 2.0 : 1 is 2_000_000; 33 % is 330_000


def water_for(rule: WaterRule, *, alkali_mg: int, fats_mg: int) -> int:
    """The water in mg for so much alkali (dry, as sold) and fat."""
    share = Fraction(rule.value_ppm, WHOLE_PPM)
    if rule.kind == "per_alkali":
        return round(alkali_mg * share)
    if rule.kind == "lye_concentration":
        return round(alkali_mg * (1 - share) / share)
    return round(fats_mg * share)


def check_dissolves(water_mg: int, alkali_mg: int) -> None:
    """Raise Refused for less water with the lye than the alkali's own mass, in which it cannot dissolve.

    A saturated solution at room temperature holds a little over its own mass of NaOH (about 1.1 g per g of
    water at 20 °C; from memory, unverified).
    """
    if water_mg < alkali_mg:
        raise Refused(
            "The recipe gives the alkali less water than its own weight, and it would not dissolve; "
            "raise the water with the lye to at least 1 : 1 (2 : 1 is usual)."
        )


def lye_concentration(water_mg: int, alkali_mg: int) -> int:
    """Alkali as a share of the lye solution, in ppm."""
    return round(Fraction(alkali_mg * WHOLE_PPM, alkali_mg + water_mg))
