"""What marks a file as a soapledger file, its schema, which of its rows count, and what a fault of it means."""

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

try:
    from _blake2 import blake2b  # the one of hashlib, without the 10 ms in which that loads OpenSSL
except ImportError:
    from hashlib import blake2b

from ledger.errors import DamagedLedger, LedgerError, Refused, StrangeSchema

APPLICATION_ID = 0x50AB1ED6
SCHEMA_VERSION = 9
LAID_REVISION = 6  # of the views and guards; it rises whenever their text differs

_HIGHEST = 9999  # a higher format number was written by no program, and neither was one below 1

# Asked before anything else of a file, so that nothing written into its schema is obeyed first.
SCHEMA = "SELECT type, name, tbl_name, sql FROM main.sqlite_schema WHERE type <> 'index'"
TABLES = frozenset(
    """
    assessment assessment_covers assumed_batch assumed_ticked attached_content attachment batch blanked
    complaint complaint_step constituent cost_rate customer customer_order customer_revision customer_terms
    decision decision_doubt delivery deviation deviation_decision entry entry_salt equipment equipment_check
    equipment_revision erasure fee finished_check first_supply invoice invoice_sale label_approval label_count
    label_run label_words lot market_address material material_revision movement name_meant order_end order_line
    payment peroxide personal personal_text place plan_line plan_target price reading recall recall_close
    recall_step recipe recipe_figures recipe_version retained_sample sale sale_line settings_revision skin_limit
    sold_bare supplier supplier_revision tax_rate upkeep work
    """.split()  # noqa: SIM905
)
# What the tables of each format were ever laid as, and the views and guards of this revision (`schema_digest`);
# tests/storage/test_known_schema.py prints what stands here.
TABLES_LAID = {
    1: ("89525034f15751d09d76f2168a9c7f50", "4893dcd7df11f5b8cae392a0aef6b123"),
    2: ("3169f75fee2237aa26beda8936d3ab10",),
    3: ("aa78e0edb9c643cfc554982ed43f0236",),
    4: ("514c480db2045ed60ce065e88000e362", "612a5b1dfb029c585c8ec1a2119b164b"),
    5: ("514c480db2045ed60ce065e88000e362",),
    6: ("2cf823f82637875ecb490ce303ddd746",),
    7: ("1b419aa2d78267a4b282b5102f1d9689",),
    8: ("00fd6955e4d068a2f7b795503a205d63",),
    9: ("63ca1e25615d15903e51dd8b78a9cf1a",),
}
GUARDS_LAID = "d0168f54ec17844fd7b3edf43684230d"

# Against a file of unknown origin (https://sqlite.org/security.html): "Untrusted SQLite Database Files" asks for
# cell_size_check and no memory map; its advice on functions in a schema, for trusted_schema off. What it asks first,
# an integrity check before any other statement, reads the whole file: that is `soapledger check`.
CAREFUL = "PRAGMA trusted_schema = OFF; PRAGMA cell_size_check = ON; PRAGMA mmap_size = 0;"
# The same page, "Untrusted SQL Inputs": SQLITE_LIMIT_TRIGGER_DEPTH, which is number 10 in
# https://sqlite.org/c3ref/c_limit_attached.html, at the page's own 10. Its other limits would stop queries of ours, or
# a large paper that was kept.
TRIGGER_DEPTH = (10, 10)

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

_LAID_VIEW = "CREATE VIEW laid_revision AS SELECT "
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


def known_file(path: Path, application: int, version: int) -> None:
    """Raise DamagedLedger for a file that is none of ours or of no format there is, Refused for a newer program's."""
    if application != APPLICATION_ID:
        raise DamagedLedger(f"{path} is not a soapledger file; name the right one with --ledger FILE.")
    if not 1 <= version <= _HIGHEST:
        raise DamagedLedger(
            f"{path} says that its format is {version}, and no soapledger writes such a one; keep it, and go back to "
            "your last backup."
        )
    if version > SCHEMA_VERSION:
        raise Refused(
            f"{path} was written by a newer soapledger (its format {version}, this one knows {SCHEMA_VERSION}); "
            "install the newer one. Nothing was changed."
        )


def known_schema(path: Path, version: int, found: Sequence[Any]) -> None:
    """Raise DamagedLedger unless what `SCHEMA` found in a file is what a soapledger laid there.

    Tables and views of her own may stand beside ours. A trigger on what is ours is refused, and so are our tables,
    views and guards in other words; those of another revision are not held, since they are never asked: they are laid
    anew or shadowed first.
    """
    tables, guards = schema_digest(found)
    ours = (laid_revision_view(LAID_REVISION) in {row[3] for row in found}) and version == SCHEMA_VERSION
    if tables not in TABLES_LAID[version] or (ours and guards != GUARDS_LAID):
        raise StrangeSchema(
            f"{path} holds tables, views or guards that no soapledger laid, so nothing in it is asked or changed. To "
            f"see which: soapledger --ledger {path} check"
        )


def schema_digest(found: Iterable[Sequence[Any]]) -> tuple[str, str]:
    """A short digest of our tables, and one of our views with every trigger on what is ours, whatever their order."""
    tables: list[str] = []
    guards: list[str] = []
    for kind, name, table, sql in found:
        of = name if kind != "trigger" else table
        if of in TABLES or of == "laid_revision" or of.removeprefix("live_") in TABLES:
            (tables if kind == "table" else guards).append(sql or "")
    return _digest(tables), _digest(guards)


def _digest(texts: list[str]) -> str:
    return blake2b("\n".join(sorted(texts)).encode(errors="replace"), digest_size=16).hexdigest()


def laid_revision_view(revision: int) -> str:
    """The view by which a file tells which revision of the views and guards it holds."""
    return f"{_LAID_VIEW}{revision} AS revision"


def revision_told(view: str | None) -> int:
    """The revision that the text of that view tells; 0 where there is none, or another text. It is never asked."""
    number = (view or "").removeprefix(_LAID_VIEW).removesuffix(" AS revision")
    return int(number) if number.isdecimal() and len(number) < 6 and view == laid_revision_view(int(number)) else 0


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
