"""soapledger complaint list."""

from typing import Annotated

import typer

from ledger.cli.complaint.words import WORDS
from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count
from ledger.cli.kit.window import Every, Last, asked_for, latest
from ledger.rows.complaint import complaints
from ledger.rows.lot import find_lot
from ledger.units.dates import show_date


def command(
    ctx: typer.Context,
    batch: Annotated[str | None, typer.Option("--batch", help="Of one batch.")] = None,
    last: Last = None,
    every: Every = False,
    json: Json = False,
) -> None:
    """List the complaints, open and closed: every open one, and the last fifty that are closed."""
    number = asked_for(last, every)
    here = desk(ctx)
    code = find_lot(here.rows(), batch).code if batch else None
    found = complaints(here.rows(), batch_code=code)
    shown, more = latest(found, number, always=lambda one: one.closed_on is None)
    words = Listed(
        f"{count(len(found), 'complaint')}, {sum(not c.closed_on for c in found) or 'none'} open.",
        ("number", "on", "state", "batch", "seriousness", "what"),
        (
            (
                str(c.number),
                show_date(c.on),
                f"closed {show_date(c.closed_on)}" if c.closed_on else "open",
                c.batch_code or "unknown",
                WORDS[c.serious],
                c.what,
            )
            for c in shown
        ),
        right=(0,),
        none="No complaint was booked.",
        earlier=here.typed(f"complaint list{f' --batch {code}' if code else ''} --all") if more else "",
    )
    answer(shown, json, words)
