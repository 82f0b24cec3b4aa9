"""One recipe version with everything its page shows: grams, lye, superfat, the soap it makes, its fatty acids."""

from collections.abc import Iterator
from dataclasses import dataclass

from ledger.domain.bench.steps import in_order, step_note
from ledger.domain.lye.fatty_acids import ProfileLine, profile_of
from ledger.domain.lye.pot import stated
from ledger.domain.lye.saponification import lye_concentration
from ledger.domain.lye.uncertainty import Superfat, all_low_warning
from ledger.domain.recipe.formulate import scaled_bars
from ledger.domain.recipe.mould import Mould
from ledger.domain.recipe.recipe import STEP_TIMES, WITH_THE_LYE, Recipe, held_back_words
from ledger.domain.recipe.scaling import Dough
from ledger.reference.tables import fatty_acids, profiles
from ledger.rows.opened import Rows
from ledger.rows.recipe import RecipeCard
from ledger.rows.settings import PrintedFrom, printed_from, settings
from ledger.units.quantity import show_mass, show_share, show_volume
from ledger.units.words import Process, Role, Units
from ledger.views.material.figures import figures_of
from ledger.views.recipe.composition import Stages, recipe_stages
from ledger.views.recipe.density import own_density
from ledger.views.recipe.hazards import hazards_of
from ledger.views.recipe.recipe import RecipeSheet, recipe_sheet
from ledger.views.recipe.skin import SkinCheck, recipe_skin_checks


@dataclass(frozen=True)
class PageLine:
    """One line of the recipe: mg, or pieces where `counted`; its share of the fats in ppm."""

    when: str
    role: Role
    material: str
    quantity: int
    counted: bool
    of_fats_ppm: int | None
    portion: str | None
    note: str | None
    caustic: bool  # an alkali, or a lye ready made
    figure: str | None  # the saponification value, purity or water it is reckoned with, and where it stands
    acid_in_jug: bool = False  # an acid that goes in with the lye


@dataclass(frozen=True)
class PageStep:
    """One step in her own words: its time among those of the work and as it is said, and what is read at it."""

    when: str
    time: str
    text: str
    note: str | None


@dataclass(frozen=True)
class LyePage:
    """The lye, its water stated each way; masses in mg."""

    alkali_mg: int
    water_mg: int
    concentration_ppm: int
    water_per_alkali_thousandths: int
    water_of_fats_ppm: int
    superfat: Superfat
    before_addition: Superfat | None  # hot process: of the pot, before a fat held back goes in
    fat_left_mg: int


@dataclass(frozen=True)
class RecipePage:
    """A recipe version at one size."""

    business: str
    units: Units
    name: str
    code: str
    version: int
    process: Process
    superfat_meant_ppm: int | None
    fats_mg: int
    lines: tuple[PageLine, ...]
    lye: LyePage | None
    dough_mg: int
    dough_ul: int | None
    density_mg_per_ml: int | None  # her own batches' where they gave one
    mould: str | None
    mould_ul: int | None
    bars: int | None
    net_weight_mg: int | None
    cure_days: int
    usable_from_days: int | None
    stages: Stages | None
    profile: tuple[ProfileLine, ...]
    no_profile: tuple[str, ...]  # fats without published fatty acids
    skin: tuple[SkinCheck, ...]
    warnings: tuple[str, ...]
    printed_from: PrintedFrom
    stated: tuple[str, ...] = ()  # whose each single figure of the lye is, and how far it is trusted
    steps: tuple[PageStep, ...] = ()  # in the order of work


