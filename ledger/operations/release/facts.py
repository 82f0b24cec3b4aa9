"""What the rules of passing, release and supply ask, read from a ledger."""

from datetime import date
from fractions import Fraction
from math import floor

from ledger.domain.bench.decision import Doubt
from ledger.domain.release.bars import Bars
from ledger.domain.release.releasing import Finished
from ledger.domain.release.supply import Door, Labels, Supply
from ledger.domain.tools.bar_checks import FREE_ALKALI, Check, read_check
from ledger.errors import Refused
from ledger.rows.batch import BatchRow, find_batch
from ledger.rows.decision import decided, deviations, verdicts
from ledger.rows.label import SoldBare, runs, sold_bare
from ledger.rows.lot import on_hand_at, place_of_kind
from ledger.rows.opened import Rows
from ledger.rows.reading import read_of_the_bars
from ledger.rows.recipe import recipe_of
from ledger.units.dates import show_date
from ledger.units.quantity import show_share
from ledger.units.wording import count
from ledger.views.label.bare import Outlet, bare_outlets, bars_without, settled_at
from ledger.views.label.supply import labelled_markets, supply_doubts
from ledger.views.label.usable import label_doubts, labels_on_bars


def bars_of(rows: Rows, batch: BatchRow, on: date) -> tuple[Bars, int]:
    """The bars of a batch, and the number of their lot. Raises Refused where there are none."""
    if batch.yield_lot_id is None or not batch.soap or batch.yielded_on is None:
        raise Refused(f"Batch {batch.code} is {batch.status}; it has no bars yet.")
    lot_id = batch.yield_lot_id
    whole = (batch, *([find_batch(rows, batch.part_of)] if batch.part_of else []))
    bars = Bars(
        batch=batch.code,
        cut_on=batch.yielded_on,
        here=on_hand_at(rows, lot_id, place_of_kind(rows, "workshop").id, on=on),
        decisions=verdicts(rows, lot_id),
        deviations=tuple((one.code, found) for one in whole for found in deviations(rows, one.id)),
        decided=decided(rows, lot_id=lot_id),
    )
    return bars, lot_id


def supply_of(rows: Rows, batch: BatchRow, on: date, *, coming: int = 0) -> Supply:
    """What speaks against supplying bars on a day, those here and those that are coming back among them."""
    against = supply_doubts(rows, batch, on=on)
    found = label_doubts(rows, batch, on=on, coming=coming)
    stale = {market: Doubt("labels", why) for market, why in found.stated.items()}
    uncovered = tuple(one for one in against.doubts if one not in against.unnamed)
    return Supply(
        barred=against.barred,
        another_market=against.another_market,
        uncovered=uncovered,
        unnamed=against.unnamed,
        stale=stale,
        changed=found.changed,
        unlabelled=bars_without(rows, batch),
    )


def door_of(rows: Rows, batch: BatchRow, outlet: Outlet, on: date, *, option: str) -> Door:
    """Where bars go on a day, and whether those of the batch are sold there without a label."""
    settled = settled_at(_settled(rows, batch), outlet, on)
    return Door(bool(settled and settled.bare), option)


def _settled(rows: Rows, batch: BatchRow) -> tuple[SoldBare, ...]:
    return sold_bare(rows, batch.recipe_code) if batch.recipe_code else ()


def finished_of(rows: Rows, batch: BatchRow, on: date) -> Finished:
    """What was found of the bars, and the labels printed for them."""
    printed, recipe = runs(rows, batch.yield_lot_id), recipe_of(rows, batch)
    labels = Labels(
        markets=tuple((law.code, law.name) for law in labelled_markets(rows)),
        printed=bool(printed),
        on_bars=labels_on_bars(rows, batch, on=on),
        uncounted=next((run.number for run in printed if run.counted is None), None),
        bare_at=tuple(one.outlet for one in bare_outlets(_settled(rows, batch), on)),
    )
    return Finished(batch.recipe_code, recipe.release_checks if recipe else (), known_checks(rows, batch), labels)


def known_checks(rows: Rows, batch: BatchRow) -> list[Check]:
    """The points that what was read already answers: pH, titre and weights of bars since the day they are usable.

    Raw dough and bars that still cure answer nothing. Of several days the latest counts, of its weights the mean.
    """
    recipe, usable = recipe_of(rows, batch), batch.usable_from or batch.ready_on
    if recipe is None or usable is None:
        return []
    found = []
    acid = [one for one in read_of_the_bars(rows, batch, "pH") if one.value is not None and one.on >= usable]
    if acid and "pH" in recipe.release_checks:
        words = f"{(acid[-1].value or 0) / 1000:g}; {acid[-1].method or 'method not stated'}"
        found.append(read_check("pH", words, ph=recipe.limits.ph))
    titred = [one for one in read_of_the_bars(rows, batch, FREE_ALKALI) if one.value is not None and one.on >= usable]
    if titred and FREE_ALKALI in recipe.release_checks:
        words = f"{show_share(titred[-1].value or 0, 3)}; {titred[-1].method or 'method not stated'}"
        found.append(read_check(FREE_ALKALI, words, ph=recipe.limits.ph))
    heavy = [one for one in read_of_the_bars(rows, batch, "bar weight") if one.value is not None and one.on >= usable]
    if heavy and "weight" in recipe.release_checks:
        last = [one for one in heavy if one.on == heavy[-1].on]
        bars = sum(one.bars or 1 for one in last)
        mean = Fraction(sum(one.value or 0 for one in last), bars)
        words = f"{floor(mean / 100) / 10:g} g; the mean of {count(bars, 'bar')} weighed on {show_date(last[0].on)}"
        net = recipe.net_weight_mg
        found.append(read_check("weight", words, ph=recipe.limits.ph, net_mg=net))
    return found
