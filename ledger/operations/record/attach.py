"""Keep a paper or a picture inside the ledger, beside what it vouches for."""

import hashlib
from dataclasses import dataclass

from ledger.errors import BadInput, Refused
from ledger.rows.kept import content_kept
from ledger.storage.book import Book
from ledger.storage.tables.record import AttachedContent, Attachment
from ledger.storage.transaction import Transaction
from ledger.units.names import kind_meant
from ledger.views.record.attachments import Subject, attachments, subject_meant

KINDS = (
    "CoA", "safety sheet", "photograph", "assessment report", "allergen statement", "IFRA certificate", "paper",
)  # fmt: skip


@dataclass(frozen=True)
class KeptWith:
    """What a paper was attached to, and the SHA-256 of its content."""

    subject: Subject
    sha256: str


def attach(book: Book, content: bytes, *, name: str, kind: str, to: str) -> KeptWith:
    """Attach a file to a lot, a batch, a recipe or a material; the same content is kept once.

    Raises BadInput for an empty file, an unknown code or kind, Refused when that very content is kept with
    it already.
    """
    kind = kind_meant(kind, KINDS, noun="paper")
    with book.write("attach") as tx:
        kept = keep_paper(tx, content, name=name, kind=kind, to=to)
        tx.say(f"Attached {name} ({kind}) to {kept.subject.noun} {kept.subject.code}.")
    return kept


def keep_paper(tx: Transaction, content: bytes, *, name: str, kind: str, to: str) -> KeptWith:
    """The same inside another operation; raises like `attach`."""
    if not content:
        raise BadInput(f"{name} is empty; look at the file.")
    digest, subject = hashlib.sha256(content).hexdigest(), subject_meant(tx.rows, to)
    for one in attachments(tx.rows, subject):
        if one.sha256 == digest:
            raise Refused(f"{name} is kept with {subject.noun} {subject.code} already, as {one.name}.")
    if not content_kept(tx.rows, digest):
        tx.add(AttachedContent(digest=digest, content=content))
    row = Attachment(digest=digest, name=name, kind=kind)
    setattr(row, f"{subject.noun}_id", subject.id)
    tx.add(row)
    return KeptWith(subject, digest)
