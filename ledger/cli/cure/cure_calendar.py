"""soapledger cure calendar."""

from datetime import datetime
from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Force
from ledger.cli.kit.show import count, say
from ledger.documents.cure.calendar import cure_calendar
from ledger.documents.kit.files import write_file
from ledger.rows.settings import printed_from
from ledger.views.cure.cure import cure_list, rack_days


def command(
    ctx: typer.Context,
    output: Annotated[Path, typer.Option("-o", help="The calendar file, e.g. rack.ics.")],
    force: Force = False,
    on: Annotated[str | None, typer.Option("--on", help="As the rack stood on a day (today).")] = None,
) -> None:
    """Write the days of the rack as a calendar file for the phone, e.g. soapledger cure calendar -o rack.ics."""
    here = desk(ctx)
    days = rack_days(cure_list(here.rows(), on=here.day(on)))
    if not days:
        say("Nothing is on the rack, so no calendar was written.")
        return
    stamp = datetime.fromisoformat(printed_from(here.rows(), "").recorded_at)
    write_file(output, cure_calendar(days, business=here.settings.business, stamp=stamp), force=force)
    say(f"{count(len(days), 'day')} of the rack {'is' if len(days) == 1 else 'are'} in {output}.")
