"""soapledger history."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, out_json, say, table
from ledger.cli.kit.window import Every, Last, asked_for, latest, one_more, say_earlier
from ledger.rows.history import history


def command(
    ctx: typer.Context,
    last: Last = None,
    every: Every = False,
    json: Json = False,
) -> None:
    """List what was written, entry by entry, the latest last."""
    number = asked_for(last, every)
    here = desk(ctx)
    found, more = latest(history(here.rows(), last=one_more(number)), number)
    earlier = here.typed("history --all")
    if json:
        out_json(found)
        say_earlier(more, earlier, json=True)
        return
    entries = count(len(found), "entry", "entries")
    say(f"The last {entries}, the latest last." if more else f"{entries}, the latest last.")
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
    say_earlier(more, earlier, json=False)
