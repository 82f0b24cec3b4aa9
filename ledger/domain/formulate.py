"""From a recipe to grams: every line's target, and the lye for the fats actually in hand."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from ledger.domain.money import share_out
from ledger.domain.recipe import Recipe, RecipeLine
from ledger.domain.saponification import (
    WHOLE_PPM,
    AlkaliNeed,
    FatCharge,
    alkali_for,
    lye_concentration,
    water_for,
)
from ledger.errors import BadInput


@dataclass(frozen=True)
class Target:
    """One line with what it asks for: mg, or pieces for packaging."""

    line: RecipeLine
    target: int


@dataclass(frozen=True)
class Lye:
    """The alkali and the water for the fats in hand."""

    alkali: AlkaliNeed
    water_mg: int
    concentration_ppm: int
    water_per_alkali_thousandths: int


def targets(recipe: Recipe, *, fats_total_mg: int | None = None) -> tuple[Target, ...]:
    """Every line but the alkali and the water of a soap, for the recipe's own size or another.

    Fats by percentage add up to the total exactly; everything else scales with the fats. An infusion
    or a rebatch is made at the size it is written. Raises BadInput for a size that cannot be.
    """
    own = recipe.fats_total_mg
    total = fats_total_mg if fats_total_mg is not None else own
    if own is None:
        if fats_total_mg is not None:
            raise BadInput(f"{recipe.name} has no fats to scale by; it is made at the size it is written.")
        scale = Fraction(1)
    else:
        assert total is not None
        if not 10_000 <= total <= 100_000_000:
            raise BadInput("The fats of a batch lie between 10 g and 100 kg; write for example 1000 g.")
        scale = Fraction(total, own)
    fats = recipe.of_role("fat")
    weights = [line.share_ppm or line.mass_mg or 0 for line in fats]
    fat_masses = iter(share_out(total, weights) if fats and total else [])
    bars = round((recipe.bars or 0) * scale)
    found = []
    for line in recipe.lines:
        if line.role == "fat":
            found.append(Target(line, next(fat_masses)))
        elif line.role == "packaging":
            found.append(Target(line, (line.per_bar or 1) * bars))
        elif line.share_ppm is not None:
            found.append(Target(line, round(Fraction((total or 0) * line.share_ppm, WHOLE_PPM))))
        elif line.mass_mg is not None:
            found.append(Target(line, round(line.mass_mg * scale)))
    return tuple(found)


def scaled_bars(recipe: Recipe, fats_total_mg: int | None) -> int | None:
    """The bars to expect at another size."""
    if recipe.bars is None or recipe.fats_total_mg is None or fats_total_mg is None:
        return recipe.bars
    return round(Fraction(recipe.bars * fats_total_mg, recipe.fats_total_mg))


def lye_for(recipe: Recipe, fats: Sequence[FatCharge], *, purity_ppm: int | None) -> Lye:
    """The alkali and water for the fats in hand, at the purity of the alkali in hand.

    NaOH without a certificate is reckoned as pure, which errs towards more superfat. Raises BadInput
    for KOH without a purity, Refused for too little water.
    """
    assert recipe.alkali_kind
    assert recipe.water_rule
    assert recipe.superfat_ppm is not None
    if purity_ppm is None and recipe.alkali_kind == "KOH":
        raise BadInput("KOH needs its purity, which its certificate states; give it to the lot or material.")
    need = alkali_for(
        fats,
        kind=recipe.alkali_kind,
        superfat_ppm=recipe.superfat_ppm,
        purity_ppm=WHOLE_PPM if purity_ppm is None else purity_ppm,
    )
    water = water_for(recipe.water_rule, alkali_mg=need.weigh_mg, fats_mg=sum(fat.mass_mg for fat in fats))
    return Lye(
        need,
        water,
        lye_concentration(water, need.weigh_mg),
        round(Fraction(water * 1000, need.weigh_mg)),
    )


def tolerance(role: str, target: int) -> tuple[int, int]:
    """OK from and to, in mg: 1 % for fats and water, 0.5 % for the alkali, 5 % for the rest.

    Never narrower than a scale that reads 0.1 g can show (common practice, no source). The alkali's
    own upper limit is the target plus one step: too much is the dangerous side.
    """
    step = 100
    if role == "packaging":
        return target, target
    share = {"fat": 100, "liquid": 100, "alkali": 200, "rework": 100, "part": 100}.get(role, 20)
    room = max(step, target // share)
    return max(0, target - room), target + (step if role == "alkali" else room)
