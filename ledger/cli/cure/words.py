"""The rack and the drying of bars, on the screen."""

from collections.abc import Sequence
from datetime import date

from ledger.cli.kit.desk import Desk
from ledger.cli.kit.show import count, on_screen, say, say_marked, say_wrapped, table
from ledger.rows.batch import BatchRow
from ledger.units.dates import show_date
from ledger.views.cure.cure import OnTheRack
from ledger.views.cure.cure_forecast import dried, dried_words
from ledger.views.cure.weighed import weighings
from ledger.views.stock.promised import Promise


def say_cure(found: Sequence[OnTheRack], on: date, late: Sequence[Promise] = ()) -> None:
    """The rack on the screen, the first ready first; then which promise will be late, and why."""
    if not found:
        say("Nothing is on the rack.")
        _say_late(late)
        return
    ready = [one for one in found if one.days_left <= 0]
    curing = len(found) - len(ready)
    say(f"{count(len(ready), 'batch', 'batches')} ready to be passed, {curing} still curing.")
    due = [one for one in found if one.weigh_on <= on and (one.days_left > 0 or one.lags)]
    if due:
        say(f"To be weighed: {', '.join(one.batch_code for one in due)}.")
    body = []
    for one in found:
        when = f"in {count(one.days_left, 'day')}" if one.days_left > 0 else "ready"
        if one.days_left <= -14:
            when = f"ready for {count(-one.days_left, 'day')}"
        usable = show_date(one.usable_from) if one.usable_from and one.days_left > 0 else ""
        held = "on hold" if one.status == "on hold" else "weigh" if one in due else ""
        body.append((one.batch_code, one.product, str(one.bars), show_date(one.ready_on), when, usable, held))
    table(
        ("batch", "product", "bars", "ready on", "", "usable from", ""),
        body,
        right=(2,),
        wraps=(1, 4) if on_screen() else (),
    )
    for one in found:
        if one.lags:
            say_marked(f"Batch {one.batch_code} lags: {one.lags}.")
    _say_late(late)
    if due:
        say(f"Next: soapledger cure weigh {due[0].batch_code} A=WEIGHT B=WEIGHT")
    if steady := [one for one in ready if not one.lags]:
        say(f"Next: soapledger pass {steady[0].batch_code}")


def _say_late(late: Sequence[Promise]) -> None:
    for words in dict.fromkeys(why for one in late for why in one.words):
        say_marked(words)


def say_drying(here: Desk, batch: BatchRow, on: date) -> None:
    """What was weighed, the dry bar and the earlier batches first; then between what the bars will lie."""
    if batch.ready_on is None:
        say(f"Batch {batch.code} is {batch.status}; it has no bars on the rack.")
        return
    view = dried(here.rows(), batch, weighings(here.rows(), batch, on=on))
    say(f"Batch {batch.code}, {batch.product}: the cure ends on {show_date(batch.ready_on)}.")
    for words in dried_words(view, here.settings.units, today=on) if view else ():
        say_wrapped(words)
