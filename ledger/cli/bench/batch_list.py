"""soapledger batch list."""

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count
from ledger.cli.kit.window import Every, Last, asked_for, latest, one_more, the_last
from ledger.rows.batch import batches
from ledger.units.dates import show_date


def command(ctx: typer.Context, last: Last = None, every: Every = False, json: Json = False) -> None:
    """List the batches, the latest last."""
    number = asked_for(last, every)
    here = desk(ctx)
    found, more = latest(batches(here.rows(), last=one_more(number)), number)
    words = Listed(
        f"{the_last(count(len(found), 'batch', 'batches'), bool(more))}.",
        ("code", "product", "made", "status", "bars"),
        ((b.code, b.product, show_date(b.on), b.status, str(b.made) if b.soap and b.made else "") for b in found),
        right=(4,),
        none="No batch yet. Plan one: soapledger batch plan RECIPE",
        earlier=here.typed("batch list --all") if more else "",
    )
    answer([{"status": one.status, "batch": one} for one in found], json, words)
