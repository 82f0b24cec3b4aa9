"""How much alkali the fats take, and what superfat the alkali weighed leaves."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from ledger.errors import BadInput, Refused

# Molar masses in g/mol, summed from the abridged standard atomic weights (IUPAC 2021):
# Na 22.98977, K 39.0983, O 15.999, H 1.008.
NAOH = Fraction("39.99677")
KOH = Fraction("56.1053")
WHOLE_PPM = 1_000_000
# No alkali sold for soap is half something else (NaOH at least 95 %, KOH at least 85 %: Ph. Eur. and USP, from
# memory, unverified); a figure below is a slip such as 0.99 for 99, which would ask for a hundredfold of lye.
LEAST_PURITY_PPM = 500_000


def check_purity(purity_ppm: int, *, what: str) -> None:
    """Raise BadInput for a purity that no alkali sold for soap has."""
    if not LEAST_PURITY_PPM <= purity_ppm <= WHOLE_PPM:
        raise BadInput(
            f"A purity of {purity_ppm / 10_000:g} % cannot be for {what}; it lies between 50 and 100 %, "
            "so write 99 for 99 %."
        )


@dataclass(frozen=True)
class FatCharge:
    """One fat in the pot: its mass, and its saponification value in mg KOH per kg of fat, as a range."""

    name: str
    mass_mg: int
    sap_low_mg_per_kg: int
    sap_high_mg_per_kg: int

    @property
    def demand_koh_mg(self) -> Fraction:
        """Pure KOH that saponifies all of it, at the middle of its range, in mg."""
        middle = Fraction(self.sap_low_mg_per_kg + self.sap_high_mg_per_kg, 2)
        return self.mass_mg * middle / 1_000_000


@dataclass(frozen=True)
class AlkaliNeed:
    """What to weigh: pure alkali and the product as sold, in mg."""

    kind: str
    demand_mg: int  # pure alkali that would saponify everything
    pure_mg: int  # pure alkali after the superfat was withheld
    weigh_mg: int  # of the product, at its purity


def _per_koh(kind: str) -> Fraction:
    if kind not in ("NaOH", "KOH"):
        raise BadInput(f"'{kind}' is not an alkali known here; write NaOH or KOH.")
    return NAOH / KOH if kind == "NaOH" else Fraction(1)


def demand(fats: Sequence[FatCharge], kind: str) -> Fraction:
    """Pure alkali, in mg, that saponifies all the fats: mass × saponification value × molar ratio."""
    return sum((fat.demand_koh_mg for fat in fats), Fraction(0)) * _per_koh(kind)


def alkali_for(fats: Sequence[FatCharge], *, kind: str, superfat_ppm: int, purity_ppm: int = WHOLE_PPM) -> AlkaliNeed:
    """The alkali to weigh for a superfat, the share of the fats' alkali demand that is withheld.

    Raises BadInput for a purity or a superfat that cannot be.
    """
    if not 0 < purity_ppm <= WHOLE_PPM:
        raise BadInput("The purity of the alkali lies above 0 and at most at 100 %.")
    if not 0 <= superfat_ppm < WHOLE_PPM:
        raise BadInput("The superfat lies between 0 and 100 %.")
    full = demand(fats, kind)
    if full <= 0:
        raise BadInput("There is nothing in the pot that takes up alkali; look at the fats and their values.")
    pure = full * (WHOLE_PPM - superfat_ppm) / WHOLE_PPM
    return AlkaliNeed(kind, round(full), round(pure), round(pure * WHOLE_PPM / purity_ppm))


def superfat_of(fats: Sequence[FatCharge], *, kind: str, alkali_mg: int, purity_ppm: int = WHOLE_PPM) -> int:
    """The superfat, in ppm, that so much alkali leaves; below zero is an excess of alkali.

    Raises BadInput when there is no fat.
    """
    full = demand(fats, kind)
    if full == 0:
        raise BadInput("There is no fat in the pot to reckon a superfat with.")
    return round((1 - Fraction(alkali_mg * purity_ppm, WHOLE_PPM) / full) * WHOLE_PPM)


@dataclass(frozen=True)
class WaterRule:
    """How the water is reckoned: per mass of alkali, by lye concentration, or as a share of the fats."""

    kind: str  # "per_alkali", "lye_concentration", "of_fats"
    value_ppm: int  # 2.0 : 1 is 2_000_000; 33 % is 330_000


def water_for(rule: WaterRule, *, alkali_mg: int, fats_mg: int) -> int:
    """The water in mg. Raises Refused when it is less than the alkali's own mass, which cannot dissolve."""
    share = Fraction(rule.value_ppm, WHOLE_PPM)
    if rule.kind == "per_alkali":
        water = alkali_mg * share
    elif rule.kind == "lye_concentration":
        water = alkali_mg * (1 - share) / share
    else:
        water = fats_mg * share
    if water < alkali_mg:
        # A saturated solution at room temperature holds a little over its own mass of NaOH
        # (about 1.1 g per g of water at 20 °C; from memory, unverified).
        raise Refused(
            "The recipe gives the alkali less water than its own weight, and it would not dissolve; "
            "raise the water to at least 1 : 1 (2 : 1 is usual)."
        )
    return round(water)


def lye_concentration(water_mg: int, alkali_mg: int) -> int:
    """Alkali as a share of the lye solution, in ppm."""
    return round(Fraction(alkali_mg * WHOLE_PPM, alkali_mg + water_mg))
