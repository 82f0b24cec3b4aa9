"""What is kept beside the making: the retained samples, and the papers and pictures with their content."""

import sqlite3
from collections.abc import Iterator
from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput, DamagedLedger, Refused
from ledger.rows.opened import day
from ledger.units.seals import sha256_of


class Sample(NamedTuple):
    """Bars of one batch set aside."""

    batch_code: str
    product: str
    bars: int
    on: date
    kept_at: str
    keep_until: date


def samples(rows: sqlite3.Connection, *, lot_id: int | None = None) -> tuple[Sample, ...]:
    """Every retained sample, or those of one lot of bars, the first to be given up first."""
    found = rows.execute(
        f"""
        SELECT l.code AS batch_code, mr.name AS product, s.bars, s."on", s.kept_at, s.keep_until
        FROM live_retained_sample s JOIN lot l ON l.id = s.lot_id JOIN live_material_revision mr
          ON mr.id = (SELECT max(id) FROM live_material_revision WHERE material_id = l.material_id)
        {"" if lot_id is None else "WHERE s.lot_id = :lot"} ORDER BY s.keep_until, s.id
        """,
        {"lot": lot_id},
    )
    return tuple(Sample(**{**dict(row), "on": day(row["on"]), "keep_until": day(row["keep_until"])}) for row in found)


class KeptPaper(NamedTuple):
    """One paper with what it vouches for and its content's SHA-256."""

    name: str
    kind: str
    noun: str
    code: str
    bytes: int
    sha256: str
    entry: int


def papers(rows: sqlite3.Connection) -> tuple[KeptPaper, ...]:
    """Every paper kept, in the order they came."""
    found = rows.execute(
        """
        SELECT a.name, a.kind, a.digest AS sha256, a.entry_id AS entry, length(c.content) AS bytes,
               CASE WHEN l.id THEN 'lot' WHEN b.id THEN 'batch' WHEN r.id THEN 'recipe' ELSE 'material' END AS noun,
               coalesce(l.code, b.code, r.code, m.code) AS code
        FROM live_attachment a JOIN attached_content c ON c.digest = a.digest
        LEFT JOIN lot l ON l.id = a.lot_id LEFT JOIN batch b ON b.id = a.batch_id
        LEFT JOIN recipe r ON r.id = a.recipe_id LEFT JOIN material m ON m.id = a.material_id
        ORDER BY a.id
        """
    )
    return tuple(KeptPaper(**dict(row)) for row in found)


class Attached(NamedTuple):
    """A paper or picture kept with a batch, or with a lot that went in or came out, by name and digest."""

    name: str
    kind: str
    sha256: str
    subject: str


def papers_of_batch(rows: sqlite3.Connection, batch_id: int) -> tuple[Attached, ...]:
    """The papers kept with a batch and with its lots, in the order they came."""
    found = rows.execute(
        """
        SELECT a.name, a.kind, a.digest, CASE WHEN a.batch_id IS NULL THEN l.code ELSE 'this batch' END AS subject
        FROM live_attachment a LEFT JOIN lot l ON l.id = a.lot_id
        WHERE a.batch_id = :batch OR a.lot_id IN
          (SELECT lot_id FROM movement WHERE batch_id = :batch GROUP BY lot_id HAVING sum(quantity) <> 0)
        ORDER BY a.id
        """,
        {"batch": batch_id},
    )
    return tuple(Attached(*row) for row in found)


class KeptContent(NamedTuple):
    """The bytes of one paper with their SHA-256."""

    sha256: str
    content: bytes


def content_of(rows: sqlite3.Connection, digest: str) -> KeptContent:
    """The content whose SHA-256 begins so.

    Raises BadInput for fewer than six characters, none or several; Refused when it was erased; DamagedLedger when
    the bytes no longer have that SHA-256.
    """
    start = digest.strip().rstrip("….").casefold()
    if len(start) < 6:
        raise BadInput(f"'{digest}' is too short to tell papers apart; write six characters of it at least.")
    found = rows.execute(
        "SELECT c.digest, c.content FROM attached_content c WHERE substr(c.digest, 1, ?) = ? "
        "AND EXISTS (SELECT 1 FROM live_attachment a WHERE a.digest = c.digest)",
        (len(start), start),
    ).fetchall()
    if len(found) > 1:
        raise BadInput(f"Several papers begin with '{start}'; write more of it.")
    if not found:
        raise BadInput(f"No paper kept here begins with '{start}'. See them all: soapledger attachments")
    kept = KeptContent(found[0]["digest"], bytes(found[0]["content"]))
    if not kept.content:  # an empty file is never kept
        raise Refused(f"What paper {kept.sha256[:12]} held was erased; who did so is told by: soapledger history")
    if sha256_of(kept.content) != kept.sha256:
        raise DamagedLedger(f"Paper {kept.sha256[:12]} was changed since it was kept; see: soapledger check")
    return kept


class WholePaper(NamedTuple):
    """One paper with its content, whether or not it still counts."""

    entry: int
    id: int
    name: str
    sha256: str
    content: bytes


def whole_papers(rows: sqlite3.Connection) -> Iterator[WholePaper]:
    """Every paper of which anything is left, one at a time."""
    query = (
        "SELECT a.entry_id, a.id, a.name, a.digest, c.content FROM attachment a "
        "JOIN attached_content c ON c.digest = a.digest WHERE c.content <> x'' ORDER BY a.id"
    )
    return (WholePaper(*row) for row in rows.execute(query))


def content_kept(rows: sqlite3.Connection, digest: str) -> bool:
    """Whether content of that SHA-256 is in the ledger already. Raises Refused for one that was erased."""
    found = rows.execute("SELECT length(content) FROM attached_content WHERE digest = ?", (digest,)).fetchone()
    if found and not found[0]:
        raise Refused("That very paper was kept here and was erased; it is not kept again.")
    return found is not None


class LotPaper(NamedTuple):
    """One paper attached to a lot."""

    name: str
    kind: str
    sha256: str


def papers_of_lot(rows: sqlite3.Connection, lot_id: int) -> tuple[LotPaper, ...]:
    """What is attached to a lot, in the order it came."""
    query = "SELECT name, kind, digest FROM live_attachment WHERE lot_id = ? ORDER BY id"
    return tuple(LotPaper(*row) for row in rows.execute(query, (lot_id,)))


def note_of(rows: sqlite3.Connection, lot_id: int) -> str | None:
    """The number on the delivery note a lot came with."""
    query = "SELECT d.note_number FROM lot l JOIN delivery d ON d.id = l.delivery_id WHERE l.id = ?"
    found = rows.execute(query, (lot_id,)).fetchone()
    return str(found[0]) if found and found[0] is not None else None
