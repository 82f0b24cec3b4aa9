"""People's details in rows of their own, which alone may be deleted: the entry keeps a salted digest."""

import re
import secrets
from collections.abc import Iterable
from dataclasses import asdict, dataclass

from ledger.errors import BadInput
from ledger.storage.chain import salted_digest
from ledger.storage.tables.personal import Erasure, Personal, PersonalText
from ledger.storage.transaction import Transaction


@dataclass(frozen=True)
class PersonDetails:
    """What is known of one person; all of it may be erased later."""

    name: str | None = None
    phone: str | None = None
    email: str | None = None
    address: str | None = None
    health: str | None = None

    def known(self) -> bool:
        """Whether anything at all is told here."""
        return any(asdict(self).values())


def remember_person(tx: Transaction, details: PersonDetails) -> int | None:
    """Write the details of one person and return the number of their row; None when nothing is told."""
    if not details.known():
        return None
    salt = secrets.token_hex(16)
    personal = tx.add(Personal(salted_digest=salted_digest(salt, asdict(details))))
    assert personal.id is not None
    tx.add(PersonalText(personal_id=personal.id, salt=salt, **asdict(details)))
    return personal.id


def impersonal(words: str, personal: Iterable[str | None], instead: str) -> None:
    """Raise BadInput for words that repeat a person's details, which have a place of their own or none."""
    for one in personal:
        if one and re.search(rf"(?<!\w){re.escape(one)}(?!\w)", words, re.IGNORECASE):
            raise BadInput(f"These words hold '{one}'; leave it out: {instead}.")


def forget_person(tx: Transaction, personal_id: int, reason: str) -> None:
    """Erase the details for good; the erasure itself is a fact, and the guard wants it first.

    Raises BadInput for a reason that repeats what is erased.
    """
    query = "SELECT name, phone, email, address, health FROM personal_text WHERE personal_id = ?"
    for row in tx.rows.execute(query, (personal_id,)).fetchall():
        impersonal(reason, row, "say why without it, such as asked by letter")
    tx.add(Erasure(personal_id=personal_id, reason=reason))
    tx.rows.execute("DELETE FROM personal_text WHERE personal_id = ?", (personal_id,))
