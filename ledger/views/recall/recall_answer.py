"""Works out the answer to a recall from the movements."""

from collections import Counter
from collections.abc import Mapping, Sequence
from itertools import groupby

from ledger.domain.stock.graph import Closure, Node
from ledger.rows.bars import BarCount, back_on_sale, bar_counts, bars_with
from ledger.rows.batch import BatchRow, batches_by_id
from ledger.rows.lot import LotRow, lots_by_id, where_lots_are
from ledger.rows.movement import came_in, graph_from, taken_into
from ledger.rows.opened import Rows
from ledger.rows.people import CustomerCard, customer_list
from ledger.rows.settings import printed_from, settings
from ledger.views.recall.recall import (
    BarsAt,
    BulkAt,
    NamedLot,
    ReachedBatch,
    RecallAnswer,
    ToCall,
)
from ledger.views.recall.recall_complaints import complainants
from ledger.views.recall.recall_doubts import cannot_exclude
from ledger.views.recall.recall_totals import totals

STOPPED = ("on hold", "rejected")


def recall_answer(
    rows: Rows,
    named: Sequence[LotRow],
    *,
    bars_of: Sequence[BatchRow] = (),
    asked: Sequence[str],
    program: str,
    exercise: bool = False,
    held: bool = False,
) -> RecallAnswer:
    """Every batch, bar and customer that the named lots reach, at any depth, with totals that reconcile.

    `bars_of` asks for batches themselves and what was made from them: what shares their lots is not reached.
    """
    closure = reached_from(rows, named, bars_of)
    lots = lots_by_id(rows, closure.of_kind("lot"))
    made = batches_by_id(rows, closure.of_kind("batch"))
    reached = [number for number in closure.of_kind("batch") if number in made]
    reached.sort(key=lambda number: (made[number].on, number))
    named_ids = {lot.id for lot in named}
    bar_lots = [lots[number] for number in closure.of_kind("lot") if lots[number].kind == "soap"]
    bulk = [
        lots[number] for number in closure.of_kind("lot") if lots[number].kind != "soap" and number not in named_ids
    ]
    bar_lots.sort(key=lambda lot: (lot.on, lot.id))
    lying, used = where_lots_are(rows, [lot.id for lot in bulk]), _used(rows, closure, lots)
    customers = {card.id: card for card in customer_list(rows)}
    counts = bar_counts(rows, [lot.id for lot in bar_lots])
    received = came_in(rows, [*named_ids, *(lot.id for lot in bar_lots)])
    here = [lots[number] for number in sorted(closure.of_kind("lot")) if lots[number].on_hand]
    grave, others = complainants(rows, {lot.code for lot in bar_lots})
    own = settings(rows)
    return RecallAnswer(
        business=own.business,
        units=own.units,
        asked=tuple(asked),
        lots=tuple(_named(lots[lot.id], received[lot.id]) for lot in named),
        batches=tuple(_reached(made[number], closure, lots, made, used) for number in reached),
        bars=tuple(_bars(one, lots[one.lot_id], customers) for one in counts),
        bulk=tuple(
            BulkAt(lot.code, lot.material, place.name, quantity, lot.counted, lot.status)
            for lot in bulk
            for place, quantity in lying.get(lot.id, ())
        ),
        call=(*grave, *to_call(rows, bar_lots, customers), *others),
        totals=totals(counts, sum(received[lot.id] for lot in bar_lots)),
        cannot_exclude=cannot_exclude(rows, named, counts, asked=bars_of, reached=reached, lots=lots),
        exercise=exercise,
        held=held,
        printed_from=printed_from(rows, program),
        bars_of=tuple(batch.code for batch in bars_of),
        back_on_sale=back_on_sale(rows, [lot.id for lot in bar_lots]),
        stoppable=tuple(lot.code for lot in here if lot.status not in STOPPED),
        stopped=tuple(status for status in STOPPED if any(lot.status == status for lot in here)),
    )


def reached_from(rows: Rows, named: Sequence[LotRow], bars_of: Sequence[BatchRow]) -> Closure:
    """Everything the named lots went into, and all that came of the batches asked for themselves."""
    starts: list[Node] = [*(("lot", lot.id) for lot in named), *(("batch", batch.id) for batch in bars_of)]
    return graph_from(rows, starts, "down").downstream(starts)


def _named(lot: LotRow, received: int) -> NamedLot:
    return NamedLot(
        lot_code=lot.code,
        material=lot.material,
        supplier=lot.supplier or f"batch {lot.batch_code}",
        supplier_lot=lot.supplier_number,
        received_on=lot.on,
        received=received,
        on_hand=lot.on_hand,
        pieces=lot.counted,
        status=lot.status,
    )


def _used(rows: Rows, closure: Closure, lots: Mapping[int, LotRow]) -> Counter[tuple[int, bool]]:
    """What each batch reached took of all reached lots: by the batch, and whether they are counted."""
    used = Counter[tuple[int, bool]]()
    for one in taken_into(rows, closure.of_kind("batch")):
        if one.lot_id in lots:
            used[one.batch_id, lots[one.lot_id].counted] += one.quantity
    return used


def _reached(
    batch: BatchRow,
    closure: Closure,
    lots: Mapping[int, LotRow],
    made: Mapping[int, BatchRow],
    used: Counter[tuple[int, bool]],
) -> ReachedBatch:
    """A batch with the shortest way to it, and what it took of all reached lots counted as the last on that way."""
    path = closure.paths["batch", batch.id]
    codes = (lots[n].code if kind == "lot" else made[n].code for kind, n in path)
    through = tuple(code for code, _ in groupby(codes))  # bars have the code of their batch: named once
    pieces = len(path) > 1 and lots[path[-2][1]].counted
    return ReachedBatch(
        batch_code=batch.code,
        product=batch.product,
        made_on=batch.on,
        status=batch.status,
        through=through,
        used=used[batch.id, pieces] if len(path) > 1 else None,
        pieces=pieces,
        bars_made=batch.made if batch.soap else 0,
        yields_bars=batch.soap,
    )


def _bars(one: BarCount, lot: LotRow, customers: dict[int, CustomerCard]) -> BarsAt:
    customer = customers.get(one.customer_id) if one.customer_id is not None else None
    return BarsAt(
        batch_code=lot.code,
        product=lot.material,
        where="came back" if one.where == "returned" and one.left else one.where,
        detail=customer.name if customer else one.detail,
        on=one.on,
        count=one.count,
        left=one.left,
        contact=_contact(customer),
    )


def _contact(customer: CustomerCard | None) -> str | None:
    if customer is None:
        return None
    return ", ".join(word for word in (customer.person, customer.phone, customer.email) if word) or None


def to_call(rows: Rows, bar_lots: Sequence[LotRow], customers: dict[int, CustomerCard]) -> tuple[ToCall, ...]:
    """Everyone who has bars; someone who gave all of theirs back is called no more."""
    found = []
    for one in bars_with(rows, [lot.id for lot in bar_lots]):
        if one.customer_id is None:
            name = f"{one.note or 'someone not named'} (a gift)"
            found.append(ToCall(name, None, None, None, one.bars, one.codes, one.last_on))
            continue
        card = customers[one.customer_id]
        found.append(
            ToCall(
                name=card.name + (f" ({card.person})" if card.kind == "shop" and card.person else ""),
                phone=card.phone,
                email=card.email,
                address=card.address,
                bars=one.bars,
                batches=one.codes,
                last_on=one.last_on,
            )
        )
    return tuple(sorted(found, key=lambda one: (-one.bars, one.name)))
