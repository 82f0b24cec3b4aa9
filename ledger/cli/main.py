"""The root command: what stands on it, the order of the commands, and the one error boundary."""

import os
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Annotated, Any

import typer
from typer.core import TyperGroup

from ledger import __version__
from ledger.cli import (
    attach,
    batch,
    complaint,
    cost,
    cure,
    customer,
    demo,
    dispatch,
    equipment,
    init,
    keep,
    label,
    lot,
    material,
    pass_,
    recall,
    receive,
    recipe,
    reject,
    release,
    rework,
    samples,
    stall,
    stock,
    supplier,
    trace,
    upkeep,
)
from ledger.cli.desk import DEFAULT_FILE, Desk, desk
from ledger.cli.ending import ended
from ledger.cli.show import show_plainly
from ledger.errors import LedgerError

INTERRUPTED = 130  # what the command line gives back for Ctrl-C outside a question

# Each noun is a group of commands or one command; here in the order of the work:
# set up, stock, make, sell, answer, keep.
NOUNS: dict[str, typer.Typer | Callable[..., None]] = {
    "init": init.command,
    "demo": demo.command,
    "supplier": supplier.app,
    "customer": customer.app,
    "material": material.app,
    "equipment": equipment.app,
    "recipe": recipe.app,
    "receive": receive.command,
    "stock": stock.command,
    "lot": lot.app,
    "batch": batch.app,
    "cure": cure.app,
    "pass": pass_.command,
    "release": release.command,
    "samples": samples.command,
    "reject": reject.command,
    "rework": rework.command,
    "label": label.app,
    "stall": stall.app,
    "dispatch": dispatch.dispatch,
    "return": dispatch.return_,
    "resell": dispatch.resell,
    "gift": dispatch.gift,
    "cost": cost.command,
    "trace": trace.command,
    "recall": recall.app,
    "complaint": complaint.app,
    "attach": attach.attach,
    "attachments": attach.attachments,
    "attachment": attach.app,
    "upkeep": upkeep.app,
    "check": keep.check,
    "undo": keep.undo,
    "history": keep.history,
    "backup": keep.backup,
}


class Root(TyperGroup):
    """Runs a command; every error leaves as one line and its exit code."""

    def list_commands(self, ctx: Any) -> list[str]:  # noqa: ARG002
        """The commands in the order of the work, not of the alphabet."""
        return list(NOUNS)

    def main(self, *args: Any, **kwargs: Any) -> Any:
        """Run, and turn whatever goes wrong into one line, what of it stands, and an exit code."""
        here = Desk(Path(DEFAULT_FILE))
        try:
            code = super().main(*args, **{**kwargs, "standalone_mode": False, "obj": here})
            if code == INTERRUPTED:
                raise typer.Abort
        except Exception as error:
            code = ended(error, here)
            if here.debug and not isinstance(error, (LedgerError, typer.Abort, typer.TyperException)):
                raise
        sys.exit(code if isinstance(code, int) else 0)


app = typer.Typer(
    cls=Root,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    add_completion=False,
    no_args_is_help=True,
    help="The records of one person who makes soap by hand: from a delivery to a recall answer.",
)


def _version(asked: bool) -> None:
    if asked:
        typer.echo(f"soapledger {__version__}")
        raise typer.Exit


@app.callback()
def root(
    ctx: typer.Context,
    ledger: Annotated[
        str | None,
        typer.Option(
            "--ledger",
            help=f"The ledger file (else SOAPLEDGER, else {DEFAULT_FILE} in this folder).",
        ),
    ] = None,
    who: Annotated[str | None, typer.Option("--as", help="Who is writing, e.g. --as Nuala.")] = None,
    debug: Annotated[bool, typer.Option("--debug", help="Show where a fault happened.")] = False,
    version: Annotated[  # noqa: ARG001
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Show the version.")
    ] = False,
) -> None:
    """Lay out the desk for the command that follows."""
    here = desk(ctx)
    here.path = Path(ledger or os.environ.get("SOAPLEDGER") or DEFAULT_FILE)
    here.who_given, here.debug = who, debug
    here.lay()
    ctx.call_on_close(here.leave)


for _name, _part in NOUNS.items():
    if isinstance(_part, typer.Typer):
        app.add_typer(_part, name=_name, no_args_is_help=True)
    else:
        app.command(_name)(_part)


def run() -> None:
    """The console command."""
    show_plainly()
    app()
