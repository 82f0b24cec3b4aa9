"""Suppliers and customers, with what is known of them."""

import json
import sqlite3
from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from typing import Literal, NamedTuple

from ledger.rows.opened import day
from ledger.units.names import match_name, named
from ledger.units.signs import folded
from ledger.units.words import CustomerKind, Way


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


class Contact(NamedTuple):
    """How to reach one customer."""

    id: int
    name: str
    kind: CustomerKind
    person: str | None
    phone: str | None
    email: str | None
    address: str | None


def contacts(rows: sqlite3.Connection, numbers: Sequence[int]) -> dict[int, Contact]:
    """How to reach some customers, by their row numbers, in one statement."""
    found = rows.execute(
        """
        SELECT c.id, coalesce(r.name, p.name, c.code) AS name, c.kind, p.name AS person, p.phone, p.email, p.address
        FROM json_each(?) w CROSS JOIN live_customer c ON c.id = w.value
        JOIN live_customer_revision r
          ON r.id = (SELECT max(id) FROM live_customer_revision WHERE customer_id = c.id)
        LEFT JOIN personal_text p ON p.personal_id = r.personal_id
        """,
        (json.dumps(list(numbers)),),
    )
    return {row["id"]: Contact(*row) for row in found}


def customer_by_code(rows: sqlite3.Connection, text: str) -> CustomerCard:
    """The customer meant by a code, a name or the start of one. Raises BadInput with near matches."""
    code = match_name(
        text,
        [(row["code"], row["name"]) for row in rows.execute(_NAMES)],
        noun="customer",
        add="soapledger customer add NAME with --shop or --person",
    )
    return customer_list(rows, code=code)[0]


class DetailsHeld(NamedTuple):
    """Whose personal details are kept."""

    code: str
    name: str
    ids: tuple[int, ...]  # of the customers or suppliers that they are, taken back or not


def details_held(
    rows: sqlite3.Connection, text: str, noun: Literal["customer", "supplier"] = "customer"
) -> DetailsHeld:
    """What the file holds of one customer or supplier, in entries taken back too, since those keep their rows.

    One taken back is found by short name or name, and goes along with one who has either. Raises BadInput.
    """
    held = rows.execute(
        f"""
        SELECT c.id, c.code, coalesce(r.name, p.name, c.code) AS name,
               EXISTS (SELECT 1 FROM live_{noun} l WHERE l.id = c.id) AS counts
        FROM {noun}_revision r JOIN {noun} c ON c.id = r.{noun}_id
        LEFT JOIN personal_text p ON p.personal_id = r.personal_id ORDER BY r.id
        """
    ).fetchall()
    wanted = folded(text.strip())
    cards = customer_list(rows) if noun == "customer" else supplier_list(rows)
    gone = [row for row in held if not row["counts"]]
    named = [row for row in gone if wanted in (row["code"], folded(row["name"]))]
    if named and wanted not in {folded(word) for card in cards for word in (card.code, card.name)}:
        code, name, own = named[0]["code"], named[0]["name"], named
    else:
        card = customer_by_code(rows, text) if noun == "customer" else supplier_by_code(rows, text)
        code, name, own = card.code, card.name, [row for row in held if row["id"] == card.id]
    words = {code, folded(name), *(folded(row["name"]) for row in own)}
    own += [row for row in gone if row not in own and words & {row["code"], folded(row["name"])}]
    return DetailsHeld(code, name, tuple(dict.fromkeys(row["id"] for row in own)))


class Details(NamedTuple):
    """One row of personal details, and the customer, supplier or complaint that it is of."""

    id: int
    entry: int
    noun: Literal["customer", "supplier", "complaint"]
    number: int
    code: str
    name: str | None
    phone: str | None
    email: str | None
    address: str | None
    health: str | None


def every_details(rows: sqlite3.Connection) -> tuple[Details, ...]:
    """The personal details of everyone, in entries taken back too."""
    found = rows.execute(
        """
        SELECT p.id, p.entry_id, w.noun, w.number, w.code, t.name, t.phone, t.email, t.address, t.health
        FROM personal_text t JOIN personal p ON p.id = t.personal_id JOIN (
          SELECT r.personal_id, 'customer' AS noun, c.id AS number, c.code
          FROM customer_revision r JOIN customer c ON c.id = r.customer_id
          UNION ALL SELECT r.personal_id, 'supplier', s.id, s.code
          FROM supplier_revision r JOIN supplier s ON s.id = r.supplier_id
          UNION ALL SELECT personal_id, 'complaint', id, CAST(id AS TEXT) FROM complaint) w ON w.personal_id = p.id
        ORDER BY p.id
        """
    )
    return tuple(Details(*row) for row in found)


class Text(NamedTuple):
    """One free text as it stands in the ledger."""

    entry: int
    table: str
    row: int
    column: str
    text: str


def texts(rows: sqlite3.Connection, tables: Mapping[str, Sequence[str]]) -> Iterator[Text]:
    """Every text of these columns, whether or not it still counts."""
    for table, columns in tables.items():
        entry = "id" if table == "entry" else "entry_id"
        for column in columns:
            query = f'SELECT {entry}, id, "{column}" FROM {table} WHERE "{column}" IS NOT NULL ORDER BY id'
            for number, row, text in rows.execute(query):
                yield Text(number, table, row, column, text)


def texts_of(rows: sqlite3.Connection, noun: Literal["customer", "supplier"], ids: Sequence[int]) -> Iterator[Text]:
    """What was written of some customers or suppliers, whether or not it still counts."""
    for column in ("name", "note"):
        yield from _texts(rows, f"{noun}_revision", column, f"{noun}_id", ids)


def texts_to(rows: sqlite3.Connection, ids: Sequence[int]) -> Iterator[Text]:
    """What was noted of bars promised to some customers, sent, given or returned, but for what an undo notes itself."""
    undos = {row[0] for row in rows.execute("SELECT id FROM entry WHERE reverses IS NOT NULL")}
    for table in ("movement", "customer_order"):
        yield from (one for one in _texts(rows, table, "note", "customer_id", ids) if one.entry not in undos)


def _texts(rows: sqlite3.Connection, table: str, column: str, key: str, ids: Sequence[int]) -> Iterator[Text]:
    query = (
        f"SELECT entry_id, id, {column} FROM {table} WHERE {column} IS NOT NULL "
        f"AND {key} IN (SELECT value FROM json_each(?)) ORDER BY id"
    )
    for entry, row, text in rows.execute(query, (json.dumps(list(ids)),)):
        yield Text(entry, table, row, column, text)


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
    return named(text, supplier_list(rows), noun="supplier", add="soapledger supplier add NAME")


class Had(NamedTuple):
    """Bars that went to a customer on one day; below zero: they came back."""

    customer_id: int
    on: date
    what: Way
    batch: str
    bars: int
    money_minor: int | None
    entry: int


def had_by_customers(rows: sqlite3.Connection) -> tuple[Had, ...]:
    """Everything that went to a customer or came back from one and counts, by its days."""
    found = rows.execute(
        'SELECT v.customer_id, v."on", v.kind, l.code, -v.quantity, coalesce(v.money_minor, (SELECT '
        "sum(n.gross_minor - n.reduction_minor) FROM live_sale_line n WHERE n.movement_id = v.id)), v.entry_id "
        'FROM live_movement v JOIN lot l ON l.id = v.lot_id WHERE v.customer_id IS NOT NULL ORDER BY v."on", v.id'
    )
    return tuple(Had(row[0], day(row[1]), *row[2:]) for row in found)
