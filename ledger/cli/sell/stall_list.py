"""soapledger stall list."""

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count
from ledger.rows.lot import places
from ledger.views.stock.stall import at_stall


def command(ctx: typer.Context, json: Json = False) -> None:
    """List the stalls and what stands at each."""
    rows = desk(ctx).rows()
    stalls = [(one, at_stall(rows, one.id)) for one in places(rows) if one.kind == "stall"]
    words = Listed(
        f"{count(len(stalls), 'stall')}.",
        ("stall", "bars", "batches"),
        ((p.name, str(sum(s.bars for s in standing)), ", ".join(s.code for s in standing)) for p, standing in stalls),
        right=(1,),
        wraps=(2,),
        none='No stall yet. Add one: soapledger stall add "Saturday market"',
    )
    answer([{"stall": place, "bars": standing} for place, standing in stalls], json, words)
