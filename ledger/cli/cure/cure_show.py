"""soapledger cure show."""

from typing import Annotated

import typer

from ledger.cli.cure.words import say_drying
from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, Json
from ledger.cli.kit.show import say, table
from ledger.rows.batch import find_batch
from ledger.units.dates import show_date
from ledger.units.quantity import show_mass
from ledger.views.cure.cure_forecast import dried
from ledger.views.cure.weighed import weighings


def command(
    ctx: typer.Context,
    code: Batch,
    on: Annotated[str | None, typer.Option("--on", help="As of a day (today).")] = None,
    json: Json = False,
) -> None:
    """Show how the bars of a batch dry: their weighings and the forecast, e.g. soapledger cure show 26-118-0."""
    here = desk(ctx)
    batch = find_batch(here.rows(), code)
    known = weighings(here.rows(), batch, on=here.day(on))
    view = dried(here.rows(), batch, known)
    seen = {
        "weighed": view.seen if view else None,
        "forecast": view.forecast if view else None,
        "why_no_forecast": view.why_none if view else None,
    }
    if answer({"batch": batch, "weighings": known, **seen}, json):
        return
    say_drying(here, batch, here.day(on))
    marks = sorted({one.mark for one in known})
    by_day = {(one.on, one.mark): show_mass(one.mass_mg, here.settings.units) for one in known}
    if known:
        table(
            ("on", *marks),
            [
                (show_date(each), *(by_day.get((each, mark), "") for mark in marks))
                for each in sorted({one.on for one in known})
            ],
            right=range(1, len(marks) + 1),
        )
    single = sorted({one.mark for one in known if one.bars == 1})
    together = max((one.bars for one in known if one.bars > 1), default=0)
    again = [f"{mark}=WEIGHT" for mark in single or (() if together else ("A", "B"))]
    again += [f"--total WEIGHT --bars {together}"] if together else []
    say(f"Next: soapledger cure weigh {batch.code} {' '.join(again)}")
