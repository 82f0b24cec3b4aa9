"""What is left of the bars of batches once they have dried, from what went into them."""

from collections.abc import Collection, Iterable, Mapping
from fractions import Fraction
from functools import cache

from ledger.domain.lye.composition import Composition, dried_to, reacted
from ledger.domain.recipe.recipe import DRIEST_WATER_PPM, Recipe
from ledger.rows.batch import BatchRow, batches_coded
from ledger.rows.lot import lots_by_id
from ledger.rows.material import MaterialCard, materials_by_id
from ledger.rows.opened import Rows
from ledger.rows.reading import lost_in_the_pot, masses_in, readings_of
from ledger.rows.recipe import versions_by_id
from ledger.views.lye.lye_check import weighed_in_each
from ledger.views.material.figures import figures_of
from ledger.views.recipe.composition import Input, charged, stages_of
from ledger.views.recipe.ingredients import bases_of_batch
from ledger.views.stock.bases import Base
from ledger.views.stock.made_of import Compositions


def driest_water(recipe: Recipe | None) -> int:
    """The water of bars at their driest within the stock life, in ppm."""
    return recipe.driest_water_ppm if recipe else DRIEST_WATER_PPM


def undried(bases: Iterable[Base], cards: Mapping[int, MaterialCard]) -> Composition | None:
    """What the lye made of these lots as received; None for nothing.

    Reckoned over what it all comes down to, so that it holds for a portion and for rebatched soap too.
    """
    inputs = [
        Input(
            one.lot.kind,
            cards[one.lot.material_id],
            figures_of(cards[one.lot.material_id], one.lot),
            one.mass_mg,
            False,
        )
        for one in bases
        if one.mass_mg
    ]
    return reacted(charged("cold", inputs)) if inputs else None


class Drying:
    """The drying of some batches, read by set: as many statements for one as for a thousand."""

    def __init__(self, rows: Rows, batches: Collection[BatchRow]) -> None:
        """Reads all that the answers below need."""
        numbers = [one.id for one in batches]
        doughs = batches_coded(rows, {one.part_of for one in batches if one.part_of})
        self._whole = {one.id: doughs[one.part_of] if one.part_of else one for one in batches}
        wholes = {one.id for one in self._whole.values()}
        versions = {one.recipe_version_id for one in (*batches, *doughs.values()) if one.recipe_version_id is not None}
        self._recipes = versions_by_id(rows, versions)
        self.readings = readings_of(rows, wholes.union(numbers))
        self._put_in = masses_in(rows, numbers)
        self._weighed = weighed_in_each(rows, wholes)
        self._bars = lots_by_id(rows, {one.yield_lot_id for one in batches if one.yield_lot_id is not None})
        made = Compositions(rows, of=numbers)
        materials = {one.material_id for found in self._weighed.values() for one in found}
        self._cards = materials_by_id(rows, materials.union(one.material_id for one in made.lots.values()))
        self._undried = cache(lambda number: undried(bases_of_batch(rows, number, made), self._cards))
        self._at_cut = cache(self._mass_at_cut)

    def recipe(self, batch: BatchRow) -> Recipe | None:
        """The recipe version a batch was planned from."""
        return None if batch.recipe_version_id is None else self._recipes[batch.recipe_version_id]

    def mass_of_the_bars(self, batch: BatchRow) -> int | None:
        """What its bars weighed together at the cut, in mg."""
        return None if batch.yield_lot_id is None else self._bars[batch.yield_lot_id].mass_mg

    def mass_dried_to(self, batch: BatchRow, share_ppm: int) -> int | None:
        """Everything that went in, dried until water is this share of it (ppm), in mg; None before anything did."""
        soap = self._undried(batch.id)
        return dried_to(soap, share_ppm, stage="dried").mass_mg if soap else None

    def left_of_the_cut(self, batch: BatchRow, share_ppm: int) -> Fraction | None:
        """The share of their weight at the cut that bars keep when water is this share of them (ppm).

        At the cut the water lost in the cook is gone already; a portion brings what its dough lost with it. None before
        anything went in.
        """
        left, put_in = self.mass_dried_to(batch, share_ppm), self._put_in[batch.id]
        if left is None or not put_in:
            return None
        return min(left / (put_in * self._at_cut(self._whole[batch.id].id)), Fraction(1))

    def dry_of_the_cut(self, batch: BatchRow) -> Fraction | None:
        """The share of their weight at the cut that bars keep with all their water gone: less they cannot weigh.

        Of the cook only what the pot was weighed to lose counts as gone before the cut, never an estimate, which could
        leave the bars too little water to lose. None before anything went in.
        """
        if lost_in_the_pot(self.readings[self._whole[batch.id].id]) is not None:
            return self.left_of_the_cut(batch, 0)
        left, put_in = self.mass_dried_to(batch, 0), self._put_in[batch.id]
        return min(Fraction(left, put_in), Fraction(1)) if left is not None and put_in else None

    def cut_bar(self, batch: BatchRow) -> Fraction | None:
        """What a bar weighed at the cut, on average, in mg; None where none was weighed then."""
        mass = self.mass_of_the_bars(batch)
        if mass is not None and batch.made:
            return Fraction(mass, batch.made)
        each = [
            (one.value, one.bars or 1)
            for one in self.readings[batch.id]
            if one.what == "bar weight" and one.value is not None and one.on == batch.yielded_on
        ]
        return Fraction(sum(mass for mass, _ in each), sum(bars for _, bars in each)) if each else None

    def dry_bar(self, batch: BatchRow) -> Fraction | None:
        """What a bar weighs with all its water gone, on average, in mg; None where none was weighed at the cut."""
        cut, kept = self.cut_bar(batch), self.dry_of_the_cut(batch)
        return cut * kept if cut is not None and kept is not None else None

    def _mass_at_cut(self, number: int) -> Fraction:
        """What of the mass that went into a whole batch is there at the cut."""
        whole = next(one for one in self._whole.values() if one.id == number)
        lost = lost_in_the_pot(self.readings[number])
        found = stages_of(whole.process, self._weighed[number], self._cards, self.recipe(whole), lost_mg=lost)
        return Fraction(found.cut.mass_mg, found.before.mass_mg) if found else Fraction(1)
