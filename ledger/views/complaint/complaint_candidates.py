"""Which batches a complaint without a code may be about: the bars that could have been bought there by then."""

from dataclasses import dataclass
from datetime import date

from ledger.rows.complaint import ComplaintCard
from ledger.rows.opened import Rows, day


@dataclass(frozen=True)
class CandidateBatch:
    """Bars of one batch that could have been bought: how many left there and when, and how many stood there still."""

    code: str
    product: str
    bars: int
    first_on: date | None
    last_on: date | None
    standing: int


_SQL = """
SELECT l.code, r.name AS product,
  -sum(CASE WHEN v.kind IN ('sold', 'dispatched', 'given') THEN v.quantity ELSE 0 END) AS bars,
  min(CASE WHEN v.kind IN ('sold', 'dispatched', 'given') THEN v."on" END) AS first_on,
  max(CASE WHEN v.kind IN ('sold', 'dispatched', 'given') THEN v."on" END) AS last_on,
  sum(CASE WHEN p.kind = 'stall' THEN v.quantity ELSE 0 END) AS standing
FROM live_movement v JOIN live_lot l ON l.id = v.lot_id JOIN material m ON m.id = l.material_id
JOIN place p ON p.id = v.place_id
JOIN live_material_revision r ON r.id = (
  SELECT max(id) FROM live_material_revision WHERE material_id = l.material_id)
WHERE m.kind = 'soap' AND v."on" <= :until
  AND (:place IS NULL OR v.place_id = :place) AND (:customer IS NULL OR v.customer_id = :customer)
GROUP BY l.id HAVING bars > 0 OR standing > 0 ORDER BY last_on DESC, l.id
"""


def candidate_batches(rows: Rows, complaint: ComplaintCard) -> tuple[CandidateBatch, ...]:
    """The batches it may be about, up to the day it was bought or else reported, the latest supplied first.

    Of a stall: bars sold there, or standing there that day and not counted yet. Of a customer: bars sent or
    given, those that came back later included. Where neither is known: every bar supplied. None once its batch
    is named.
    """
    if complaint.batch_code:
        return ()
    found = rows.execute(
        _SQL,
        {
            "until": (complaint.bought_on or complaint.on).isoformat(),
            "place": complaint.place_id,
            "customer": complaint.customer_id,
        },
    )
    return tuple(
        CandidateBatch(
            code=row["code"],
            product=row["product"],
            bars=row["bars"],
            first_on=day(row["first_on"]) if row["first_on"] else None,
            last_on=day(row["last_on"]) if row["last_on"] else None,
            standing=row["standing"],
        )
        for row in found
    )
