"""soapledger cure: the rack."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from ledger.cli.desk import desk
from ledger.cli.show import confirm, count, out_json, say, say_wrapped, table
from ledger.errors import BadInput

if TYPE_CHECKING:
    from ledger.cli.desk import Desk
    from ledger.views.batch import BatchRow
    from ledger.views.cure import OnTheRack

app = typer.Typer(help="The cure rack: what is ready, what has days to go.")


@app.callback()
def group() -> None:
    """The cure rack: what is ready, what has days to go."""


@app.command("list")
def list_(
    ctx: typer.Context,
    on: Annotated[str | None, typer.Option("--on", help="As it stood on a day (today).")] = None,
    json: Annotated[bool, typer.Option("--json", help="Answer as JSON.")] = False,
) -> None:
    """List the batches on the rack, the first ready first."""
    from ledger.views.cure import cure_list

    here = desk(ctx)
    found = cure_list(here.rows(), on=here.day(on))
    if json:
        out_json(found)
        return
    say_cure(found, here.day(on))


def say_cure(found: "Sequence[OnTheRack]", on: date) -> None:
    """The rack on the screen, the first ready first."""
    from ledger.domain.dates import show_date

    if not found:
        say("Nothing is on the rack.")
        return
    ready = [one for one in found if one.days_left <= 0]
    curing = len(found) - len(ready)
    say(f"{count(len(ready), 'batch', 'batches')} ready to be passed, {curing} still curing.")
    due = [one for one in found if one.weigh_on <= on and (one.days_left > 0 or one.lags)]
    if due:
        say(f"To be weighed: {', '.join(one.batch_code for one in due)}.")
    body = []
    for one in found:
        when = f"in {count(one.days_left, 'day')}" if one.days_left > 0 else "ready"
        if one.days_left <= -14:
            when = f"ready for {count(-one.days_left, 'day')}"
        usable = show_date(one.usable_from) if one.usable_from and one.days_left > 0 else ""
        held = "on hold" if one.status == "on hold" else "weigh" if one in due else ""
        body.append((one.batch_code, one.product, str(one.bars), show_date(one.ready_on), when, usable, held))
    table(("batch", "product", "bars", "ready on", "", "usable from", ""), body, right=(2,))
    for one in found:
        if one.lags:
            say_wrapped(f"Batch {one.batch_code} lags: {one.lags}.", first="  ! ", indent="    ")
    if due:
        say(f"Next: soapledger cure weigh {due[0].batch_code} A=WEIGHT B=WEIGHT")
    if steady := [one for one in ready if not one.lags]:
        say(f"Next: soapledger pass {steady[0].batch_code}")


@app.command("weigh")
def weigh(
    ctx: typer.Context,
    code: Annotated[str, typer.Argument(help="The batch code, e.g. 26-118-0.")],
    bars: Annotated[list[str], typer.Argument(help="Each marked bar with its weight: A=101.2g B=99.8g.")],
    on: Annotated[str | None, typer.Option("--on", help="The day (today).")] = None,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again about unlikely weights.")] = False,
) -> None:
    """Book what marked bars weigh, e.g. soapledger cure weigh 26-118-0 A=101.2g B=99.8g."""
    from ledger.domain.quantity import parse_mass, with_scale_unit
    from ledger.operations.cure import weigh_bars
    from ledger.views.batch import find_batch

    here = desk(ctx)
    batch = find_batch(here.rows(), code)
    weights: dict[str, int] = {}
    for text in bars:
        mark, separator, typed = (part.strip() for part in text.partition("="))
        if not separator or not mark or not typed or mark in weights:
            raise BadInput(f"'{text}' is not a marked bar with its weight, once; write A=101.2g.")
        weights[mark] = parse_mass(with_scale_unit(typed, here.settings.units), what=f"the weight of {mark}")
    for doubt in _doubts(here, batch, weights, here.day(on)):
        confirm(f"{doubt}. Is it right?", yes)
    weigh_bars(here.book(), batch.code, weights, on=here.day(on))
    say(f"{count(len(weights), 'bar')} of batch {batch.code} weighed.")
    _say_forecast(here, find_batch(here.rows(), batch.code), here.day(on))


def _doubts(here: "Desk", batch: "BatchRow", weights: dict[str, int], on: date) -> list[str]:
    """Weights to ask about: far from the last of that bar or from the bars at the cut, and heavier than the last."""
    from ledger.domain.quantity import show_mass
    from ledger.views.cure_forecast import weighings
    from ledger.views.lots import lot_by_id

    units = here.settings.units
    last = {one.mark: one.mass_mg for one in weighings(here.rows(), batch, on=on)}
    cut = lot_by_id(here.rows(), batch.yield_lot_id).mass_mg if batch.yield_lot_id else None
    found = []
    for mark, mass in weights.items():
        before = last.get(mark) or (cut // batch.made if cut and batch.made else None)
        if before and not before <= 2 * mass <= 4 * before:
            found.append(f"{mark} weighs {show_mass(mass, units)}, and {show_mass(before, units)} before")
        elif mark in last and mass > last[mark]:
            heavier = f"{show_mass(mass, units)} is more than the {show_mass(last[mark], units)} before"
            found.append(f"{mark}: {heavier} (damp weather does that)")
    return found


@app.command("show")
def show(
    ctx: typer.Context,
    code: Annotated[str, typer.Argument(help="The batch code, e.g. 26-118-0.")],
    on: Annotated[str | None, typer.Option("--on", help="As of a day (today).")] = None,
    json: Annotated[bool, typer.Option("--json", help="Answer as JSON.")] = False,
) -> None:
    """Show how the bars of a batch dry: their weighings and the forecast, e.g. soapledger cure show 26-118-0."""
    from ledger.domain.dates import show_date
    from ledger.domain.quantity import show_mass
    from ledger.views.batch import find_batch
    from ledger.views.cure_forecast import forecast, weighings

    here = desk(ctx)
    batch = find_batch(here.rows(), code)
    known = weighings(here.rows(), batch, on=here.day(on))
    if json:
        out_json({"batch": batch, "weighings": known, "forecast": forecast(here.rows(), batch, known)})
        return
    _say_forecast(here, batch, here.day(on))
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
    say(f"Next: soapledger cure weigh {batch.code} {' '.join(f'{mark}=WEIGHT' for mark in marks or ('A', 'B'))}")


def _say_forecast(here: "Desk", batch: "BatchRow", on: date) -> None:
    """When the bars are ready and steady, and what one weighs, as ranges."""
    from ledger.domain.dates import show_date
    from ledger.views.cure_forecast import forecast, forecast_words, weighings

    if batch.ready_on is None:
        say(f"Batch {batch.code} is {batch.status}; it has no bars on the rack.")
        return
    view = forecast(here.rows(), batch, weighings(here.rows(), batch, on=on))
    say(f"Batch {batch.code}, {batch.product}: the cure ends on {show_date(batch.ready_on)}.")
    if view is None:
        say("Nothing is known of its drying: weigh some marked bars.")
    else:
        say_wrapped(forecast_words(view, here.settings.units, today=on))


@app.command("calendar")
def calendar(
    ctx: typer.Context,
    output: Annotated[Path, typer.Option("-o", help="The calendar file, e.g. rack.ics.")],
    force: Annotated[bool, typer.Option("--force", help="Overwrite an existing file.")] = False,
    on: Annotated[str | None, typer.Option("--on", help="As the rack stood on a day (today).")] = None,
) -> None:
    """Write the days of the rack as a calendar file for the phone, e.g. soapledger cure calendar -o rack.ics."""
    from datetime import datetime

    from ledger.documents.calendar import cure_calendar
    from ledger.documents.files import write_file
    from ledger.views.cure import cure_list, rack_days
    from ledger.views.settings import printed_from

    here = desk(ctx)
    days = rack_days(cure_list(here.rows(), on=here.day(on)))
    if not days:
        say("Nothing is on the rack, so no calendar was written.")
        return
    stamp = datetime.fromisoformat(printed_from(here.rows(), "").recorded_at)
    write_file(output, cure_calendar(days, business=here.settings.business, stamp=stamp), force=force)
    say(f"{count(len(days), 'day')} of the rack {'is' if len(days) == 1 else 'are'} in {output}.")
