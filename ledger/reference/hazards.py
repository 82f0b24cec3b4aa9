"""The hazards known of things and of much of them, each with its source."""

from fractions import Fraction
from functools import cache
from typing import get_args

from ledger.domain.recipe.hazards import Hazard
from ledger.reference.shipped import table_rows
from ledger.units.words import Process, Stage, known


@cache
def hazards() -> tuple[Hazard, ...]:
    """Every row of the table, in the order in which they are said."""
    return tuple(
        Hazard(
            row["key"],
            row["of"],
            tuple(row["words"].split(";")) if row["words"] else (),
            known(row["stage"], get_args(Stage)),
            known(row["process"], get_args(Process)),
            _ppm(row["below_percent"]),
            _ppm(row["over_percent"]),
            row["text"],
            row["source"],
        )
        for row in table_rows("hazards.csv")
    )


def _ppm(percent: str) -> int | None:
    return round(Fraction(percent) * 10_000) if percent else None
