"""What was ticked, weighed and read of a batch so far, with readings that were corrected left out."""

from collections import defaultdict

from ledger.domain.bench.mass_balance import MassBalance
from ledger.domain.bench.steps import Step, steps
from ledger.domain.tools.limits import LineRead, Read
from ledger.rows.batch import BatchRow, PlanLineRow, plan_lines
from ledger.rows.lot import NOBODY, lot_by_id, lots_by_id
from ledger.rows.movement import offcuts_of, taken_on
from ledger.rows.opened import Rows
from ledger.rows.reading import cooked_off, current_readings, mass_in
from ledger.rows.recipe import recipe_of
from ledger.rows.settings import settings
from ledger.units.quantity import show_mass
from ledger.units.words import Units


def steps_of(rows: Rows, batch: BatchRow) -> tuple[Step, ...]:
    """What is ticked and read at the bench for a batch, lettered in the order of work."""
    recipe = recipe_of(rows, batch)
    return steps(
        batch.process,
        makes_lye=batch.part_of is None,
        gives_bars=batch.soap,
        own=recipe.steps if recipe else (),
        units=settings(rows).units,
    )


def read_so_far(rows: Rows, batch: BatchRow) -> Read:
    """Everything that a recipe sets limits for, as it stands."""
    units = settings(rows).units
    figures: dict[str, list[int]] = defaultdict(list)
    clocks, last, bars = {}, {}, []
    for one in current_readings(rows, batch.id):
        if one.value is not None:
            figures[one.what].append(one.value)
            last[one.what, one.mark] = one.value
            if one.what == "bar weight" and not one.bars and batch.yielded_on and one.on == batch.yielded_on:
                bars.append(one.value)
        if one.at:
            clocks[one.what] = one.at
    balance, recipe = mass_balance(rows, batch), recipe_of(rows, batch)
    return Read(
        lines=[
            LineRead(
                line.number, line.material, line.used, line.low, line.high, line.left_out, _others(rows, line, units)
            )
            for line in plan_lines(rows, batch.id)
            if line.logged and line.role != "packaging"
        ],
        figures=figures,
        last=last,
        clocks=clocks,
        second_cook=any(one.reading == "second cook end" for one in (recipe.steps if recipe else ())),
        bars_mg=bars,
        loss_ppm=balance.loss_ppm,
        loss_mg=balance.loss_mg or 0,
    )


def _others(rows: Rows, line: PlanLineRow, units: Units) -> tuple[str, ...]:
    """What is in on a line of another material than it asks for, or of a lot nobody knows."""
    taken = {lot: mass for lot, mass in taken_on(rows, line.id).items() if mass > 0}
    lots = lots_by_id(rows, taken)
    return tuple(
        f"{show_mass(mass, units)} of {lots[lot].material}, lot {lots[lot].code}{' (not known which)' * unknown}"
        for lot, mass in taken.items()
        if (unknown := lots[lot].supplier == NOBODY) or lots[lot].material_id != line.material_id
    )


def mass_balance(rows: Rows, batch: BatchRow) -> MassBalance:
    """Mass in against mass out, as far as it was weighed."""
    read = {one.what: one.value or 0 for one in current_readings(rows, batch.id) if one.unit == "mg"}
    out = None
    if batch.yield_lot_id is not None:
        out = lot_by_id(rows, batch.yield_lot_id).mass_mg if batch.soap else batch.made
    return MassBalance(
        put_in_mg=mass_in(rows, batch.id),
        cooked_off_mg=cooked_off(rows, batch.id),
        poured_mg=read.get("poured weight"),
        unmoulded_mg=read.get("unmoulded weight"),
        out_mg=out,
        offcuts_mg=offcuts_of(rows, [batch.id]).get(batch.id, 0),
        waste_mg=read.get("waste at the cut", 0) + read.get("spent solids", 0),
    )
