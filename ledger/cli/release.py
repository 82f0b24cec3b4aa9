"""soapledger release: bars that may leave."""

from typing import Annotated

import typer

from ledger.cli.desk import desk
from ledger.cli.show import count, say


def command(
    ctx: typer.Context,
    code: Annotated[str, typer.Argument(help="The batch code.")],
    retain: Annotated[str, typer.Option("--retain", help="Bars set aside as retained samples.")] = "0",
    reason: Annotated[
        str | None, typer.Option("--reason", help="Why bars on hold or rejected are released all the same.")
    ] = None,
    anyway: Annotated[
        str | None, typer.Option("--anyway", help="Why bars no assessment covers are released all the same.")
    ] = None,
    on: Annotated[str | None, typer.Option("--on", help="The day (today).")] = None,
) -> None:
    """Release packed bars, by name: only then may they leave, e.g. soapledger release 26-118-0 --retain 1."""
    from ledger.domain.codes import read_batch_code
    from ledger.domain.quantity import parse_pieces
    from ledger.operations.release import release_bars

    here, code = desk(ctx), read_batch_code(code)
    kept = parse_pieces(retain, what="the number of samples")
    left = release_bars(here.book(), code, on=here.day(on), by=here.who, retain=kept, reason=reason, anyway=anyway)
    samples = f", {count(kept, 'bar')} set aside as samples" if kept else ""
    say(f"Batch {code} is released by {here.who}: {count(left, 'bar')} may leave{samples}.")
