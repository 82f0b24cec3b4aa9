"""People's details in rows of their own, which alone may be erased: the entry keeps a salted digest."""

import hashlib
import json
import secrets
from collections.abc import Mapping
from dataclasses import asdict, dataclass
from typing import TYPE_CHECKING

from ledger.storage.tables import Erasure, Personal, PersonalText

if TYPE_CHECKING:
    from ledger.storage.book import Transaction


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


def salted_digest(salt: str, details: Mapping[str, str | None]) -> str:
    """SHA-256 over the salt and the details, so that a change shows while an erasure tells nothing."""
    fields = ("name", "phone", "email", "address", "health")
    text = json.dumps([salt, *(details[field] for field in fields)], ensure_ascii=False)
    return hashlib.sha256(text.encode()).hexdigest()


def remember_person(tx: "Transaction", details: PersonDetails) -> int | None:
    """Write the details of one person and return the number of their row; None when nothing is told."""
    if not details.known():
        return None
    salt = secrets.token_hex(16)
    personal = tx.add(Personal(salted_digest=salted_digest(salt, asdict(details))))
    assert personal.id is not None
    tx.add(PersonalText(personal_id=personal.id, salt=salt, **asdict(details)))
    return personal.id


def forget_person(tx: "Transaction", personal_id: int, reason: str) -> None:
    """Erase the details for good; the erasure itself is a fact, and the guard wants it first."""
    tx.add(Erasure(personal_id=personal_id, reason=reason))
    tx.rows.execute("DELETE FROM personal_text WHERE personal_id = ?", (personal_id,))
