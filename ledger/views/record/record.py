"""Fills the batch record from the facts."""

import sqlite3

from ledger.domain.bench.status import in_words
from ledger.domain.lye.saponification import lye_concentration
from ledger.domain.lye.weighed import LyeCheck
from ledger.rows.batch import BatchRow, find_batch, plan_lines, recipe_of
from ledger.rows.complaint import complaints_of_batch
from ledger.rows.customer import customer_list
from ledger.rows.decision import deviations
from ledger.rows.kept import papers_of_batch, samples
from ledger.rows.label import approved_by, runs
from ledger.rows.lot import lot_by_id, whereabouts
from ledger.rows.movement import BarCount, back_on_sale, bar_counts
from ledger.rows.opened import day
from ledger.rows.reading import mass_in
from ledger.rows.settings import printed_from, settings
from ledger.units.dates import show_date
from ledger.units.quantity import show_mass
from ledger.units.words import Units
from ledger.views.bench.batch_notes import notes_that_stay
from ledger.views.bench.bench import mass_balance
from ledger.views.cure.cure_forecast import forecast, weighings
from ledger.views.lye.lye_check import lye_check
from ledger.views.record.batch_record import (
    BatchRecord,
    PrintedLabels,
    RecordedDecision,
    WhereBars,
    Yielded,
)
from ledger.views.record.record_inputs import checks, corrections, materials, not_logged, readings


def batch_record(rows: sqlite3.Connection, code: str, *, program: str, as_known: bool = False) -> BatchRecord:
    """The record of one batch as it stands, or was known at an earlier entry; raises like `find_batch`."""
    batch = find_batch(rows, code)
    recipe = recipe_of(rows, batch)
    own = settings(rows)
    check, known = lye_check(rows, batch.id), weighings(rows, batch)
    yields = _yields(rows, batch, own.units)
    masses = [one.mass_mg for one in yields]
    known_out = sum(mass for mass in masses if mass is not None)
    bars = next((one for one in yields if one.pieces), None)
    final = batch.status in (
        "released",
        "rejected",
        "discarded",
        "strained",
        "combined",
        "blended",
        "divided",
        "reworked",
    )
    lot_ids = [batch.yield_lot_id] if batch.yield_lot_id and batch.soap else []
    return BatchRecord(
        business=own.business,
        units=own.units,
        batch_code=batch.code,
        product=batch.product,
        recipe_code=batch.recipe_code,
        recipe_version=batch.recipe_version,
        process=batch.process,
        status=batch.status,
        draft=not final,
        as_known=as_known,
        planned_on=batch.planned_on,
        made_on=batch.made_on,
        cut_on=batch.yielded_on,
        ready_on=batch.ready_on,
        usable_from=batch.usable_from,
        fats_mg=check.fats_mg,
        alkali_mg=check.alkali_mg,
        water_mg=check.water_mg,
        alkali_kind=check.alkali_kind,
        alkali_purity_ppm=check.purity_ppm,
        superfat_nominal_ppm=recipe.superfat_ppm if recipe and batch.part_of is None else None,
        superfat_actual_ppm=check.superfat_ppm,
        superfat=check.superfat,
        before_addition=check.before_addition,
        lye_concentration_ppm=lye_concentration(check.water_mg, check.alkali_mg)
        if check.alkali_mg and check.water_mg
        else None,
        mass_in_mg=mass_in(rows, batch.id),
        mass_out_mg=known_out if yields and None not in masses else None,
        bars_planned=batch.bars_planned,
        bars_cut=bars.quantity if bars else None,
        net_weight_mg=recipe.net_weight_mg if recipe else None,
        materials=materials(rows, batch, check),
        corrections=corrections(rows, batch, own.units),
        readings=readings(rows, batch, own.units),
        deviations=deviations(rows, batch.id),
        not_logged=not_logged(rows, batch),
        balance=mass_balance(rows, batch),
        loss_limit_ppm=recipe.limits.loss_ppm if recipe and batch.soap else None,
        checks=checks(rows, batch),
        samples=samples(rows, lot_id=batch.yield_lot_id) if batch.yield_lot_id else (),
        complaints=complaints_of_batch(rows, batch.code),
        weighings=known,
        forecast=forecast(rows, batch, known) if batch.soap else None,
        decisions=_decisions(rows, batch),
        yields=yields,
        whereabouts=tuple(
            WhereBars(one.where, _detail(rows, one), one.on, one.count, one.left)
            for one in bar_counts(rows, [number for number in lot_ids if number is not None])
        ),
        labels=_labels(rows, batch),
        attachments=papers_of_batch(rows, batch.id),
        warnings=_warnings(rows, batch, check),
        printed_from=printed_from(rows, program),
        back_on_sale=back_on_sale(rows, [batch.yield_lot_id] if batch.yield_lot_id else []),
    )


