"""soapledger cure: the rack."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Annotated

import typer

from ledger.cli.desk import desk
from ledger.cli.show import count, out_json, say, table

if TYPE_CHECKING:
    from ledger.views.cure import OnTheRack

app = typer.Typer(help="The cure rack: what is ready, what has days to go.")


@app.callback()
def group() -> None:
    """The cure rack: what is ready, what has days to go."""


@app.command("list")
def list_(
    ctx: typer.Context,
    on: Annotated[str | None, typer.Option("--on", help="As it stood on a day (today).")] = None,
    json: Annotated[bool, typer.Option("--json", help="Answer as JSON.")] = False,
) -> None:
    """List the batches on the rack, the first ready first."""
    from ledger.views.cure import cure_list

    here = desk(ctx)
    found = cure_list(here.rows(), on=here.day(on))
    if json:
        out_json(found)
        return
    say_cure(found)


def say_cure(found: "Sequence[OnTheRack]") -> None:
    """The rack on the screen, the first ready first."""
    from ledger.domain.dates import show_date

    if not found:
        say("Nothing is on the rack.")
        return
    ready = [one for one in found if one.days_left <= 0]
    curing = len(found) - len(ready)
    say(f"{count(len(ready), 'batch', 'batches')} ready to be passed, {curing} still curing.")
    body = []
    for one in found:
        when = f"in {count(one.days_left, 'day')}" if one.days_left > 0 else "ready"
        if one.days_left <= -14:
            when = f"ready for {count(-one.days_left, 'day')}"
        usable = show_date(one.usable_from) if one.usable_from and one.days_left > 0 else ""
        held = "on hold" if one.status == "on hold" else ""
        body.append((one.batch_code, one.product, str(one.bars), show_date(one.ready_on), when, usable, held))
    table(("batch", "product", "bars", "ready on", "", "usable from", ""), body, right=(2,))
    if ready:
        say(f"Next: soapledger pass {ready[0].batch_code}")
