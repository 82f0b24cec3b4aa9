"""Bars passed for packing, released or rejected: decisions by a named person."""

from dataclasses import dataclass, replace
from datetime import date

from ledger.domain.release.bars import Passing, may_pass, may_reject
from ledger.domain.release.releasing import Releasing, may_release
from ledger.errors import BadInput, Refused
from ledger.operations.release.facts import bars_of, finished_of, supply_of
from ledger.operations.release.first_supply import FirstSupplied, before_of, write_first_supply
from ledger.operations.release.release_checks import keep_samples
from ledger.operations.stock.decide import decide
from ledger.rows.batch import BatchRow, find_batch, plan_lines
from ledger.rows.lot import available, place_of_kind
from ledger.storage.book import Book
from ledger.storage.tables.decision import Decision
from ledger.storage.tables.release import FinishedCheck
from ledger.storage.transaction import Transaction
from ledger.storage.verbs import Moved
from ledger.views.cure.weighed import still_losing
from ledger.views.lye.lye_check import lye_check


@dataclass(frozen=True)
class Passed:
    """Bars that may be packed, and the wrapping booked for them by material."""

    good: int
    wrapping: tuple[tuple[str, int], ...]


def pass_bars(book: Book, code: str, asked: Passing) -> Passed:
    """Pass cured bars for packing; bars that are no good are booked as waste, wrapping as used.

    Raises like `may_pass`, and Refused where there are no bars or too little wrapping.
    """
    with book.write("pass") as tx:
        batch = find_batch(tx.rows, code)
        bars, lot_id = bars_of(tx.rows, batch, asked.on)
        dough = find_batch(tx.rows, batch.part_of) if batch.part_of else batch  # of a portion, where the lye went in
        assert batch.ready_on is not None
        superfat = lye_check(tx.rows, dough.id).superfat_ppm
        settled = may_pass(
            bars,
            asked,
            ready_on=batch.ready_on,
            superfat_ppm=superfat,
            losing=still_losing(tx.rows, batch, on=asked.on),
        )
        workshop, good = place_of_kind(tx.rows, "workshop"), bars.here - asked.wasted
        if asked.wasted:
            lost = Moved(lot_id, -asked.wasted, note=asked.reason)
            tx.move([lost], "wasted", place_id=workshop.id, on=asked.on)
        wrapping = () if asked.unwrapped else _wrap(tx, batch, good, asked.on)
        decision = Decision(lot_id=lot_id, verdict="passed", on=asked.on, by=asked.by, reason=settled.reason)
        decide(tx, decision, settled.doubts)
        tx.say(f"Passed {good} bars of batch {batch.code} for packing.")
    return Passed(good, wrapping)


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


def release_bars(book: Book, code: str, asked: Releasing, first: FirstSupplied | None = None) -> int:
    """Release bars that were passed for packing, setting retained samples aside; returns how many may leave.

    Raises like `may_release`, and Refused where there are no bars.
    """
    with book.write("release") as tx:
        batch = find_batch(tx.rows, code)
        bars, lot_id = bars_of(tx.rows, batch, asked.on)
        supply, finished = supply_of(tx.rows, batch, asked.on), finished_of(tx.rows, batch, asked.on)
        settled = may_release(bars, supply, finished, replace(asked, before=before_of(tx.rows, lot_id, first)))
        if settled.by_first_supply and first:
            write_first_supply(tx, lot_id, first, bars.here - asked.retain, on=asked.on, back=True)
        for one in settled.checks:
            tx.add(
                FinishedCheck(
                    lot_id=lot_id, on=asked.on, by=asked.by, what=one.what, found=one.found, good=int(one.good)
                )
            )
        decision = Decision(lot_id=lot_id, verdict="released", on=asked.on, by=asked.by, reason=settled.reason)
        decide(tx, decision, settled.doubts)
        if asked.retain:
            keep_samples(tx, batch, lot_id, asked)
        leaving = bars.here - asked.retain - settled.kept
        tx.say(f"Released batch {batch.code}, {leaving} bars.")
    return leaving


def reject_bars(book: Book, code: str, *, on: date, by: str, reason: str) -> int:
    """Reject the bars of a batch; they stay here until thrown away or reworked. Returns how many.

    Raises BadInput without a reason, Refused before there are bars, and like `may_reject`.
    """
    if not reason.strip():
        raise BadInput('Say why, so that it can be read later: --reason "…".')
    with book.write("reject") as tx:
        batch = find_batch(tx.rows, code)
        bars, lot_id = bars_of(tx.rows, batch, on)
        may_reject(bars, on)
        tx.add(Decision(lot_id=lot_id, verdict="rejected", on=on, by=by, reason=reason))
        tx.say(f"Rejected the bars of batch {batch.code}: {reason}.")
    return bars.here
