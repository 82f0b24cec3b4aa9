"""Bars passed for packing, released or rejected: decisions by a named person."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from ledger.domain.tools.bar_checks import Check
from ledger.errors import BadInput, Refused
from ledger.operations.release.labelled import (
    STALE,
    bars_without_labels,
    labels_counted,
    labels_refused,
    undecided_labels,
)
from ledger.operations.release.release_checks import book_checks, deviations_decided, keep_samples
from ledger.operations.stock.decide import decide
from ledger.rows.batch import BatchRow, find_batch, plan_lines
from ledger.rows.decision import Doubt, list_words, still_open
from ledger.rows.lot import available, lot_by_id, on_hand_at, place_of_kind
from ledger.rows.opened import Rows
from ledger.storage.book import Book
from ledger.storage.tables.decision import Decision
from ledger.storage.transaction import Transaction
from ledger.storage.verbs import Moved
from ledger.units.dates import show_date
from ledger.units.quantity import show_share
from ledger.views.label.supply import barred_from_supply, supply_doubts
from ledger.views.lye.lye_check import lye_check

UNCOVERED = "not covered by what was assessed"  # before the reason of a decision to supply bars all the same


@dataclass(frozen=True)
class Passed:
    """Bars that may be packed, and the wrapping booked for them by material."""

    good: int
    wasted: int
    wrapping: tuple[tuple[str, int], ...]


def _bars(rows: Rows, code: str, on: date) -> tuple[BatchRow, int, int]:
    """(batch, number of its bar lot, bars in the workshop); raises when there are no bars."""
    batch = find_batch(rows, code)
    if batch.yield_lot_id is None or not batch.soap or batch.yielded_on is None:
        raise Refused(f"Batch {batch.code} is {batch.status}; it has no bars yet.")
    if on < batch.yielded_on:
        raise BadInput(f"Batch {batch.code} was cut on {show_date(batch.yielded_on)}; look at --on.")
    here = on_hand_at(rows, batch.yield_lot_id, place_of_kind(rows, "workshop").id, on=on)
    return batch, batch.yield_lot_id, here


def _not_before_the_last(rows: Rows, batch: BatchRow, lot_id: int, on: date) -> None:
    """The decision taken last holds, so an older date would lift a newer decision unseen."""
    row = rows.execute(
        'SELECT verdict, "on" FROM live_decision WHERE lot_id = ? ORDER BY id DESC LIMIT 1', (lot_id,)
    ).fetchone()
    if row and date.fromisoformat(row["on"]) > on:
        raise Refused(
            f"The bars of batch {batch.code} have been {row['verdict']} since "
            f"{show_date(date.fromisoformat(row['on']))}; date the decision that day or later."
        )


def pass_bars(
    book: Book,
    code: str,
    *,
    on: date,
    by: str,
    wasted: int = 0,
    reason: str | None = None,
    anyway: str | None = None,
    lift: str | None = None,
    unwrapped: bool = False,
) -> Passed:
    """Pass cured bars for packing; bars that are no good are booked as waste, wrapping as used.

    Raises Refused before the cure has ended or with lye left over as weighed (unless `anyway` gives a
    reason), for bars on hold (unless `lift` says why the hold is lifted), for bars rejected, for no good
    bars at all, or for too little wrapping. The reasons are kept with the decision.
    """
    anyway = (anyway or "").strip() or None
    if wasted and not (reason or "").strip():
        raise BadInput('Say what was wrong with the bars thrown away: --reason "…".')
    with book.write("pass") as tx:
        batch, lot_id, here = _bars(tx.rows, code, on)
        _not_before_the_last(tx.rows, batch, lot_id, on)
        lot = lot_by_id(tx.rows, lot_id, on=on)
        if lot.status in ("passed", "released"):
            raise Refused(f"The bars of batch {batch.code} are {lot.status} already.{_next(lot.status, batch)}")
        if lot.status == "rejected":
            raise Refused(f"The bars of batch {batch.code} are rejected and are not packed.")
        if _was_passed(tx.rows, lot_id):
            raise Refused(
                f"The bars of batch {batch.code} were passed and are {lot.status} now; to let them go all the same: "
                f'soapledger release {batch.code} --reason "…"'
            )
        if lot.status == "on hold" and not (lift or "").strip():
            raise Refused(f"The bars of batch {batch.code} are on hold; to lift the hold, add --lift REASON.")
        assert batch.ready_on is not None
        against: list[Doubt] = []
        if on < batch.ready_on:
            left = (batch.ready_on - on).days
            cures = f"it cures until {show_date(batch.ready_on)}"
            against.append(Doubt("cure", f"{cures}, {left} day{'s' * (left > 1)} more", (cures,)))
        dough = find_batch(tx.rows, batch.part_of) if batch.part_of else batch  # of a portion, where the lye went in
        superfat = lye_check(tx.rows, dough.id).superfat_ppm
        if superfat is not None and superfat <= 0:
            burns = f"as weighed its superfat is {show_share(superfat, 2)}, so lye is left over and it burns"
            against.append(Doubt("superfat", burns))
        if against and anyway is None:
            why = "; and ".join(one.words for one in against)
            raise Refused(f"Batch {batch.code}: {why}. To pass it all the same, add --anyway REASON.")
        deviations_decided(tx.rows, batch)
        if wasted > here:
            raise Refused(f"Batch {batch.code} has {here} bars in the workshop; {wasted} cannot be thrown away.")
        if wasted == here:
            raise Refused(
                f'No bar of batch {batch.code} is good then; reject it: soapledger reject {batch.code} --reason "…"'
            )
        workshop = place_of_kind(tx.rows, "workshop")
        if wasted:
            tx.move([Moved(lot_id, -wasted, note=reason)], "wasted", place_id=workshop.id, on=on)
        good = here - wasted
        wrapping = () if unwrapped else _wrap(tx, batch, good, on)
        reasons = [f"{list_words(against)}; passed all the same: {anyway}"] if against else []
        reasons += [f"hold lifted: {lift}"] if lot.status == "on hold" else []
        decision = Decision(lot_id=lot_id, verdict="passed", on=on, by=by, reason="; ".join(reasons) or None)
        decide(tx, decision, against)
        tx.say(f"Passed {good} bars of batch {batch.code} for packing.")
    return Passed(good, wasted, wrapping)


def _wrap(tx: Transaction, batch: BatchRow, good: int, on: date) -> tuple[tuple[str, int], ...]:
    used, workshop = [], place_of_kind(tx.rows, "workshop")
    for line in plan_lines(tx.rows, batch.id):
        if line.role != "packaging" or not batch.bars_planned:
            continue
        left = good * (line.target // batch.bars_planned)
        used.append((line.material, left))
        # what this very batch planned is its own to use, and the lot set aside for it comes first
        lots = available(tx.rows, line.material_id, on=on, but_batch=batch.id)
        taken = []
        for one in sorted(lots, key=lambda one: one.lot.id != line.lot_id):
            take = min(left, one.at_workshop)
            if take > 0:
                taken.append(Moved(one.lot.id, -take, batch.id, line.id))
                left -= take
        tx.move(taken, "consumed", place_id=workshop.id, on=on)
        if left > 0:
            raise Refused(
                f"{left} more of {line.material} are needed to wrap {good} bars; receive them, "
                "or add --unwrapped to pass the bars bare."
            )
    return tuple(used)


def _was_passed(rows: Rows, lot_id: int) -> bool:
    row = rows.execute("SELECT 1 FROM live_decision WHERE lot_id = ? AND verdict = 'passed'", (lot_id,)).fetchone()
    return row is not None


def _next(status: str, batch: BatchRow) -> str:
    return f" Next: soapledger release {batch.code}" if status == "passed" else ""


def release_bars(
    book: Book,
    code: str,
    *,
    on: date,
    by: str,
    retain: int = 0,
    kept_at: str = "the shelf of retained samples",
    keep_until: date | None = None,
    checks: Sequence[Check] = (),
    reason: str | None = None,
    anyway: str | None = None,
    bare: str | None = None,
) -> int:
    """Release bars that were passed for packing, setting retained samples aside; returns how many may leave.

    Raises Refused before they are passed, while on hold or rejected without a reason to lift it, for
    more samples than bars, while a print run of labels is not counted or a deviation is open, for a point of the
    recipe's checklist that nobody looked at or that is not good, where they are not covered by an assessment and a
    notification, or their labels are not usable that day (unless `anyway` gives a reason, which is kept with the
    decision), for bars with no label printed, or fewer labels on them than bars (unless `bare` gives one), and without
    a way round it, for bars that hold what every market of hers prohibits.
    """
    with book.write("release") as tx:
        batch, lot_id, here = _bars(tx.rows, code, on)
        _not_before_the_last(tx.rows, batch, lot_id, on)
        lot = lot_by_id(tx.rows, lot_id, on=on)
        if lot.status == "curing" or not _was_passed(tx.rows, lot_id):
            raise Refused(
                f"The bars of batch {batch.code} are not passed for packing yet: soapledger pass {batch.code}"
            )
        keep_what_is_barred(tx.rows, batch, on=on)
        decided, stale = (anyway or "").strip(), undecided_labels(tx.rows, batch, on)
        doubts = still_open(tx.rows, supply_doubts(tx.rows, batch, on=on), lot_id=lot_id)
        if lot.status == "released" and not (decided and (stale or doubts)):
            raise Refused(f"The bars of batch {batch.code} are released already.")
        if lot.status in ("on hold", "rejected") and not (reason or "").strip():
            raise Refused(
                f'The bars of batch {batch.code} are {lot.status}; to release them all the same, say why: --reason "…".'
            )
        if retain > here:
            raise Refused(f"Batch {batch.code} has {here} bars in the workshop; {retain} cannot be set aside.")
        labels_counted(tx.rows, batch, lot_id)
        deviations_decided(tx.rows, batch)
        bad: list[Doubt] = []
        if lot.status != "released":
            bad = book_checks(tx, batch, lot_id, checks, on=on, by=by, anyway=decided or None)
        if doubts and not decided:
            raise Refused(
                f"Batch {batch.code} is not covered by what was assessed: {list_words(doubts)}. See: soapledger recipe "
                f"assessment {batch.recipe_code} --batch {batch.code}. To release it all the same, add --anyway REASON."
            )
        if stale and not decided:
            raise Refused(f"{labels_refused(batch, stale)} To release it all the same, add --anyway REASON.")
        naked = bars_without_labels(tx.rows, batch, here - retain, on) if lot.status != "released" else None
        if naked and not (bare or "").strip():
            raise Refused(
                f"Batch {batch.code}: {naked[0].words}. Print them: {naked[1]}, then label count. Where bars are sold "
                "without a label, add --bare REASON."
            )
        reasons = [reason] if (reason or "").strip() else []
        reasons += [f"not good in {list_words(bad)}; released all the same: {decided}"] if bad else []
        reasons += [f"{UNCOVERED} ({list_words(doubts)}); released all the same: {decided}"] if doubts else []
        reasons += [f"{STALE} ({list_words(stale.values())}); released all the same: {decided}"] if stale else []
        reasons += [f"{naked[0].words}; released bare: {(bare or '').strip()}"] if naked else []
        said = "; ".join(map(str, reasons)) or None
        about = (*bad, *doubts, *stale.values(), *(naked or ())[:1])
        decide(tx, Decision(lot_id=lot_id, verdict="released", on=on, by=by, reason=said), about)
        if retain:
            keep_samples(tx, batch, lot_id, retain, on=on, kept_at=kept_at, until=keep_until)
            workshop, shelf = (place_of_kind(tx.rows, kind).id for kind in ("workshop", "retained"))
            tx.transfer([(lot_id, retain)], source_id=workshop, target_id=shelf, on=on, note="retained sample")
        tx.say(f"Released batch {batch.code}, {here - retain} bars.")
    return here - retain


def keep_what_is_barred(rows: Rows, batch: BatchRow, *, on: date) -> None:
    """Raise Refused for bars that hold what every market of hers prohibits, as far as is known here."""
    barred, another = barred_from_supply(rows, batch, on=on)
    if barred and not another:
        raise Refused(f"The bars of batch {batch.code} may not be supplied: {'; '.join(barred)}.")


def reject_bars(book: Book, code: str, *, on: date, by: str, reason: str) -> int:
    """Reject the bars of a batch; they stay here until thrown away or reworked. Returns how many.

    Raises BadInput without a reason, Refused before there are bars and when they are rejected already.
    """
    if not reason.strip():
        raise BadInput('Say why, so that it can be read later: --reason "…".')
    with book.write("reject") as tx:
        batch, lot_id, here = _bars(tx.rows, code, on)
        if lot_by_id(tx.rows, lot_id).status == "rejected":
            raise Refused(f"The bars of batch {batch.code} are rejected already.")
        _not_before_the_last(tx.rows, batch, lot_id, on)
        tx.add(Decision(lot_id=lot_id, verdict="rejected", on=on, by=by, reason=reason))
        tx.say(f"Rejected the bars of batch {batch.code}: {reason}.")
    return here
