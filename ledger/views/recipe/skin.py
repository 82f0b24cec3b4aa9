"""The skin limits of the fragrances in a recipe or a batch, against what their certificates allow."""

from collections.abc import Iterable, Sequence
from contextlib import suppress
from fractions import Fraction
from typing import Literal, NamedTuple

from ledger.domain.material.skin_limits import SOAP_CATEGORY, FragranceIn, HeldAgainst, Limit, compare_limits
from ledger.errors import BadInput
from ledger.reference.allergens import (
    allergen_named,
    counted_as,
    essential_oil,
    names_to_propose,
    plain,
    remark_on,
)
from ledger.rows.batch import BatchRow, find_batch
from ledger.rows.lot import lots_by_id
from ledger.rows.material import (
    MaterialCard,
    SkinLimitRow,
    constituent_limits,
    constituents_known,
    contents_of,
    limits_of,
    materials_by_id,
    peroxides,
    statements_of,
)
from ledger.rows.opened import Rows
from ledger.units.dates import show_date
from ledger.units.names import near
from ledger.units.quantity import WHOLE_PPM, show_share
from ledger.units.words import MaterialKind
from ledger.views.lye.lye_check import meant_in
from ledger.views.material.meant import Meanings, said_of
from ledger.views.recipe.composition import Stages, batch_stages
from ledger.views.recipe.ingredients import bases_of_lot
from ledger.views.recipe.recipe import RecipeSheet
from ledger.views.stock.made_of import Compositions

PutIn = tuple[int, int | None, int]  # material, lot where one is known, mg
_ALIKE = 0.85  # of difflib's ratio: a letter or two amiss, but not eucalyptol for eucalyptus oil (our own choice)
_MELTED = "how much of it is in the bar at its driest is not known here, for soap melted again is not reckoned"


Held = Literal["within", "over", "no certificate", "not known"]  # how a share is held against its limit


class SkinCheck(NamedTuple):
    """One fragrance or constituent against its limit, in ppm of the bar at its driest, and in words."""

    name: str
    share_ppm: int | None  # None where it is not known
    limit_ppm: int | None
    source: str | None
    verdict: Held
    words: str


def recipe_skin_checks(rows: Rows, sheet: RecipeSheet, stages: Stages | None) -> tuple[SkinCheck, ...]:
    """The checks of a recipe, with what its materials contain in general; of each portion where the dough divides."""
    put_in = [
        (sheet.materials[one.line.material].id, one.target, one.line.portion)
        for one in sheet.targets
        if one.line.role != "packaging"
    ]
    if sheet.recipe.process == "rebatch":
        scents = _scents(rows, [(material, None, mass) for material, mass, _ in put_in])
        return (_not_known([*scents, "the scent of the soap melted again"]),)
    if not stages:
        return ()
    whole = stages.driest.mass_mg
    if not sheet.recipe.portions:
        return skin_checks(rows, [(material, None, mass) for material, mass, _ in put_in], whole)
    shared = whole - sum(one.target for one in sheet.targets if one.line.portion)
    found: list[SkinCheck] = []
    for portion in sheet.recipe.portions:
        part = Fraction(portion.share_ppm, WHOLE_PPM)
        mine = [
            (material, None, mass if where else round(mass * part))
            for material, mass, where in put_in
            if where in (None, portion.name)
        ]
        own = sum(one.target for one in sheet.targets if one.line.portion == portion.name)
        found += skin_checks(rows, mine, round(shared * part) + own, where=f"portion {portion.name}: ")
    return tuple(found)


def batch_skin_checks(rows: Rows, batch: BatchRow) -> tuple[SkinCheck, ...]:
    """The checks of a batch, with what the lots used contain; what is still open counts at its target.

    A portion brings its share of the dough with it. Of soap melted again it is said that it is not reckoned.
    """

    def put_in(batch_id: int, part: Fraction) -> list[PutIn]:
        return [
            (one.material_id, one.lot_id or None, round(one.mass_mg * part))
            for one in meant_in(rows, batch_id)
            if one.role != "dough"
        ]

    used = put_in(batch.id, Fraction(1))
    if batch.part_of is None:
        stages = batch_stages(rows, batch, meant=True)
        if stages is None and batch.process == "rebatch" and (scents := _scents(rows, used)):
            return (_not_known(scents),)
        return skin_checks(rows, used, stages.driest.mass_mg if stages else None)
    whole = find_batch(rows, batch.part_of)
    stages = batch_stages(rows, whole, meant=True)
    if stages is None:
        return ()
    mine = meant_in(rows, batch.id)
    part = Fraction(sum(one.mass_mg for one in mine if one.role == "dough"), stages.before.mass_mg)
    used += put_in(whole.id, part)
    added = sum(one.mass_mg for one in mine if one.role != "dough")
    return skin_checks(rows, used, round(stages.driest.mass_mg * part) + added)


