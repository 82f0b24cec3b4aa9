"""How a run that went wrong ends: the reason, what it booked that stands, and the exit code."""

import errno
from typing import TYPE_CHECKING

import typer

from ledger.cli.kit.desk import Desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.show import warn
from ledger.errors import BadInput, DamagedLedger, LedgerError, NotShown
from ledger.fileformat import trouble

if TYPE_CHECKING:
    from ledger.rows.history import HistoryLine


def ended(error: Exception, here: Desk) -> int:
    """Say why a run ended and what of it is booked; returns the exit code.

    The ledger itself is asked which entries of this run stand: nothing is said to be written or not that it does not
    tell.
    """
    handed_over = [one for book in here.books for one in book.handed_over]
    lines = loaded("rows.history").history_since(here.path, handed_over[0][0]) if handed_over else ()
    standing = [one for one in lines or () if (one.entry, one.digest) in handed_over]
    nothing = lines is not None and not standing
    meaning = error if isinstance(error, LedgerError) else _too_long(error) or trouble(error)
    if meaning:
        reason, code = str(meaning), meaning.exit_code
        if isinstance(error, NotShown) and nothing and not here.books:
            reason = f"{reason.rstrip('.')}; nothing was written in the ledger."
    elif isinstance(error, typer.Abort):
        reason, code = f"Stopped{'; nothing written' if nothing else ''}.", 1
    elif isinstance(error, typer.TyperException):
        reason, code = _mistyped(error), 2
    else:
        reason, code = f"A fault in soapledger ({type(error).__name__}: {error})", 4
        reason += "; nothing was written in the ledger. Run it again with: soapledger --debug …" if nothing else "."
    warn(reason)
    if lines is None:
        last = f"entry {handed_over[-1][0]}"
        warn(f"Whether {last} was booked is not known, since the ledger cannot be asked. Before you do it again,")
        warn(f"look: {here.typed('history')}")
    if lines and standing:
        warn(_stands(here, standing))
        if here.paper:
            warn(f"What was drawn is in {here.paper}.")
        since = lines[-1].entry - standing[0].entry + 1
        warn(f"To see it again: {here.again or here.typed(f'history --last {since}')}")
        if not meaning or (here.again and not isinstance(meaning, DamagedLedger)):
            code = NotShown.exit_code
    return code


def _too_long(error: Exception) -> LedgerError | None:
    """Whichever command was given it, a name that no disk takes is hers to shorten."""
    if not isinstance(error, OSError) or error.errno != errno.ENAMETOOLONG:
        return None
    return BadInput(f"'{str(error.filename)[:20]}…' is too long for the name of a file; write a shorter one.")


def _stands(here: Desk, standing: "list[HistoryLine]") -> str:
    first, last = standing[0], standing[-1]
    if len(standing) == 1:
        return f"Entry {last.entry} stands in {here.path}: {last.said}"
    return f"{len(standing)} entries stand in {here.path}, {first.entry} to {last.entry}; the last: {last.said}"


def _mistyped(error: typer.TyperException) -> str:
    message = getattr(error, "format_message", error.__str__)()
    asked = getattr(error, "ctx", None)
    path = asked.command_path if asked is not None else "soapledger"
    return f"{message} Help: {path} --help"
