"""The fragrance allergens of a batch, from the statements of the lots that really went in."""

import sqlite3
from dataclasses import dataclass

from ledger.domain.allergens import AllergenAnswer, Entry, Holds, allergens_in
from ledger.domain.market import AllergenList
from ledger.domain.quantity import show_share
from ledger.reference.allergens import Allergen, allergen_named, usual_contents
from ledger.views.batch import BatchRow
from ledger.views.drying import driest_mass
from ledger.views.ingredients import bases_of_batch
from ledger.views.skin import contains


@dataclass(frozen=True)
class AllergenLine:
    """One allergen found: its share of the bar at its driest in millionths of a percent, and whether it is declared."""

    name: str
    share_ppb: int  # parts per thousand million, so that a border case can be told
    declared: bool
    prohibited: bool
    lots: tuple[str, ...]


@dataclass(frozen=True)
class Allergens:
    """The allergens of a batch by one list."""

    list_name: str
    source: str
    threshold_ppm: int
    driest_mg: int | None
    lines: tuple[AllergenLine, ...]
    declared: tuple[str, ...]
    prohibited: tuple[str, ...]
    no_statement: tuple[str, ...]
    doubts: tuple[str, ...]  # statements that lack what such an oil must contain


def batch_allergens(rows: sqlite3.Connection, batch: BatchRow, rule: AllergenList) -> Allergens:
    """Sum the statements of every lot, else of its material, and compare with the list."""
    parts, doubts = [], []
    for one in bases_of_batch(rows, batch.id):
        stated = contains(rows, one.lot.material_id, one.lot.id)
        fragrance = one.lot.kind == "fragrance"
        if fragrance and stated:
            doubts += _doubts(one.lot.material, one.lot.code, one.lot.inci or "", stated)
        parts.append(Holds(one.lot.material, one.lot.code, one.lot.inci or "", one.mass_mg, stated or None, fragrance))
    driest = driest_mass(rows, batch)
    answer = AllergenAnswer((), ())
    if driest:
        answer = allergens_in(
            parts,
            entry_of=lambda name: _entry(allergen_named(name), rule),
            entry_of_oil=lambda inci: _entry(allergen_named(inci), rule),
            driest_mg=driest,
            threshold_ppm=rule.threshold_ppm,
        )
    return Allergens(
        rule.name,
        f"{rule.source}; {rule.status}",
        rule.threshold_ppm,
        driest,
        tuple(
            AllergenLine(one.name, round(one.share_ppm * 1000), one.declared, one.prohibited, one.lots)
            for one in answer.found
        ),
        answer.declared,
        answer.prohibited,
        answer.no_statement,
        tuple(dict.fromkeys(doubts)),
    )


def _entry(found: Allergen | None, rule: AllergenList) -> Entry | None:
    if found is None:
        return None
    listed = not found.prohibited and (rule.names == "long" or found.first_list)
    return Entry(found.name, listed, found.prohibited)


def _doubts(material: str, lot: str, inci: str, stated: dict[str, int]) -> list[str]:
    """What such an oil always holds and the statement does not name, from published ranges."""
    named = {found.name for name in stated if (found := allergen_named(name))} | {name.casefold() for name in stated}
    must = {one.constituent: one for one in usual_contents(inci) if one.low_ppm >= 10_000}
    return [
        f"The statement for {material}, lot {lot}, names no {name}, of which such an oil usually holds "
        f"{show_share(one.low_ppm)} to {show_share(one.high_ppm)} ({one.source}; {one.status}); ask the supplier."
        for name, one in must.items()
        if name not in named and name.casefold() not in named
    ]
