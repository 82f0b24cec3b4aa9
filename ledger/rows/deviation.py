"""What lay outside a limit or went wrong in a batch, and what was decided about it."""

import sqlite3
from dataclasses import dataclass
from datetime import date

from ledger.rows.opened import day, maybe_day
from ledger.units.words import DeviationVerdict


@dataclass(frozen=True)
class Deviation:
    """One deviation, numbered within its batch, with the latest decision; none yet: it is open."""

    id: int
    number: int
    on: date
    subject: str
    found: str
    done: str | None
    verdict: DeviationVerdict | None
    decided_on: date | None
    by: str | None
    reason: str | None
    entry: int

    @property
    def open(self) -> bool:
        """Whether nobody has decided yet."""
        return self.verdict is None


def deviations(rows: sqlite3.Connection, batch_id: int) -> tuple[Deviation, ...]:
    """Every deviation of a batch, in the order they were found."""
    found = rows.execute(
        """
        SELECT v.id, v."on", v.subject, v.found, coalesce(d.done, v.done) AS done, d.verdict,
               d."on" AS decided_on, d.by, d.reason, v.entry_id AS entry
        FROM live_deviation v LEFT JOIN live_deviation_decision d
          ON d.id = (SELECT max(id) FROM live_deviation_decision WHERE deviation_id = v.id)
        WHERE v.batch_id = ? ORDER BY v.id
        """,
        (batch_id,),
    )
    return tuple(
        Deviation(**{**dict(row), "number": place, "on": day(row["on"]), "decided_on": maybe_day(row["decided_on"])})
        for place, row in enumerate(found, 1)
    )


def open_deviations(rows: sqlite3.Connection, batch_id: int) -> tuple[Deviation, ...]:
    """Those nobody has decided yet."""
    return tuple(one for one in deviations(rows, batch_id) if one.open)
