"""soapledger batch list."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, out_json, say, table
from ledger.rows.batch import batches
from ledger.units.dates import show_date


def command(ctx: typer.Context, json: Json = False) -> None:
    """List the batches, the latest last."""
    here = desk(ctx)
    found = batches(here.rows())
    if json:
        out_json([{"status": one.status, "batch": one} for one in found])
        return
    if not found:
        say("No batch yet. Plan one: soapledger batch plan RECIPE")
        return
    say(f"{count(len(found), 'batch', 'batches')}.")
    table(
        ("code", "product", "made", "status", "bars"),
        [(b.code, b.product, show_date(b.on), b.status, str(b.made) if b.soap and b.made else "") for b in found],
        right=(4,),
    )
