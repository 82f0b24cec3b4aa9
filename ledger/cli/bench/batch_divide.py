"""soapledger batch divide."""

from typing import Annotated

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, Json, On
from ledger.cli.kit.show import count
from ledger.errors import BadInput
from ledger.operations.bench.portions import divide_batch
from ledger.rows.batch import find_batch
from ledger.units.quantity import parse_mass, show_mass


def command(
    ctx: typer.Context,
    code: Batch,
    portions: Annotated[
        list[str] | None, typer.Argument(help="What went into each, e.g. plain='700 g' slate='450 g'; else as planned.")
    ] = None,
    on: On = None,
    json: Json = False,
) -> None:
    """Divide the dough at trace into its portions, each a batch with a code and bars of its own."""
    here = desk(ctx)
    masses: dict[str, int] = {}
    for text in portions or ():
        name, separator, weight = (part.strip() for part in text.partition("="))
        if not separator or name in masses:
            raise BadInput(f"'{text}' is not a portion with its weight, once; write plain='700 g'.")
        masses[name] = parse_mass(weight, what=f"the weight of {name}")
    batch = find_batch(here.rows(), code)
    day = here.day(on) if on else min(batch.on, here.today)
    done = divide_batch(here.book(), code, masses, on=day, by=here.who)
    words = Listed(
        f"Batch {batch.code} is divided into {count(len(done), 'portion')}.",
        ("portion", "batch", "dough"),
        ((name, one, show_mass(mass, here.settings.units)) for name, one, mass in done),
        right=(2,),
        then=f"Next, for each: soapledger batch log {done[0][1]}",
    )
    answer([{"portion": name, "batch": one, "dough_mg": mass} for name, one, mass in done], json, words)
