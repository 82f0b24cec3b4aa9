"""What is asked of the labels before bars are released or leave: printed, counted, enough, and usable that day."""

from collections.abc import Mapping
from datetime import date

from ledger.errors import Refused
from ledger.rows.batch import BatchRow
from ledger.rows.decision import Doubt, list_words, still_open
from ledger.rows.label import runs
from ledger.rows.opened import Rows
from ledger.views.label.label_due import label_doubts, labels_on_bars
from ledger.views.label.supply import labelled_markets

STALE = "its labels are not usable any more"  # before the reason of a decision to supply bars with them all the same


def undecided_labels(rows: Rows, batch: BatchRow, on: date) -> dict[str, Doubt]:
    """Why labels on the bars are not usable on a day, by market, as far as nobody decided about that very run."""
    doubts = {market: Doubt("labels", why) for market, why in label_doubts(rows, batch, on=on).items()}
    left = still_open(rows, doubts.values(), lot_id=batch.yield_lot_id)
    return {market: one for market, one in doubts.items() if one in left}


def labels_refused(batch: BatchRow, stale: Mapping[str, Doubt]) -> str:
    """What is wrong with the labels, and how new ones are made."""
    ways = "; ".join(
        f"soapledger label approve {batch.code} --market {one}, then soapledger label print {batch.code} --market "
        f"{one} -o labels.pdf, then label count"
        for one in stale
    )
    return f"Batch {batch.code}: {STALE}: {list_words(stale.values())}. New labels: {ways}."


def bars_without_labels(rows: Rows, batch: BatchRow, leaving: int, on: date) -> tuple[Doubt, str] | None:
    """That no label was printed for the bars, or fewer are on them than bars leave, and what to do.

    None for neither, or where that was decided. Only where she sells in a market in which a bar carries its
    ingredients on a label.
    """
    found = _too_few_labels(rows, batch, leaving, on)
    return found if found and still_open(rows, found[:1], lot_id=batch.yield_lot_id) else None


def _too_few_labels(rows: Rows, batch: BatchRow, leaving: int, on: date) -> tuple[Doubt, str] | None:
    markets = labelled_markets(rows)
    if not markets:
        return None
    way = f"soapledger label print {batch.code} --market {markets[0].code}"
    on_bars = labels_on_bars(rows, batch, on=on)
    if not runs(rows, batch.yield_lot_id):
        names = "; ".join(law.name for law in markets)
        first = f"soapledger label approve {batch.code} --market {markets[0].code}"
        return (
            Doubt("bare", f"no label was printed for it, and a bar carries one in: {names}"),
            f"{first}, then {way} -o labels.pdf",
        )
    if on_bars < leaving:
        short = leaving - on_bars
        have = f"it has {on_bars} label{'s' * (on_bars != 1)} on its bars"
        would = f"{leaving} bar{'s' * (leaving != 1)} would leave"
        return Doubt("bare", f"{have}, and {would}"), f"{way} --count {short} -o more.pdf"
    return None


def labels_counted(rows: Rows, batch: BatchRow, lot_id: int) -> None:
    """Raise Refused while it is not known what became of the labels of a run."""
    open_ = [run.number for run in runs(rows, lot_id) if run.counted is None]
    if open_:
        raise Refused(
            f"Run {open_[0]} of labels for batch {batch.code} is not counted yet: soapledger label count {open_[0]} "
            "--spoiled 0 --returned 0"
        )
