"""From a recipe to grams: every line's target, and the lye for the fats actually in hand."""

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from typing import NamedTuple

from ledger.domain.lye.pot import Figures, Pot, open_acids
from ledger.domain.lye.saponification import AlkaliNeed, alkali_for, check_dissolves, lye_concentration, water_for
from ledger.domain.lye.uncertainty import SaferAdvice, safer
from ledger.domain.recipe.recipe import WITH_THE_LYE, Recipe, RecipeLine
from ledger.errors import BadInput, Refused
from ledger.units.money import share_out
from ledger.units.quantity import WHOLE_PPM
from ledger.units.scale import Scale
from ledger.units.words import AlkaliKind, Role

LEAST_FATS_MG, MOST_FATS_MG = 10_000, 100_000_000


class Target(NamedTuple):
    """One line with what it asks for: mg, or pieces for packaging."""

    line: RecipeLine
    target: int


class Charge(NamedTuple):
    """So much of one line, in mg, and what is known of what supplies it."""

    line: RecipeLine
    mass_mg: int
    figures: Figures


class Lye(NamedTuple):
    """The alkalis and the water for the fats in hand; masses in mg."""

    alkalis: tuple[AlkaliNeed, ...]
    fill_mg: int  # of the liquid that fills up the lye
    alkali_mg: int  # dry alkali, as sold
    water_mg: int  # in all the liquids and a stock lye together
    with_lye_water_mg: int  # of that, what the alkali dissolves in
    concentration_ppm: int  # each way of stating the water, as the others
    water_per_alkali_thousandths: int
    water_of_fats_ppm: int


def targets(recipe: Recipe, *, fats_total_mg: int | None = None, bars: int | None = None) -> tuple[Target, ...]:
    """Every line but the alkali and the water of a soap, for the recipe's own size or another.

    Fats by percentage add up to the total exactly; everything else scales with the fats. An infusion, a blend
    or a rebatch is made at the size it is written. Raises BadInput for a size that cannot be.
    `bars` is how many to wrap, where she said so.
    """
    own = recipe.fats_total_mg
    total = fats_total_mg if fats_total_mg is not None else own
    if own is None:
        if fats_total_mg is not None:
            raise BadInput(f"{recipe.name} has no fats to scale by; it is made at the size it is written.")
        scale = Fraction(1)
    else:
        assert total is not None
        if not LEAST_FATS_MG <= total <= MOST_FATS_MG:
            raise BadInput("The fats of a batch lie between 10 g and 100 kg; write for example 1000 g.")
        scale = Fraction(total, own)
    fats = recipe.of_role("fat")
    weights = [line.share_ppm or line.mass_mg or 0 for line in fats]
    fat_masses = dict(zip(fats, share_out(total, weights) if fats and total else [], strict=True))
    pieces = round((recipe.bars or 0) * scale) if bars is None else bars
    portions = {one.name: Fraction(one.share_ppm, WHOLE_PPM) for one in recipe.portions}
    found = []
    for line in recipe.lines:
        if line.role == "fat":
            found.append(Target(line, fat_masses[line]))
        elif line.role == "packaging":
            found.append(Target(line, (line.per_bar or 1) * pieces))
        elif line.share_ppm is not None:
            part = portions[line.portion] if line.portion else Fraction(1)
            found.append(Target(line, round((total or 0) * Fraction(line.share_ppm, WHOLE_PPM) * part)))
        elif line.mass_mg is not None:
            found.append(Target(line, round(line.mass_mg * scale)))
    return tuple(found)


def scaled_bars(recipe: Recipe, fats_total_mg: int | None) -> int | None:
    """The bars to expect at another size."""
    if recipe.bars is None or recipe.fats_total_mg is None or fats_total_mg is None:
        return recipe.bars
    return round(Fraction(recipe.bars * fats_total_mg, recipe.fats_total_mg))


def acids_to_match(charges: Iterable[Charge]) -> Fraction:
    """The alkali, as mg KOH, to add for acids where the recipe says so."""
    return sum((one.figures.acid_koh_mg(one.mass_mg) for one in charges if one.line.add_alkali), Fraction(0))


def alkali_need(recipe: Recipe, charges: Sequence[Charge], alkali: Figures) -> AlkaliNeed:
    """What to weigh of one alkali for its share of the demand; raises like `alkali_for`."""
    assert recipe.superfat_ppm is not None
    assert alkali.alkali_kind
    fats = [
        one.figures.fat(one.mass_mg, recipe.process) for one in charges if one.line.role == "fat" and one.line.in_demand
    ]
    return alkali_for(
        fats,
        kind=alkali.alkali_kind,
        share_ppm=recipe.alkali_shares_ppm[alkali.alkali_kind],
        superfat_ppm=recipe.superfat_ppm,
        purity_ppm=alkali.alkali(0).purity_ppm,
        acids_koh_mg=acids_to_match(charges),
    )


