"""soapledger stall list."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, out_json, say, table
from ledger.rows.lot import places
from ledger.views.stock.stall import at_stall


def command(ctx: typer.Context, json: Json = False) -> None:
    """List the stalls and what stands at each."""
    rows = desk(ctx).rows()
    stalls = [(one, at_stall(rows, one.id)) for one in places(rows) if one.kind == "stall"]
    if json:
        out_json([{"stall": place, "bars": standing} for place, standing in stalls])
        return
    if not stalls:
        say('No stall yet. Add one: soapledger stall add "Saturday market"')
        return
    say(f"{count(len(stalls), 'stall')}.")
    table(
        ("stall", "bars", "batches"),
        [(p.name, str(sum(s.bars for s in standing)), ", ".join(s.code for s in standing)) for p, standing in stalls],
        right=(1,),
    )
