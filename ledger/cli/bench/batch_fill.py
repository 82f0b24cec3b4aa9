"""soapledger batch fill."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, On, Yes
from ledger.cli.kit.show import say, warn_of
from ledger.operations.bench.bulk import fill_batch
from ledger.rows.batch import find_batch
from ledger.rows.lot import find_lot
from ledger.rows.material import material_by_id
from ledger.units.quantity import parse_mass, show_mass, show_share
from ledger.views.bench.cut_doubts import bulk_doubts
from ledger.views.material.figures import figures_of


def command(
    ctx: typer.Context,
    code: Batch,
    weight: Annotated[str, typer.Argument(help="What came of it, e.g. 980 g.")],
    on: On = None,
    yes: Yes = False,
) -> None:
    """End a blend of fats or a stock lye: book it, filled off, as a lot of its own."""
    here = desk(ctx)
    mass = parse_mass(weight, what="what came of it")
    warn_of(bulk_doubts(here.rows(), find_batch(here.rows(), code), mass), yes)
    code_of_lot = fill_batch(here.book(), code, mass_mg=mass, on=here.day(on), by=here.who)
    lot = find_lot(here.rows(), code_of_lot)
    card = material_by_id(here.rows(), lot.material_id)
    strength = round(figures_of(card, lot).alkali(0).purity_ppm) if lot.purity_ppm is not None else None
    what = f", {show_share(strength, 2)} alkali" if strength is not None else ""
    say(f"{show_mass(mass, here.settings.units)} filled off as lot {lot.code}{what}. Write the code on the container.")
    say(f"Or print its label: soapledger lot label {lot.code} -o jar.pdf")
    if strength is not None and card.purity_ppm is not None and abs(strength - card.purity_ppm) > 10_000:
        say(
            f"{lot.material} is meant to hold {show_share(card.purity_ppm)}; soap is reckoned with the "
            f"{show_share(strength, 2)} of this lot, so write that on the container too."
        )