def _decisions(rows: sqlite3.Connection, batch: BatchRow) -> tuple[RecordedDecision, ...]:
    found = rows.execute(
        """
        SELECT d."on", d.verdict, d.by, d.reason, d.entry_id, d.lot_id,
          EXISTS (SELECT 1 FROM live_decision x WHERE x.lot_id = d.lot_id AND x.id > d.id
                  AND NOT (d.verdict = 'passed' AND x.verdict = 'released')) AS superseded
        FROM live_decision d WHERE d.batch_id = ? OR d.lot_id = ? ORDER BY d.id
        """,
        (batch.id, batch.yield_lot_id if batch.soap else None),
    )
    return tuple(
        RecordedDecision(
            on=day(row["on"]),
            what=in_words(row["verdict"]),
            subject="bars" if row["lot_id"] else "batch",
            by=row["by"],
            reason=row["reason"],
            entry=row["entry_id"],
            superseded=bool(row["superseded"]),
        )
        for row in found
    )


def _yields(rows: sqlite3.Connection, batch: BatchRow, units: Units) -> tuple[Yielded, ...]:
    found = rows.execute(
        "SELECT v.lot_id, sum(v.quantity) AS made FROM movement v WHERE v.batch_id = ? AND v.kind = 'yielded' "
        "GROUP BY v.lot_id HAVING made > 0 ORDER BY v.lot_id",
        (batch.id,),
    ).fetchall()
    result = []
    for row in found:
        lot = lot_by_id(rows, row["lot_id"])
        here = ", ".join(
            f"{place.name} {held if lot.counted else show_mass(held, units)}"
            for place, held in whereabouts(rows, lot.id)
        )
        result.append(
            Yielded(
                lot_code=lot.code,
                material=lot.material,
                quantity=row["made"],
                pieces=lot.counted,
                mass_mg=lot.mass_mg if lot.counted else row["made"],
                place=here or "none left here",
                on=lot.on,
                status=lot.status,
            )
        )
    return tuple(result)


def _detail(rows: sqlite3.Connection, one: BarCount) -> str:
    if one.customer_id is None:
        return one.detail
    card = next(card for card in customer_list(rows) if card.id == one.customer_id)
    return card.name


def _labels(rows: sqlite3.Connection, batch: BatchRow) -> tuple[PrintedLabels, ...]:
    found = []
    for run in runs(rows, batch.yield_lot_id) if batch.yield_lot_id else ():
        assert batch.yield_lot_id is not None
        known = approved_by(rows, batch.yield_lot_id, run.market, run.text_digest)
        found.append(
            PrintedLabels(
                on=run.on,
                layout=run.layout,
                market=run.market,
                count=run.count,
                text_digest=run.text_digest,
                by=run.by,
                run=run.number,
                used=run.used,
                spoiled=run.spoiled,
                returned=run.returned,
                approved=f"{known[0]}, {show_date(known[1])}" if known else None,
            )
        )
    return tuple(found)


def _warnings(rows: sqlite3.Connection, batch: BatchRow, check: LyeCheck) -> tuple[str, ...]:
    """What a reader must know at once: the lye at its limits, unknown numbers, lots on hold, weights outside."""
    of_the_lye = lye_check(rows, find_batch(rows, batch.part_of).id) if batch.part_of else check
    found = notes_that_stay(rows, batch, of_the_lye.before_addition or of_the_lye.superfat)
    lines = {line.id: line for line in plan_lines(rows, batch.id)}
    for row in rows.execute(
        "SELECT lot_id FROM movement WHERE batch_id = ? AND kind = 'consumed' GROUP BY lot_id HAVING sum(quantity) < 0",
        (batch.id,),
    ).fetchall():
        lot = lot_by_id(rows, row["lot_id"])
        if lot.number_unknown:
            found.append(f"{lot.material}, lot {lot.code}: the supplier's lot number is unknown.")
        if lot.status in ("on hold", "rejected"):
            found.append(f"{lot.material}, lot {lot.code}, is {lot.status} now.")
    for line in lines.values():
        if line.role == "packaging":
            continue
        if line.left_out:
            found.append(f"Line {line.number}, {line.material}: left out.")
        elif line.outside:
            found.append(f"Line {line.number}, {line.material}: weighed outside OK from–to.")
    return tuple(found)
