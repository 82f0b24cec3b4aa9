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
from ledger.cli.desk import DEFAULT_FILE, Desk
from ledger.errors import LedgerError
from ledger.fileformat import trouble

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
        """Run, and turn whatever goes wrong into one line and an exit code."""
        kwargs["standalone_mode"] = False
        debug = "--debug" in sys.argv
        try:
            code = super().main(*args, **kwargs)
        except LedgerError as error:
            typer.echo(str(error), err=True)
            sys.exit(error.exit_code)
        except typer.Abort:
            typer.echo("Stopped; nothing more written.", err=True)
            sys.exit(1)
        except typer.TyperException as error:
            message = getattr(error, "format_message", error.__str__)()
            asked = getattr(error, "ctx", None)
            path = asked.command_path if asked is not None else "soapledger"
            typer.echo(f"{message} Help: {path} --help", err=True)
            sys.exit(2)
        except BrokenPipeError:
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
            sys.exit(0)
        except Exception as error:
            if debug:
                raise
            if meaning := trouble(error):
                typer.echo(str(meaning), err=True)
                sys.exit(meaning.exit_code)
            typer.echo(
                f"A fault in soapledger ({type(error).__name__}: {error}); nothing was written. "
                "Run it again with: soapledger --debug …",
                err=True,
            )
            sys.exit(4)
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
    path = Path(ledger or os.environ.get("SOAPLEDGER") or DEFAULT_FILE)
    ctx.obj = Desk(path, who, debug)


for _name, _part in NOUNS.items():
    if isinstance(_part, typer.Typer):
        app.add_typer(_part, name=_name, no_args_is_help=True)
    else:
        app.command(_name)(_part)


def run() -> None:
    """The console command."""
    app()