def recipe_page(
    rows: Rows,
    card: RecipeCard,
    *,
    version: int | None = None,
    fats_mg: int | None = None,
    mould: Mould | None = None,
    bars: int | None = None,
    program: str,
) -> RecipePage:
    """Work out one version at its own size or for so much fat, in its own mould or another."""
    sheet = recipe_sheet(rows, card, version=version, fats_mg=fats_mg, bars=bars)
    recipe, own = sheet.recipe, settings(rows)
    stages = recipe_stages(sheet)
    density = own_density(rows, card.code)
    dough = dough_of(sheet)
    volume = dough.volume_ul(density) if dough else None
    into = mould or recipe.mould_size
    profile, missing = _profile(sheet)
    skin = recipe_skin_checks(rows, sheet, stages)
    return RecipePage(
        business=own.business,
        units=own.units,
        name=recipe.name,
        code=recipe.code,
        version=sheet.version,
        process=recipe.process,
        superfat_meant_ppm=recipe.superfat_ppm,
        fats_mg=sheet.fats_mg,
        lines=tuple(_lines(sheet)),
        lye=_lye(sheet, stages),
        dough_mg=sum(one.target for one in sheet.targets if one.line.role != "packaging"),
        dough_ul=volume,
        density_mg_per_ml=density,
        mould=_mould(recipe.mould if mould is None else None, into),
        mould_ul=into.volume_ul if into else None,
        bars=bars or scaled_bars(recipe, fats_mg),
        net_weight_mg=recipe.net_weight_mg,
        cure_days=recipe.cure_days,
        usable_from_days=recipe.usable_from_days,
        stages=stages,
        profile=profile,
        no_profile=missing,
        skin=skin,
        warnings=tuple(_warnings(sheet, volume, into, own.units, skin)),
        printed_from=printed_from(rows, program),
        steps=tuple(_steps(recipe, own.units)),
        stated=stated((figures_of(sheet.materials[one.line.material]) for one in sheet.targets), sheet.recipe.process),
    )


def _mould(name: str | None, into: Mould | None) -> str | None:
    """The mould by its name and its size."""
    if name and into:
        return f"{name} ({into.text})"
    return into.text if into else name


def dough_of(sheet: RecipeSheet) -> Dough | None:
    """The fresh dough of a recipe by its parts; None where no soap is made of fats and lye."""
    if sheet.formulation is None:
        return None
    lye = sheet.formulation.lye
    whole = sum(one.target for one in sheet.targets if one.line.role != "packaging")
    return Dough(sheet.fats_mg, lye.alkali_mg, lye.water_mg, whole - sheet.fats_mg - lye.alkali_mg - lye.water_mg)


def _lines(sheet: RecipeSheet) -> list[PageLine]:
    found = []
    for one in sheet.targets:
        card, counted = sheet.materials[one.line.material], one.line.role == "packaging"
        share = round(one.target * 1_000_000 / sheet.fats_mg) if sheet.fats_mg and not counted else None
        found.append(
            PageLine(
                when=one.line.stage,
                role=one.line.role,
                material=card.name,
                quantity=one.target,
                counted=counted,
                of_fats_ppm=share,
                portion=one.line.portion,
                note=one.line.note,
                caustic=card.alkali_kind is not None,
                figure=_figure(sheet, one.line.material),
                acid_in_jug=one.line.role == "additive"
                and card.acid_koh_mg_per_kg is not None
                and one.line.stage == WITH_THE_LYE,
            )
        )
    return found


def _steps(recipe: Recipe, units: Units) -> Iterator[PageStep]:
    said = {when: words for words, when in STEP_TIMES.items()}
    for one in in_order(recipe.steps, lambda step: step.when):
        yield PageStep(one.when, said.get(one.when, one.when), one.text, step_note(one, units))


def _figure(sheet: RecipeSheet, word: str) -> str | None:
    card = sheet.materials[word]
    figures = figures_of(card)
    if card.sap_low_mg_per_kg is not None:
        return f"saponification value {figures.sap_words()} mg KOH/g ({card.sap_source})"
    if card.alkali_kind:
        if card.purity_ppm is None:
            return "reckoned as pure, which errs towards more superfat"
        return f"{'strength' if card.dissolved else 'purity'} {figures.purity_words()}"
    if card.acid_koh_mg_per_kg is not None:
        if card.kind != "additive":
            return f"uses up {card.acid_koh_mg_per_kg / 1000:.4g} mg KOH per g (your own entry)"
        used = f"uses up {card.acid_koh_mg_per_kg / 1_000_000:.4g} g KOH per g of pure acid (by its formula)"
        return f"{used}; strength {figures.purity_words()}"
    if card.kind == "liquid" and card.water_ppm is not None:
        return f"water {card.water_ppm / 10_000:g} %"
    return None


