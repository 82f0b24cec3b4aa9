"""Whether the labels on bars are usable for bars supplied on a day, by the list of allergens that holds on it."""

import re
from collections import Counter
from datetime import date
from typing import NamedTuple

from ledger.domain.label.market import AllergenList
from ledger.domain.release.supply import Changed
from ledger.markets import known_market
from ledger.rows.batch import BatchRow
from ledger.rows.label import Run, first_supplies, runs, text_of
from ledger.rows.lot import on_hand_at, place_of_kind
from ledger.rows.opened import Rows
from ledger.units.dates import show_date
from ledger.views.label.allergens import Holding, batch_holding


class LabelDoubts(NamedTuple):
    """Why labels on bars are not usable on a day, by market: what was stated since, and a list that has ended."""

    stated: dict[str, str]
    changed: dict[str, Changed]


class _Lacks(NamedTuple):
    """What the text of a run does not say for bars first supplied on a day, in words."""

    stated: str | None  # of what the list of its own day asks for
    changed: Changed | None  # of what the list of the day asks for beside that


def label_doubts(rows: Rows, batch: BatchRow, *, on: date, coming: int = 0) -> LabelDoubts:
    """Why the labels on the bars are not usable for bars supplied on a day: by market, a sentence for each.

    Labels the day has made unusable are on the bars until newer ones, counted, are enough for all that are here and
    those that are `coming`; a run that nobody counted may be on them too. Bars put back on sale because they were first
    supplied in time need no newer ones.
    """
    stated, changed, newer = dict[str, str](), dict[str, Changed](), Counter[str]()
    for run, lacks in _lacking(rows, batch, on):
        if lacks.changed:
            changed[run.market] = lacks.changed
        if lacks.stated:
            stated[run.market] = lacks.stated
        if lacks == _NOTHING:
            newer[run.market] += run.used or 0
    if not (stated or changed) or batch.yield_lot_id is None:
        return LabelDoubts({}, {})
    here = coming + on_hand_at(rows, batch.yield_lot_id, place_of_kind(rows, "workshop").id, on=on)
    said = first_supplies(rows, batch.yield_lot_id)
    in_time = max(0, sum(one.bars if one.back else -one.bars for one in said if one.on <= on))
    return LabelDoubts(
        {code: why for code, why in stated.items() if newer[code] < here},
        {code: why for code, why in changed.items() if newer[code] < here - in_time},
    )


def labels_on_bars(rows: Rows, batch: BatchRow, *, on: date) -> int:
    """How many labels are on the bars, for whatever market: printed, and neither spoiled nor returned.

    Where newer labels are usable on the day, older ones that are not do not count.
    """
    counted = [(run, lacks) for run, lacks in _lacking(rows, batch, on) if run.counted is not None]
    newer = {run.market for run, lacks in counted if lacks == _NOTHING}
    return sum(run.used or 0 for run, lacks in counted if lacks == _NOTHING or run.market not in newer)


def bars_wanting(rows: Rows, batch: BatchRow, number: int, *, on: date) -> int:
    """How many bars here want a label of a run: those for which the usable ones of other runs are not enough."""
    if batch.yield_lot_id is None:
        return 0
    others = [run for run, lacks in _lacking(rows, batch, on) if run.number != number and lacks == _NOTHING]
    here = on_hand_at(rows, batch.yield_lot_id, place_of_kind(rows, "workshop").id, on=on)
    return max(0, here - sum(run.used or 0 for run in others))


_NOTHING = _Lacks(None, None)


def _lacking(rows: Rows, batch: BatchRow, on: date) -> list[tuple[Run, _Lacks]]:
    """The runs printed for the bars, each with why it is not usable on a day; what they hold is worked out once."""
    printed = runs(rows, batch.yield_lot_id) if batch.yield_lot_id is not None else ()
    holding = batch_holding(rows, batch) if printed else Holding((), (), None)
    return [(run, _lacks(rows, holding, run, on)) for run in printed]


def _lacks(rows: Rows, holding: Holding, run: Run, on: date) -> _Lacks:
    """What the list of a day names in the bars and the text of a run does not.

    Either the list has changed since the text was first printed, or what is stated of their lots has. Where nobody
    stated what a lot holds, a list that has changed may name something of it, and that is for a person.
    """
    law, printed = known_market(run.market), text_of(rows, run)
    listed = law.allergen_list(on) if law else None
    if law is None or listed is None:
        return _NOTHING
    more, then = unnamed(run, holding, listed), law.allergen_list(printed)
    if then is None or then.until is None or on <= then.until:
        return _Lacks(_words(run, printed, listed, more) if more else None, None)
    stated = [name for name in unnamed(run, holding, then) if name in more]
    new = [name for name in more if name not in stated]
    silent = holding.named_by(listed).no_statement
    changed = Changed(_words(run, printed, listed, new), then.until, then.sold_on_until) if new else None
    return _Lacks(_words(run, printed, listed, stated, silent) if stated or silent else None, changed)


def _words(run: Run, printed: date, listed: AllergenList, names: list[str], silent: tuple[str, ...] = ()) -> str:
    lacks = [f"does not name {', '.join(names)}, which {listed.name} asks for"] if names else []
    lacks += [f"is not one of {listed.name}, and nobody stated what {'; '.join(silent)} contains"] if silent else []
    return f"run {run.number} for {run.market}, its text of {show_date(printed)}, {', and '.join(lacks)}"


def unnamed(run: Run, holding: Holding, listed: AllergenList) -> list[str]:
    """What a list names in the bars, by what is stated of their lots today, and the text of a run does not."""
    return [
        name
        for name in holding.named_by(listed).declared
        if not re.search(rf"(?<!\w){re.escape(name)}(?!\w)", run.text, re.IGNORECASE)
    ]
