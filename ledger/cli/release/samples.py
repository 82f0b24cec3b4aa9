"""soapledger samples."""

from typing import Annotated

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count
from ledger.cli.kit.window import Every, Last, asked_for, latest
from ledger.rows.kept import samples
from ledger.units.dates import show_date


def command(
    ctx: typer.Context,
    on: Annotated[str | None, typer.Option("--on", help="As it stands on a day (today).")] = None,
    last: Last = None,
    every: Every = False,
    json: Json = False,
) -> None:
    """List the retained samples: where they are, and until when they are kept."""
    number = asked_for(last, every)
    here = desk(ctx)
    found, today = samples(here.rows()), here.day(on)
    over = [one for one in found if one.keep_until < today]
    bars, past = sum(one.bars for one in found), count(len(over), "batch", "batches")
    shown, more = latest(found, number)
    words = Listed(
        f"{count(bars, 'bar')} kept as samples; {past} past the day to be kept until.",
        ("batch", "product", "bars", "kept at", "keep until", ""),
        (
            (one.batch_code, one.product, str(one.bars), one.kept_at, show_date(one.keep_until),
             "may be given up" if one.keep_until < today else "")
            for one in shown
        ),
        right=(2,),
        none="No sample is set aside. Next: soapledger release CODE --retain 1 --kept-at PLACE",
        earlier=here.typed(f"samples{f' --on {on}' if on else ''} --all") if more else "",
    )  # fmt: skip
    answer(shown, json, words)
