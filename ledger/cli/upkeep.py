"""soapledger upkeep: cleaning, training, approvals of suppliers, self-inspections."""

from typing import Annotated

import typer

from ledger.cli.desk import desk
from ledger.cli.show import count, out_json, say, table

app = typer.Typer(help="Cleaning, training, supplier approval, self-inspection: add, list.")


@app.command("add")
def add(
    ctx: typer.Context,
    kind: Annotated[str, typer.Argument(help="cleaning, training, supplier approval or self-inspection.")],
    what: Annotated[str, typer.Argument(help="What was done, in quotes.")],
    next_on: Annotated[str | None, typer.Option("--next", help="The day it is due again.")] = None,
    supplier: Annotated[str | None, typer.Option("--supplier", help="Whose approval it is.")] = None,
    by: Annotated[str | None, typer.Option("--by", help="Who did it (you).")] = None,
    on: Annotated[str | None, typer.Option("--on", help="The day (today).")] = None,
) -> None:
    """Note what was done, e.g. upkeep add cleaning "moulds and pots" --next 2026-12-24."""
    from ledger.domain.dates import parse_date, show_date
    from ledger.domain.upkeep import kind_meant
    from ledger.operations.upkeep import UpkeepNote, add_upkeep

    here = desk(ctx)
    meant = kind_meant(kind)
    later = parse_date(next_on, today=here.today, what="the next day") if next_on else None
    again = add_upkeep(here.book(), UpkeepNote(meant, what, here.day(on), by or here.who, later, supplier))
    say(f"Noted: {meant}, {what.strip()}.{f' Due again on {show_date(again)}.' if again else ''}")


@app.command("list")
def list_(
    ctx: typer.Context,
    kind: Annotated[str | None, typer.Option("--kind", help="Of one kind.")] = None,
    on: Annotated[str | None, typer.Option("--on", help="As on this day, also a coming one (today).")] = None,
    json: Annotated[bool, typer.Option("--json", help="Answer as JSON.")] = False,
) -> None:
    """List what was done, with what is due or overdue first."""
    from ledger.domain.dates import parse_date, show_date
    from ledger.domain.upkeep import kind_meant
    from ledger.views.upkeep import upkeep_list

    here = desk(ctx)
    moment = parse_date(on, today=here.today) if on else here.today
    noted = upkeep_list(here.rows(), moment, kind=kind_meant(kind) if kind else None)
    if json:
        out_json(noted)
        return
    if not noted:
        say('Nothing was noted yet. Next: soapledger upkeep add cleaning "moulds and pots"')
        return
    waiting = sum(one.waits for one in noted)
    say(f"{count(len(noted), 'note')}, {waiting or 'none'} due on {show_date(moment)}.")
    table(
        ("state", "next", "kind", "what", "supplier", "last done", "by"),
        [
            (
                one.state,
                show_date(one.next_on) if one.next_on else "",
                one.kind,
                one.what,
                one.supplier or "",
                show_date(one.on),
                one.by,
            )
            for one in noted
        ],
    )
