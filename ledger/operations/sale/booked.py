"""A sale is written: its lines with the movements they go with, what was paid, what selling cost."""

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from ledger.storage.transaction import Transaction
from ledger.units.words import FeeKind, LineKind, PaidBy, SaleKind


class SoldBars(NamedTuple):
    """Bars of one batch on a sale, with the movement by which they went or, of a return, came.

    `gross_minor` is the price of all of them before the reduction, any tax within; None where it was never told. Of a
    return or a credit bars and amounts are below zero, and `of_line_id` names the line they take from.
    """

    lot_id: int
    bars: int
    movement_id: int | None
    gross_minor: int | None = None
    reduction_minor: int = 0
    tax_ppm: int | None = None
    tax_minor: int | None = None
    of_line_id: int | None = None
    words: str | None = None


class SoldElse(NamedTuple):
    """What else stands on a sale: goods that are not in the ledger, a difference, carriage."""

    kind: LineKind
    gross_minor: int
    words: str | None = None
    bars: int = 0
    reduction_minor: int = 0
    tax_ppm: int | None = None
    tax_minor: int | None = None
    of_line_id: int | None = None


class Paid(NamedTuple):
    """What was paid of a sale, or paid back (below zero)."""

    way: PaidBy
    amount_minor: int
    float_minor: int | None = None
    note: str | None = None


class Charged(NamedTuple):
    """What selling cost."""

    kind: FeeKind
    amount_minor: int
    note: str | None = None


class Outlets(NamedTuple):
    """Where and to whom something is sold, by row numbers."""

    place_id: int | None = None
    customer_id: int | None = None
    whom: str | None = None  # in her words, where it is no customer on the books


def book_sale(
    tx: Transaction,
    outlet: Outlets,
    lines: Sequence[SoldBars | SoldElse],
    *,
    on: date,
    kind: SaleKind = "sale",
    paid: Sequence[Paid] = (),
    charged: Sequence[Charged] = (),
    order_id: int | None = None,
    terms: str | None = None,
    pay_by: date | None = None,
) -> int:
    """Write one sale and return its number; the caller moves the bars first and hands their movements on."""
    head = {"on": on, "kind": kind, "order_id": order_id, "terms": terms, "pay_by": pay_by, **outlet._asdict()}
    (sale,) = tx.add_rows("sale", [head])
    add_lines(tx, sale, lines)
    add_payments(tx, sale, paid, on=on)
    if charged:
        where = {"sale_id": sale, "place_id": outlet.place_id, "customer_id": outlet.customer_id, "on": on}
        tx.add_rows("fee", [one._asdict() | where for one in charged])
    return sale


def add_lines(tx: Transaction, sale: int, lines: Sequence[SoldBars | SoldElse]) -> Sequence[int]:
    """Write lines of a sale, of this entry or of an earlier one; returns their numbers."""
    empty = {"lot_id": None, "movement_id": None}
    rows = [{"sale_id": sale, "kind": "bars", **empty, **one._asdict()} for one in lines]
    return tx.add_rows("sale_line", [{name: row[name] for name in sorted(row)} for row in rows])


def add_payments(tx: Transaction, sale: int, paid: Sequence[Paid], *, on: date) -> None:
    """Write what was paid of a sale, of this entry or of an earlier one."""
    tx.add_rows("payment", [{"sale_id": sale, "on": on, **one._asdict()} for one in paid])
