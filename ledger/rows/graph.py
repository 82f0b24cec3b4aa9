"""The graph of lots and batches as the movements tell it."""

import sqlite3

from ledger.domain.stock.graph import Graph


def ledger_graph(rows: sqlite3.Connection) -> Graph:
    """Every edge that still holds: a batch and a lot whose movements do not cancel."""
    edges = rows.execute(
        """
        SELECT batch_id, lot_id,
               sum(CASE kind WHEN 'consumed' THEN quantity ELSE 0 END) AS consumed,
               sum(CASE kind WHEN 'yielded' THEN quantity ELSE 0 END) AS yielded
        FROM movement WHERE batch_id IS NOT NULL GROUP BY batch_id, lot_id ORDER BY batch_id, lot_id
        """
    ).fetchall()
    return Graph(
        consumed=[(row["lot_id"], row["batch_id"]) for row in edges if row["consumed"]],
        yielded=[(row["batch_id"], row["lot_id"]) for row in edges if row["yielded"]],
    )
