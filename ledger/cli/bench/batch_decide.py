"""soapledger batch decide."""

from typing import Annotated

import typer

from ledger.cli.bench.deviations import say_open
from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, Json, On, Why
from ledger.cli.kit.show import say, say_wrapped
from ledger.operations.bench.deviations import decide_deviation
from ledger.rows.batch import find_batch
from ledger.rows.decision import deviations
from ledger.units.quantity import parse_pieces


def command(
    ctx: typer.Context,
    code: Batch,
    number: Annotated[str, typer.Argument(help="Which deviation, by its number.")],
    verdict: Annotated[str, typer.Argument(help="accept, rework or reject.")],
    reason: Why,
    done: Annotated[str | None, typer.Option("--done", help="What was done about it.")] = None,
    by: Annotated[str | None, typer.Option("--by", help="Who decides (you).")] = None,
    on: On = None,
    json: Json = False,
) -> None:
    """Decide about a deviation, e.g. batch decide 26-118-0 1 accept --reason "trace was even"."""
    here = desk(ctx)
    which = parse_pieces(number, what="the number of the deviation")
    decider = by or here.decider
    decide_deviation(here.book(), code, which, verdict, on=here.day(on), by=decider, reason=reason, done=done)
    batch = find_batch(here.rows(), code)
    one = deviations(here.rows(), batch.id)[which - 1]
    if answer(one, json):
        return
    say_wrapped(f"Deviation {which} of batch {batch.code} ({one.found}): {one.verdict}, by {decider}: {reason}.")
    if verdict == "reject":
        say(f'Next: soapledger reject {batch.code} --reason "deviation {which}"')
    if verdict != "accept" and batch.soap and batch.made:
        say(f"Where its bars are, and whom to call: soapledger recall bar {batch.code}")
    say_open(here, batch)
