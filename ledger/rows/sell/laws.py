"""What must hold of sales in every ledger; `rows/laws.py` runs these with the others."""

import sqlite3
from collections.abc import Iterator

from ledger.domain.keep.finding import PUT_RIGHT, Finding


def _breach(words: str, entry: int, number: int, expected: str) -> Finding:
    return Finding(words, entry, "sale_line", f"line {number}", expected, PUT_RIGHT)


# What bars that were sold cannot have done, and all but what those that came back did.
_OTHER_KIND = """CASE s.kind WHEN 'return' THEN v.kind <> 'returned' WHEN 'credit' THEN 1
  ELSE v.kind IN ('given', 'wasted', 'consumed', 'yielded', 'received', 'moved', 'returned') END"""


def a_sale_goes_with_its_movements(rows: sqlite3.Connection) -> Iterator[Finding]:
    """Lines that name a movement have its lot and its bars; none is of bars given, used or thrown away."""
    query = f"""
        SELECT * FROM (
          SELECT n.sale_id, min(n.id), min(n.entry_id), l.code, sum(n.bars) AS bars, v.quantity, v.kind,
                 max(n.lot_id IS NOT v.lot_id) AS other_lot, max({_OTHER_KIND}) AS other_kind
          FROM live_sale_line n JOIN sale s ON s.id = n.sale_id JOIN movement v ON v.id = n.movement_id
          JOIN lot l ON l.id = v.lot_id GROUP BY n.movement_id)
        WHERE bars <> -quantity OR other_lot OR other_kind
    """
    for sale, line, entry, lot, bars, moved, kind, other_lot, other_kind in rows.execute(query):
        if other_lot:
            words = f"sale {sale} has bars of another batch than the {lot} that moved"
        elif other_kind:
            words = f"sale {sale} is of bars of batch {lot} that were {kind}"
        else:
            words = f"sale {sale} has {bars} bars of batch {lot}, and {-moved} moved"
        yield _breach(words, entry, line, "the bars that moved")


def nothing_is_taken_back_twice(rows: sqlite3.Connection) -> Iterator[Finding]:
    """Returns and credits take no more bars, money or tax from a line than it had, and of its own batch."""
    query = """
        SELECT n.sale_id, n.id, n.entry_id, n.bars, -sum(t.bars), n.gross_minor - n.reduction_minor,
               -sum(t.gross_minor - t.reduction_minor), coalesce(n.tax_minor, 0), -coalesce(sum(t.tax_minor), 0),
               max(t.lot_id IS NOT n.lot_id), max(t.bars > 0 OR coalesce(t.gross_minor, 0) > 0)
        FROM live_sale_line t JOIN sale_line n ON n.id = t.of_line_id GROUP BY n.id
    """
    for sale, line, entry, bars, back, had, taken, tax, tax_back, other_lot, added in rows.execute(query):
        at = f"from line {line} of sale {sale}"
        if other_lot:
            yield _breach(f"bars of another batch were taken {at}", entry, line, "bars of its own batch")
        if added:
            yield _breach(f"a return or a credit puts something onto line {line} of sale {sale}", entry, line, "less")
        if back > bars:
            yield _breach(f"{back} bars were taken back {at}, which had {bars}", entry, line, "no more than it had")
        if taken is not None and taken > (had or 0):
            words = f"{taken} was taken back {at}, which brought {had or 0}"
            yield _breach(words, entry, line, "no more than it brought")
        if tax_back > tax:
            yield _breach(f"{tax_back} of tax was taken back {at}, which had {tax}", entry, line, "no more than it had")


def a_return_has_something_to_take_from(rows: sqlite3.Connection) -> Iterator[Finding]:
    """A line of a sale takes from no other, and one of a credit always from a line of a sale."""
    query = """
        SELECT s.id, n.id, n.entry_id, s.kind FROM live_sale_line n JOIN sale s ON s.id = n.sale_id
        LEFT JOIN sale_line m ON m.id = n.of_line_id LEFT JOIN sale o ON o.id = m.sale_id
        WHERE (s.kind = 'sale' AND n.of_line_id IS NOT NULL) OR (s.kind = 'credit' AND n.of_line_id IS NULL)
           OR o.kind <> 'sale'
    """
    for sale, line, entry, kind in rows.execute(query):
        yield _breach(f"{kind} {sale} takes from what it may not", entry, line, "a line of a sale to take from")


SALE_LAWS = (
    a_sale_goes_with_its_movements,
    nothing_is_taken_back_twice,
    a_return_has_something_to_take_from,
)
