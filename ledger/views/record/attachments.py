"""The papers and pictures that are kept, and what each vouches for."""

import hashlib
import sqlite3
from dataclasses import dataclass

from ledger.errors import BadInput, DamagedLedger
from ledger.rows.batch import find_batch
from ledger.rows.lot import find_lot
from ledger.rows.material import material_list
from ledger.rows.recipe import recipe_list
from ledger.units.codes import looks_like_batch_code, looks_like_lot_code
from ledger.units.names import match_name


@dataclass(frozen=True)
class Subject:
    """What a paper may vouch for: one lot, batch, recipe or material."""

    noun: str
    id: int
    code: str


def subject_meant(rows: sqlite3.Connection, text: str) -> Subject:
    """The lot, batch, recipe or material meant by a code or a name.

    A soap has its recipe's short name, and the recipe is meant. Raises Refused for a batch code that is
    mistyped or unknown, BadInput for any other unknown word.
    """
    if looks_like_batch_code(text):
        batch = find_batch(rows, text)
        return Subject("batch", batch.id, batch.code)
    if looks_like_lot_code(text):
        lot = find_lot(rows, text)
        return Subject("lot", lot.id, lot.code)
    known = {one.code: (one.name, Subject("material", one.id, one.code)) for one in material_list(rows)}
    known |= {one.code: (one.name, Subject("recipe", one.id, one.code)) for one in recipe_list(rows)}
    code = match_name(
        text,
        [(code, name) for code, (name, _) in known.items()],
        noun="recipe or material",
        add="soapledger material add NAME --kind KIND",
    )
    return known[code][1]


@dataclass(frozen=True)
class KeptPaper:
    """One paper with what it vouches for and its content's SHA-256."""

    name: str
    kind: str
    noun: str
    code: str
    bytes: int
    sha256: str
    entry: int


def attachments(rows: sqlite3.Connection, subject: Subject | None = None) -> tuple[KeptPaper, ...]:
    """Every paper kept, or those of one subject, in the order they came."""
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
    papers = tuple(KeptPaper(**dict(row)) for row in found)
    if subject is None:
        return papers
    return tuple(one for one in papers if (one.noun, one.code) == (subject.noun, subject.code))


@dataclass(frozen=True)
class KeptContent:
    """The bytes of one paper with their SHA-256."""

    sha256: str
    content: bytes


def content_of(rows: sqlite3.Connection, digest: str) -> KeptContent:
    """The content whose SHA-256 begins so.

    Raises BadInput for fewer than six characters, none or several; DamagedLedger when the bytes no longer
    have that SHA-256.
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
    if hashlib.sha256(kept.content).hexdigest() != kept.sha256:
        raise DamagedLedger(f"Paper {kept.sha256[:12]} was changed since it was kept; see: soapledger check")
    return kept
