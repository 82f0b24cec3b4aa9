"""The root command: what stands on it, and the one error boundary."""

import atexit
import gc
import os
import sys
from pathlib import Path
from typing import Annotated, Any

import typer

from ledger import __version__
from ledger.cli.kit.desk import DEFAULT_FILE, Desk, desk
from ledger.cli.kit.ending import ended
from ledger.cli.kit.heard import heard, tell_unprintable
from ledger.cli.kit.show import say, say_numbered, show_plainly
from ledger.cli.kit.tree import Group
from ledger.errors import LedgerError, NotShown

INTERRUPTED = 130  # what the command line gives back for Ctrl-C outside a question


class Root(Group):
    """Runs a command; every error leaves as one line and its exit code."""

    def main(self, *args: Any, **kwargs: Any) -> Any:
        """Run, and turn whatever goes wrong into one line, what of it stands, and an exit code."""
        here = Desk(Path(DEFAULT_FILE))
        heard.clear()
        show_plainly()
        try:
            code = super().main(*args, **{**kwargs, "standalone_mode": False, "obj": here})
            if code == INTERRUPTED:
                raise typer.Abort
            if sys.stdout is None:  # closed by the caller, as `>&-` does
                raise NotShown("There is no output to show the answer on.")
            if any(book.handed_over for book in here.books):
                tell_unprintable()
        except Exception as error:
            code = ended(error, here)
            if here.debug and not isinstance(error, (LedgerError, typer.Abort, typer.TyperException)):
                raise
        say_numbered()
        sys.exit(code if isinstance(code, int) else 0)


app = typer.Typer(
    name="soapledger",
    cls=Root,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    add_completion=False,
    help="The records of one person who makes soap by hand: from a delivery to a recall answer.",
)


def _version(asked: bool) -> None:
    if asked:
        say(f"soapledger {__version__}")
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


def run() -> None:
    """The console command."""
    gc.set_threshold(100_000)  # what a command loads stays: looking through it for waste took 10 ms of each
    atexit.register(gc.freeze)  # and at the end, when all of it goes anyway, 30 to 60 ms more
    app()