def skin_checks(
    rows: Rows, put_in: Iterable[PutIn], driest_mg: int | None, *, where: str = ""
) -> tuple[SkinCheck, ...]:
    """Check what goes in against every limit, down to the lots as received; nothing where the driest bar is not known.

    A fragrance counts whatever line it stands on, and so does anything else that is stated to contain something.
    """
    if not driest_mg:
        return ()
    holding = [one for one in _fragrances(rows, put_in) if one.mass_mg]
    compared = compare_limits(holding, _constituent_limits(rows), driest_mg=driest_mg, counted_as=counted_as)
    return tuple(_check(one, where) for one in compared)


def bears_on_the_skin(rows: Rows, material_id: int, lot_id: int | None) -> bool:
    """Whether a material, or a lot of it, is or holds a fragrance, or is stated to contain anything."""
    return bool(_fragrances(rows, [(material_id, lot_id, 1000)]))


def _scents(rows: Rows, put_in: Iterable[PutIn]) -> list[str]:
    return list(dict.fromkeys(one.name for one in _fragrances(rows, put_in)))


def _not_known(names: list[str]) -> SkinCheck:
    named = " and ".join(names)
    words = f"{named}: {_MELTED}; a person holds it against the certificates."
    return SkinCheck(named, None, None, None, "not known", words)


def _fragrances(rows: Rows, put_in: Iterable[PutIn]) -> list[FragranceIn]:
    """Everything in it that is a fragrance, or is stated to contain something; a drum or a blend by its parts."""
    asked = list(put_in)
    lots = lots_by_id(rows, {lot_id for _, lot_id, _ in asked if lot_id})
    parts, made = list[PutIn](), Compositions(rows, of={one.batch_id for one in lots.values() if one.batch_id})
    made.lots |= lots
    for material_id, lot_id, mass in asked:
        part = [(material_id, lot_id, mass)]
        if lot_id:
            with suppress(BadInput):  # a lot of botanicals alone stands for itself
                part = [(one.lot.material_id, one.lot.id, one.mass_mg) for one in bases_of_lot(made, lot_id, mass)]
        parts += part
    cards = materials_by_id(rows, {material for material, _, _ in parts})
    contents = contents_of(rows, [(material, lot) for material, lot, _ in parts])
    limits = limits_of(rows, cards)
    meanings = Meanings(rows)
    counted = {part: meanings.counted(contents[part], part[0]) for part in {(one, lot) for one, lot, _ in parts}}
    found = (_fragrance(cards[one], mass, dict(counted[one, lot]), limits[one]) for one, lot, mass in parts)
    return [one for one in found if one]


def _fragrance(
    card: MaterialCard, mass_mg: int, contents: dict[str, int], limits: Sequence[SkinLimitRow]
) -> FragranceIn | None:
    scent, own = is_scent(card.kind, card.inci), allergen_named(card.inci or "")
    if not (scent or contents or own):
        return None
    stated = bool(contents) or not scent
    contents = {name: ppm for name, ppm in contents.items() if ppm}
    if own:  # what is itself a constituent counts with all its mass, once
        contents = {name: ppm for name, ppm in contents.items() if counted_as(name) != counted_as(own.name)}
        contents[own.name] = WHOLE_PPM
    return FragranceIn(card.name, mass_mg, _that_counts([_limit(row) for row in limits]), contents, scent, stated)


def is_scent(kind: MaterialKind, inci: str | None) -> bool:
    """Whether it is an essential oil or a fragrance: by its kind, or by the name of the oil if booked as another."""
    return kind == "fragrance" or (kind != "fat" and essential_oil(inci or ""))


def _constituent_limits(rows: Rows) -> dict[str, Limit]:
    """By each constituent, named as its certificate was booked, the limit that counts."""
    names: dict[str, dict[Limit, str]] = {}
    for constituent, row in constituent_limits(rows):
        written = names.setdefault(plain(constituent), {})
        paper = _limit(row)
        written.pop(paper, None)  # the same one booked again is the latest
        written[paper] = constituent
    return {written[paper]: paper for written in names.values() for paper in [_that_counts([*written])] if paper}


def _that_counts(limits: list[Limit]) -> Limit | None:
    """The latest by its date that is for soap, else the latest of all, which is shown and does not count.

    Of two of one date the one booked last; an older paper booked later lifts no newer one.
    """
    in_order = sorted(limits, key=lambda one: one.dated)
    return next((one for one in reversed(in_order) if one.for_soap), in_order[-1] if in_order else None)


def _limit(row: SkinLimitRow) -> Limit:
    return Limit(row.limit_ppm, row.certificate, row.amendment, row.category, row.dated)


