"""The declaration as saponified: the soap of each fat, glycerin, what is left of the fats, water."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import NamedTuple

from ledger.domain.label.declaration import Part
from ledger.domain.lye.composition import GLYCEROL, Composition, reacted, soap_of
from ledger.domain.lye.saponification import KOH, MG_PER_KG, molar_mass
from ledger.rows.material import MaterialCard
from ledger.units.money import share_out
from ledger.units.words import AlkaliKind, Process
from ledger.views.material.figures import figures_of
from ledger.views.recipe.composition import Input, charged
from ledger.views.stock.bases import Base

_ALKALI = {"NaOH": "SODIUM HYDROXIDE", "KOH": "POTASSIUM HYDROXIDE"}
_GLYCERIN, _WATER = "GLYCERIN", "AQUA"


class _Fat(NamedTuple):
    """All of one fat by its declared name: mg, its mean saponification value, and the names of its soaps."""

    mass_mg: int
    sap_mg_per_kg: Fraction
    salts: Mapping[str, str | None]


def saponified_parts(bases: Sequence[Base], cards: Mapping[int, MaterialCard], process: Process) -> tuple[Part, ...]:
    """What the lye made of what went in, by declared name; the masses add up to what went in.

    The soap of each fat goes by the name in the table, or the maker's own; a fat without one is listed under its own
    name, with its alkali. What an acid became is listed under the acid's name. Raises BadInput for a material without
    an INCI name or a fat without a saponification value.
    """
    real = [one for one in bases if not one.carried]
    inputs = [
        Input(
            one.lot.kind,
            cards[one.lot.material_id]._replace(name=one.inci),
            figures_of(cards[one.lot.material_id], one.lot),
            one.mass_mg,
            one.held_back,
        )
        for one in real
    ]
    soap = reacted(charged("hot" if process == "hot" else "cold", inputs))
    fats = _fats(inputs)
    masses = _by_name(soap, fats, _shares(inputs))
    lots = _lots(real)
    names = [name for name, mass in masses.items() if mass > 0]
    whole = sum(one.mass_mg for one in real)
    shared = share_out(whole, [round(masses[name] * MG_PER_KG) for name in names])
    roles = {one.inci: one.lot.kind for one in real}
    found = [
        Part(name, mass, roles.get(name, "soap"), lot)
        for name, mass in zip(names, shared, strict=True)
        for lot, mass in _to_lots(mass, lots.get(_source(name, fats), lots[""]))
    ]
    herbs = [Part(one.inci, one.mass_mg, "botanical", one.lot.code) for one in bases if one.carried]
    return (*found, *herbs)


def _fats(inputs: Sequence[Input]) -> dict[str, _Fat]:
    found: dict[str, _Fat] = {}
    for one in inputs:
        if one.role != "fat":
            continue
        fat = one.figures.fat(one.mass_mg)
        before = found.get(one.card.name)
        mass = one.mass_mg + (before.mass_mg if before else 0)
        weighed = fat.mass_mg * fat.sap_mg_per_kg + (before.mass_mg * before.sap_mg_per_kg if before else 0)
        salts = {"NaOH": one.card.inci_sodium, "KOH": one.card.inci_potassium}
        found[one.card.name] = _Fat(mass, Fraction(weighed) / mass, salts)
    return found


def _shares(inputs: Sequence[Input]) -> dict[AlkaliKind, Fraction]:
    """Which share of the alkali each kind is, mole for mole."""
    worth: dict[AlkaliKind, Fraction] = defaultdict(Fraction)
    for one in inputs:
        if one.role == "alkali":
            alkali = one.figures.alkali(one.mass_mg)
            worth[alkali.kind] += alkali.koh_mg
    return {kind: part / sum(worth.values()) for kind, part in worth.items()}


def _by_name(soap: Composition, fats: Mapping[str, _Fat], shares: Mapping[AlkaliKind, Fraction]) -> dict[str, Fraction]:
    """The mass of everything by declared name."""
    masses: dict[str, Fraction] = defaultdict(Fraction)
    nameless = {name for name, fat in fats.items() if any(fat.salts[kind] is None for kind in shares)}
    left = {part.name: part.mass_mg for part in soap.parts if part.what == "fat"}
    soaps = {soap_of(name, kind): (name, kind) for name in fats for kind in shares}
    for part in soap.parts:
        mass = Fraction(part.mass_mg)
        if part.what == "soap":
            name, kind = soaps[part.name]
            if name not in nameless:
                masses[fats[name].salts[kind] or name] += mass
        elif part.what == "fat":
            if part.name not in nameless:
                masses[part.name] += mass
        elif part.what == "glycerol":
            masses[_GLYCERIN] += mass
        elif part.what in ("water", "rest of the alkali"):  # what an alkali holds besides is water and its carbonate
            masses[_WATER] += mass
        elif part.what == "alkali left over":
            masses[_ALKALI[part.name]] += mass
        else:
            masses[part.name.removeprefix("salt of ")] += mass
    for name in nameless:
        fat = fats[name]
        gone = fat.mass_mg - left.get(name, 0)
        masses[name] += fat.mass_mg
        for kind, share in shares.items():
            alkali = gone * share * fat.sap_mg_per_kg / MG_PER_KG * molar_mass(kind) / KOH
            masses[_ALKALI[kind]] += alkali
            masses[_GLYCERIN] -= alkali / molar_mass(kind) * GLYCEROL / 3
    return masses


def _lots(bases: Sequence[Base]) -> dict[str, dict[str, int]]:
    """Lots by the name they are declared under; "" stands for all the fats together."""
    found: dict[str, dict[str, int]] = defaultdict(dict)
    for one in bases:
        for name in (one.inci, "" if one.lot.kind == "fat" else None):
            if name is not None:
                found[name][one.lot.code] = found[name].get(one.lot.code, 0) + one.mass_mg
    return found


def _source(name: str, fats: Mapping[str, _Fat]) -> str:
    """The fat whose soap goes by a name; else the name itself."""
    return next((inci for inci, fat in fats.items() if name in fat.salts.values()), name)


def _to_lots(mass_mg: int, lots: Mapping[str, int]) -> list[tuple[str, int]]:
    """A mass shared over the lots it comes from."""
    return list(zip(lots, share_out(mass_mg, list(lots.values())), strict=True))
