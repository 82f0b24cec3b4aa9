"""Lots: what they are, their status, and what is on hand where."""

import json
import sqlite3
from collections.abc import Collection
from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput, Refused
from ledger.rows.codes import KEYS, near_words, read_code
from ledger.rows.opened import day, maybe_day
from ledger.units.codes import (
    keys_kept,
    looks_like_batch_code,
    looks_like_lot_code,
    read_batch_code,
    read_lot_code,
    same_number,
)
from ledger.units.names import near
from ledger.units.words import MaterialKind, PlaceKind, in_pieces

NOBODY = "a supplier not known"  # of what is in a pot, where nobody knows from which delivery it came


class LotRow(NamedTuple):
    """One lot as it stands; quantities in mg, or pieces where `counted`."""

    id: int
    code: str
    material_id: int
    material_code: str
    material: str
    kind: MaterialKind
    inci: str | None
    on: date
    supplier_id: int | None
    supplier: str | None
    supplier_own: bool
    supplier_number: str | None
    batch_id: int | None
    batch_code: str | None
    best_before: date | None
    cost_minor: int | None
    sap_low_mg_per_kg: int | None  # the lot's own certificate, else None
    sap_high_mg_per_kg: int | None
    purity_ppm: int | None
    purity_high_ppm: int | None
    water_ppm: int | None
    certificate: str | None
    mass_mg: int | None
    status: str
    on_hand: int

    @property
    def counted(self) -> bool:
        """Whether it is counted in pieces."""
        return in_pieces(self.kind)

    @property
    def number_unknown(self) -> bool:
        """Whether a supplier's lot number was never learnt (her own growing has none to learn)."""
        return self.supplier_id is not None and self.supplier_number is None and not self.supplier_own

    def out_of_date(self, today: date) -> bool:
        """Whether it would be used but for its day, which has passed."""
        return self.status == "accepted" and self.best_before is not None and self.best_before < today


# :on NULL asks for the latest status; the latest decision taken up to a date is the status on it.
LOT_SQL = """
SELECT l.id, l.code, l.material_id, m.code AS material_code, mr.name AS material, m.kind, mr.inci,
       l."on", l.supplier_id, sr.name AS supplier, coalesce(s.own, 0) AS supplier_own, l.supplier_number,
       l.batch_id, b.code AS batch_code, l.best_before, l.cost_minor, l.sap_low_mg_per_kg,
       l.sap_high_mg_per_kg, l.purity_ppm, l.purity_high_ppm, l.water_ppm, l.certificate, l.mass_mg,
       coalesce((SELECT d.verdict FROM live_decision d WHERE d.lot_id = l.id
                 AND (:on IS NULL OR d."on" <= :on) ORDER BY d.id DESC LIMIT 1),
                CASE m.kind WHEN 'soap' THEN 'curing' ELSE 'quarantine' END) AS status,
       (SELECT coalesce(sum(v.quantity), 0) FROM movement v WHERE v.lot_id = l.id
        AND (:on IS NULL OR v."on" <= :on)) AS on_hand
FROM live_lot l
JOIN material m ON m.id = l.material_id
JOIN live_material_revision mr
  ON mr.id = (SELECT max(id) FROM live_material_revision WHERE material_id = m.id)
LEFT JOIN supplier s ON s.id = l.supplier_id
LEFT JOIN live_supplier_revision sr
  ON sr.id = (SELECT max(id) FROM live_supplier_revision WHERE supplier_id = s.id)
LEFT JOIN batch b ON b.id = l.batch_id
"""


def _lot(row: sqlite3.Row) -> LotRow:
    values = dict(row)
    values["on"] = day(row["on"])
    values["best_before"] = maybe_day(row["best_before"])
    values["supplier_own"] = bool(row["supplier_own"])
    return LotRow(**values)


def all_lots(rows: sqlite3.Connection) -> tuple[LotRow, ...]:
    """Every lot in the order it was booked."""
    return tuple(_lot(row) for row in rows.execute(LOT_SQL + " ORDER BY l.id", {"on": None}))


def lot_by_id(rows: sqlite3.Connection, lot_id: int, *, on: date | None = None) -> LotRow:
    """One lot by its row number."""
    return lots_by_id(rows, [lot_id], on=on)[lot_id]


def lots_by_id(rows: sqlite3.Connection, numbers: Collection[int], *, on: date | None = None) -> dict[int, LotRow]:
    """Several lots by their row numbers, in one statement."""
    query = LOT_SQL + " WHERE l.id IN (SELECT value FROM json_each(:numbers))"
    found = rows.execute(query, {"on": on and on.isoformat(), "numbers": json.dumps(sorted(numbers))})
    return {row["id"]: _lot(row) for row in found}


