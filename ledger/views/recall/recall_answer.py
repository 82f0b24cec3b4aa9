"""Works out the answer to a recall from the movements."""

from collections.abc import Mapping, Sequence

from ledger.rows.bars import BarCount, back_on_sale, bar_counts, bars_with
from ledger.rows.batch import BatchRow, batches_by_id
from ledger.rows.complaint import complaints_about
from ledger.rows.lot import LotRow, lots_by_id, where_lots_are
from ledger.rows.opened import Rows
from ledger.rows.people import Contact, contacts
from ledger.rows.reached import Booked, booked
from ledger.rows.settings import printed_from, settings
from ledger.views.recall.reach import Reach, Starts, Way, reach, ways
from ledger.views.recall.recall import BarsAt, BulkAt, CannotBeExcluded, Holdable, NamedLot, ReachedBatch, RecallAnswer
from ledger.views.recall.recall_assumed import assumed_bars
from ledger.views.recall.recall_complaints import complainants
from ledger.views.recall.recall_doubts import cannot_exclude
from ledger.views.recall.recall_next import look_next
from ledger.views.recall.recall_people import contact_words, sold_at, to_call
from ledger.views.recall.recall_totals import differences, totals

STOPPED = ("on hold", "rejected")


def recall_answer(
    rows: Rows,
    named: Sequence[LotRow],
    *,
    bars_of: Sequence[BatchRow] = (),
    labelled: Sequence[BatchRow] = (),
    asked: Sequence[str],
    program: str,
    exercise: bool = False,
    held: bool = False,
) -> RecallAnswer:
    """Every batch, bar and customer that the named lots reach, at any depth, with totals that reconcile.

    `bars_of` asks for batches themselves and what was made from them: what shares their lots is not reached.
    `labelled` asks for the bars of batches alone, for what is round them.
    """
    starts = Starts(tuple(named), tuple(bars_of), tuple(labelled))
    found = reach(rows, starts)
    lots = lots_by_id(rows, found.lots)
    made = batches_by_id(rows, found.batches)
    batches = sorted(found.batches, key=lambda number: (made[number].on, number))
    named_ids = {lot.id for lot in named}
    bar_lots = [lots[number] for number in found.lots if lots[number].kind == "soap"]
    bar_lots.sort(key=lambda lot: (lot.on, lot.id))
    bars = [lot.id for lot in bar_lots]
    bulk = [lots[number] for number in found.lots if lots[number].kind != "soap" and number not in named_ids]
    lying = where_lots_are(rows, [lot.id for lot in bulk])
    counts = bar_counts(rows, bars)
    books = booked(rows, [*named_ids, *bars])
    here = [lots[number] for number in sorted(found.lots) if lots[number].on_hand]
    since = min((lot.on for lot in bar_lots), default=None)
    about = complaints_about(rows, bars, since) if since else []
    grave, others = complainants(about, {lot.code for lot in bar_lots})
    holders = bars_with(rows, bars)
    people = {*(one.customer_id for one in counts), *(one.customer_id for one in holders)} - {None}
    known = contacts(rows, [number for number in people if number is not None])
    assumed = assumed_bars(rows, bars)
    own, ends = settings(rows), ways(found, lots, made)
    cut = {lot: books[lot].received for lot in bars}
    return RecallAnswer(
        business=own.business,
        units=own.units,
        asked=tuple(asked),
        lots=tuple(_named(lots[lot.id], books[lot.id], own.scale_step_mg) for lot in named),
        batches=tuple(_reached(made[number], found, ends["batch", number], books) for number in batches),
        bars=tuple(_bars(one, lots[one.lot_id], known) for one in counts),
        bulk=tuple(
            BulkAt(lot.code, lot.material, place.name, quantity, lot.counted, lot.status)
            for lot in bulk
            for place, quantity in lying.get(lot.id, ())
        ),
        call=(*grave, *others, *to_call(holders, known)),
        totals=totals(counts, sum(cut.values())),
        cannot_exclude=(
            *cannot_exclude(rows, named, counts, about, asked=bars_of, reached=batches, lots=lots),
            *(CannotBeExcluded(one.what, one.why) for one in assumed),
        ),
        exercise=exercise,
        held=held,
        printed_from=printed_from(rows, program),
        bars_of=tuple(batch.code for batch in bars_of),
        back_on_sale=back_on_sale(rows, bars),
        stoppable=tuple(
            Holdable(lot.code, lot.material, lot.on_hand, lot.counted, lot.kind == "soap")
            for lot in here
            if lot.status not in STOPPED
        ),
        stopped=tuple(status for status in STOPPED if any(lot.status == status for lot in here)),
        differences=differences(counts, cut, {lot.id: lot.code for lot in bar_lots}),
        notices=sold_at(counts, lots),
        look_next=look_next(rows, starts, frozenset(batches)),
        labels_of=tuple(batch.code for batch in labelled),
        may_be=assumed,
    )


def _named(lot: LotRow, books: Booked, step_mg: int) -> NamedLot:
    return NamedLot(
        lot_code=lot.code,
        material=lot.material,
        supplier=lot.supplier or f"batch {lot.batch_code}",
        supplier_lot=lot.supplier_number,
        received_on=lot.on,
        received=books.received,
        on_hand=lot.on_hand,
        pieces=lot.counted,
        status=lot.status,
        into_batches=books.into_batches,
        returned=books.returned,
        wasted=books.wasted,
        unexplained=books.unexplained,
        within=0 if lot.counted else books.weighed * step_mg // 2,
    )


def _reached(batch: BatchRow, found: Reach, way: Way, books: Mapping[int, Booked]) -> ReachedBatch:
    """A batch with the shortest way to it, and what of the named lots is in it: by weight, or in pieces round it."""
    asked, whole = way.asked, found.found.whole.get(batch.id, ("", 0))[1]
    inside, pieces = found.inside.pots[batch.id], found.wrapped_in(batch.id)
    round_it = not inside.fine and pieces > 0
    bar = found.inside.lots.get(batch.yield_lot_id or 0) if batch.soap and not asked and not round_it else None
    bars = books[batch.yield_lot_id].received if bar and batch.yield_lot_id else 0
    return ReachedBatch(
        batch_code=batch.code,
        product=batch.product,
        made_on=batch.on,
        status=batch.status,
        first=way.first,
        last=way.last,
        steps=way.steps,
        used=None if asked else pieces if round_it else inside.mg,
        pieces=round_it,
        bars_made=batch.made if batch.soap else 0,
        yields_bars=batch.soap,
        after=way.after,
        share_ppm=None if asked or round_it or not whole else inside.ppm(whole),
        in_a_bar_ug=bar.micrograms(bars) if bar and bars else None,
        at_most=inside.at_most,
    )


def _bars(one: BarCount, lot: LotRow, known: Mapping[int, Contact]) -> BarsAt:
    customer = known.get(one.customer_id) if one.customer_id is not None else None
    return BarsAt(
        batch_code=lot.code,
        product=lot.material,
        where="came back" if one.where == "returned" and one.left else one.where,
        detail=customer.name if customer else one.detail,
        on=one.on,
        count=one.count,
        left=one.left,
        contact=contact_words(customer),
    )
