"""Recipes of any shape, worked out, and the textbook formulae that reckon their lye again."""

from fractions import Fraction

from hypothesis import strategies as st
from recipes import fat, material, part, worked

from ledger.domain.bench.correction import InPot
from ledger.domain.recipe.formulate import Formulation
from ledger.views.material.figures import figures_of
from ledger.views.recipe.recipe import RecipeSheet

KOH, MOLES = Fraction("56.1053"), {"NaOH": Fraction("39.99677"), "KOH": Fraction("56.1053")}
FAT = st.tuples(st.integers(150_000, 270_000), st.integers(0, 40_000), st.integers(1_000, 9_000))


@st.composite
def recipes(draw: st.DrawFn, acids: bool = True) -> RecipeSheet:
    """Up to eight fats, one or two alkalis, acids, milk, fats held back; at least 8 kg, so that a mg is little."""
    process = draw(st.sampled_from(["cold", "hot"]))
    text, cards = 'water = {material = "water", per_alkali = 2.5}', [material("water", "liquid")]
    share = draw(st.sampled_from([None, None, 1, 35, 99]))
    kinds = ["NaOH", "KOH"] if share else [draw(st.sampled_from(["NaOH", "KOH"]))]
    for kind in kinds:
        purity = draw(st.integers(*{"NaOH": (950_000, 1_000_000), "KOH": (850_000, 1_000_000)}[kind]))
        cards.append(material(kind, "alkali", alkali_kind=kind, purity_ppm=purity))
        met = None if share is None else share if kind == "NaOH" else 100 - share
        text += part("alkali", material=kind, kind=kind, percent_of_demand=met)
    for index, (low, width, grams) in enumerate(draw(st.lists(FAT, min_size=1, max_size=8))):
        held = index > 0 and draw(st.booleans())
        when, counted = {"cold": "at trace", "hot": "after the cook"}[process], draw(st.booleans())
        cards.append(fat(f"fat {index}", low, low + width))
        text += part(
            "fat", material=f"fat {index}", grams=grams if index else 8_000 + grams, when=when if held else None,
            in_demand=counted if held else None,
        )  # fmt: skip
    for name in draw(st.lists(st.sampled_from(["citric", "lactic"]), max_size=2, unique=True)) if acids else []:
        strength = draw(st.integers(500_000, 1_000_000))
        cards.append(material(name, "additive", acid_koh_mg_per_kg=876_084, purity_ppm=strength))
        text += part("additive", material=name, grams=draw(st.integers(1, 300)), add_alkali=draw(st.booleans()))
    if draw(st.booleans()):
        cards.append(material("milk", "liquid", water_ppm=870_000))
        text += part("liquid", material="milk", grams=draw(st.integers(1, 500)))
    return worked(text, *cards, process=process, superfat=draw(st.integers(0, 30)))


def lines_of(sheet: RecipeSheet, *, logged: bool = True) -> tuple[InPot, ...]:
    """Its lines as a batch weighs them, all at their targets; the alkali is still to be weighed unless `logged`."""
    return tuple(
        InPot(
            number, one.line.role, one.line.material, one.line.stage,
            bool(one.line.add_alkali) if one.line.role == "additive" else one.line.in_demand,
            one.target, one.target, logged or one.line.role != "alkali", figures_of(sheet.materials[one.line.material]),
        )
        for number, one in enumerate(sheet.targets, 1)
    )  # fmt: skip


def koh(one: InPot) -> Fraction:
    """What a line takes (a fat, an acid) or brings (an alkali) of pure KOH, in mg: by the textbook formulae."""
    figures, mass = one.figures, Fraction(one.mass_mg)
    if one.role == "fat":
        return mass * ((figures.sap_low_mg_per_kg or 0) + (figures.sap_high_mg_per_kg or 0)) / 2 / 1_000_000
    if one.role == "alkali":
        return mass * (figures.purity_low_ppm or 0) / 1_000_000 * KOH / MOLES[figures.alkali_kind or ""]
    acid = Fraction(figures.acid_koh_mg_per_kg or 0) / 1_000_000
    return mass * (figures.purity_low_ppm or 0) / 1_000_000 * acid


def total(lines: tuple[InPot, ...], role: str, *, counted: bool = False) -> Fraction:
    """The KOH of all lines of a role, or of those that the lye is reckoned for."""
    return sum((koh(one) for one in lines if one.role == role and (one.in_demand or not counted)), Fraction(0))


def superfat_ppm(lines: tuple[InPot, ...]) -> float:
    """Worked back over what the lye is reckoned for: 1 - (alkali - its acids) / demand of its fats."""
    worth = total(lines, "alkali") - total(lines, "additive", counted=True)
    return float((1 - worth / total(lines, "fat", counted=True)) * 1_000_000)


def formulation(sheet: RecipeSheet) -> Formulation:
    """What was worked out."""
    assert sheet.formulation is not None
    return sheet.formulation
