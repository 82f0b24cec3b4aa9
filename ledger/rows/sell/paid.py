"""What was paid of sales, what selling cost, and what is owed."""

import json
import sqlite3
from collections import defaultdict
from collections.abc import Collection
from datetime import date
from typing import NamedTuple

from ledger.rows.opened import day
from ledger.units.words import FeeKind, PaidBy


class PaymentRow(NamedTuple):
    """What was paid of a sale, or paid back (below zero)."""

    id: int
    entry: int
    sale_id: int
    on: date
    way: PaidBy
    amount_minor: int
    float_minor: int | None
    note: str | None


def payments_of(rows: sqlite3.Connection, numbers: Collection[int]) -> dict[int, list[PaymentRow]]:
    """What was paid of some sales and counts, by the sale, by its days."""
    found = rows.execute(
        'SELECT y.id, y.entry_id, y.sale_id, y."on", y.way, y.amount_minor, y.float_minor, y.note FROM json_each(?) w '
        'CROSS JOIN live_payment y ON y.sale_id = w.value ORDER BY y."on", y.id',
        (json.dumps(sorted({*numbers})),),
    )
    paid: dict[int, list[PaymentRow]] = {number: [] for number in numbers}
    for row in found:
        paid[row["sale_id"]].append(PaymentRow(*row)._replace(on=day(row["on"])))
    return paid


class FeeRow(NamedTuple):
    """What selling cost: of a sale, of an outlet, or of none."""

    id: int
    entry: int
    sale_id: int | None
    place_id: int | None
    customer_id: int | None
    on: date
    kind: FeeKind
    amount_minor: int
    note: str | None


def fees(rows: sqlite3.Connection, numbers: Collection[int] | None = None) -> list[FeeRow]:
    """What selling cost and counts, by its days; only that of some sales where told."""
    among = "" if numbers is None else "WHERE f.sale_id IN (SELECT value FROM json_each(?))"
    found = rows.execute(
        'SELECT f.id, f.entry_id, f.sale_id, f.place_id, f.customer_id, f."on", f.kind, f.amount_minor, f.note '
        f'FROM live_fee f {among} ORDER BY f."on", f.id',
        () if numbers is None else (json.dumps(sorted({*numbers})),),
    )
    return [FeeRow(*row)._replace(on=day(row["on"])) for row in found]


def against(rows: sqlite3.Connection, numbers: Collection[int]) -> dict[int, list[int]]:
    """The returns and credits that take from lines of some sales and count, by the sale."""
    found = rows.execute(
        "SELECT DISTINCT n.sale_id, t.sale_id FROM json_each(?) w CROSS JOIN live_sale_line n ON n.sale_id = w.value "
        "JOIN live_sale_line t ON t.of_line_id = n.id ORDER BY n.sale_id, t.sale_id",
        (json.dumps(sorted({*numbers})),),
    )
    takers: dict[int, list[int]] = {number: [] for number in numbers}
    for sale, taker in found:
        takers[sale].append(taker)
    return takers


class Balance(NamedTuple):
    """What a sale came to with what took from it; lines whose amount was never told are left out and counted."""

    bars: int
    back: int  # bars of it that came back
    amount_minor: int
    taken_back_minor: int  # by returns and credits
    tax_minor: int  # within the amount less what was taken back
    paid_minor: int
    untold: int
    kept_minor: int = 0  # by a shop as its commission, less what it gave back

    @property
    def owed_minor(self) -> int:
        """What is still to be paid; below zero: to be paid back."""
        return self.amount_minor - self.taken_back_minor - self.kept_minor - self.paid_minor


def balances(rows: sqlite3.Connection, numbers: Collection[int]) -> dict[int, Balance]:
    """How some sales stand, each with the returns and credits against it, in a few statements for all."""
    takers = against(rows, numbers)
    every = {*numbers, *(one for ones in takers.values() for one in ones)}
    sums = {
        row[0]: row[1:]
        for row in rows.execute(
            "SELECT n.sale_id, sum(n.bars), coalesce(sum(n.gross_minor - n.reduction_minor), 0), "
            "coalesce(sum(n.tax_minor), 0), sum(n.gross_minor IS NULL) "
            "FROM json_each(?) w CROSS JOIN live_sale_line n ON n.sale_id = w.value GROUP BY n.sale_id",
            (json.dumps(sorted(every)),),
        )
    }
    paid: defaultdict[int, int] = defaultdict(int)
    for number, amount in rows.execute(
        "SELECT y.sale_id, sum(y.amount_minor) FROM json_each(?) w CROSS JOIN live_payment y ON y.sale_id = w.value "
        "GROUP BY y.sale_id",
        (json.dumps(sorted(every)),),
    ):
        paid[number] = amount
    kept: defaultdict[int, int] = defaultdict(int)
    for one in fees(rows, every):
        if one.kind == "commission" and one.sale_id is not None and one.customer_id is not None:
            kept[one.sale_id] += one.amount_minor
    none = (0, 0, 0, 0)
    found = {}
    for number in numbers:
        bars, amount, tax, untold = sums.get(number, none)
        taken = [sums.get(one, none) for one in takers[number]]
        found[number] = Balance(
            bars=bars,
            back=-sum(one[0] for one in taken),
            amount_minor=amount,
            taken_back_minor=-sum(one[1] for one in taken),
            tax_minor=tax + sum(one[2] for one in taken),
            paid_minor=paid[number] + sum(paid[one] for one in takers[number]),
            untold=untold,
            kept_minor=kept[number] + sum(kept[one] for one in takers[number]),
        )
    return found


def followed(rows: sqlite3.Connection, entry: int) -> list[int]:
    """The sales that an entry booked of which something was paid, returned or credited later, and counts."""
    found = rows.execute(
        """
        SELECT s.id FROM sale s WHERE s.entry_id = ?1 AND s.kind = 'sale' AND (
          EXISTS (SELECT 1 FROM live_payment y WHERE y.sale_id = s.id AND y.entry_id <> ?1)
          OR EXISTS (SELECT 1 FROM sale_line n JOIN live_sale_line t ON t.of_line_id = n.id WHERE n.sale_id = s.id))
        ORDER BY s.id
        """,
        (entry,),
    )
    return [row[0] for row in found]
