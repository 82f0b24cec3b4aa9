"""soapledger reject."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, On, Why
from ledger.cli.kit.show import count, say
from ledger.operations.release.release import reject_bars
from ledger.units.codes import read_batch_code


def command(
    ctx: typer.Context,
    code: Batch,
    reason: Why,
    on: On = None,
) -> None:
    """Reject the bars of a batch: they stay here until thrown away or reworked."""
    here, code = desk(ctx), read_batch_code(code)
    here_now = reject_bars(here.book(), code, on=here.day(on), by=here.decider, reason=reason)
    are = "is" if here_now == 1 else "are"
    say(f"Batch {code} is rejected: {reason}. {count(here_now, 'bar')} {are} in the workshop.")
    if not here_now:
        return
    say(f"Next, when they are thrown away: soapledger lot waste {code} {here_now} --reason rejected")
    say(f'Or, for a rebatch: soapledger rework {code} "… g"')
