"""What is left of the bars of a batch once they have dried, from what went into them."""

import sqlite3
from collections.abc import Sequence
from fractions import Fraction

from ledger.domain.composition import dried_to, reacted
from ledger.domain.recipe import DRIEST_WATER_PPM
from ledger.views.bases import Base
from ledger.views.batch import BatchRow, find_batch, recipe_of
from ledger.views.bench import cooked_off, mass_in
from ledger.views.composition import Input, batch_stages, charged
from ledger.views.figures import figures_of
from ledger.views.ingredients import bases_of_batch
from ledger.views.made_of import Compositions
from ledger.views.material import materials_by_id


def driest_water(rows: sqlite3.Connection, batch: BatchRow) -> int:
    """The water of its bars at their driest within the stock life, in ppm."""
    recipe = recipe_of(rows, batch)
    return recipe.driest_water_ppm if recipe else DRIEST_WATER_PPM


def mass_dried_to(
    rows: sqlite3.Connection, batch: BatchRow, share_ppm: int, made: Compositions | None = None
) -> int | None:
    """Everything that went in, dried until water is this share of it (ppm), in mg; None before anything did.

    Reckoned over what it all comes down to, so that it holds for a portion and for rebatched soap too.
    """
    return dried(rows, bases_of_batch(rows, batch.id, made), share_ppm)


def dried(rows: sqlite3.Connection, all_bases: Sequence[Base], share_ppm: int) -> int | None:
    """All of these lots as received, dried until water is this share of them (ppm), in mg; None for nothing."""
    bases = [one for one in all_bases if one.mass_mg]
    if not bases:
        return None
    cards = materials_by_id(rows, {one.lot.material_id for one in bases})
    inputs = [
        Input(
            one.lot.kind,
            cards[one.lot.material_id],
            figures_of(cards[one.lot.material_id], one.lot),
            one.mass_mg,
            False,
        )
        for one in bases
    ]
    return dried_to(reacted(charged("cold", inputs)), share_ppm, stage="dried").mass_mg


def left_of_the_cut(
    rows: sqlite3.Connection, batch: BatchRow, share_ppm: int, made: Compositions | None = None
) -> Fraction | None:
    """The share of their weight at the cut that bars keep when water is this share of them (ppm).

    At the cut the water lost in the cook is gone already; a portion brings what its dough lost with it. None before
    anything went in.
    """
    left, put_in = mass_dried_to(rows, batch, share_ppm, made), mass_in(rows, batch.id)
    if left is None or not put_in:
        return None
    whole = batch_stages(rows, find_batch(rows, batch.part_of) if batch.part_of else batch)
    at_cut = Fraction(put_in * whole.cut.mass_mg, whole.before.mass_mg) if whole else Fraction(put_in)
    return min(left / at_cut, Fraction(1))


def dry_of_the_cut(rows: sqlite3.Connection, batch: BatchRow, made: Compositions | None = None) -> Fraction | None:
    """The share of their weight at the cut that bars keep with all their water gone: less they cannot weigh by drying.

    Of the cook only what the pot was weighed to lose counts as gone before the cut, never an estimate, which could
    leave the bars too little water to lose. None before anything went in.
    """
    if cooked_off(rows, find_batch(rows, batch.part_of).id if batch.part_of else batch.id) is not None:
        return left_of_the_cut(rows, batch, 0, made)
    left, put_in = mass_dried_to(rows, batch, 0, made), mass_in(rows, batch.id)
    return min(Fraction(left, put_in), Fraction(1)) if left is not None and put_in else None