def lye_for(recipe: Recipe, charges: Sequence[Charge], *, alkalis: Mapping[AlkaliKind, Figures], fill: Figures) -> Lye:
    """The alkalis and the water for what is in hand; `charges` are all the other lines, `alkalis` goes by kind.

    The water rule counts water alone: what milk, juice or a stock lye bring is taken off what is filled up.
    Raises BadInput for KOH without a purity or a fat without a value, Refused for too little water.
    """
    assert recipe.water_rule
    needs = tuple(alkali_need(recipe, charges, figures) for figures in alkalis.values())
    brought = sum((_dissolved(alkalis[need.kind], need.weigh_mg) for need in needs), Fraction(0))
    dry = sum(need.weigh_mg for need in needs) - round(brought)
    fats_mg = sum(one.mass_mg for one in charges if one.line.role == "fat")
    water = water_for(recipe.water_rule, alkali_mg=dry, fats_mg=fats_mg)
    liquids = [one for one in charges if one.line.role == "liquid" or one.figures.acid_koh_mg_per_kg is not None]
    others = sum((one.figures.water_mg(one.mass_mg) for one in liquids), Fraction(0))
    later = sum((one.figures.water_mg(one.mass_mg) for one in liquids if one.line.stage != WITH_THE_LYE), Fraction(0))
    short = water - round(others + brought)
    if short < 0:
        raise Refused(
            f"The other liquids bring {round(-short / 1000)} g more water than the recipe asks for; take less of "
            "them, or raise the water."
        )
    fill_mg = round(short / fill.water_mg(1)) if fill.water_mg(1) else 0
    check_dissolves(water - round(later), dry)
    return Lye(
        needs,
        fill_mg,
        dry,
        water,
        water - round(later),
        lye_concentration(water, dry),
        round(Fraction(water * 1000, dry)),
        round(Fraction(water * WHOLE_PPM, fats_mg)),
    )


def _dissolved(figures: Figures, mass_mg: int) -> Fraction:
    """The water that an alkali brings: none in flakes, the rest of a stock lye."""
    return Fraction(0) if figures.water_ppm is None else figures.water_mg(mass_mg)


class Formulation(NamedTuple):
    """A recipe worked out for what is in hand: its lye, and the pot that it makes."""

    recipe: Recipe
    charges: tuple[Charge, ...]
    alkalis: Mapping[AlkaliKind, Figures]  # by kind
    fill: Figures
    scale_step_mg: int
    lye: Lye
    pot: Pot

    def at(self, superfat_ppm: int) -> "Formulation":
        """The same with another superfat."""
        other = self.recipe._replace(superfat_ppm=superfat_ppm)
        return formulate(other, self.charges, alkalis=self.alkalis, fill=self.fill, scale_step_mg=self.scale_step_mg)

    def certified(self, name: str) -> "Formulation":
        """The same with one figure on a certificate for the fat or alkali of that name, in the middle of its range."""
        charges = [
            one._replace(figures=one.figures.certified()) if one.figures.name == name else one for one in self.charges
        ]
        alkalis = {
            kind: figures.certified() if figures.name == name else figures for kind, figures in self.alkalis.items()
        }
        return formulate(self.recipe, charges, alkalis=alkalis, fill=self.fill, scale_step_mg=self.scale_step_mg)

    def advice(self) -> SaferAdvice:
        """What would bring likely low above zero."""
        assert self.recipe.superfat_ppm is not None
        return safer(
            lambda superfat: self.at(superfat).pot.lowest(),
            self.recipe.superfat_ppm,
            self.pot.lowest(),
            lambda name: self.certified(name).pot.lowest(),
        )


def formulate(
    recipe: Recipe,
    charges: Sequence[Charge],
    *,
    alkalis: Mapping[AlkaliKind, Figures],
    fill: Figures,
    scale_step_mg: int,
) -> Formulation:
    """Work a recipe out for what is in hand; raises like `lye_for`."""
    lye = lye_for(recipe, charges, alkalis=alkalis, fill=fill)
    fats = [one for one in charges if one.line.role == "fat"]
    pot = Pot(
        recipe.process,
        tuple(one.figures.fat(one.mass_mg, recipe.process) for one in fats if not one.line.after_cook),
        tuple(one.figures.fat(one.mass_mg, recipe.process) for one in fats if one.line.after_cook),
        tuple(alkalis[need.kind].alkali(need.weigh_mg) for need in lye.alkalis),
        sum((one.figures.acid_koh_mg(one.mass_mg) for one in charges), Fraction(0)),
        scale_step_mg,
        open_acids((one.figures, one.mass_mg) for one in charges),
    )
    return Formulation(recipe, tuple(charges), alkalis, fill, scale_step_mg, lye, pot)


def tolerance(role: Role, target: int, *, scale: Scale = Scale()) -> tuple[int, int]:
    """OK from and to, in mg: 1 % for fats and water, 0.5 % for the alkali, 5 % for the rest.

    Never narrower than the scale can show (common practice, no source), and between weights that it reads. The
    alkali's own upper limit is the target plus one step: too much is the dangerous side.
    """
    if role == "packaging":
        return target, target
    share = {"fat": 100, "liquid": 100, "alkali": 200, "rework": 100, "part": 100}.get(role, 20)
    room = max(scale.step_mg, target // share)
    high = target + (scale.step_mg if role == "alkali" else room)
    return scale.inside(max(0, target - room), high, target)
