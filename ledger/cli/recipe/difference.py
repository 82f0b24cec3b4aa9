"""What changed between two versions of a recipe, in grams and percent."""

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.desk import Desk
from ledger.cli.kit.show import say_wrapped, table
from ledger.domain.bench.steps import step_note
from ledger.domain.recipe.recipe import STEP_TIMES, OwnStep, Recipe
from ledger.domain.tools.limits import limit_of
from ledger.rows.recipe import recipe_by_code
from ledger.units.quantity import show_mass, show_share
from ledger.units.words import Units
from ledger.views.recipe.recipe import RecipeSheet, recipe_sheet

_Key = tuple[str, str, str]


def say_difference(here: Desk, code: str, version: int) -> None:
    """Every line and figure of a version that differs from the version before."""
    card = recipe_by_code(here.rows(), code)
    before, after = (recipe_sheet(here.rows(), card, version=number) for number in (version - 1, version))
    old, new = _lines(before, here.settings.units), _lines(after, here.settings.units)
    rows = [
        (key[0], *old.get(key, ("–", "")), *new.get(key, ("–", "")), _apart(key, before, after))
        for key in dict.fromkeys([*old, *new])
        if old.get(key) != new.get(key)
    ]
    if rows:
        table(("", "was", "", "is", "", "more or less"), rows, right=(1, 2, 3, 4, 5))
    for label, was, now in _figures(before.recipe, after.recipe, here.settings.units):
        if was != now:
            say_wrapped(f"{label}: {was or 'not given'} → {now or 'not given'}", first="  ", indent="    ")


def _lines(sheet: RecipeSheet, units: Units) -> dict[_Key, tuple[str, str]]:
    """Amount and share of the fats of every line, by material, stage and portion."""
    counted = {sheet.materials[line.material].name for line in sheet.recipe.of_role("packaging")}
    return {
        key: (
            amount(total, key[0] in counted, units),
            show_share(round(total * 1_000_000 / sheet.fats_mg)) if sheet.fats_mg and key[0] not in counted else "",
        )
        for key, total in _totals(sheet).items()
    }


def _totals(sheet: RecipeSheet) -> dict[_Key, int]:
    """How much there is of every line; two lines of one material at one time are one."""
    found: dict[_Key, int] = {}
    for one in sheet.targets:
        key = (sheet.materials[one.line.material].name, one.line.stage, one.line.portion or "")
        found[key] = found.get(key, 0) + one.target
    return found


def _apart(key: _Key, before: RecipeSheet, after: RecipeSheet) -> str:
    """By how many percent a line grew or shrank."""
    was, now = (_totals(sheet).get(key, 0) for sheet in (before, after))
    if not was or not now:
        return "new" if now else "gone"
    change = (now - was) * 1_000_000 // was
    return f"{'+' if change > 0 else ''}{show_share(change)}"


def _figures(before: Recipe, after: Recipe, units: Units) -> list[tuple[str, str, str]]:
    """What is not a line, as it was and as it is."""

    def of(recipe: Recipe) -> dict[str, str]:
        rule = recipe.water_rule
        names = {"per_alkali": ": 1 of alkali", "lye_concentration": "% of the lye", "of_fats": "% of the fats"}
        scale = 1_000_000 if rule and rule.kind == "per_alkali" else 10_000
        return {
            "name": recipe.name,
            "superfat": show_share(recipe.superfat_ppm) if recipe.superfat_ppm is not None else "",
            "water": f"{rule.value_ppm / scale:g} {names[rule.kind]}" if rule else "",
            "alkalis": ", ".join(f"{kind} {show_share(ppm)}" for kind, ppm in recipe.alkali_shares_ppm.items()),
            "cure": f"{recipe.cure_days} days",
            "usable from": f"{recipe.usable_from_days} days" if recipe.usable_from_days else "",
            "water left": show_share(recipe.water_left_ppm),
            "water at its driest": show_share(recipe.driest_water_ppm),
            "best before": f"{recipe.best_before_months} months",
            "mould": " ".join(filter(None, (recipe.mould, recipe.mould_size.text if recipe.mould_size else None))),
            "bars": str(recipe.bars or ""),
            "net weight": show_mass(recipe.net_weight_mg, units) if recipe.net_weight_mg else "",
            "your work": f"{recipe.work_minutes} minutes" if recipe.work_minutes else "",
            "gives": recipe.yields or "",
            "infusion": f"{recipe.infusion_days} days" if recipe.infusion_days else "",
            "herb declared": recipe.herb.inci if recipe.herb else "",
            "declaration": recipe.label.declaration,
            "fragrance on the label": recipe.label.fragrance,
            "what it is": recipe.label.function,
            "precautions": " ".join(recipe.label.precautions),
            "claims": recipe.label.claims or "",
            "origin": recipe.label.origin or "",
            "after opening": f"{recipe.label.after_opening_months} months" if recipe.label.after_opening_months else "",
            "GTIN": recipe.label.gtin or "",
            **_limits(recipe, units),
            "release checks": ", ".join(recipe.release_checks),
            "weekly loss": show_share(recipe.weekly_loss_ppm),
            "weighed every": f"{recipe.weigh_every_days} days",
            "portions": ", ".join(f"{one.name} {show_share(one.share_ppm)}" for one in recipe.portions),
            **{f"step {one.number}": _step(one, units) for one in recipe.steps},
        }

    old, new = of(before), of(after)
    return [(label, old.get(label, ""), new.get(label, "")) for label in {**old, **new}]


def _step(step: OwnStep, units: Units) -> str:
    """A step in full: when, what, and what is read at it."""
    time = next((word for word, when in STEP_TIMES.items() if when == step.when), step.when)
    note = step_note(step, units)
    return f"{time}, {step.text}" + (f" ({note})" if note else "")


def _limits(recipe: Recipe, units: Units) -> dict[str, str]:
    """The limits in words, by what they hold for."""
    named = ("lye temperature", "fragrance temperature", "cook end", "bar weight", "pH")
    found = {f"limit, {what}": limit_of(recipe.limits, what, units) or "" for what in named}
    return {**found, "limit, loss": show_share(recipe.limits.loss_ppm)}
