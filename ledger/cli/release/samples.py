"""soapledger samples."""

from typing import Annotated

import typer

from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, say, table
from ledger.rows.kept import samples
from ledger.units.dates import show_date


def command(
    ctx: typer.Context,
    on: Annotated[str | None, typer.Option("--on", help="As it stands on a day (today).")] = None,
    json: Json = False,
) -> None:
    """List the retained samples: where they are, and until when they are kept."""
    here = desk(ctx)
    found, today = samples(here.rows()), here.day(on)
    if answer(found, json):
        return
    if not found:
        say("No sample is set aside. Next: soapledger release CODE --retain 1 --kept-at PLACE")
        return
    over = [one for one in found if one.keep_until < today]
    bars = sum(one.bars for one in found)
    say(f"{count(bars, 'bar')} kept as samples; {count(len(over), 'batch', 'batches')} past the day to be kept until.")
    table(
        ("batch", "product", "bars", "kept at", "keep until", ""),
        [
            (one.batch_code, one.product, str(one.bars), one.kept_at, show_date(one.keep_until),
             "may be given up" if one.keep_until < today else "")
            for one in found
        ],
        right=(2,),
    )  # fmt: skip