def _check(one: HeldAgainst, where: str) -> SkinCheck:
    share, ppm = show_share(round(one.share_ppm), 3), round(one.share_ppm)
    name = read_as(one.name) if one.constituent else one.name
    least = f"at least {share}" if one.silent else share
    if one.limit and one.over and share == show_share(one.limit.limit_ppm, 3):  # rounded, it would seem to be within
        least = f"{'more than' if one.silent else 'just over'} {one.limit.most}"
    head = f"{where}{name}, {least} of the bar at its driest"
    silent = f"nobody stated what {' and '.join(one.silent)} contain{'s' * (len(one.silent) == 1)}"
    if one.limit is None or not one.limit.for_soap:
        why = "no certificate says how much may be on the skin"
        if one.limit:
            why = f"{one.limit.source}, is not one for soap, which is category {SOAP_CATEGORY}, so it does not count"
        ask = f'soapledger material limit "{one.name}" PERCENT{" --constituent" * one.constituent}'
        words = f"{head}: {why}; ask its supplier, then: {ask} --certificate NUMBER --category {SOAP_CATEGORY}"
        return SkinCheck(one.name, ppm, None, None, "no certificate", words)
    source = f"{one.limit.source}, {show_date(one.limit.dated)}"
    most = f"the {one.limit.most} of {source}"
    verdict: Held
    if one.over:
        verdict, words = "over", f"{head}, is over {most}{f'; {silent}' * bool(one.silent)}."
    elif one.silent:
        ask = f'soapledger material contains "{one.silent[0]}" NAME=PERCENT … --source "STATEMENT"'  # whole, at once
        verdict = "not known"
        words = f"{head}, against {most}: {silent}, so it may be more; ask for its statement, then: {ask}"
    else:
        verdict, words = "within", f"{head}, is within {most}."
    return SkinCheck(one.name, ppm, one.limit.limit_ppm, source, verdict, words)


def read_as(name: str) -> str:
    """A name as it was written, with the entry it is counted as where that is another, and what to know of that."""
    found, remark = allergen_named(name), remark_on(name)
    if found is None or (plain(found.name) == plain(name) and not remark):
        return name
    return f"{name} (counted as {found.name}{f'; {remark}' if remark else ''})"


def show_stated(share_ppm: int, stated: str | None) -> str:
    """A share of a statement in percent, with what it was written as where that is another thing."""
    percent = f"{share_ppm / 10_000:.2f}" if share_ppm % 100 == 0 else f"{share_ppm / 10_000:.4f}"
    return f"{percent} %{f' (stated as {stated})' if stated else ''}" if share_ppm else "none"


def constituent_doubt(rows: Rows, name: str) -> str | None:
    """A sentence for a name that is none known here and close to one that is; else None.

    Label names and their synonyms are proposed before what was written of other oils.
    """
    known = constituents_known(rows)
    if allergen_named(name) or plain(name) in {plain(one) for one in known}:
        return None
    close = near(name, names_to_propose(), 1, cutoff=_ALIKE) or near(name, known, 1, cutoff=_ALIKE)
    if not close:
        return None
    return f"'{name}' is not a name known here; did you mean {close[0]}? A label or limit finds no other."


def stated(rows: Rows, material_id: int) -> list[str]:
    """What a material contains by each statement, and its limits on the skin, in words; what does not count says so."""
    found, meanings = [], Meanings(rows)
    for one in statements_of(rows, material_id):
        where = f", lot {one.lot_code}" if one.lot_code else ""
        said = meanings.of(one.name, material_id)
        entry = allergen_named(one.name)
        unknown = "" if entry else "; not a name known here, so no label counts it"
        unknown = f"; prohibited in the EU ({entry.entry})" if entry and entry.prohibited and one.share_ppm else unknown
        share = show_stated(one.share_ppm, one.stated)
        what = f"{read_as(one.name)} {share}" if one.share_ppm else f"no {read_as(one.name)}"
        found.append(f"contains {what}{where} [{one.source}]{f'; {said_of(said)}' if said else unknown}")
    for value in peroxides(rows):
        if value.material_id == material_id:
            where = f", lot {value.lot_code}" if value.lot_code else ""
            found.append(f"peroxide value {value.umol_per_l / 1000:g} mmol/L{where} [{value.source}]")
    limits = [_limit(row) for row in limits_of(rows, [material_id])[material_id]]
    counts = _that_counts(limits)
    for limit in limits:
        text = f"on the skin at most {limit.most} [{limit.source}, {show_date(limit.dated)}]"
        if not limit.for_soap:
            found.append(f"{text}; not counted: soap is category {SOAP_CATEGORY}")
        elif limit is counts:
            found.append(text)
    return found
