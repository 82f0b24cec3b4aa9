"""soapledger label due."""

from datetime import timedelta
from typing import Annotated

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count
from ledger.units.dates import parse_date, show_date
from ledger.views.label.label_due import labels_due


def command(
    ctx: typer.Context,
    by: Annotated[str | None, typer.Option("--by", metavar="DATE", help="Up to which day (a year from today).")] = None,
    json: Json = False,
) -> None:
    """List stock whose printed label stops being usable at a coming date: bars, where they are, and why."""
    here = desk(ctx)
    until = parse_date(by, today=here.today, what="the day") if by else here.today + timedelta(days=365)
    found = labels_due(here.rows(), today=here.today, by=until)
    batches = len({one.batch_code for one in found})
    words = Listed(
        f"{count(batches, 'batch', 'batches')} with labels that stop being usable up to {show_date(until)}:",
        ("batch", "market", "bars", "where", "until", "why"),
        ((one.batch_code, one.market, str(one.bars), one.where, show_date(one.until), one.why) for one in found),
        right=(2,),
        wraps=(3, 5),
        none=f"No printed label stops being usable up to {show_date(until)}, by the rules known here.",
    )
    answer(found, json, words)
