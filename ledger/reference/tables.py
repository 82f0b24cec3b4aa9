"""The published figures, each with its source and whether the source was read."""

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from ledger.domain.names import match_name

_HERE = Path(__file__).parent


@dataclass(frozen=True)
class ReferenceFat:
    """One fat or wax; the range is the identity limit of the oil, not the error of any one lot."""

    key: str
    name: str
    sap_low_mg_per_kg: int
    sap_high_mg_per_kg: int
    inci: str | None
    inci_sodium: str | None
    inci_potassium: str | None
    source: str
    status: str  # "read" or "memory"


@cache
def fats() -> Mapping[str, ReferenceFat]:
    """Every fat, by its key."""
    with (_HERE / "fats.csv").open(encoding="utf-8", newline="") as file:
        return {
            row["key"]: ReferenceFat(
                key=row["key"],
                name=row["name"],
                sap_low_mg_per_kg=int(row["sap_low_mg_per_kg"]),
                sap_high_mg_per_kg=int(row["sap_high_mg_per_kg"]),
                inci=row["inci"] or None,
                inci_sodium=row["inci_sodium"] or None,
                inci_potassium=row["inci_potassium"] or None,
                source=f"{row['document']}; {row['source']}",
                status=row["status"],
            )
            for row in csv.DictReader(file)
        }


def find_fat(text: str) -> ReferenceFat:
    """The published fat meant. Raises BadInput with near matches."""
    known = fats()
    key = match_name(
        text,
        [(fat.key, fat.name) for fat in known.values()],
        noun="published fat",
        add="soapledger material add NAME --kind fat --sap 188-192, from the certificate",
    )
    return known[key]
