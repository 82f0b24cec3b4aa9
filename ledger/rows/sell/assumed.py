"""Bars whose batch was assumed, and what else they may be of, until somebody looked."""

import json
import sqlite3
from collections.abc import Collection
from datetime import date
from typing import NamedTuple

from ledger.domain.sell.assumed import together
from ledger.rows.opened import day
from ledger.units.words import Way

_OPEN = "NOT EXISTS (SELECT 1 FROM live_assumed_ticked t WHERE t.movement_id = a.movement_id)"


def open_pairs(rows: sqlite3.Connection, movements: Collection[int] | None = None) -> set[tuple[int, int]]:
    """Of every movement that was not ticked, or of some: the lot it is booked on with each it may as well be of."""
    among = "" if movements is None else "json_each(?) w CROSS JOIN "
    found = rows.execute(
        f"SELECT DISTINCT v.lot_id, a.lot_id FROM {among}live_assumed_batch a "
        f"{'' if movements is None else 'ON a.movement_id = w.value '}"
        f"JOIN movement v ON v.id = a.movement_id WHERE {_OPEN}",
        () if movements is None else (json.dumps(sorted({*movements})),),
    )
    return {(row[0], row[1]) for row in found}


def brought(rows: sqlite3.Connection, place_id: int) -> dict[int, list[int]]:
    """The movements that brought what stands at a place now, by the lot: those since nothing of it stood there."""
    found = rows.execute(
        "SELECT lot_id, id, quantity FROM movement WHERE place_id = :place AND lot_id IN "
        "(SELECT lot_id FROM movement WHERE place_id = :place GROUP BY lot_id HAVING sum(quantity) > 0) ORDER BY id",
        {"place": place_id},
    )
    held: dict[int, int] = {}
    came: dict[int, list[int]] = {}
    for lot, movement, quantity in found:
        held[lot] = held.get(lot, 0) + quantity
        if held[lot] <= 0:
            came[lot] = []
        elif quantity > 0:
            came.setdefault(lot, []).append(movement)
    return came


def may_be(rows: sqlite3.Connection, movements: Collection[int]) -> dict[int, tuple[str, ...]]:
    """The codes of the batches that some movements may as well be of, by the movement, until somebody looked."""
    found = rows.execute(
        "SELECT a.movement_id, l.code FROM json_each(?) w CROSS JOIN live_assumed_batch a ON a.movement_id = w.value "
        f"JOIN lot l ON l.id = a.lot_id WHERE {_OPEN} ORDER BY a.movement_id, a.lot_id",
        (json.dumps(sorted({*movements})),),
    )
    codes: dict[int, tuple[str, ...]] = {}
    for movement, code in found:
        codes[movement] = (*codes.get(movement, ()), code)
    return codes


class OpenAt(NamedTuple):
    """A movement at a place whose batch was assumed and not ticked."""

    movement: int
    on: date
    way: Way
    quantity: int
    note: str | None


def open_at(rows: sqlite3.Connection, place_id: int) -> list[OpenAt]:
    """Every movement at a place whose batch was assumed and not ticked, oldest first."""
    found = rows.execute(
        'SELECT v.id, v."on", v.kind, v.quantity, v.note FROM live_movement v '
        f"JOIN live_assumed_batch a ON a.movement_id = v.id WHERE v.place_id = ? AND {_OPEN} "
        'GROUP BY v.id ORDER BY v."on", v.id',
        (place_id,),
    )
    return [OpenAt(*row)._replace(on=day(row[1])) for row in found]


class MayBe(NamedTuple):
    """Bars booked on one lot that may as well be of another, one movement of them."""

    movement: int
    lot_id: int  # as booked
    may_be: int
    on: date
    way: Way
    bars: int
    place: str
    note: str | None


def may_be_of(rows: sqlite3.Connection, lots: Collection[int]) -> list[MayBe]:
    """Every movement not ticked whose bars may be of one of some lots, though it is booked on another, by its day."""
    found = rows.execute(
        'SELECT v.id, v.lot_id, a.lot_id, v."on", v.kind, abs(v.quantity), p.name, v.note '
        "FROM json_each(?) w CROSS JOIN live_assumed_batch a ON a.lot_id = w.value "
        "JOIN live_movement v ON v.id = a.movement_id JOIN place p ON p.id = v.place_id "
        f'WHERE {_OPEN} ORDER BY v."on", v.id, a.lot_id',
        (json.dumps(sorted({*lots})),),
    )
    return [MayBe(*row)._replace(on=day(row[3])) for row in found]


_TOUCHING = f"""
SELECT v.lot_id, a.lot_id FROM json_each(?1) w CROSS JOIN live_assumed_batch a ON a.lot_id = w.value
JOIN live_movement v ON v.id = a.movement_id WHERE {_OPEN}
UNION
SELECT v.lot_id, a.lot_id FROM json_each(?1) w CROSS JOIN movement v ON v.lot_id = w.value
CROSS JOIN live_assumed_batch a ON a.movement_id = v.id WHERE {_OPEN}
"""


def taken_for(rows: sqlite3.Connection, lots: Collection[int]) -> set[tuple[int, int]]:
    """The same pairs as of every movement, but those alone that lead from some lots on, at any remove."""
    found: set[tuple[int, int]] = set()
    known: set[int] = set()
    asked = {*lots}
    while asked:
        known |= asked
        found |= {(row[0], row[1]) for row in rows.execute(_TOUCHING, (json.dumps(sorted(asked)),))}
        asked = {lot for pair in found for lot in pair} - known
    return found


def taken_for_each_other(rows: sqlite3.Connection) -> tuple[tuple[str, ...], ...]:
    """The batches, by their codes, whose bars were taken for one another and not looked at since."""
    groups = {*together(open_pairs(rows)).values()}
    found = rows.execute(
        "SELECT l.id, l.code FROM json_each(?) w CROSS JOIN lot l ON l.id = w.value",
        (json.dumps(sorted({lot for group in groups for lot in group})),),
    )
    codes = {row[0]: row[1] for row in found}
    return tuple(sorted(tuple(codes[lot] for lot in sorted(group)) for group in groups))


def _others(rows: sqlite3.Connection, lot: int) -> str:
    """The batches that the bars of one were taken for or for it, by their codes."""
    others = {one for pair in taken_for(rows, [lot]) for one in pair} - {lot}
    found = rows.execute("SELECT code FROM lot WHERE id IN (SELECT value FROM json_each(?))", (json.dumps([*others]),))
    return " or ".join(sorted(row[0] for row in found))


def went_as(rows: sqlite3.Connection, lot: int) -> str:
    """What to do with bars of a lot that by the books never went, where they may have gone as another; else nothing."""
    codes = _others(rows, lot)
    return f" Which batch went was assumed: by the books it went as {codes}; book it as that." if codes else ""


def booked_as(rows: sqlite3.Connection, lot: int) -> str:
    """What to do where more bars of a lot are at hand than by the books, since another went for it; else nothing."""
    codes = _others(rows, lot)
    return (
        f" Which batch went to a stall was assumed, so some may be booked as {codes}: count them with soapledger lot "
        "count."
        if codes
        else ""
    )
