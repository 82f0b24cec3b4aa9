"""The density of fresh dough as her own batches gave it, in place of the usual figure."""

from fractions import Fraction

from ledger.rows.opened import Rows
from ledger.rows.reading import dough_measured


def own_density(rows: Rows, recipe_code: str) -> int | None:
    """Mass over volume of the batches of a recipe whose dough was measured, in mg per mL; None before there is one."""
    mass, volume = dough_measured(rows, recipe_code)
    return round(Fraction(mass * 1000, volume)) if volume else None
