"""soapledger reject: bars that may not leave."""

from typing import Annotated

import typer

from ledger.cli.desk import desk
from ledger.cli.show import count, say


def command(
    ctx: typer.Context,
    code: Annotated[str, typer.Argument(help="The batch code.")],
    reason: Annotated[str, typer.Option("--reason", help="Why.")],
    on: Annotated[str | None, typer.Option("--on", help="The day (today).")] = None,
) -> None:
    """Reject the bars of a batch: they stay here until thrown away or reworked."""
    from ledger.domain.codes import read_batch_code
    from ledger.operations.release import reject_bars

    here, code = desk(ctx), read_batch_code(code)
    here_now = reject_bars(here.book(), code, on=here.day(on), by=here.who, reason=reason)
    say(f"Batch {code} is rejected: {reason}. {count(here_now, 'bar')} are here.")
    say(f"Next, when they are thrown away: soapledger lot waste {code} {here_now} --reason rejected")
    say(f'Or, for a rebatch: soapledger rework {code} "… g"')
