"""What a recipe says of its lye: superfat, alkalis, water, and how much fat it is for."""

from typing import get_args

from ledger.domain.lye.saponification import MOLAR_MASS, WaterBy, WaterRule
from ledger.domain.recipe.file import RecipeFile
from ledger.domain.recipe.recipe import RecipeLine
from ledger.errors import Refused
from ledger.units.quantity import WHOLE_PPM, show_mass
from ledger.units.words import AlkaliKind, known


def read_superfat(source: RecipeFile) -> int:
    """The superfat in ppm. Raises BadInput where it is missing."""
    value = source.head.number("superfat", 49, least=0)
    if value is None:
        raise source.head.bad("superfat is missing; write superfat = 5 (percent of the alkali withheld).")
    return round(value * 10_000)


def read_fats_total(source: RecipeFile, lines: tuple[RecipeLine, ...]) -> int:
    """All the fats in mg, as stated or as they add up. Raises BadInput where that differs or is missing."""
    stated = source.head.weight("fats_total")
    masses = [line.mass_mg for line in lines if line.role == "fat" and line.mass_mg is not None]
    if not masses:
        if stated is None:
            raise source.head.bad('fats are by percent, so write fats_total = "1000 g" as well.')
        return stated
    if stated is not None and stated != sum(masses):
        raise source.head.bad(
            f"the fats add up to {show_mass(sum(masses))}; write that, or leave it out.", "fats_total"
        )
    return sum(masses)


def read_alkali_shares(source: RecipeFile) -> dict[AlkaliKind, int]:
    """Which share of the demand each alkali meets; one alone meets all of it."""
    parts = source.parts("alkali")
    shares: dict[AlkaliKind, int] = {}
    for part in parts:
        written = part.word("kind")
        kind = known(written, MOLAR_MASS)
        if kind is None:
            raise part.bad(f"kind '{written}' is not an alkali known here; write NaOH or KOH.", "kind")
        if kind in shares:
            raise part.bad(f"{kind} stands here a second time; write one [[alkali]] for it.")
        share = part.share("percent_of_demand")
        if share is None and len(parts) > 1:
            raise part.bad(
                "with two alkalis each says which share of the fats' demand it meets, mole for mole; "
                "write percent_of_demand = 90."
            )
        shares[kind] = WHOLE_PPM if share is None else share
    if not shares:
        raise source.head.bad('alkali is missing; write [alkali] with material = "…" and kind = "NaOH".')
    if sum(shares.values()) != WHOLE_PPM:
        total = sum(shares.values()) / 10_000
        raise Refused(f"{parts[0].place()}: the alkalis meet {total:.7g} % of the demand, not 100 %.")
    return shares


def read_water_rule(source: RecipeFile) -> WaterRule:
    """How the water is reckoned. Raises BadInput for no rule or several, Refused for less than the alkali weighs."""
    water = source.one("water")
    rules = [key for key in get_args(WaterBy) if key in water.data]
    if len(rules) != 1 or "grams" in water.data:
        raise water.bad("write one of per_alkali = 2.0, lye_concentration = 33 or of_fats = 38.")
    kind: WaterBy = rules[0]
    value = water.number(kind, 20 if kind == "per_alkali" else 99)
    assert value is not None  # the key is there
    if (kind == "per_alkali" and value < 1) or (kind == "lye_concentration" and value > 50):
        raise Refused(
            f"{water.place(kind)}: that is less water than the alkali weighs, and it would not "
            "dissolve; write per_alkali = 1.0 or lye_concentration = 50 at the least (2.0 or 33 are usual)."
        )
    return WaterRule(kind, round(value * (WHOLE_PPM if kind == "per_alkali" else 10_000)))
