"""soapledger history."""

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, on_screen
from ledger.cli.kit.window import Every, Last, asked_for, latest, one_more, the_last
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
    entries = count(len(found), "entry", "entries")
    words = Listed(
        f"{the_last(entries, more)}, the latest last.",
        ("entry", "written", "by", "what"),
        (
            (
                str(one.entry),
                here.clock(one.recorded_at),
                one.who,
                one.said + (f" [taken back by {one.undone_by}]" if one.undone_by else ""),
            )
            for one in found
        ),
        right=(0,),
        wraps=(3,) if on_screen() else (),
        earlier=here.typed("history --all") if more else "",
    )
    answer(found, json, words)
