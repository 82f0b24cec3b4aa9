"""Which numbered lines stand on the worksheet of a batch, and which on that of each portion it divides into."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from ledger.domain.recipe.formulate import tolerance
from ledger.domain.recipe.recipe import AT_TRACE, Portion, Recipe, RecipeLine
from ledger.units.money import share_out
from ledger.units.scale import Scale
from ledger.units.words import MaterialKind, Role, Stage

DOUGH: Role = "dough"  # the role of its line on the worksheet of a portion


@dataclass(frozen=True)
class Taken:
    """So much (mg or pieces) of one material; no lot where none is set aside yet."""

    material_id: int
    kind: MaterialKind
    lot_id: int | None
    quantity: int


Filled = Sequence[tuple[RecipeLine, Sequence[Taken]]]  # in the order of work


@dataclass(frozen=True)
class SheetLine:
    """One line: so much of one lot, OK from `low` to `high`."""

    number: int
    role: Role
    material_id: int
    lot_id: int | None
    target: int
    low: int
    high: int
    stage: Stage
    in_demand: int | None = None  # 0: the lye is not reckoned for it


@dataclass(frozen=True)
class PortionSheet:
    """The worksheet of one portion, and how many bars it gives."""

    portion: Portion
    bars: int
    lines: tuple[SheetLine, ...]


def lines_of_batch(recipe: Recipe, filled: Filled, *, scale: Scale) -> tuple[SheetLine, ...]:
    """The lines of a batch; what goes into a portion alone, and its wrapping, stand on the worksheet of that."""
    found = []
    for line, takes in filled:
        if line.portion or (line.role == "packaging" and recipe.portions):
            continue
        uncounted = 0 if not line.in_demand or line.add_alkali is False else None
        for one in takes:
            role = line.role
            if role == "part":
                assert one.kind != "soap"  # no recipe takes bars as a part
                role = one.kind
            found.append((role, one, line.stage, uncounted))
    return _numbered(found, scale)


def sheets_of_portions(
    recipe: Recipe, filled: Filled, bars_planned: int | None, *, dough_id: int, scale: Scale
) -> tuple[PortionSheet, ...]:
    """The worksheet of each portion: the dough it takes, what goes into it alone, and its wrapping."""
    if not recipe.portions:
        return ()
    shared = [(line, takes) for line, takes in filled if line.role != "packaging" and not line.portion]
    whole = sum(one.quantity for _, takes in shared for one in takes)
    doughs = share_out(whole, [one.share_ppm for one in recipe.portions])
    fats = sum(one.quantity for line, takes in filled for one in takes if line.role == "fat")
    bars = bars_of_portions(recipe, bars_planned, Fraction(fats, recipe.fats_total_mg or fats))
    sheets = []
    for portion, dough, pieces in zip(recipe.portions, doughs, bars, strict=True):
        found: list[tuple[Role, Taken, Stage, int | None]] = []
        found.append((DOUGH, Taken(dough_id, "intermediate", None, dough), AT_TRACE, None))
        for line, takes in filled:
            if line.role == "packaging" and pieces:
                found += [("packaging", _pieces(one, line, pieces), line.stage, None) for one in takes[:1]]
            elif line.portion == portion.name:
                found += [(line.role, one, line.stage, None) for one in takes]
        sheets.append(PortionSheet(portion, pieces, _numbered(found, scale)))
    return tuple(sheets)


def _pieces(one: Taken, line: RecipeLine, bars: int) -> Taken:
    """The wrapping of so many bars."""
    return Taken(one.material_id, one.kind, one.lot_id, (line.per_bar or 1) * bars)


def _numbered(found: Iterable[tuple[Role, Taken, Stage, int | None]], scale: Scale) -> tuple[SheetLine, ...]:
    lines = []
    for number, (role, one, stage, uncounted) in enumerate(found, 1):
        low, high = tolerance(role, one.quantity, scale=scale)
        lines.append(SheetLine(number, role, one.material_id, one.lot_id, one.quantity, low, high, stage, uncounted))
    return tuple(lines)


def bars_of_portions(recipe: Recipe, planned: int | None, scale: Fraction) -> list[int]:
    """The bars of each portion: as written, at the size of the batch; the others share the rest by their dough."""
    written = [round((one.bars or 0) * scale) for one in recipe.portions]
    if all(one.bars for one in recipe.portions):
        return written
    rest = share_out(
        max((planned or 0) - sum(written), 0),
        [0 if one.bars else one.share_ppm for one in recipe.portions],
    )
    return [mine + others for mine, others in zip(written, rest, strict=True)]
