"""The hazards of a recipe or a batch, from what goes in."""

from collections.abc import Iterable
from fractions import Fraction

from ledger.domain.recipe.hazards import InRecipe, Look, hazards_in
from ledger.reference.hazards import hazards
from ledger.rows.material import MaterialCard
from ledger.units.quantity import WHOLE_PPM
from ledger.units.words import Process, Stage


def hazards_of(
    process: Process,
    put_in: Iterable[tuple[MaterialCard, Stage, int]],
    fats_mg: int,
    superfat_ppm: int,
    lye_ppm: int,
    mould: str | None,
) -> list[str]:
    """A sentence for each; `put_in` is what goes in, when, in mg, and `lye_ppm` the strength of what is in the jug."""
    materials = [
        InRecipe(
            card.name,
            " ; ".join(word for word in (card.name, card.reference_key, card.inci) if word),
            card.kind == "fragrance",
            stage,
            round(Fraction(mass * WHOLE_PPM, fats_mg or 1)),
        )
        for card, stage, mass in put_in
    ]
    return hazards_in(Look(process, materials, superfat_ppm, lye_ppm, mould), hazards())