def lots_of(rows: sqlite3.Connection, material_id: int, *, on: date | None = None) -> tuple[LotRow, ...]:
    """Every lot of a material, in the order it was booked."""
    query = LOT_SQL + " WHERE l.material_id = :material ORDER BY l.id"
    return tuple(map(_lot, rows.execute(query, {"on": on and on.isoformat(), "material": material_id})))


def lots_without_a_number(rows: sqlite3.Connection, materials: Collection[int]) -> tuple[LotRow, ...]:
    """The lots of some materials that came from a supplier without the supplier's number for them."""
    query = LOT_SQL + (
        " WHERE l.supplier_number IS NULL AND l.supplier_id IS NOT NULL "
        "AND l.material_id IN (SELECT value FROM json_each(:materials)) ORDER BY l.id"
    )
    return tuple(map(_lot, rows.execute(query, {"on": None, "materials": json.dumps(sorted(materials))})))


def lots_numbered(rows: sqlite3.Connection, number: str) -> tuple[LotRow, ...]:
    """The lots that any supplier sent under a number, however it was written, in the order they were booked."""
    found = rows.execute(
        f"{LOT_SQL} WHERE l.supplier_id IN (SELECT id FROM supplier) AND l.supplier_number_key IN {KEYS} ORDER BY l.id",
        {"on": None, "keys": json.dumps(keys_kept(number))},
    )
    return tuple(_lot(row) for row in found if same_number(row["supplier_number"], number))


def find_lot(rows: sqlite3.Connection, text: str, *, on: date | None = None) -> LotRow:
    """The lot meant by one of our lot codes, or by the batch code for a batch's bars.

    Raises Refused for an unknown or mistyped batch code, BadInput for any other unknown code.
    """
    moment = on.isoformat() if on else None
    if looks_like_lot_code(text):
        code = read_code(rows, text, read_lot_code)
    elif looks_like_batch_code(text):
        code = read_code(rows, text, read_batch_code)
    else:
        known = [row[0] for row in rows.execute("SELECT code FROM live_lot")]
        close = near(text, known)
        hint = f" Did you mean {' or '.join(close)}?" if close else ""
        raise BadInput(f"'{text}' is not a lot code.{hint} See them all: soapledger stock --all")
    row = rows.execute(LOT_SQL + " WHERE l.code = :code", {"on": moment, "code": code}).fetchone()
    if row is not None:
        return _lot(row)
    if looks_like_batch_code(text):
        batch = rows.execute("SELECT 1 FROM live_batch WHERE code = ?", (code,)).fetchone()
        if batch:
            raise Refused(f"Batch {code} has no bars yet; book the cut: soapledger batch cut {code} BARS")
        raise Refused(f"There is no batch {code} here.{near_words(rows, code)} See them all: soapledger batch list")
    raise BadInput(f"There is no lot {code} here.{near_words(rows, code)} See them all: soapledger stock --all")


class PlaceRow(NamedTuple):
    """Where lots can be."""

    id: int
    code: str
    name: str
    kind: PlaceKind


def places(rows: sqlite3.Connection) -> tuple[PlaceRow, ...]:
    """Every place, in the order it was added; one at a shop goes by the name the shop has now."""
    found = rows.execute(
        """
        SELECT p.id, p.code, coalesce(r.name, t.name, p.name) AS name, p.kind FROM live_place p
        LEFT JOIN live_customer_revision r
          ON r.id = (SELECT max(id) FROM live_customer_revision WHERE customer_id = p.customer_id)
        LEFT JOIN personal_text t ON t.personal_id = r.personal_id ORDER BY p.id
        """
    )
    return tuple(PlaceRow(**dict(row)) for row in found)


def place_of_kind(rows: sqlite3.Connection, kind: PlaceKind) -> PlaceRow:
    """The one place of a kind that every ledger has: workshop, retained or returns."""
    return next(place for place in places(rows) if place.kind == kind)


def on_hand_at(rows: sqlite3.Connection, lot_id: int, place_id: int, *, on: date | None = None) -> int:
    """What is on hand of a lot at a place (up to a date when one is given)."""
    return held_at(rows, [lot_id], place_id, on=on)[lot_id]


def held_at(
    rows: sqlite3.Connection, lots: Collection[int], place_id: int, *, on: date | None = None
) -> dict[int, int]:
    """Likewise of several lots, by their row numbers."""
    found = rows.execute(
        "SELECT v.lot_id, sum(v.quantity) FROM json_each(?) w CROSS JOIN movement v ON v.lot_id = w.value "
        'WHERE v.place_id = ? AND v."on" <= coalesce(?, v."on") GROUP BY v.lot_id',
        (json.dumps(sorted({*lots})), place_id, on and on.isoformat()),
    )
    return dict.fromkeys(lots, 0) | {row[0]: row[1] for row in found}


def whereabouts(rows: sqlite3.Connection, lot_id: int) -> tuple[tuple[PlaceRow, int], ...]:
    """Every place that holds some of a lot now, with how much."""
    return where_lots_are(rows, [lot_id]).get(lot_id, ())


