"""soapledger upkeep add."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import say
from ledger.domain.tools.upkeep import KINDS
from ledger.operations.tools.upkeep import UpkeepNote, add_upkeep
from ledger.units.dates import parse_date, show_date
from ledger.units.names import kind_meant


def command(
    ctx: typer.Context,
    kind: Annotated[str, typer.Argument(help="cleaning, training, supplier approval or self-inspection.")],
    what: Annotated[str, typer.Argument(help="What was done, in quotes.")],
    next_on: Annotated[str | None, typer.Option("--next", help="The day it is due again.")] = None,
    supplier: Annotated[str | None, typer.Option("--supplier", help="Whose approval it is.")] = None,
    by: Annotated[str | None, typer.Option("--by", help="Who did it (you).")] = None,
    on: On = None,
) -> None:
    """Note what was done, e.g. upkeep add cleaning "moulds and pots" --next 2026-12-24."""
    here = desk(ctx)
    meant = kind_meant(kind, KINDS, noun="upkeep")
    later = parse_date(next_on, today=here.today, what="the next day") if next_on else None
    doer = by or (here.decider if meant == "supplier approval" else here.who)
    again = add_upkeep(here.book(), UpkeepNote(meant, what, here.day(on), doer, later, supplier))
    say(f"Noted: {meant}, {what.strip()}.{f' Due again on {show_date(again)}.' if again else ''}")
