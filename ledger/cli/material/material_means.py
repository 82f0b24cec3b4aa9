"""soapledger material means."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On, Why
from ledger.cli.kit.show import say_wrapped
from ledger.errors import BadInput
from ledger.operations.material.meant import Meaning, say_what_it_is


def command(
    ctx: typer.Context,
    written: Annotated[str, typer.Argument(help="The name or number as the statement has it.", metavar="NAME")],
    reason: Why,
    entry: Annotated[str | None, typer.Option("--is", help="The entry it is, by any of its names.")] = None,
    no_entry: Annotated[bool, typer.Option("--no-entry", help="It is the name of no entry.")] = False,
    of: Annotated[str | None, typer.Option("--material", help="In the statements of this material alone.")] = None,
    on: On = None,
) -> None:
    """Say what a name in a statement is that is not known here; it stands by your name and is not asked again."""
    here = desk(ctx)
    if (entry is None) != no_entry:
        raise BadInput(f"What is '{written}'? Say one of the two: --is ENTRY, or --no-entry.")
    by = here.decider
    meant = say_what_it_is(here.book(), Meaning(written, entry, here.day(on), by, reason, of))
    where = f" in the statements of {of}" if of else ""
    what = f"counts as {meant}" if meant else "is the name of no entry, and no label counts it"
    say_wrapped(f"'{written}'{where} {what}, as {by} said ({reason}). It stands so on every label check.")