def where_lots_are(
    rows: sqlite3.Connection, lots: Collection[int] | None = None
) -> dict[int, tuple[tuple[PlaceRow, int], ...]]:
    """Likewise of several lots or of all, by their row numbers; those of which nothing is anywhere are left out."""
    among = "" if lots is None else "json_each(?) w CROSS JOIN "
    named = {place.id: place for place in places(rows)}
    found: dict[int, tuple[tuple[PlaceRow, int], ...]] = {}
    for row in rows.execute(
        f"SELECT v.lot_id, v.place_id, sum(v.quantity) FROM {among} movement v {'ON v.lot_id = w.value' * bool(among)} "
        "GROUP BY v.lot_id, v.place_id HAVING sum(v.quantity) <> 0 ORDER BY v.lot_id, v.place_id",
        () if lots is None else (json.dumps(sorted({*lots})),),
    ):
        found[row[0]] = (*found.get(row[0], ()), (named[row[1]], row[2]))
    return found


def planned_use(
    rows: sqlite3.Connection, lots: Collection[int] | None = None, *, but_batch: int | None = None
) -> dict[int, int]:
    """What open lines of planned batches mean to take from lots, or from all (mg or pieces), by their row numbers.

    Nothing is meant any more by a batch that was given up, or whose bars were passed bare or rejected.
    """
    among = "live_plan_line p" if lots is None else "json_each(?2) w CROSS JOIN live_plan_line p ON p.lot_id = w.value"
    found = rows.execute(
        f"SELECT p.lot_id, sum(p.target) FROM {among} "
        f"WHERE p.lot_id IS NOT NULL AND p.batch_id IS NOT ?1 AND {STILL_MEANT} GROUP BY p.lot_id",
        (but_batch,) if lots is None else (but_batch, json.dumps(sorted({*lots}))),
    )
    return {row[0]: row[1] for row in found}


class Available(NamedTuple):
    """An accepted lot with what can still be planned with."""

    lot: LotRow
    at_workshop: int
    free: int


def available(
    rows: sqlite3.Connection, material_id: int, *, on: date, but_batch: int | None = None
) -> tuple[Available, ...]:
    """The accepted lots of a material that hold something free and are not out of date, first to
    expire first (FEFO); lots without a date come last, oldest first. What `but_batch` itself means to
    take is free to it.
    """
    workshop = place_of_kind(rows, "workshop").id
    ever = [row[0] for row in rows.execute("SELECT id FROM lot WHERE material_id = ?", (material_id,))]
    # what is left first: of nearly all lots that ever came nothing is, and how they stand need not be read
    here = {lot: held for lot, held in held_at(rows, ever, workshop).items() if held > 0}
    now = {lot.id: lot.status for lot in lots_by_id(rows, here).values()}
    fit = [
        lot
        for lot in lots_by_id(rows, here, on=on).values()
        # accepted on that day, and no other decision since: what is planned is still to be weighed
        if {lot.status, now[lot.id]} == {"accepted"} and not (lot.best_before and lot.best_before < on) and lot.on <= on
    ]
    lots = [lot.id for lot in fit]
    then, planned = held_at(rows, lots, workshop, on=on), planned_use(rows, lots, but_batch=but_batch)
    held = [(lot, min(then[lot.id], here[lot.id])) for lot in fit]
    found = (Available(lot, there, there - planned.get(lot.id, 0)) for lot, there in held)
    fefo = sorted(found, key=lambda a: (a.lot.best_before or date.max, a.lot.on, a.lot.id))
    return tuple(one for one in fefo if one.free > 0)


# A condition on the plan line p: neither weighed nor left out, and its batch neither given up nor, for the
# wrapping, past packing (bars passed bare, or rejected).
STILL_MEANT = """
  NOT EXISTS (SELECT 1 FROM live_movement v WHERE v.plan_line_id = p.id)
  AND NOT EXISTS (SELECT 1 FROM live_reading g WHERE g.plan_line_id = p.id)
  AND NOT EXISTS (SELECT 1 FROM live_decision d WHERE d.batch_id = p.batch_id AND d.verdict = 'discarded')
  AND NOT EXISTS (SELECT 1 FROM live_decision d JOIN live_lot l ON l.id = d.lot_id
                  WHERE l.batch_id = p.batch_id AND d.verdict IN ('passed', 'rejected'))
"""


def set_aside_for(rows: sqlite3.Connection, lot_id: int) -> tuple[tuple[str, int], ...]:
    """The planned batches a lot is set aside for, with how much, in mg or pieces."""
    query = (
        "SELECT b.code, sum(p.target) FROM live_plan_line p JOIN batch b ON b.id = p.batch_id "
        f"WHERE p.lot_id = ? AND {STILL_MEANT} GROUP BY b.id ORDER BY b.id"
    )
    return tuple((row[0], row[1]) for row in rows.execute(query, (lot_id,)))
