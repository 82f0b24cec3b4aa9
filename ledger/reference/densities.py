"""Published densities, for a volume of something whose own density nobody entered."""

import re
from collections.abc import Mapping
from functools import cache
from typing import NamedTuple

from ledger.reference.shipped import table_rows
from ledger.units.quantity import parse_number
from ledger.units.words import MaterialKind

# Beside these a name says what the thing is: sweet almond oil is almond oil, almond milk is not.
_NO_OTHER = frozenset({"oil", "oils", "essential", "virgin", "extra", "refined", "organic", "pure", "melted", "whole"})
_TABLE: Mapping[MaterialKind, str] = {"fat": "fat", "liquid": "liquid", "additive": "liquid", "fragrance": "fragrance"}


class Density(NamedTuple):
    """The density of one kind of goods, in mg per mL, from its lowest to its highest."""

    key: str
    name: str
    low_mg_per_ml: int
    high_mg_per_ml: int
    temperature_c: str
    source: str
    status: str

    @property
    def middle(self) -> int:
        """What a volume is reckoned with."""
        return (self.low_mg_per_ml + self.high_mg_per_ml) // 2

    @property
    def words(self) -> str:
        """The figure with its range and where it comes from."""
        low, high = self.low_mg_per_ml / 1000, self.high_mg_per_ml / 1000
        memory = ", unverified" if self.status == "memory" else ""
        span = f", the middle of {low:.3f} to {high:.3f}," if low < high else ""
        return (
            f"{self.middle / 1000:.3f} g/mL{span} at {self.temperature_c} °C ({self.name}: {self.source}{memory}); "
            "its own density, or the scale, says it nearer"
        )


@cache
def _densities() -> Mapping[tuple[str, str], Density]:
    return {
        (row["kind"], row["key"]): Density(
            row["key"],
            row["name"],
            round(parse_number(row["low_g_per_ml"]) * 1000),
            round(parse_number(row["high_g_per_ml"]) * 1000),
            row["temperature_c"],
            row["source"],
            row["status"],
        )
        for row in table_rows("densities.csv")
    }


def published_density(name: str, kind: MaterialKind, reference_key: str | None) -> Density | None:
    """The published density of a material, by what it was started from, else by a name that says nothing more.

    None for what no table has, alkalis and powders among it: their spoonfuls vary by a third, so they are weighed.
    """
    table = _TABLE.get(kind)
    if table is None:
        return None
    if reference_key and kind == "fat":
        return _densities().get((table, reference_key))
    called = frozenset(re.findall(r"[\w'-]+", name.casefold())) - _NO_OTHER
    fits = [one for (of, key), one in _densities().items() if of == table and frozenset(key.split()) == called]
    return fits[0] if fits else None
