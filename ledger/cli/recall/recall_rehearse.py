"""soapledger recall rehearse."""

from secrets import choice
from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import say, say_next, say_wrapped
from ledger.cli.recall.named import Bar, Fitting, Many, Material, Numbers, Supplier, question_of
from ledger.domain.recall.question import Kind
from ledger.errors import BadInput, Refused
from ledger.operations.recall.recall_life import rehearse
from ledger.rows.decision import lots_used
from ledger.views.recall.recall_life import recall_meant


def command(
    ctx: typer.Context,
    numbers: Numbers = None,
    bar: Bar = None,
    supplier: Supplier = None,
    material: Material = None,
    every: Fitting = False,
    reason: Annotated[str | None, typer.Option("--reason", help="Why, if it is not the yearly exercise.")] = None,
    hold: Annotated[bool, typer.Option("--hold", help="Not in an exercise, which holds nothing.")] = False,
    on: On = None,
) -> None:
    """Rehearse a recall, as the yearly exercise: a lot by chance or named, timed, added up, kept, not held."""
    if hold:
        raise BadInput("An exercise holds nothing back; leave out --hold, or use: soapledger recall open")
    here = desk(ctx)
    asked: dict[Kind, Many] = {"number": numbers, "bar": bar}
    if not (numbers or bar or supplier or material):
        lots = lots_used(here.rows())
        if not lots:
            raise Refused("Nothing that a supplier sent went into a batch yet, so there is nothing to rehearse.")
        drawn = choice(lots)
        asked["number"] = [drawn]
        say(f"By chance: lot {drawn}.")
    question = question_of(
        asked, supplier=supplier, material=material, days=(None, None), every=every, today=here.today
    )
    number = rehearse(here.book(), question, on=here.day(on), by=here.decider, reason=reason)
    card = recall_meant(here.rows(), number)
    assert card.closed is not None
    say_wrapped(f"EXERCISE. Recall {number} is kept as the proof of it; nothing was held.")
    say_wrapped(card.closed.conclusion)
    say_next(f"As a report, marked as an exercise: soapledger recall show {number} -o {number}.pdf")
