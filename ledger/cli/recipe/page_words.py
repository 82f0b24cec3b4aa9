"""A recipe on the screen: what goes in, the lye and its superfat, and the soap that it makes."""

from collections.abc import Sequence

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.show import say, say_wrapped, table
from ledger.domain.lye.uncertainty import Superfat
from ledger.reference.cautions import cautions
from ledger.units.quantity import show_mass, show_share, show_volume
from ledger.units.words import Units
from ledger.views.recipe.recipe_page import LyePage, RecipePage


def say_page(page: RecipePage) -> None:
    """Say it: the answer first, then the lines, the lye, the soap and its fatty acids."""
    units = page.units
    made = f"{page.process} process" if page.process in ("cold", "hot") else page.process
    head = f"{page.name}, version {page.version}: {made}"
    if page.superfat_meant_ppm is not None:
        head += f", superfat {show_share(page.superfat_meant_ppm)} of the alkali withheld"
    say_wrapped(head + ".")
    table(
        ("when", "material", "portion", "amount", "of the fats"),
        [
            (
                line.when,
                line.material,
                line.portion or "",
                amount(line.quantity, line.counted, units),
                show_share(line.of_fats_ppm) if line.of_fats_ppm is not None else "",
            )
            for line in page.lines
        ],
        right=(3, 4),
    )
    if page.lye:
        _say_lye(page.lye, units)
        say_stated(page.stated)
    _say_dough(page)
    if page.stages:
        _say_soap(page)
    if page.profile:
        _say_profile(page)
    for one in page.skin:
        if one.verdict == "within":
            say_wrapped(one.words)
    for warning in page.warnings:
        say_wrapped(warning, first="  ! ", indent="    ")
    if page.lye:
        say_wrapped("The figures are those of the materials; a batch is reckoned from the lots in hand.")
        for caution in cautions().by_step.get("acid", ()) if any(line.acid_in_jug for line in page.lines) else ():
            say_wrapped(caution, first="  ! ", indent="    ")
        say_wrapped(cautions().first)
    if page.process in ("cold", "hot", "rebatch"):
        usable = (
            f"; usable from {page.usable_from_days} days, not yet steady in weight" if page.usable_from_days else ""
        )
        say_wrapped(f"Cure {page.cure_days} days{usable} (your own figures; common practice, no source).")


def superfat_words(found: Superfat) -> str:
    """The three figures of a superfat."""
    return (
        f"{show_share(found.nominal_ppm, 2)} as reckoned, likely low {show_share(found.likely_low_ppm, 2)}, "
        f"all low {show_share(found.all_low_ppm, 2)}"
    )


def say_stated(stated: Sequence[str]) -> None:
    """Whose each single figure of the lye is, and how far it is trusted."""
    if stated:
        say_wrapped(f"Reckoned with {'; '.join(stated)}.")


def _say_lye(lye: LyePage, units: Units) -> None:
    say_wrapped(
        f"Lye concentration {show_share(lye.concentration_ppm)}; water to alkali "
        f"{lye.water_per_alkali_thousandths / 1000:.2f} : 1; water {show_share(lye.water_of_fats_ppm)} of the fats "
        f"({show_mass(lye.alkali_mg, units)} of alkali, {show_mass(lye.water_mg, units)} of water)."
    )
    if lye.before_addition:
        say_wrapped(f"Superfat in the pot, before the fat held back goes in: {superfat_words(lye.before_addition)}.")
    left = show_mass(lye.fat_left_mg, units)
    say_wrapped(f"Superfat of all the fats: {superfat_words(lye.superfat)}; about {left} of fat is left.")
    widest = [one for one in lye.superfat.spreads if one.share_ppm][:3]
    if widest:
        open_ = ", ".join(f"{one.what} {show_share(one.share_ppm)}" for one in widest)
        say_wrapped(f"What is least known, as a share of the alkali: {open_}.")


def _say_dough(page: RecipePage) -> None:
    words = f"{show_mass(page.dough_mg, page.units)} in the pot"
    if page.dough_ul:
        density = page.density_mg_per_ml
        by = f"at the {density / 1000:.2f} g/mL of your own batches" if density else "by its parts"
        words += f", about {show_volume(page.dough_ul, page.units)} {by}"
    if page.mould and page.dough_ul and page.mould_ul:
        filled = round(page.dough_ul * 1_000_000 / page.mould_ul)
        words += f"; it fills {show_share(filled, 0)} of the mould, {page.mould}"
    elif page.mould:
        words += f"; mould: {page.mould}"
    if page.bars:
        words += f"; {page.bars} bars"
    say_wrapped(words + ".")


def _say_soap(page: RecipePage) -> None:
    assert page.stages
    stages = (page.stages.before, page.stages.cut, page.stages.cured, page.stages.driest)
    say("What it is made of, by mass balance:")
    kinds = list(dict.fromkeys(part.what for stage in stages for part in stage.parts))
    rows: list[Sequence[str]] = []
    for kind in kinds:
        masses = [stage.of(kind) for stage in stages]
        rows.append((kind, *(show_mass(mass, page.units) if mass else "–" for mass in masses)))
    rows.append(("in all", *(show_mass(stage.mass_mg, page.units) for stage in stages)))
    table(("", *(stage.stage for stage in stages)), rows, right=(1, 2, 3, 4))
    say_wrapped(f"Water lost in the cook: {page.stages.cook_loss}.")


def _say_profile(page: RecipePage) -> None:
    counted = [one for one in page.profile if one.high_ppm >= 10_000]
    ranges = ", ".join(
        f"{one.name} {one.low_ppm / 10_000:.1f} to {one.high_ppm / 10_000:.1f} %"
        for one in sorted(counted, key=lambda one: -one.high_ppm)
    )
    if rest := [one.name for one in page.profile if one.high_ppm < 10_000]:
        ranges += f"; under 1 %: {', '.join(rest)}"
    without = f" Not counted, for want of published figures: {', '.join(page.no_profile)}." if page.no_profile else ""
    say_wrapped(f"Fatty acids of its fats, as published ranges: {ranges}.{without}")
