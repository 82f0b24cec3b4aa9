"""soapledger cure list."""

from typing import Annotated

import typer

from ledger.cli.cure.words import say_cure
from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.views.cure.cure import cure_list
from ledger.views.stock.promised import promises


def command(
    ctx: typer.Context,
    on: Annotated[str | None, typer.Option("--on", help="As it stood on a day (today).")] = None,
    json: Json = False,
) -> None:
    """List the batches on the rack, the first ready first, and which promise will be late, and why."""
    here = desk(ctx)
    found = cure_list(here.rows(), on=here.day(on))
    late = () if json else promises(here.rows(), here.day(on))
    answer(found, json, lambda: say_cure(found, here.day(on), late))
