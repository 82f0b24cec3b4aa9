"""The fragrance allergens of a batch, from the statements of the lots that really went in."""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import NamedTuple

from ledger.domain.label.market import AllergenList, Market
from ledger.domain.lye.composition import dried_to
from ledger.domain.material.allergens import AllergenAnswer, Found, Holds, ListedAs, allergens_in
from ledger.reference.allergens import (
    Allergen,
    allergen_named,
    counted_as,
    entry_limits,
    from_memory,
    plain,
    remark_on,
    usual_contents,
)
from ledger.rows.batch import BatchRow
from ledger.rows.lot import LotRow
from ledger.rows.material import contents_of, materials_by_id, peroxides
from ledger.rows.opened import Rows
from ledger.rows.recipe import recipe_of
from ledger.units.quantity import show_share
from ledger.views.cure.drying import driest_water, undried
from ledger.views.label.entry_limits import limit_words, not_allowed
from ledger.views.material.meant import Meanings, said_of
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
    over: bool  # more than its entry allows in the finished product, where that is known to hold


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
    above: tuple[str, ...]  # what is more than its entry allows, or less pure, with its source: not allowed
    questions: tuple[str, ...]  # what the entries ask that nobody stated, or that is known from memory alone
    said: tuple[str, ...]  # what persons said that names are which are not known here

    @property
    def refused(self) -> bool:
        """Whether a bar may not be supplied in this market at all, as far as is known here."""
        return bool(self.barred or self.above)


class Holding(NamedTuple):
    """What a batch holds by the statements of its lots, whatever list asks for it."""

    parts: tuple[Holds, ...]
    doubts: tuple[str, ...]
    driest_mg: int | None
    peroxide: Mapping[str, int] = {}  # by lot, in micromoles per litre, where it is stated
    said: tuple[str, ...] = ()

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
    parts, doubts, said = _parts(rows, bases)
    soap = undried(bases, materials_by_id(rows, {one.lot.material_id for one in bases}))
    driest = dried_to(soap, driest_water(recipe_of(rows, batch)), stage="at its driest").mass_mg if soap else None
    doubted, told = (tuple(dict.fromkeys(words)) for words in (doubts, said))
    return Holding(tuple(parts), doubted, driest, _peroxide(rows, bases), told)


def allergens_of(holding: Holding, rule: AllergenList) -> Allergens:
    """What a list has to say of what a batch holds, as it is shown."""
    answer = holding.named_by(rule)
    banned = tuple(_banned(one, rule) for one in answer.found if one.prohibited)
    above, questions = limit_words(answer.found, holding.parts, holding.peroxide, rule)
    over = {one.name for one in answer.found if not_allowed(one, rule)}
    return Allergens(
        rule.name,
        f"{rule.source}; {rule.status}",
        rule.threshold_ppm,
        holding.driest_mg,
        tuple(
            AllergenLine(
                one.name,
                round(one.share_ppm * 1000),
                one.declared and one.name not in over,
                one.prohibited,
                one.lots,
                one.name in over,
            )
            for one in answer.found
        ),
        tuple(name for name in answer.declared if name not in over),
        answer.prohibited,
        answer.no_statement,
        holding.doubts,
        answer.unknown,
        banned if rule.bans else (),
        () if rule.bans else banned,
        above,
        questions,
        holding.said,
    )


def barred_words(rows: Rows, batch: BatchRow, laws: Sequence[Market], *, on: date) -> tuple[str, ...]:
    """What a batch holds that may not be in a bar, in words for each market that is known to prohibit any of it."""
    lists = [(law, listed) for law in laws if (listed := law.allergen_list(on))]
    holding = batch_holding(rows, batch) if lists else Holding((), (), None)
    return tuple(said_barred(law, one) for law, listed in lists if (one := allergens_of(holding, listed)).refused)


