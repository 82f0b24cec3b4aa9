"""soapledger history."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, out_json, say, table
from ledger.rows.history import history
from ledger.units.quantity import parse_pieces


def command(
    ctx: typer.Context,
    last: Annotated[str | None, typer.Option("--last", help="Only the last so many.")] = None,
    json: Json = False,
) -> None:
    """List what was written, entry by entry, the latest last."""
    number = parse_pieces(last, what="the number of entries") if last else None
    here = desk(ctx)
    found = history(here.rows(), last=number)
    if json:
        out_json(found)
        return
    say(f"{count(len(found), 'entry', 'entries')}, the latest last.")
    table(
        ("entry", "written", "by", "what"),
        [
            (
                str(one.entry),
                here.clock(one.recorded_at),
                one.who,
                one.said + (f" [taken back by {one.undone_by}]" if one.undone_by else ""),
            )
            for one in found
        ],
        right=(0,),
    )
