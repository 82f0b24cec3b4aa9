"""What marks a file as a soapledger file, its schema, which of its rows count, and what a fault of it means."""

from pathlib import Path

from ledger.errors import DamagedLedger, LedgerError, Refused

APPLICATION_ID = 0x50AB1ED6
SCHEMA_VERSION = 7
LAID_REVISION = 3  # of the views and guards; it rises whenever their text differs

# The decisions of format 5 and earlier that said in their reason alone what they were about.
# Asked each time a ledger is opened, so each half is worded as its index is: decision_batch, decision_all_the_same.
OLD_DECISIONS = """
SELECT id, verdict, reason FROM decision WHERE NOT EXISTS (SELECT 1 FROM decision_doubt)
  AND verdict = 'accepted' AND batch_id > 0 AND substr(reason, 1, 25) = 'superfat likely nothing: '
UNION ALL
SELECT id, verdict, reason FROM decision WHERE NOT EXISTS (SELECT 1 FROM decision_doubt)
  AND verdict = 'released' AND instr(reason, '); released all the same: ')
  AND (instr(reason, 'not covered by what was assessed (') OR instr(reason, 'its labels are not usable any more ('))
"""

# What an earlier program did not keep, recipe figures or doubts: the ledger has to be brought up to date.
LACKS_ROWS = (
    "SELECT 1 WHERE EXISTS (SELECT 1 FROM recipe_version v WHERE NOT EXISTS "
    f"(SELECT 1 FROM recipe_figures f WHERE f.recipe_version_id = v.id)) OR EXISTS ({OLD_DECISIONS})"
)

_BUSY = "Another soapledger is using this ledger; try again in a moment."
# SQLite's primary result codes (https://sqlite.org/rescode.html), each with what it means to her.
_TROUBLE: dict[int, tuple[type[LedgerError], str]] = {
    5: (Refused, _BUSY),
    6: (Refused, _BUSY),
    8: (Refused, "The ledger cannot be written to; look at the permissions of the file and of its folder."),
    10: (DamagedLedger, "The disk does not read or write the ledger as it should; go back to your last backup."),
    11: (DamagedLedger, "The ledger file is damaged; keep it, and go back to your last backup."),
    13: (Refused, "The disk is full, and this was not written; make room first."),
    14: (DamagedLedger, "The ledger cannot be opened; look at its permissions, or name it with --ledger FILE."),
    26: (DamagedLedger, "That file is not a ledger; keep it, and name the right one with --ledger FILE."),
}


def is_ledger(path: Path) -> bool:
    """Whether a file is a ledger of ours, by the first bytes of it (https://sqlite.org/fileformat2.html, 1.3).

    A link is followed. Raises OSError for a file that cannot be read.
    """
    if not path.is_file():
        return False
    with path.open("rb") as file:
        head = file.read(72)
    return head.startswith(b"SQLite format 3\0") and int.from_bytes(head[68:72], "big") == APPLICATION_ID


def laid_revision_view(revision: int) -> str:
    """The view by which a file tells which revision of the views and guards it holds."""
    return f"CREATE VIEW laid_revision AS SELECT {revision} AS revision"


def what_counts(table: str, *, until: int | None = None, schema: str | None = None) -> str:
    """The query for the rows of a table of facts that count: no undone entry's, and none an undo wrote.

    `until` gives what counted at an earlier entry, from the file itself (the schema main) behind any view that stands
    before it.
    """
    of = "main." if schema == "main" or until is not None else ""
    then = "" if until is None else f" AND r.id <= {until}"
    return (
        f"SELECT t.* FROM {of}{table} t WHERE {'1' if until is None else f't.entry_id <= {until}'} "
        f"AND NOT EXISTS (SELECT 1 FROM {of}entry r WHERE r.reverses = t.entry_id{then}) "
        f"AND NOT EXISTS (SELECT 1 FROM {of}entry e WHERE e.id = t.entry_id AND e.reverses IS NOT NULL)"
    )


def trouble(error: BaseException) -> LedgerError | None:
    """What an error raised by SQLite, or passed on by the session, means to her; None for a fault of ours."""
    cause = getattr(error, "orig", None) or error
    text = str(cause)
    if text.startswith("guard: "):
        return Refused(text.removeprefix("guard: ") + " Nothing was written.")
    code = getattr(cause, "sqlite_errorcode", None)
    if not isinstance(code, int) or code & 0xFF not in _TROUBLE:
        return None
    kind, message = _TROUBLE[code & 0xFF]
    return kind(message)