def said_barred(law: Market, found: Allergens) -> str:
    """What may not be in a bar of a market, in words."""
    words = [f"it holds what is prohibited in {law.name}: {'; '.join(found.barred)}"] if found.barred else []
    words += [f"it is not allowed in {law.name}: {'; '.join(found.above)}"] if found.above else []
    return "; ".join(words)


def _parts(rows: Rows, bases: Sequence[Base]) -> tuple[list[Holds], list[str], list[str]]:
    """Each lot as received with its statement, what leaves a question, and what persons said of its names."""
    parts: list[Holds] = []
    doubts: list[str] = []
    said: list[str] = []
    meanings = Meanings(rows)
    contents = contents_of(rows, {(one.lot.material_id, one.lot.id) for one in bases})
    for one in bases:
        inci, written = one.carried or one.lot.inci or "", contents[one.lot.material_id, one.lot.id]
        told = [meant for name in written if (meant := meanings.of(name, one.lot.material_id))]
        said += [f"In the statement for {one.lot.material}, lot {one.lot.code}: {said_of(meant)}." for meant in told]
        stated = meanings.counted(written, one.lot.material_id)
        fragrance = is_scent(one.lot.kind, inci)
        if fragrance and stated:
            doubts += _doubts(one.lot.material, one.lot.code, inci, stated)
        if left_out := _left_out(meanings.counted(contents[one.lot.material_id, None], one.lot.material_id), stated):
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
        if doubt := _by_its_name(one.lot, inci):
            doubts.append(doubt)
        doubts += _from_memory(one.lot, inci, written)
        none = {plain(meant.name) for meant in told if meant.meant is None}
        counts = {name: ppm for name, ppm in stated.items() if plain(name) not in none}
        parts.append(Holds(one.lot.material, one.lot.code, inci, one.mass_mg, counts if written else None, fragrance))
    return parts, doubts, said


def _from_memory(lot: LotRow, inci: str, written: Mapping[str, int]) -> list[str]:
    """A sentence for names that are read as an entry's from memory: for a person who has the text before her."""
    names = [name for name, ppm in written.items() if ppm and from_memory(name)]
    known = [f"{name} as {found.name}" for name in names if (found := allergen_named(name))]
    words = [f"Of {lot.material}, lot {lot.code}, read from memory, unverified: {', '.join(known)}."] if known else []
    if (own := allergen_named(inci)) and from_memory(inci):
        words.append(f"That {inci}, of {lot.material}, lot {lot.code}, is {own.name} is from memory, unverified.")
    return words


def _by_its_name(lot: LotRow, inci: str) -> str | None:
    """A sentence for what is called as an entry is and has an INCI name of no such entry."""
    called, own = allergen_named(lot.material), allergen_named(inci)
    if lot.kind not in ("fragrance", "additive", "liquid") or called is None or (own and own.name == called.name):
        return None
    what = f"prohibited ({called.entry})" if called.prohibited else f"the entry {called.name} ({called.entry})"
    return (
        f"{lot.material}, lot {lot.code}: by its name it would be {what}, and its INCI name, {inci or 'none yet'}, is "
        f'not one of it, so it is not counted so. If it is that: soapledger material edit "{lot.material}" --inci NAME'
    )


def _peroxide(rows: Rows, bases: Sequence[Base]) -> dict[str, int]:
    """The latest peroxide value of each lot, else of its material, by the code of the lot."""
    of_lots = {one.lot_code or one.material_id: one.umol_per_l for one in peroxides(rows)}
    found = {one.lot.code: of_lots.get(one.lot.code, of_lots.get(one.lot.material_id)) for one in bases}
    return {lot: value for lot, value in found.items() if value is not None}


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
    limit = entry_limits().get(found.name)
    listed = not found.prohibited and (rule.names == "long" or found.first_list)
    listed = listed and (limit is None or limit.kind != "oral")
    return ListedAs(found.name, listed, found.prohibited, limit.maximum_ppm if limit else None)


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
