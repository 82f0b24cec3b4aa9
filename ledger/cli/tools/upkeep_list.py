"""soapledger upkeep list."""

from shlex import quote
from typing import Annotated

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count
from ledger.cli.kit.window import Every, Last, asked_for, latest
from ledger.domain.tools.upkeep import KINDS
from ledger.rows.equipment import upkeep_list
from ledger.units.dates import parse_date, show_date
from ledger.units.names import kind_meant


def command(
    ctx: typer.Context,
    kind: Annotated[str | None, typer.Option("--kind", help="Of one kind.")] = None,
    on: Annotated[str | None, typer.Option("--on", help="As on this day, also a coming one (today).")] = None,
    last: Last = None,
    every: Every = False,
    json: Json = False,
) -> None:
    """List what was done, with what is due or overdue first; of the rest the last fifty."""
    number = asked_for(last, every)
    here = desk(ctx)
    moment = parse_date(on, today=here.today) if on else here.today
    noted = upkeep_list(here.rows(), moment, kind=kind_meant(kind, KINDS, noun="upkeep") if kind else None)
    asked = f"{f' --kind {quote(kind)}' if kind else ''}{f' --on {on}' if on else ''}"
    waiting = sum(one.waits for one in noted)
    known, more = latest(noted[::-1], number, always=lambda one: one.waits)
    shown = known[::-1]
    words = Listed(
        f"{count(len(noted), 'note')}, {waiting or 'none'} due on {show_date(moment)}.",
        ("state", "next", "kind", "what", "supplier", "last done", "by"),
        (
            (
                one.state,
                show_date(one.next_on) if one.next_on else "",
                one.kind,
                one.what,
                one.supplier or "",
                show_date(one.on),
                one.by,
            )
            for one in shown
        ),
        none='Nothing was noted yet. Next: soapledger upkeep add cleaning "moulds and pots"',
        earlier=here.typed(f"upkeep list{asked} --all") if more else "",
    )
    answer(shown, json, words)
