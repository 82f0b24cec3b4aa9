"""Stock whose printed label stops being usable at a coming date, by market, with bars and where they are."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from ledger.domain.label.market import AllergenList, Market
from ledger.markets import known_market, market
from ledger.rows.bars import BarCount, bar_counts, still_about, still_out
from ledger.rows.batch import BatchRow, batches_coded
from ledger.rows.label import Run, first_supplies, runs, text_of
from ledger.rows.opened import Rows
from ledger.units.dates import show_date
from ledger.views.label.allergens import Holding, batch_holding
from ledger.views.label.usable import unnamed
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
    codes = {code for code, _ in printed}
    if not any(_sold_on(rule, today, by) for _, where in printed for rule in market(where).allergens):
        codes = {*still_about(rows, codes)}  # no bars that left are reached, and most of all ever made did
    by_code = batches_coded(rows, codes)
    counts: dict[int | None, list[BarCount]] = defaultdict(list)
    for one in bar_counts(rows, [batch.yield_lot_id for batch in by_code.values() if batch.yield_lot_id is not None]):
        counts[one.lot_id].append(one)
    found, made = list[Due](), Compositions(rows, of=[one.id for one in by_code.values()])
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
    here = [one for one in reversed(still_out(counts)) if not one.left and one.where != "retained"]
    listed = law.allergen_list(today)
    lacks = unnamed(run, batch_holding(rows, batch, made), listed) if here and listed else []
    for rule in law.allergens:
        after = next((one for one in law.allergens if one.since and rule.until and one.since > rule.until), None)
        if rule.until is None or after is None or not _printed_under(rows, rule, run):
            continue
        bars = [*_reached(counts, rule, today, by), *_gone_on(rows, batch, rule, today, by)]
        if not (bars or lacks):
            continue
        holding = batch_holding(rows, batch, made)
        if words := _more(holding, rule, after):
            lacks = [one for one in lacks if one not in _missing(holding, rule, after)]
            for one, until, why in bars:
                yield Due(batch.code, law.code, one.count, one.where, until, f"{why}: {words}")
    if lacks:
        named = f"{', '.join(lacks)} {'is' if len(lacks) == 1 else 'are'} missing"
        why = f"by what is stated of its lots today, {named} on run {run.number}"
        for one in here:
            yield Due(batch.code, law.code, one.count, one.where, today, why)


def _reached(
    counts: Sequence[BarCount], rule: AllergenList, today: date, by: date
) -> Iterator[tuple[BarCount, date, str]]:
    """The bars that the end of a list reaches, until when their labels are usable, and why."""
    assert rule.until is not None
    for one in reversed(still_out(counts)):
        if not one.left and one.where != "retained" and rule.until <= by:
            yield one, rule.until, "to be supplied by then"
        last = _sold_on(rule, today, by) if one.where == "dispatched" else None
        if last and one.on is not None and one.on <= rule.until:
            yield one, last, f"supplied {show_date(one.on)}, sold on until then"


def _sold_on(rule: AllergenList, today: date, by: date) -> date | None:
    """The last day on which bars supplied under a list may be sold on, where it comes between these days."""
    last = rule.sold_on_until
    return last if last and today <= last <= by else None


def _gone_on(
    rows: Rows, batch: BatchRow, rule: AllergenList, today: date, by: date
) -> Iterator[tuple[BarCount, date, str]]:
    """Bars that left after the end of a list by what was said of their first supply; how many are sold is not known."""
    last = _sold_on(rule, today, by)
    if batch.yield_lot_id is None or last is None:
        return
    for one in first_supplies(rows, batch.yield_lot_id):
        if not one.back:
            left = BarCount(batch.yield_lot_id, "left", one.whom, one.on, one.bars, True, None)
            why = (
                f"left {show_date(one.on)}, first supplied {show_date(one.supplied_on)} to {one.whom}, as {one.by} "
                "said; sold on until then"
            )
            yield left, last, why


def _missing(holding: Holding, rule: AllergenList | None, after: AllergenList) -> list[str]:
    """What a list names in the bars and the one before, if there was one, does not."""
    before = holding.named_by(rule).declared if rule else ()
    return sorted(set(holding.named_by(after).declared) - set(before))


def _more(holding: Holding, rule: AllergenList, after: AllergenList) -> str:
    """What the later list asks of the bars beside what the earlier did, in words; nothing where that is nothing."""
    names, silent = _missing(holding, rule, after), holding.named_by(after).no_statement
    words = [f"{after.name} names {', '.join(names)} too"] if names else []
    words += (
        [f"nobody stated what {'; '.join(silent)} contains, so what {after.name} asks is not known"] if silent else []
    )
    return "; ".join(words)


def _printed_under(rows: Rows, rule: AllergenList, run: Run) -> bool:
    """Whether a run carries what that list asks and no more: its text was first printed while the list held."""
    return rule.until is not None and text_of(rows, run) <= rule.until
