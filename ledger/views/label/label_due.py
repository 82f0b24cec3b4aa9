"""Stock whose printed label stops being usable at a coming date, by market, with bars and where they are."""

import re
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date

from ledger.domain.label.market import AllergenList, Market
from ledger.markets import known_market, market
from ledger.rows.bars import BarCount, bar_counts
from ledger.rows.batch import BatchRow, batches_coded
from ledger.rows.label import Run, runs, text_of
from ledger.rows.lot import on_hand_at, place_of_kind
from ledger.rows.opened import Rows
from ledger.units.dates import show_date
from ledger.views.label.allergens import Holding, batch_holding
from ledger.views.stock.made_of import Compositions


@dataclass(frozen=True)
class Due:
    """Bars in one place whose label is usable only up to a day."""

    batch_code: str
    market: str
    bars: int
    where: str
    until: date
    why: str


def labels_due(rows: Rows, *, today: date, by: date) -> tuple[Due, ...]:
    """Every batch with labels printed for a market whose rule changes between today and `by`, or has changed.

    Bars here were not supplied yet, so the list for the day of their supply holds; bars at a shop were supplied when
    they went there, and may be sold on as long as the list says. A list that would name nothing more is no reason. What
    was stated of a lot since the labels were printed is one for the bars here, from today.
    """
    printed: dict[tuple[str, str], Run] = {}
    for run in runs(rows):
        if known_market(run.market):
            printed[run.batch_code, run.market] = run
    by_code = batches_coded(rows, {code for code, _ in printed})
    counts: dict[int | None, list[BarCount]] = defaultdict(list)
    for one in bar_counts(rows, [batch.yield_lot_id for batch in by_code.values() if batch.yield_lot_id is not None]):
        counts[one.lot_id].append(one)
    found, made = list[Due](), Compositions(rows)
    for (code, where), run in printed.items():
        if batch := by_code.get(code):
            found += _due(rows, batch, counts[batch.yield_lot_id], made, market(where), run, today, by)
    return tuple(sorted(found, key=lambda one: (one.until, one.batch_code, one.where)))


def _due(
    rows: Rows,
    batch: BatchRow,
    counts: Sequence[BarCount],
    made: Compositions,
    law: Market,
    run: Run,
    today: date,
    by: date,
) -> Iterator[Due]:
    here = [one for one in _still_out(counts) if not one.left and one.where != "retained"]
    listed = law.allergen_list(today)
    lacks = _unnamed(run, batch_holding(rows, batch, made), listed) if here and listed else []
    for rule in law.allergens:
        after = next((one for one in law.allergens if one.since and rule.until and one.since > rule.until), None)
        if rule.until is None or after is None or not _printed_under(rows, rule, run):
            continue
        bars = list(_reached(counts, rule, today, by))
        if (bars or lacks) and (more := _missing(batch_holding(rows, batch, made), rule, after)):
            lacks = [one for one in lacks if one not in more]
            names = f"{after.name} names {', '.join(more)} too"
            for one, until, why in bars:
                yield Due(batch.code, law.code, one.count, one.where, until, f"{why}: {names}")
    if lacks:
        why = f"by what is stated of its lots today, {', '.join(lacks)} is missing on run {run.number}"
        for one in here:
            yield Due(batch.code, law.code, one.count, one.where, today, why)


def _reached(
    counts: Sequence[BarCount], rule: AllergenList, today: date, by: date
) -> Iterator[tuple[BarCount, date, str]]:
    """The bars that the end of a list reaches, until when their labels are usable, and why."""
    assert rule.until is not None
    for one in _still_out(counts):
        if not one.left and one.where != "retained" and rule.until <= by:
            yield one, rule.until, "to be supplied by then"
        shop = one.where == "dispatched" and one.on is not None and one.on <= rule.until
        if shop and rule.sold_on_until and today <= rule.sold_on_until <= by:
            yield one, rule.sold_on_until, f"supplied {one.on}, sold on until then"


def _still_out(counts: Sequence[BarCount]) -> Iterator[BarCount]:
    """The same, but for the bars that a customer sent back: of what was sent last, since nobody said of which."""
    back = Counter[int | None]()
    for one in counts:
        if one.left and one.where == "returned":
            back[one.customer_id] -= one.count  # what came back stands below zero among what went
    for one in reversed(counts):
        if one.where == "dispatched":
            came = min(one.count, back[one.customer_id])
            back[one.customer_id] -= came
            one = replace(one, count=one.count - came)
        if one.count > 0:
            yield one


def _missing(holding: Holding, rule: AllergenList | None, after: AllergenList) -> list[str]:
    """What a list names in the bars and the one before, if there was one, does not."""
    before = holding.named_by(rule).declared if rule else ()
    return sorted(set(holding.named_by(after).declared) - set(before))


def _unnamed(run: Run, holding: Holding, listed: AllergenList) -> list[str]:
    """What a list names in the bars, by what is stated of their lots today, and the text of a run does not."""
    return [
        name
        for name in holding.named_by(listed).declared
        if not re.search(rf"(?<!\w){re.escape(name)}(?!\w)", run.text, re.IGNORECASE)
    ]


def _printed_under(rows: Rows, rule: AllergenList, run: Run) -> bool:
    """Whether a run carries what that list asks and no more: its text was first printed while the list held."""
    return rule.until is not None and text_of(rows, run) <= rule.until


def label_doubts(rows: Rows, batch: BatchRow, *, on: date) -> dict[str, str]:
    """Why the labels on the bars are not usable for bars supplied on a day: by market, a sentence for each.

    Labels the day has made unusable are on the bars until newer ones, counted, are enough for all that are here; a run
    that nobody counted may be on them too.
    """
    stale: dict[str, str] = {}
    newer = Counter[str]()
    for run, why in _lacking(rows, batch, on):
        if why:
            stale[run.market] = why
        else:
            newer[run.market] += run.used or 0
    if not stale or batch.yield_lot_id is None:
        return {}
    here = on_hand_at(rows, batch.yield_lot_id, place_of_kind(rows, "workshop").id, on=on)
    return {code: why for code, why in stale.items() if newer[code] < here}


def labels_on_bars(rows: Rows, batch: BatchRow, *, on: date) -> int:
    """How many labels are on the bars, for whatever market: printed, and neither spoiled nor returned.

    Where newer labels are usable on the day, older ones that are not do not count.
    """
    counted = [(run, stale) for run, stale in _lacking(rows, batch, on) if run.counted is not None]
    newer = {run.market for run, stale in counted if not stale}
    return sum(run.used or 0 for run, stale in counted if not stale or run.market not in newer)


def _lacking(rows: Rows, batch: BatchRow, on: date) -> list[tuple[Run, str | None]]:
    """The runs printed for the bars, each with why it is not usable on a day; what they hold is worked out once."""
    printed = runs(rows, batch.yield_lot_id) if batch.yield_lot_id is not None else ()
    holding = batch_holding(rows, batch) if printed else Holding((), (), None)
    return [(run, _out_of_date(rows, holding, run, on)) for run in printed]


def _out_of_date(rows: Rows, holding: Holding, run: Run, on: date) -> str | None:
    """What a run lacks for bars supplied on a day: what the list of that day names in them and its text does not.

    Either the list has changed since the text was first printed, or what is stated of their lots has.
    """
    law = known_market(run.market)
    listed = law.allergen_list(on) if law else None
    more = _unnamed(run, holding, listed) if listed else []
    if listed is None or not more:
        return None
    return (
        f"run {run.number} for {run.market}, its text of {show_date(text_of(rows, run))}, does not name "
        f"{', '.join(more)}, which {listed.name} asks for"
    )
