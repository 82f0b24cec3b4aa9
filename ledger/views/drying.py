"""What is left of the bars of a batch once they have dried, from what went into them."""

import sqlite3
from fractions import Fraction

from ledger.domain.composition import dried_to, reacted
from ledger.domain.recipe import DRIEST_WATER_PPM
from ledger.views.batch import BatchRow, find_batch, recipe_of
from ledger.views.bench import cooked_off, mass_in
from ledger.views.composition import Input, batch_stages, charged
from ledger.views.figures import figures_of
from ledger.views.ingredients import bases_of_batch
from ledger.views.material import material_list


def driest_mass(rows: sqlite3.Connection, batch: BatchRow) -> int | None:
    """What is left at its driest within the stock life of all that went in, in mg; None before anything did."""
    recipe = recipe_of(rows, batch)
    return mass_dried_to(rows, batch, recipe.driest_water_ppm if recipe else DRIEST_WATER_PPM)


def mass_dried_to(rows: sqlite3.Connection, batch: BatchRow, share_ppm: int) -> int | None:
    """Everything that went in, dried until water is this share of it (ppm), in mg; None before anything did.

    Reckoned over what it all comes down to, so that it holds for a portion and for rebatched soap too.
    """
    bases = [one for one in bases_of_batch(rows, batch.id) if one.mass_mg]
    if not bases:
        return None
    cards = {card.id: card for card in material_list(rows)}
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


def left_of_the_cut(rows: sqlite3.Connection, batch: BatchRow, share_ppm: int) -> Fraction | None:
    """The share of their weight at the cut that bars keep when water is this share of them (ppm).

    At the cut the water lost in the cook is gone already; a portion brings what its dough lost with it. None before
    anything went in.
    """
    dried, put_in = mass_dried_to(rows, batch, share_ppm), mass_in(rows, batch.id)
    if dried is None or not put_in:
        return None
    whole = batch_stages(rows, find_batch(rows, batch.part_of) if batch.part_of else batch)
    at_cut = Fraction(put_in * whole.cut.mass_mg, whole.before.mass_mg) if whole else Fraction(put_in)
    return min(dried / at_cut, Fraction(1))


def dry_of_the_cut(rows: sqlite3.Connection, batch: BatchRow) -> Fraction | None:
    """The share of their weight at the cut that bars keep with all their water gone: less they cannot weigh by drying.

    Of the cook only what the pot was weighed to lose counts as gone before the cut, never an estimate, which could
    leave the bars too little water to lose. None before anything went in.
    """
    if cooked_off(rows, find_batch(rows, batch.part_of).id if batch.part_of else batch.id) is not None:
        return left_of_the_cut(rows, batch, 0)
    dried, put_in = mass_dried_to(rows, batch, 0), mass_in(rows, batch.id)
    return min(Fraction(dried, put_in), Fraction(1)) if dried is not None and put_in else None
