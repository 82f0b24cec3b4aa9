"""What was agreed with customers, and where bars that are hers stand at a shop."""

import json
import sqlite3
from collections.abc import Collection
from datetime import date
from typing import NamedTuple

from ledger.rows.opened import day


class Terms(NamedTuple):
    """What was agreed with a customer from a day on."""

    customer_id: int
    on: date
    consignment: bool  # bars stay hers until the shop's count
    commission_ppm: int | None  # of the price, kept by the shop
    reduction_ppm: int | None  # what its price is less
    pay_days: int | None
    country: str | None


def terms_on(rows: sqlite3.Connection, on: date, customers: Collection[int] | None = None) -> dict[int, Terms]:
    """What holds on a day, by the customer; of some or of all who agreed anything by then."""
    among = "" if customers is None else "AND customer_id IN (SELECT value FROM json_each(:who))"
    found = rows.execute(
        'SELECT customer_id, "on", consignment, commission_ppm, reduction_ppm, pay_days, country '
        f'FROM live_customer_terms WHERE "on" <= :on {among} ORDER BY "on", id',
        {"on": on.isoformat(), "who": json.dumps(sorted({*customers})) if customers is not None else None},
    )
    return {row[0]: Terms(row[0], day(row[1]), bool(row[2]), *row[3:]) for row in found}


def shop_places(rows: sqlite3.Connection) -> dict[int, int]:
    """The places at shops on sale or return, where bars stand that are hers, by the customer."""
    found = rows.execute("SELECT customer_id, id FROM live_place WHERE customer_id IS NOT NULL ORDER BY id")
    return {row[0]: row[1] for row in found}


class StandingThere(NamedTuple):
    """Bars of one lot that are hers at a shop, and the last day some were brought there."""

    customer_id: int
    lot_id: int
    bars: int
    out_on: date


def standing_at_shops(rows: sqlite3.Connection, customer_id: int | None = None) -> list[StandingThere]:
    """What stands at shops on sale or return, the oldest lots first; at one or at all."""
    found = rows.execute(
        """
        SELECT p.customer_id, v.lot_id, sum(v.quantity) AS bars, max(CASE WHEN v.quantity > 0 THEN v."on" END)
        FROM live_place p CROSS JOIN movement v ON v.place_id = p.id JOIN lot l ON l.id = v.lot_id
        WHERE p.customer_id IS NOT NULL AND (:customer IS NULL OR p.customer_id = :customer)
        GROUP BY p.id, v.lot_id HAVING bars > 0 ORDER BY p.customer_id, l."on", v.lot_id
        """,
        {"customer": customer_id},
    )
    return [StandingThere(row[0], row[1], row[2], day(row[3])) for row in found]


def assumed_at(rows: sqlite3.Connection, place_id: int) -> set[int]:
    """The lots that bars gone from a place were taken for, or may be of, and that nobody has looked at since.

    Where nothing of the product was left there at some time, what was assumed before it is settled: all of it is gone.
    """
    found = rows.execute(
        "SELECT v.id, v.lot_id, v.quantity, n.recipe_id FROM movement v JOIN lot l ON l.id = v.lot_id "
        "LEFT JOIN batch b ON b.id = l.batch_id LEFT JOIN recipe_version n ON n.id = b.recipe_version_id "
        "WHERE v.place_id = ? ORDER BY v.id",
        (place_id,),
    ).fetchall()
    held: dict[int | None, int] = {}
    empty: dict[int | None, int] = {}  # the movement after which nothing of a product was left
    for movement, _, quantity, recipe in found:
        held[recipe] = held.get(recipe, 0) + quantity
        if not held[recipe]:
            empty[recipe] = movement
    since = {movement for movement, _, _, recipe in found if movement > empty.get(recipe, 0)}
    assumed = rows.execute(
        "SELECT a.movement_id, v.lot_id, a.lot_id FROM live_assumed_batch a "
        "JOIN live_movement v ON v.id = a.movement_id WHERE v.place_id = ? "
        "AND NOT EXISTS (SELECT 1 FROM live_assumed_ticked t WHERE t.movement_id = v.id)",
        (place_id,),
    )
    return {lot for movement, *lots in assumed if movement in since for lot in lots}


class BroughtThere(NamedTuple):
    """Bars of one lot that an entry took to a shop on sale or return."""

    customer_id: int
    lot_id: int
    bars: int
    on: date


def brought_by(rows: sqlite3.Connection, entry: int) -> list[BroughtThere]:
    """What an entry that counts took to a shop on sale or return, in the order it was written."""
    found = rows.execute(
        'SELECT p.customer_id, v.lot_id, v.quantity, v."on" FROM live_movement v JOIN place p '
        "ON p.id = v.place_id WHERE v.entry_id = ? AND v.kind = 'moved' AND v.quantity > 0 "
        "AND p.customer_id IS NOT NULL ORDER BY v.id",
        (entry,),
    )
    return [BroughtThere(row[0], row[1], row[2], day(row[3])) for row in found]


def note_with(rows: sqlite3.Connection, entry: int) -> str | None:
    """What was noted of the bars that an entry sent away."""
    row = rows.execute(
        "SELECT note FROM live_movement WHERE entry_id = ? AND note IS NOT NULL ORDER BY id LIMIT 1", (entry,)
    ).fetchone()
    return row and str(row[0])


def brought_since(rows: sqlite3.Connection, customer_id: int, moment: str, on: date) -> dict[int, dict[int, int]]:
    """What entries written since a UTC moment took to a shop on a day, by the entry and the lot."""
    found = rows.execute(
        # CROSS: from their place, which few have, not from all that was ever written
        "SELECT v.entry_id, v.lot_id, v.quantity FROM place p "
        'CROSS JOIN live_movement v ON v.place_id = p.id AND v."on" = :on '
        "CROSS JOIN entry e ON e.id = v.entry_id "
        "WHERE p.customer_id = :customer AND e.recorded_at >= :moment AND v.kind = 'moved' AND v.quantity > 0 "
        "ORDER BY v.id",
        {"on": on.isoformat(), "customer": customer_id, "moment": moment},
    )
    brought: dict[int, dict[int, int]] = {}
    for entry, lot, bars in found:
        brought.setdefault(entry, {})[lot] = bars
    return brought
