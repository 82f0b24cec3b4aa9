"""Keep a paper or a picture inside the ledger, beside what it vouches for."""

import hashlib

from ledger.domain.codes import looks_like_batch_code, looks_like_lot_code
from ledger.errors import BadInput
from ledger.storage.book import Book
from ledger.storage.tables import AttachedContent, Attachment
from ledger.views.batch import find_batch
from ledger.views.lots import find_lot
from ledger.views.material import material_by_code


def attach(book: Book, content: bytes, *, name: str, kind: str, to: str) -> str:
    """Attach a file to a batch, a lot or a material; returns its SHA-256. The same content is kept once.

    Raises BadInput for an empty file or an unknown code.
    """
    if not content:
        raise BadInput(f"{name} is empty; look at the file.")
    digest = hashlib.sha256(content).hexdigest()
    with book.write("attach") as tx:
        if not tx.rows.execute("SELECT 1 FROM attached_content WHERE digest = ?", (digest,)).fetchone():
            tx.add(AttachedContent(digest=digest, content=content))
        row = Attachment(digest=digest, name=name, kind=kind)
        if looks_like_batch_code(to):
            row.batch_id = find_batch(tx.rows, to).id
        elif looks_like_lot_code(to):
            row.lot_id = find_lot(tx.rows, to).id
        else:
            row.material_id = material_by_code(tx.rows, to).id
        tx.add(row)
        tx.say(f"Attached {name} ({kind}) to {to}.")
    return digest
