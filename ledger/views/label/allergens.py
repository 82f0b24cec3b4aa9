"""The fragrance allergens of a batch, from the statements of the lots that really went in."""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import NamedTuple

from ledger.domain.label.market import AllergenList, Market
from ledger.domain.lye.composition import dried_to
from ledger.domain.material.allergens import AllergenAnswer, Found, Holds, ListedAs, allergens_in
from ledger.reference.allergens import Allergen, allergen_named, counted_as, remark_on, usual_contents
from ledger.rows.batch import BatchRow
from ledger.rows.material import contents_of, materials_by_id
from ledger.rows.opened import Rows
from ledger.rows.recipe import recipe_of
from ledger.units.quantity import show_share
from ledger.views.cure.drying import driest_water, undried
from ledger.views.recipe.ingredients import bases_of_batch
from ledger.views.recipe.skin import is_scent, read_as
from ledger.views.stock.bases import Base
from ledger.views.stock.made_of import Compositions


class AllergenLine(NamedTuple):
    """One allergen found: its share of the bar at its driest in millionths of a percent, and whether it is declared."""

    name: str
    share_ppb: int  # parts per thousand million, so that a border case can be told
    declared: bool
    prohibited: bool
    lots: tuple[str, ...]


class Allergens(NamedTuple):
    """The allergens of a batch by one list."""

    list_name: str
    source: str
    threshold_ppm: int
    driest_mg: int | None
    lines: tuple[AllergenLine, ...]
    declared: tuple[str, ...]
    prohibited: tuple[str, ...]
    no_statement: tuple[str, ...]
    doubts: tuple[str, ...]  # statements that lack what such an oil must contain, and names that leave a question
    unknown: tuple[str, ...]  # names in statements that are not known here, so that nothing was looked up for them
    barred: tuple[str, ...]  # what may not be in a bar in this market, with its source
    asked: tuple[str, ...]  # what the EU prohibits, where this market's own rule is not known here


class Holding(NamedTuple):
    """What a batch holds by the statements of its lots, whatever list asks for it."""

    parts: tuple[Holds, ...]
    doubts: tuple[str, ...]
    driest_mg: int | None

    def named_by(self, rule: AllergenList) -> AllergenAnswer:
        """What a list has to say of it."""
        if not self.driest_mg:
            return AllergenAnswer((), ())
        return allergens_in(
            self.parts,
            entry_of=lambda name: _entry(allergen_named(name), rule),
            entry_of_oil=lambda inci: _entry(allergen_named(inci), rule),
            driest_mg=self.driest_mg,
            threshold_ppm=rule.threshold_ppm,
        )


def batch_holding(rows: Rows, batch: BatchRow, compositions: Compositions | None = None) -> Holding:
    """What stands in the statements of every lot of a batch, else of its material."""
    bases = bases_of_batch(rows, batch.id, compositions)
    parts, doubts = _parts(rows, bases)
    soap = undried(bases, materials_by_id(rows, {one.lot.material_id for one in bases}))
    driest = dried_to(soap, driest_water(recipe_of(rows, batch)), stage="at its driest").mass_mg if soap else None
    return Holding(tuple(parts), tuple(dict.fromkeys(doubts)), driest)


def allergens_of(holding: Holding, rule: AllergenList) -> Allergens:
    """What a list has to say of what a batch holds, as it is shown."""
    answer = holding.named_by(rule)
    banned = tuple(_banned(one, rule) for one in answer.found if one.prohibited)
    return Allergens(
        rule.name,
        f"{rule.source}; {rule.status}",
        rule.threshold_ppm,
        holding.driest_mg,
        tuple(
            AllergenLine(one.name, round(one.share_ppm * 1000), one.declared, one.prohibited, one.lots)
            for one in answer.found
        ),
        answer.declared,
        answer.prohibited,
        answer.no_statement,
        holding.doubts,
        answer.unknown,
        banned if rule.bans else (),
        () if rule.bans else banned,
    )


def barred_words(rows: Rows, batch: BatchRow, laws: Sequence[Market], *, on: date) -> tuple[str, ...]:
    """What a batch holds that may not be in a bar, in words for each market that is known to prohibit any of it."""
    lists = [(law, listed) for law in laws if (listed := law.allergen_list(on))]
    holding = batch_holding(rows, batch) if lists else Holding((), (), None)
    return tuple(said_barred(law, barred) for law, listed in lists if (barred := allergens_of(holding, listed).barred))


def said_barred(law: Market, barred: Sequence[str]) -> str:
    """What may not be in a bar of a market, in words."""
    return f"it holds what is prohibited in {law.name}: {'; '.join(barred)}"


def _parts(rows: Rows, bases: Sequence[Base]) -> tuple[list[Holds], list[str]]:
    """Each lot as received with its statement, and what leaves a question."""
    parts: list[Holds] = []
    doubts: list[str] = []
    contents = contents_of(rows, {(one.lot.material_id, one.lot.id) for one in bases})
    for one in bases:
        inci, stated = one.carried or one.lot.inci or "", contents[one.lot.material_id, one.lot.id]
        fragrance = is_scent(one.lot.kind, inci)
        if fragrance and stated:
            doubts += _doubts(one.lot.material, one.lot.code, inci, stated)
        if left_out := _left_out(contents[one.lot.material_id, None], stated):
            doubts.append(
                f"The statement for {one.lot.material}, lot {one.lot.code}, does not name {', '.join(left_out)}, which "
                "the one for the material does; it counts as none. Ask the supplier."
            )
        doubts += [
            f"In the statement for {one.lot.material}, lot {one.lot.code}: {read_as(name)}."
            for name in stated
            if remark_on(name)
        ]
        if (banned := allergen_named(inci)) and banned.prohibited and one.lot.kind == "fat":
            doubts.append(
                f"{one.lot.material}, lot {one.lot.code}: as a fragrance it is prohibited ({banned.entry}); that it is "
                "here as a fat is for a person."
            )
            inci = ""
        parts.append(Holds(one.lot.material, one.lot.code, inci, one.mass_mg, stated or None, fragrance))
    return parts, doubts


def _left_out(of_the_material: Mapping[str, int], stated: Mapping[str, int]) -> list[str]:
    """What the statement for a material names and that for the lot does not: it counts whole, so that would be none."""
    named = {counted_as(name) for name in stated}
    return [name for name in of_the_material if counted_as(name) not in named]


def _banned(one: Found, rule: AllergenList) -> str:
    """What is prohibited, the lots it comes from, and where the prohibition stands."""
    entry = allergen_named(one.name)
    assert entry is not None
    where = f"{rule.bans}, {entry.entry}" if rule.bans else f"Annex II of the EU, {entry.entry}"
    return f"{one.name}, from lot {' and '.join(one.lots)} ({where}; {entry.source})"


def _entry(found: Allergen | None, rule: AllergenList) -> ListedAs | None:
    if found is None:
        return None
    listed = not found.prohibited and (rule.names == "long" or found.first_list)
    return ListedAs(found.name, listed, found.prohibited)


def _doubts(material: str, lot: str, inci: str, stated: dict[str, int]) -> list[str]:
    """What such an oil always holds and the statement does not name, from published ranges."""
    named = {counted_as(name) for name in stated}
    must = {one.constituent: one for one in usual_contents(inci) if one.low_ppm >= 10_000}
    return [
        f"The statement for {material}, lot {lot}, names no {name}, of which such an oil usually holds "
        f"{show_share(one.low_ppm)} to {show_share(one.high_ppm)} ({one.source}; {one.status}); ask the supplier."
        for name, one in must.items()
        if counted_as(name) not in named
    ]
