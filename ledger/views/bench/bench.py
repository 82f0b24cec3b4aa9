"""What was ticked, weighed and read of a batch so far, with readings that were corrected left out."""

import json
import sqlite3
from collections import defaultdict
from collections.abc import Collection, Iterable

from ledger.domain.bench.mass_balance import MassBalance
from ledger.domain.bench.steps import Step, steps
from ledger.domain.tools.limits import LineRead, Read
from ledger.rows.batch import BatchRow, plan_lines
from ledger.rows.lot import lot_by_id
from ledger.rows.opened import day
from ledger.rows.reading import _CURRENT, cooked_off, current_readings


def steps_of(batch: BatchRow) -> tuple[Step, ...]:
    """What is ticked and read at the bench for a batch, lettered in the order of work."""
    return steps(batch.process, makes_lye=batch.part_of is None, gives_bars=batch.soap)


def readings_of(rows: sqlite3.Connection, batches: Collection[int]) -> dict[int, list[sqlite3.Row]]:
    """Likewise of several batches, by the batch, in one statement."""
    found: dict[int, list[sqlite3.Row]] = {batch: [] for batch in batches}
    for row in rows.execute(_CURRENT, (json.dumps(list(found)),)):
        found[row["batch_id"]].append(row)
    return found


def read_of_the_bars(rows: sqlite3.Connection, batch: BatchRow, what: str) -> list[sqlite3.Row]:
    """The readings of one kind that were taken of the bars and not of the dough, by their days.

    They are of the day of the cut or later, and were booked after the cut: on the day of the cut itself the order of
    the entries decides. A correction stands where the first of the readings it corrects was booked.
    """
    cut = rows.execute("SELECT entry_id FROM live_lot WHERE id = ?", (batch.yield_lot_id,)).fetchone()
    if cut is None or batch.yielded_on is None:
        return []
    every = {row["id"]: row for row in rows.execute("SELECT * FROM live_reading WHERE batch_id = ?", (batch.id,))}
    found = []
    for one in current_readings(rows, batch.id):
        first = one
        while first["corrects"] in every:
            first = every[first["corrects"]]
        if one["what"] == what and day(one["on"]) >= batch.yielded_on and first["entry_id"] > cut["entry_id"]:
            found.append(one)
    return sorted(found, key=lambda one: (one["on"], one["id"]))


def read_so_far(rows: sqlite3.Connection, batch: BatchRow) -> Read:
    """Everything that a recipe sets limits for, as it stands."""
    figures: dict[str, list[int]] = defaultdict(list)
    clocks, bars = {}, []
    for one in current_readings(rows, batch.id):
        if one["value"] is not None:
            figures[one["what"]].append(one["value"])
            if one["what"] == "bar weight" and batch.yielded_on and one["on"] == batch.yielded_on.isoformat():
                bars.append(one["value"])
        if one["at"]:
            clocks[one["what"]] = one["at"]
    balance = mass_balance(rows, batch)
    return Read(
        lines=[
            LineRead(line.number, line.material, line.used, line.low, line.high, line.left_out)
            for line in plan_lines(rows, batch.id)
            if line.logged and line.role != "packaging"
        ],
        figures=figures,
        clocks=clocks,
        bars_mg=bars,
        loss_ppm=balance.loss_ppm,
        loss_mg=balance.loss_mg or 0,
    )


def mass_in(rows: sqlite3.Connection, batch_id: int) -> int:
    """Everything weighed into a batch, in mg; packaging and bars are counted, not weighed."""
    return masses_in(rows, [batch_id])[batch_id]


def masses_in(rows: sqlite3.Connection, batches: Collection[int]) -> dict[int, int]:
    """Likewise into several batches, by the batch, in one statement."""
    found = rows.execute(
        "SELECT v.batch_id, -sum(v.quantity) FROM json_each(?) w CROSS JOIN movement v ON v.batch_id = w.value "
        "JOIN lot l ON l.id = v.lot_id JOIN material m ON m.id = l.material_id "
        "WHERE v.kind = 'consumed' AND m.kind NOT IN ('packaging', 'soap') GROUP BY v.batch_id",
        (json.dumps(list(batches)),),
    )
    return dict.fromkeys(batches, 0) | {row[0]: row[1] for row in found}


def lost_in_the_pot(readings: Iterable[sqlite3.Row]) -> int | None:
    """Likewise by the readings that count."""
    read = {one["what"]: one["value"] for one in readings}
    before, after = read.get("pot before cook"), read.get("pot after cook")
    return before - after if before is not None and after is not None else None


def mass_balance(rows: sqlite3.Connection, batch: BatchRow) -> MassBalance:
    """Mass in against mass out, as far as it was weighed."""
    read = {one["what"]: one["value"] for one in current_readings(rows, batch.id) if one["unit"] == "mg"}
    out = None
    if batch.yield_lot_id is not None:
        out = lot_by_id(rows, batch.yield_lot_id).mass_mg if batch.soap else batch.made
    offcuts = rows.execute(
        "SELECT coalesce(sum(v.quantity), 0) FROM live_movement v JOIN live_lot l ON l.id = v.lot_id "
        "WHERE v.batch_id = ? AND v.kind = 'yielded' AND l.material_id <> ?",
        (batch.id, batch.material_id),
    ).fetchone()[0]
    return MassBalance(
        put_in_mg=mass_in(rows, batch.id),
        cooked_off_mg=cooked_off(rows, batch.id),
        poured_mg=read.get("poured weight"),
        unmoulded_mg=read.get("unmoulded weight"),
        out_mg=out,
        offcuts_mg=offcuts,
        waste_mg=read.get("waste at the cut", 0) + read.get("spent solids", 0),
    )