def _lye(sheet: RecipeSheet, stages: Stages | None) -> LyePage | None:
    if sheet.formulation is None or stages is None:
        return None
    lye, pot = sheet.formulation.lye, sheet.formulation.pot
    return LyePage(
        alkali_mg=lye.alkali_mg,
        water_mg=lye.water_mg,
        concentration_ppm=lye.concentration_ppm,
        water_per_alkali_thousandths=lye.water_per_alkali_thousandths,
        water_of_fats_ppm=lye.water_of_fats_ppm,
        superfat=pot.superfat(),
        before_addition=pot.before_addition(),
        fat_left_mg=stages.cut.of("fat"),
    )


def _profile(sheet: RecipeSheet) -> tuple[tuple[ProfileLine, ...], tuple[str, ...]]:
    known, missing = [], []
    for one in sheet.targets:
        if one.line.role == "fat":
            card = sheet.materials[one.line.material]
            ranges = profiles().get(card.reference_key or "")
            if ranges:
                known.append((one.target, ranges))
            else:
                missing.append(card.name)
    return (profile_of(known, fatty_acids()) if known else ()), tuple(dict.fromkeys(missing))


def _warnings(
    sheet: RecipeSheet, dough_ul: int | None, mould: Mould | None, units: Units, skin: tuple[SkinCheck, ...]
) -> list[str]:
    found = lye_warnings(sheet, units)
    if mould and dough_ul and dough_ul * 100 > mould.volume_ul * 101:  # nearer than a hundredth nobody pours
        found.append(
            f"The dough, about {show_volume(dough_ul, units)}, does not fit the mould of "
            f"{show_volume(mould.volume_ul, units)}: about {show_volume(dough_ul - mould.volume_ul, units)} too much."
        )
    return found + [one.words for one in skin if one.verdict != "within"]


def lye_warnings(sheet: RecipeSheet, units: Units) -> list[str]:
    """What the maker should know of the lye before she begins, a sentence for each."""
    if sheet.formulation is None:
        return []
    pot, recipe, lye = sheet.formulation.pot, sheet.recipe, sheet.formulation.lye
    low = pot.lowest()
    jug = lye_concentration(lye.with_lye_water_mg, lye.alkali_mg)
    put_in = [
        (sheet.materials[one.line.material], one.line.stage, one.target)
        for one in sheet.targets
        if one.line.role != "packaging"
    ]
    mould = " ".join(word for word in (recipe.mould, recipe.mould_size.text if recipe.mould_size else None) if word)
    found = hazards_of(recipe.process, put_in, sheet.fats_mg, pot.superfat().nominal_ppm, jug, mould)
    if jug != lye.concentration_ppm:
        found.append(
            f"Some of the water goes in later, so the lye in the jug is {show_share(jug)}; "
            f"{show_share(lye.concentration_ppm)} counts all of it."
        )
    if low.likely_low_ppm <= 0:
        found.append(
            f"The superfat is likely to be as low as {show_share(low.likely_low_ppm, 2)}: it will not be planned "
            "without a decision."
        )
    elif warning := all_low_warning(low):
        found.append(warning)
    found += held_back_words(
        recipe.process,
        [(sheet.materials[line.material].name, line.stage) for line in recipe.of_role("fat") if line.held_back],
    )
    acids = [charge for charge in sheet.formulation.charges if charge.figures.acid_koh_mg_per_kg is not None]
    for charge in acids:
        koh = charge.figures.acid_koh_mg(charge.mass_mg)
        taken = show_mass(round(koh), units)
        rest = "alkali is added for it" if charge.line.add_alkali else "no alkali is added, so the superfat rises"
        found.append(f"{charge.figures.name} uses up as much alkali as {taken} of KOH; {rest}.")
    return found
