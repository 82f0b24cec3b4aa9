"""soapledger batch log."""

from collections.abc import Sequence
from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.bench.deviations import say_open
from ledger.cli.bench.lines import read_lines, say_alkali_wanted
from ledger.cli.bench.prompt import prompt_bench
from ledger.cli.bench.superfat import say_superfat, say_ways
from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, Json
from ledger.cli.kit.show import count, say, say_wrapped
from ledger.cli.stock.bars import warn_of_holds
from ledger.cli.tools.equipment import warn_failed
from ledger.domain.tools.readings import SET
from ledger.errors import Refused
from ledger.operations.bench.readings import log_readings, on_its_day, read_reading
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.rows.batch import PlanLineRow, find_batch, plan_lines
from ledger.rows.lot import lots_by_id
from ledger.rows.movement import lots_used
from ledger.units.dates import show_date
from ledger.units.words import AS_PLANNED
from ledger.views.bench.bench import steps_of
from ledger.views.lye.lye_check import lye_check


def command(
    ctx: typer.Context,
    code: Batch,
    line: Annotated[
        list[str] | None,
        typer.Option(
            "--line",
            help="One line: '3=182.4 g', from another lot '3=182.4 g@L41-5', from two '3=120 g@L7-2,62.4 g@L9-3'; "
            "of one nobody knows '3=120 g@unknown'; or a lettered one: 'c=49 C' (repeat).",
        ),
    ] = None,
    reading: Annotated[
        list[str] | None,
        typer.Option("--reading", help="E.g. 'lye temperature=49 C', 'trace=8 min' (repeat)."),
    ] = None,
    csv_file: Annotated[
        Path | None,
        typer.Option("--csv", help="A CSV file with the columns line, weight and, if needed, lot."),
    ] = None,
    as_planned: Annotated[
        bool, typer.Option("--as-planned", help="Every line still open is at its target, but for lye and fragrance.")
    ] = False,
    correct: Annotated[bool, typer.Option("--correct", help="These lines were logged wrongly before.")] = False,
    instead: Annotated[
        bool, typer.Option("--instead", help="A lot of another material than the line asks for really went in.")
    ] = False,
    tools: Annotated[
        list[str] | None, typer.Option("--with", help="The scale, thermometer or pH meter, where you have several.")
    ] = None,
    anyway: Annotated[
        str | None, typer.Option("--anyway", help="Keep a superfat at or below zero, with the reason.")
    ] = None,
    on: Annotated[
        str | None, typer.Option("--on", help="The day it was made; once it is poured, the day of what is read now.")
    ] = None,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again about unlikely weights.")] = False,
    json: Json = False,
) -> None:
    """Log what was weighed and read, line by line; asks for what is still open."""
    here = desk(ctx)
    batch = find_batch(here.rows(), code)
    said = here.day(on) if on else None
    made = min(max(batch.planned_on, batch.made_on or batch.planned_on), here.today)
    if said and not batch.poured:
        made = said
    lines = {one.number: one for one in plan_lines(here.rows(), batch.id) if one.role != "packaging"}
    if not lines or batch.discarded:
        raise Refused(f"Batch {batch.code} is {batch.status}; there is nothing to weigh for it.")
    letters = {one.letter: one for one in steps_of(here.rows(), batch)}
    late = {(one.what, one.mark) for one in letters.values() if one.when == SET}
    weighed, lettered = read_lines(here, line or (), csv_file, lines, letters, yes=yes)
    readings = tuple(
        on_its_day(one, batch, said=said, today=here.today, correct=correct, late=(one.what, one.mark) in late)
        for one in (*lettered, *(read_reading(text) for text in reading or ()))
    )
    to_read = []
    if as_planned:
        still = [one for number, one in lines.items() if not one.logged and number not in weighed]
        to_read = [one for one in still if one.always_read]
        if to_read and any(one.what == "poured" for one in readings):
            raise Refused(f"{_to_read(to_read)}. Nothing was written.")
        weighed |= {one.number: [Weighed(one.target, note=AS_PLANNED)] for one in still if not one.always_read}
    prompted = not (line or reading or csv_file or as_planned)
    if prompted:
        prompt_bench(here, batch.code, made, said, anyway=anyway, tools=tools or ())
    if weighed:
        weigh(
            here.book(),
            batch.code,
            weighed,
            on=made,
            by=here.who,
            correct=correct,
            anyway=anyway,
            readings=readings,
            tools=tools or (),
            instead=instead,
            found_on=said or here.today,
        )
    elif readings:
        log_readings(here.book(), batch.code, readings, on=made, correct=correct, tools=tools or ())
    warn_failed(here, max((made, *(one.on for one in readings if one.on))))
    check = lye_check(here.rows(), batch.id)
    if answer({"batch": find_batch(here.rows(), batch.code), "lye": check}, json):
        return
    now = find_batch(here.rows(), batch.code)
    made_on = f", made on {show_date(now.made_on)}" if now.made_on else ""
    if now.open_lines:
        say(f"Batch {batch.code}{made_on}: {count(now.open_lines, 'line')} still to be weighed.")
    else:
        say(f"Batch {batch.code}{made_on}: everything is weighed.")
    say_superfat(check)
    if weighed:
        say_ways(check, now, plan_lines(here.rows(), batch.id))
    lots = lots_by_id(here.rows(), lots_used(here.rows(), batch.id))
    warn_of_holds(here, [lot.code for lot in lots.values()])
    if weighed and correct and now.yield_lot_id is not None and now.status == "on hold":
        say_wrapped(
            "The bars are held. What they may be used for, if for anything, is not said here: a person decides, by the "
            "deviation."
        )
        say(f"Where bars of it went that have left already: soapledger recall bar {batch.code}")
    if not prompted:
        say_alkali_wanted(here, batch)
        say_open(here, batch)
    if to_read:
        say_wrapped(f"{_to_read(to_read)}.")
        say(f"Next: soapledger batch log {batch.code}")
    elif now.open_lines:
        say(f"Next: soapledger batch log {batch.code}")
    elif now.process == "infusion":
        say(f"Next, when it has drawn: soapledger batch strain {batch.code} WEIGHT")
    elif now.process == "blend" and now.yield_lot_id is None:
        say(f"Next: soapledger batch fill {batch.code} WEIGHT")
    elif not now.soap and now.yield_lot_id is None:
        say(f"Next, at trace: soapledger batch divide {batch.code}")
    elif now.yield_lot_id is not None:
        say(f"It is {now.status}; see it whole: soapledger batch show {batch.code}")
    elif now.poured or now.process == "rebatch":
        say(f"Next: soapledger batch cut {batch.code} BARS --weight WEIGHT")
    else:
        say(f"Next: soapledger batch log {batch.code} --reading poured=14:05")


def _to_read(lines: Sequence[PlanLineRow]) -> str:
    """Which lines are never taken from the plan, and how they are booked."""
    named = " and ".join(f"line {one.number} ({one.material})" for one in lines)
    typed = " ".join(f"--line {one.number}=GRAMS" for one in lines)
    return f"Never taken from the plan, but read from the scale: {named}. Add what it showed: {typed}"
