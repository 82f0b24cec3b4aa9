"""What marks a file as a soapledger file, which schema this program knows, and what a fault of the file means."""

from ledger.errors import DamagedLedger, LedgerError, Refused

APPLICATION_ID = 0x50AB1ED6
SCHEMA_VERSION = 1

# SQLite's primary result codes (https://sqlite.org/rescode.html), each with what it means to her.
_TROUBLE: dict[int, LedgerError] = {
    5: Refused("Another soapledger is writing to this ledger; try again in a moment."),
    6: Refused("Another soapledger is writing to this ledger; try again in a moment."),
    8: Refused("The ledger file cannot be written to; look at its permissions and its folder's."),
    10: DamagedLedger("The disk did not read or write the ledger file; keep the file, and go back to your last backup."),
    11: DamagedLedger("The ledger file is damaged; keep it, and go back to your last backup."),
    13: Refused("The disk is full; nothing was written. Make room, then do it again."),
    14: DamagedLedger("The ledger file cannot be opened; look at its permissions, or name it with --ledger FILE."),
    26: DamagedLedger("The file is not a ledger; keep it, and name the right one with --ledger FILE."),
}


def trouble(error: BaseException) -> LedgerError | None:
    """What an error raised by SQLite, or passed on by the session, means to her; None for a fault of ours."""
    cause = getattr(error, "orig", None) or error
    text = str(cause)
    if text.startswith("guard: "):
        return Refused(text.removeprefix("guard: ") + " Nothing was written.")
    code = getattr(cause, "sqlite_errorcode", None)
    return _TROUBLE.get(code & 0xFF) if isinstance(code, int) else None
