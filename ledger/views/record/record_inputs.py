"""What went into a batch, what was read of it and looked at, as its record shows it."""

import sqlite3

from ledger.domain.lye.weighed import LyeCheck
from ledger.domain.tools.bar_checks import kept_as_good
from ledger.domain.tools.limits import limit_of
from ledger.domain.tools.readings import ACIDITY, FIGURES, READINGS
from ledger.rows.batch import BatchRow, plan_lines, recipe_of
from ledger.rows.lot import lot_by_id
from ledger.rows.opened import day
from ledger.rows.reading import current_readings
from ledger.units.quantity import show_mass
from ledger.units.words import ReadingUnit, Units
from ledger.views.bench.bench import steps_of
from ledger.views.record.batch_record import FinishedLook, RecordedReading, UsedMaterial


def materials(rows: sqlite3.Connection, batch: BatchRow, check: LyeCheck) -> tuple[UsedMaterial, ...]:
    """Every lot that went in, by line, with its papers and who weighed it."""
    lines = {line.id: line for line in plan_lines(rows, batch.id)}
    found = []
    for row in rows.execute(
        """
        SELECT v.lot_id, v.plan_line_id, -sum(v.quantity) AS used, max(e.who) AS who, max(e.recorded_at) AS at
        FROM movement v JOIN entry e ON e.id = v.entry_id
        WHERE v.batch_id = ? AND v.kind = 'consumed' GROUP BY v.plan_line_id, v.lot_id HAVING used > 0
        ORDER BY (SELECT number FROM plan_line WHERE id = v.plan_line_id), min(v.id)
        """,
        (batch.id,),
    ).fetchall():
        lot, line = lot_by_id(rows, row["lot_id"]), lines.get(row["plan_line_id"])
        found.append(
            UsedMaterial(
                number=line.number if line else None,
                role=line.role if line else lot.kind,
                material=lot.material,
                inci=lot.inci,
                lot_code=lot.code,
                supplier=lot.supplier or (f"batch {lot.batch_code}" if lot.batch_code else None),
                supplier_lot=lot.supplier_number,
                origin="batch" if lot.batch_id else "own" if lot.supplier_own else "supplier",
                lot_status=lot.status,
                certificate=check.figures.get(lot.id),
                target=line.target if line else None,
                used=row["used"],
                low=line.low if line else None,
                high=line.high if line else None,
                pieces=lot.counted,
                weighed_by=row["who"],
                weighed_at=row["at"],
            )
        )
    return tuple(found)


def corrections(rows: sqlite3.Connection, batch: BatchRow, units: Units) -> tuple[str, ...]:
    """What each corrected line was logged as before, entry by entry, so that the first value stays to be read."""
    found = []
    for line in plan_lines(rows, batch.id):
        states: list[tuple[sqlite3.Row, dict[str, int]]] = []
        for row in rows.execute(
            "SELECT v.entry_id, e.who, l.code, -v.quantity AS used FROM live_movement v JOIN lot l ON l.id = v.lot_id "
            "JOIN entry e ON e.id = v.entry_id WHERE v.plan_line_id = ? AND v.kind = 'consumed' ORDER BY v.id",
            (line.id,),
        ).fetchall():
            if not states or states[-1][0]["entry_id"] != row["entry_id"]:
                states.append((row, dict(states[-1][1]) if states else {}))
            held = states[-1][1]
            held[row["code"]] = held.get(row["code"], 0) + row["used"]
        for row, held in states[:-1] if line.role != "packaging" else ():
            was = ", ".join(f"{show_mass(mass, units)} of lot {code}" for code, mass in held.items() if mass)
            found.append(
                f"Line {line.number}, {line.material}: logged as {was or 'nothing'} by {row['who']} "
                f"(entry {row['entry_id']}), corrected since."
            )
    return tuple(found)


def readings(rows: sqlite3.Connection, batch: BatchRow, units: Units) -> tuple[RecordedReading, ...]:
    """Everything read, those corrected too, with the limits they are held against."""
    recipe = recipe_of(rows, batch)
    found = rows.execute(
        """
        SELECT r."on", r.at, r.what, r.value, r.unit, r.text, r.mark, r.method, e.who, r.entry_id, q.code AS tool,
          EXISTS (SELECT 1 FROM live_reading c WHERE c.corrects = r.id) AS corrected
        FROM live_reading r JOIN entry e ON e.id = r.entry_id LEFT JOIN equipment q ON q.id = r.equipment_id
        WHERE r.batch_id = ? ORDER BY r."on", r.id
        """,
        (batch.id,),
    )
    return tuple(
        RecordedReading(
            on=day(row["on"]),
            at=row["at"],
            what=f"{row['what']} {row['mark']}" if row["mark"] else row["what"],
            value=_value(row["value"], row["unit"], row["at"], row["text"], units),
            by=row["who"],
            entry=row["entry_id"],
            limit=limit_of(recipe.limits, row["what"], units) if recipe and not row["mark"] else None,
            method=_method(row["what"], row["method"]),
            tool=row["tool"],
            corrected=bool(row["corrected"]),
        )
        for row in found
    )


def not_logged(rows: sqlite3.Connection, batch: BatchRow) -> tuple[str, ...]:
    """The steps of the worksheet that nobody booked, so that no blank is left unexplained."""
    known = {row["what"] for row in current_readings(rows, batch.id)}
    return tuple(step.label for step in steps_of(batch) if step.what not in known) if batch.recipe_code else ()


def checks(rows: sqlite3.Connection, batch: BatchRow) -> tuple[FinishedLook, ...]:
    """What was looked at before the release."""
    found = rows.execute(
        'SELECT "on", what, found, good, by FROM live_finished_check WHERE lot_id = ? ORDER BY id',
        (batch.yield_lot_id,),
    )
    return tuple(
        FinishedLook(
            day(row["on"]),
            row["what"],
            row["found"],
            kept_as_good(row["what"], row["found"], bool(row["good"])),
            row["by"],
        )
        for row in found
    )


def _method(what: str, said: str | None) -> str | None:
    row = READINGS.get(what)
    return said or ("method not stated" if row and row.answer is ACIDITY else None)


def _value(value: int | None, unit: ReadingUnit | None, at: str | None, text: str | None, units: Units) -> str:
    if value is None or unit is None:
        return text or at or ""
    return FIGURES[unit].show(value, units)
