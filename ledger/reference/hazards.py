"""The hazards known of things and of much of them, each with its source."""

from functools import cache
from typing import get_args

from ledger.domain.recipe.hazards import Hazard
from ledger.reference.shipped import table_rows
from ledger.reference.tables import percent_ppm
from ledger.units.words import Process, Stage, known


@cache
def hazards() -> tuple[Hazard, ...]:
    """Every row of the table, in the order in which they are said."""
    return tuple(
        Hazard(
            row["of"],
            tuple(row["words"].split(";")) if row["words"] else (),
            known(row["stage"], get_args(Stage)),
            known(row["process"], get_args(Process)),
            percent_ppm(row["below_percent"]),
            percent_ppm(row["over_percent"]),
            row["text"],
            row["source"],
        )
        for row in table_rows("hazards.csv")
    )
