"""soapledger batch strain."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, On, Yes
from ledger.cli.kit.show import say, warn_of
from ledger.operations.bench.bulk import strain_batch
from ledger.rows.batch import find_batch
from ledger.units.quantity import parse_mass, show_mass
from ledger.views.bench.cut_doubts import bulk_doubts


def command(
    ctx: typer.Context,
    code: Batch,
    weight: Annotated[str, typer.Argument(help="What was strained off, e.g. 480 g.")],
    spent: Annotated[str | None, typer.Option("--spent", help="What stayed in the cloth, thrown away.")] = None,
    on: On = None,
    yes: Yes = False,
) -> None:
    """End an infusion: book the oil strained off as a lot of its own."""
    here = desk(ctx)
    mass = parse_mass(weight, what="the weight strained off")
    waste = parse_mass(spent, what="the weight of the spent solids") if spent else 0
    warn_of(bulk_doubts(here.rows(), find_batch(here.rows(), code), mass), yes)
    lot = strain_batch(here.book(), code, mass_mg=mass, on=here.day(on), by=here.who, spent_mg=waste)
    say(f"{show_mass(mass, here.settings.units)} strained off as lot {lot}. Write the code on the jar.")
    say(f"Or print its label: soapledger lot label {lot} -o jar.pdf")
