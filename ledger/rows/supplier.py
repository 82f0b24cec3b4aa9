"""The suppliers as they are known now, and how each can be reached."""

import sqlite3
from typing import NamedTuple

from ledger.units.names import match_name


class SupplierCard(NamedTuple):
    """One supplier; `lots` counts the lots received from it."""

    id: int
    code: str
    name: str
    own: bool
    person: str | None
    phone: str | None
    email: str | None
    address: str | None
    note: str | None
    lots: int


_SQL = """
SELECT s.id, s.code, s.own, r.name, r.note, p.name AS person, p.phone, p.email, p.address,
       (SELECT count(*) FROM live_lot l WHERE l.supplier_id = s.id) AS lots
FROM live_supplier s
JOIN live_supplier_revision r
  ON r.id = (SELECT max(id) FROM live_supplier_revision WHERE supplier_id = s.id)
LEFT JOIN personal_text p ON p.personal_id = r.personal_id
ORDER BY r.name COLLATE NOCASE
"""


def supplier_list(rows: sqlite3.Connection) -> tuple[SupplierCard, ...]:
    """Every supplier, by name."""
    return tuple(SupplierCard(**{**dict(row), "own": bool(row["own"])}) for row in rows.execute(_SQL))


def supplier_by_code(rows: sqlite3.Connection, text: str) -> SupplierCard:
    """The supplier meant by a code, a name or the start of one. Raises BadInput with near matches."""
    cards = supplier_list(rows)
    code = match_name(
        text,
        [(card.code, card.name) for card in cards],
        noun="supplier",
        add="soapledger supplier add NAME",
    )
    return next(card for card in cards if card.code == code)
