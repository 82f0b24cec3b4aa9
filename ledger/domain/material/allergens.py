"""Which fragrance allergens a bar declares: summed over all that went in, compared as it is at its driest."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping
from fractions import Fraction
from typing import NamedTuple

from ledger.units.quantity import WHOLE_PPM


class Holds(NamedTuple):
    """One portion of one lot that may hold allergens: mg, and its statement in ppm by name (None: there is none)."""

    material: str
    lot_code: str
    inci: str
    mass_mg: int
    contains_ppm: Mapping[str, int] | None
    fragrance: bool  # an essential oil or fragrance, by its kind or its INCI name, which must have a statement


class ListedAs(NamedTuple):
    """The list entry that a constituent or an oil falls under."""

    name: str
    listed: bool  # on the list that applies
    prohibited: bool
    maximum_ppm: Fraction | None = None  # of the finished product, by the entry itself


class Found(NamedTuple):
    """One allergen in the bar: its share at the driest, in ppm, exactly; and the lots it comes from."""

    name: str
    share_ppm: Fraction
    declared: bool
    prohibited: bool
    lots: tuple[str, ...]
    over: bool = False  # more than its entry allows in the finished product, which no line on the label mends


class AllergenAnswer(NamedTuple):
    """All allergens found, the highest first, and the lots of which nobody stated what they hold."""

    found: tuple[Found, ...]
    no_statement: tuple[str, ...]  # "material, lot"
    unknown: tuple[str, ...] = ()  # names in statements that are no entry's: "'name', material, lot"

    @property
    def declared(self) -> tuple[str, ...]:
        """The names on the label, by the alphabet."""
        return tuple(sorted(one.name for one in self.found if one.declared))

    @property
    def prohibited(self) -> tuple[str, ...]:
        """Names that may not be in a bar at all."""
        return tuple(one.name for one in self.found if one.prohibited)


def allergens_in(
    parts: Iterable[Holds],
    *,
    entry_of: Callable[[str], ListedAs | None],
    entry_of_oil: Callable[[str], ListedAs | None],
    driest_mg: int,
    threshold_ppm: int,
) -> AllergenAnswer:
    """Sum every entry over all sources; declare what exceeds the threshold, not what equals it.

    A group is summed under its one name; what is itself an entry counts with all its mass, once. Rinse-off: 0.01 %
    (Regulation (EU) 2023/1545, read). What is prohibited is found at any share; a name that is no entry's is listed.
    """
    masses: dict[str, Fraction] = defaultdict(Fraction)
    entries: dict[str, ListedAs] = {}
    lots: dict[str, set[str]] = defaultdict(set)
    silent, unknown = [], []
    for part in parts:
        if part.fragrance and part.contains_ppm is None:
            silent.append(f"{part.material}, lot {part.lot_code}")
        own = entry_of_oil(part.inci)
        hits = [(own, Fraction(part.mass_mg))]
        for name, ppm in (part.contains_ppm or {}).items():
            held = entry_of(name)
            if held is None and ppm:
                unknown.append(f"'{name}', {part.material}, lot {part.lot_code}")
            elif held and (own is None or held.name != own.name):
                hits.append((held, Fraction(part.mass_mg * ppm, WHOLE_PPM)))
        for entry, mass in hits:
            if entry is not None and mass:
                masses[entry.name] += mass
                entries[entry.name] = entry
                lots[entry.name].add(part.lot_code)
    found = []
    for name, mass in masses.items():
        share = mass * WHOLE_PPM / driest_mg
        one = entries[name]
        declared = one.listed and share > threshold_ppm
        over = one.maximum_ppm is not None and share > one.maximum_ppm
        found.append(Found(name, share, declared, one.prohibited, tuple(sorted(lots[name])), over))
    return AllergenAnswer(
        tuple(sorted(found, key=lambda one: (-one.share_ppm, one.name))),
        tuple(dict.fromkeys(silent)),
        tuple(dict.fromkeys(unknown)),
    )
