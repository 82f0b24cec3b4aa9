"""Everything known of one lot: where it came from, what was decided, where it went."""

import sqlite3
from dataclasses import dataclass
from datetime import date

from ledger.domain.lye.pot import Figures
from ledger.rows.lot import STILL_MEANT, LotRow, find_lot, whereabouts
from ledger.rows.material import material_by_id
from ledger.rows.opened import day
from ledger.units.words import Verdict
from ledger.views.material.figures import figures_of


@dataclass(frozen=True)
class LotMovement:
    """One thing that happened to a lot; mg or pieces."""

    on: date
    what: str
    quantity: int
    place: str
    batch: str | None
    customer: str | None
    note: str | None
    entry: int


@dataclass(frozen=True)
class LotDecision:
    """One decision about a lot."""

    on: date
    verdict: Verdict
    by: str
    reason: str | None
    entry: int


@dataclass(frozen=True)
class Paper:
    """One attached paper."""

    name: str
    kind: str
    sha256: str


@dataclass(frozen=True)
class LotCard:
    """One lot, whole; `planned` names the planned batches it is set aside for, with how much."""

    lot: LotRow
    note_number: str | None
    here: tuple[tuple[str, int], ...]
    planned: tuple[tuple[str, int], ...]
    movements: tuple[LotMovement, ...]
    decisions: tuple[LotDecision, ...]
    papers: tuple[Paper, ...]
    figures: Figures  # what the lye goes by: its own, else its material's


def lot_card(rows: sqlite3.Connection, code: str) -> LotCard:
    """One lot by its code; raises like `find_lot`."""
    lot = find_lot(rows, code)
    note = rows.execute(
        "SELECT d.note_number FROM lot l JOIN delivery d ON d.id = l.delivery_id WHERE l.id = ?", (lot.id,)
    ).fetchone()
    movements = rows.execute(
        """
        SELECT v."on", v.kind, v.quantity, p.name AS place, b.code AS batch, v.note, v.entry_id, c.code AS customer
        FROM live_movement v JOIN place p ON p.id = v.place_id
        LEFT JOIN batch b ON b.id = v.batch_id LEFT JOIN customer c ON c.id = v.customer_id
        WHERE v.lot_id = ? ORDER BY v."on", v.id
        """,
        (lot.id,),
    )
    decisions = rows.execute(
        'SELECT "on", verdict, by, reason, entry_id FROM live_decision WHERE lot_id = ? ORDER BY id',
        (lot.id,),
    )
    planned = rows.execute(
        "SELECT b.code, sum(p.target) AS target FROM live_plan_line p JOIN batch b ON b.id = p.batch_id "
        f"WHERE p.lot_id = ? AND {STILL_MEANT} GROUP BY b.id ORDER BY b.id",
        (lot.id,),
    )
    papers = rows.execute("SELECT name, kind, digest FROM live_attachment WHERE lot_id = ? ORDER BY id", (lot.id,))
    return LotCard(
        lot=lot,
        note_number=note[0] if note else None,
        here=tuple((place.name, held) for place, held in whereabouts(rows, lot.id)),
        planned=tuple((row["code"], row["target"]) for row in planned),
        movements=tuple(
            LotMovement(
                on=day(row["on"]),
                what=row["kind"],
                quantity=row["quantity"],
                place=row["place"],
                batch=row["batch"],
                customer=row["customer"],
                note=row["note"],
                entry=row["entry_id"],
            )
            for row in movements
        ),
        decisions=tuple(
            LotDecision(day(row["on"]), row["verdict"], row["by"], row["reason"], row["entry_id"]) for row in decisions
        ),
        papers=tuple(Paper(row["name"], row["kind"], row["digest"]) for row in papers),
        figures=figures_of(material_by_id(rows, lot.material_id), lot),
    )
