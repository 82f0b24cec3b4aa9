"""soapledger batch work."""

from typing import Annotated, get_args

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, On
from ledger.cli.kit.show import count, say_wrapped
from ledger.operations.cost.work import book_work
from ledger.units.quantity import parse_pieces
from ledger.units.wording import opening
from ledger.units.words import WorkStage, checked


def command(
    ctx: typer.Context,
    code: Batch,
    minutes: Annotated[str, typer.Argument(help="How many minutes.")],
    stage: Annotated[str, typer.Option("--stage", help="making, cutting, finishing, wrapping or other.")] = "making",
    by: Annotated[str | None, typer.Option("--by", help="Who did it (you).")] = None,
    on: On = None,
) -> None:
    """Book work on a batch by what was done, e.g. batch work 26-118-0 45 --stage wrapping."""
    here = desk(ctx)
    meant = checked(stage.strip().casefold(), get_args(WorkStage), what="a stage of the work")
    typed = parse_pieces(minutes.strip().removesuffix("min"), what="the number of minutes")
    booked = book_work(here.book(), code, typed, stage=meant, on=here.day(on), by=by or here.who)
    stages = ", ".join(f"{name} {number}" for name, number in booked.stages if number)
    say_wrapped(f"Work on batch {booked.batch}: {count(sum(n for _, n in booked.stages), 'minute')} ({stages}).")
    others = ((booked.read_too, "read at the bench"), (booked.recipe_too, "of the recipe"))
    if too := " and ".join(f"the {count(number, 'minute')} {whose}" for number, whose in others if number):
        say_wrapped(f"{opening(too)} do not count beside it; book here whatever is not in it yet.")
