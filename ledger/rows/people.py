"""Suppliers and customers, with what is known of them."""

import sqlite3
from dataclasses import dataclass, replace
from typing import NamedTuple

from ledger.units.names import match_name
from ledger.units.words import CustomerKind


class CustomerCard(NamedTuple):
    """One customer; a person whose details were erased is shown by the short name alone."""

    id: int
    code: str
    name: str
    kind: CustomerKind
    person: str | None
    phone: str | None
    email: str | None
    address: str | None
    note: str | None
    bars: int  # dispatched or given, less what came back


_CUSTOMERS = """
SELECT c.id, c.code, r.name, c.kind, p.name AS person, p.phone, p.email, p.address, r.note,
       (SELECT coalesce(-sum(m.quantity), 0) FROM movement m WHERE m.customer_id = c.id) AS bars
FROM live_customer c
JOIN live_customer_revision r
  ON r.id = (SELECT max(id) FROM live_customer_revision WHERE customer_id = c.id)
LEFT JOIN personal_text p ON p.personal_id = r.personal_id
WHERE :code IS NULL OR c.code = :code
ORDER BY coalesce(r.name, p.name, c.code) COLLATE NOCASE
"""
_NAMES = """
SELECT c.id, c.code, coalesce(r.name, p.name, c.code) AS name FROM live_customer c
JOIN live_customer_revision r
  ON r.id = (SELECT max(id) FROM live_customer_revision WHERE customer_id = c.id)
LEFT JOIN personal_text p ON p.personal_id = r.personal_id
ORDER BY name COLLATE NOCASE
"""


def customer_list(rows: sqlite3.Connection, *, code: str | None = None) -> tuple[CustomerCard, ...]:
    """Every customer, by name; only the one of a code where told."""
    return tuple(
        CustomerCard(**dict(row) | {"name": row["name"] or row["person"] or row["code"]})
        for row in rows.execute(_CUSTOMERS, {"code": code})
    )


def customer_by_code(rows: sqlite3.Connection, text: str) -> CustomerCard:
    """The customer meant by a code, a name or the start of one. Raises BadInput with near matches."""
    code = match_name(
        text,
        [(row["code"], row["name"]) for row in rows.execute(_NAMES)],
        noun="customer",
        add="soapledger customer add NAME --shop",
    )
    return customer_list(rows, code=code)[0]


@dataclass(frozen=True)
class DetailsHeld:
    """Whose personal details are kept, and in which rows; none when nothing is left to erase."""

    code: str
    name: str
    rows: tuple[int, ...]


def details_held(rows: sqlite3.Connection, text: str) -> DetailsHeld:
    """What the file holds of one customer, in entries that were taken back too, since those keep their rows.

    A customer taken back is found by short name or name, and goes along with one who has either. Raises BadInput.
    """
    held = rows.execute(
        """
        SELECT p.personal_id, c.id, c.code, coalesce(r.name, p.name, c.code) AS name,
               EXISTS (SELECT 1 FROM live_customer l WHERE l.id = c.id) AS counts
        FROM personal_text p JOIN customer_revision r ON r.personal_id = p.personal_id
        JOIN customer c ON c.id = r.customer_id ORDER BY p.personal_id
        """
    ).fetchall()
    wanted = text.strip().casefold()
    live = {word.casefold() for card in customer_list(rows) for word in (card.code, card.name)}
    gone = [row for row in held if not row["counts"]]
    named = [row for row in gone if wanted in (row["code"], row["name"].casefold())]
    if named and wanted not in live:
        who, own = DetailsHeld(named[0]["code"], named[0]["name"], ()), named
    else:
        card = customer_by_code(rows, text)
        who, own = DetailsHeld(card.code, card.name, ()), [row for row in held if row["id"] == card.id]
    words = {who.code, who.name.casefold(), *(row["name"].casefold() for row in own)}
    along = [row for row in gone if words & {row["code"], row["name"].casefold()}]
    return replace(who, rows=tuple(dict.fromkeys(row["personal_id"] for row in (*own, *along))))


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


_SUPPLIERS = """
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
    return tuple(SupplierCard(**{**dict(row), "own": bool(row["own"])}) for row in rows.execute(_SUPPLIERS))


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
