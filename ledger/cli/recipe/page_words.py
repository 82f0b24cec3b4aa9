"""A recipe on the screen: what goes in, the lye and its superfat, and the soap that it makes."""

from collections.abc import Sequence

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.show import say, say_marked, say_wrapped, table
from ledger.domain.lye.uncertainty import Superfat
from ledger.reference.cautions import cautions
from ledger.units.quantity import show_mass, show_share, show_volume
from ledger.units.words import Units
from ledger.views.recipe.recipe_page import LyePage, RecipePage


def say_page(page: RecipePage, *, parts: bool = False) -> None:
    """Say it: the answer first, then the lines, the lye, the soap and its fatty acids.

    `parts` says what the range of the superfat is made of.
    """
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
    for step in page.steps:
        note = f" ({step.note})" if step.note else ""
        say_wrapped(f"{step.text}{note}", first=f"  {step.time:<14}  ", indent=" " * 18)
    if page.lye:
        _say_lye(page.lye, units, parts=parts)
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
        say_marked(warning)
    if page.lye:
        say_wrapped("The figures are those of the materials; a batch is reckoned from the lots in hand.")
        for caution in cautions().by_step.get("acid", ()) if any(line.acid_in_jug for line in page.lines) else ():
            say_marked(caution)
        say_wrapped(cautions().first)
    if page.process in ("cold", "hot", "rebatch"):
        usable = (
            f"; usable from {page.usable_from_days} days, not yet steady in weight" if page.usable_from_days else ""
        )
        say_wrapped(f"Cure {page.cure_days} days{usable} (your own figures; common practice, no source).")


def superfat_words(found: Superfat) -> str:
    """A superfat as reckoned, and the range it likely lies in."""
    return f"{show_share(found.nominal_ppm)}, {likely_words(found)}"


def likely_words(found: Superfat) -> str:
    """The range a superfat likely lies in."""
    low = show_share(found.likely_low_ppm).rstrip("%").rstrip()
    return f"likely {low} to {show_share(found.likely_high_ppm or 0)}"


def say_stated(stated: Sequence[str]) -> None:
    """Whose each single figure of the lye is, and how far it is trusted."""
    if stated:
        say_wrapped(f"Reckoned with {'; '.join(stated)}.")


def _say_lye(lye: LyePage, units: Units, *, parts: bool) -> None:
    say_wrapped(
        f"Lye concentration {show_share(lye.concentration_ppm)}; water to alkali "
        f"{lye.water_per_alkali_thousandths / 1000:.2f} : 1; water {show_share(lye.water_of_fats_ppm)} of the fats "
        f"({show_mass(lye.alkali_mg, units)} of alkali, {show_mass(lye.water_mg, units)} of water)."
    )
    if lye.before_addition:
        say_wrapped(f"Superfat in the pot, before the fat held back goes in: {superfat_words(lye.before_addition)}.")
    left = show_mass(lye.fat_left_mg, units)
    say_wrapped(f"Superfat of all the fats: {superfat_words(lye.superfat)}; about {left} of fat is left.")
    if parts:
        _say_parts(lye.before_addition or lye.superfat)


def _say_parts(found: Superfat) -> None:
    """What the likely range is made of."""
    say_wrapped(
        f"Likely low {show_share(found.likely_low_ppm, 2)}: what is not known of each, combined in quadrature; about "
        f"one batch in thirty lies lower. All low {show_share(found.all_low_ppm, 2)}: every one at its limit together."
    )
    open_ = ", ".join(f"{one.what} {show_share(one.share_ppm, 2)}" for one in found.spreads if one.share_ppm)
    if open_:
        say_wrapped(f"What is not known, as a share of the alkali, the widest first: {open_}.")


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
