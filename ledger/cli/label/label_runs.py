"""soapledger label runs."""

from typing import Annotated

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count
from ledger.cli.kit.window import Every, Last, asked_for, latest, one_more, the_last
from ledger.rows.batch import find_batch
from ledger.rows.label import Run, runs
from ledger.units.dates import show_date


def command(
    ctx: typer.Context,
    code: Annotated[str | None, typer.Argument(help="The batch code (else all).")] = None,
    last: Last = None,
    every: Every = False,
    json: Json = False,
) -> None:
    """List the print runs, and what became of their labels."""
    number = asked_for(last, every)
    here = desk(ctx)
    lot = find_batch(here.rows(), code).yield_lot_id if code else None
    found, more = latest(runs(here.rows(), lot, last=one_more(number)) if not code or lot else (), number)
    open_ = sum(one.counted is None for one in found)
    shown = count(len(found), "run")
    words = Listed(
        f"{the_last(shown, more)}, {open_}{' of them' if more else ''} still to be counted.",
        ("run", "batch", "market", "layout", "on", "used"),
        (
            (
                str(one.number),
                one.batch_code,
                one.market,
                one.layout,
                show_date(one.on),
                _became(one),
            )
            for one in found
        ),
        right=(0,),
        wraps=(3, 5),
        none="No labels were printed yet. Print some: soapledger label print CODE -o labels.pdf",
        then="A run is misprinted? Where its bars are: soapledger recall of --labels RUN",
        earlier=here.typed(f"label runs {code} --all" if code else "label runs --all") if more else "",
    )
    answer(found, json, words)


def _became(run: Run) -> str:
    """How many of the labels of a run are on bars, of how many, and what became of the others."""
    if run.counted is None:
        return f"{run.count}, not counted yet"
    others = ((run.specimen, "specimen"), (run.spoiled, "spoiled"), (run.returned, "unused"))
    said = ", ".join(f"{number} {what}" for number, what in others if number)
    return f"{run.used} of {run.count}{f'; {said}' if said else ''}"
