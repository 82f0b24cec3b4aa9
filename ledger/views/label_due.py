"""Stock whose printed label stops being usable at a coming date, by market, with bars and where they are."""

import sqlite3
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from ledger.domain.market import AllergenList, Market
from ledger.markets import market, market_codes
from ledger.views.allergens import batch_allergens
from ledger.views.bars import bar_counts
from ledger.views.batch import BatchRow, batches
from ledger.views.label_runs import Run, runs


@dataclass(frozen=True)
class Due:
    """Bars in one place whose label is usable only up to a day."""

    batch_code: str
    market: str
    bars: int
    where: str
    until: date
    why: str


def labels_due(rows: sqlite3.Connection, *, today: date, by: date) -> tuple[Due, ...]:
    """Every batch with labels printed for a market whose rule changes between today and `by`, or has changed.

    Bars here were not supplied yet, so the list for the day of their supply holds; bars at a shop were supplied when
    they went there, and may be sold on as long as the list says. A list that would name nothing more is no reason.
    """
    found: list[Due] = []
    by_batch = {batch.yield_lot_id: batch for batch in batches(rows) if batch.soap and batch.yield_lot_id}
    printed: dict[tuple[int, str], Run] = {}
    for lot_id in by_batch:
        assert lot_id is not None
        for run in runs(rows, lot_id):
            if run.market in market_codes():
                printed[lot_id, run.market] = run
    for (lot_id, code), run in printed.items():
        found += _due(rows, by_batch[lot_id], lot_id, market(code), run, today, by)
    return tuple(sorted(found, key=lambda one: (one.until, one.batch_code, one.where)))


def _due(
    rows: sqlite3.Connection, batch: BatchRow, lot_id: int, law: Market, run: Run, today: date, by: date
) -> Iterator[Due]:
    for rule in law.allergens:
        after = next((one for one in law.allergens if one.since and rule.until and one.since > rule.until), None)
        if rule.until is None or after is None or not _printed_under(rule, run):
            continue
        more = sorted(
            set(batch_allergens(rows, batch, after).declared) - set(batch_allergens(rows, batch, rule).declared)
        )
        if not more:
            continue
        names = f"{after.name} names {', '.join(more)} too"
        for one in bar_counts(rows, [lot_id]):
            ours = one.where in ("on hand", "retained", "returned", "at a stall")
            if ours and one.where != "retained" and rule.until <= by:
                yield Due(batch.code, law.code, one.count, one.where, rule.until, f"to be supplied by then: {names}")
            shop = one.where == "dispatched" and one.on is not None and one.on <= rule.until
            if shop and rule.sold_on_until and today <= rule.sold_on_until <= by:
                why = f"supplied {one.on}, sold on until then: {names}"
                yield Due(batch.code, law.code, one.count, one.where, rule.sold_on_until, why)


def _printed_under(rule: AllergenList, run: Run) -> bool:
    """Whether a run carries what that list asks and no more: it was printed while the list held."""
    return rule.until is not None and run.on <= rule.until
