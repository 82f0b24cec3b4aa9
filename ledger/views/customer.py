"""The customers as they are known now, and how each can be reached."""

import sqlite3
from dataclasses import dataclass

from ledger.domain.names import match_name


@dataclass(frozen=True)
class CustomerCard:
    """One customer; a person whose details were erased is shown by the short name alone."""

    id: int
    code: str
    name: str
    kind: str  # "shop" or "person"
    person: str | None
    phone: str | None
    email: str | None
    address: str | None
    note: str | None
    bars: int  # dispatched or given, less what came back


_SQL = """
SELECT c.id, c.code, c.kind, r.name, r.note, p.name AS person, p.phone, p.email, p.address,
       (SELECT coalesce(-sum(m.quantity), 0) FROM movement m WHERE m.customer_id = c.id) AS bars
FROM live_customer c
JOIN live_customer_revision r
  ON r.id = (SELECT max(id) FROM live_customer_revision WHERE customer_id = c.id)
LEFT JOIN personal_text p ON p.personal_id = r.personal_id
ORDER BY coalesce(r.name, p.name, c.code) COLLATE NOCASE
"""


def customer_list(rows: sqlite3.Connection) -> tuple[CustomerCard, ...]:
    """Every customer, by name."""
    return tuple(
        CustomerCard(
            id=row["id"],
            code=row["code"],
            name=row["name"] or row["person"] or row["code"],
            kind=row["kind"],
            person=row["person"],
            phone=row["phone"],
            email=row["email"],
            address=row["address"],
            note=row["note"],
            bars=row["bars"],
        )
        for row in rows.execute(_SQL)
    )


def customer_by_code(rows: sqlite3.Connection, text: str) -> CustomerCard:
    """The customer meant by a code, a name or the start of one. Raises BadInput with near matches."""
    cards = customer_list(rows)
    code = match_name(
        text,
        [(card.code, card.name) for card in cards],
        noun="customer",
        add="soapledger customer add NAME --shop",
    )
    return next(card for card in cards if card.code == code)
