"""The page of a batch: its record, where every bar went and whom to call, what it was made from and what of it."""

from collections.abc import Iterable, Iterator
from typing import TypeVar

from ledger.rows.bars import BarCount, bars_with
from ledger.rows.batch import BatchRow
from ledger.units.dates import show_date
from ledger.views.keep.everything import Everything
from ledger.views.keep.page import Page, Part
from ledger.views.recall.recall import ToCall
from ledger.views.recall.recall_people import to_call
from ledger.views.record.head import Section
from ledger.views.record.pieces import Column, Facts, Grid, grid
from ledger.views.record.record import BatchRecord, batch_record
from ledger.views.record.where import Where

How = TypeVar("How")
_HEADED = ("status",)  # what stands in the title already
_NAMED = 4  # steps of the way from a supplier's lot; a drum that is topped up for years makes ways of hundreds


def batch_pages(known: Everything) -> Iterator[Page]:
    """One page for each batch that counts, the latest first."""
    for batch in reversed(known.batches.values()):
        record = batch_record(known.rows, batch.code, program=known.program)
        yield Page(
            "batch",
            batch.code,
            batch.product,
            status=record.head.status,
            facts=Facts(tuple(pair for pair in record.head.paper().pairs if pair[0] not in _HEADED)),
            parts=(*_parts(known, batch, record), _made_from(known, batch), _made_of_it(known, batch)),
        )


def _parts(known: Everything, batch: BatchRow, record: BatchRecord) -> Iterator[Part]:
    """Where its bars are and whom to call first, since that is what is asked; then the record as it is printed."""
    counts = known.counts.get(batch.yield_lot_id or 0, [])
    if batch.soap:
        yield Part(
            Where.title, (_where(known, counts), *record.where.paper(record.head)[1:]) if counts else (), "No bars yet."
        )
        call = _to_call(known, batch)
        yield Part("Whom to call", (_called(call),) if call else (), "Nobody on the books has bars of it.")
    for section in record.on_paper:
        if not isinstance(section, Where):
            yield _section(section, record)


def _section(section: Section, record: BatchRecord) -> Part:
    return Part(section.title, section.paper(record.head))


def _where(known: Everything, counts: list[BarCount]) -> Grid:
    def detail(one: BarCount) -> str:
        if one.customer_id is None:
            return one.detail if one.detail != one.where else ""
        return known.customers[one.customer_id].name

    return grid(
        counts,
        Column("bars", lambda one: str(one.count), right=True, bold=True),
        Column("where", lambda one: "came back" if one.where == "returned" and one.left else one.where),
        Column("place, name or why", detail),
        Column("on", lambda one: show_date(one.on) if one.on else "now"),
    )


def _to_call(known: Everything, batch: BatchRow) -> tuple[ToCall, ...]:
    """Whoever has bars of it or complained of one, in the order of a recall: whom it harmed first."""
    lots = [batch.yield_lot_id] if batch.yield_lot_id else []
    grave, others = (known.complained[of].get(batch.code, []) for of in (0, 1))
    return (*grave, *others, *to_call(bars_with(known.rows, lots), known.customers))


def _called(found: tuple[ToCall, ...]) -> Grid:
    return grid(
        found,
        Column("name", lambda one: one.name),
        Column("telephone", lambda one: one.phone or "not known here"),
        Column("email", lambda one: one.email or ""),
        Column("bars", lambda one: str(one.bars or ""), right=True),
        Column("last on", lambda one: show_date(one.last_on)),
    )


def _made_from(known: Everything, batch: BatchRow) -> Part:
    """Every supplier's lot behind it, at any depth."""
    closure = known.graph.upstream([("batch", batch.id)])
    lots = [known.lots[one] for one in closure.of_kind("lot") if one in known.lots and known.lots[one].supplier_id]
    table = grid(
        sorted(lots, key=lambda lot: (lot.material.casefold(), lot.id)),
        Column("lot", lambda lot: lot.code, bold=True),
        Column("material", lambda lot: lot.material),
        Column("supplier", lambda lot: lot.supplier or ""),
        Column("their number", lambda lot: lot.supplier_number or ("own growing" if lot.supplier_own else "unknown")),
        Column("through", lambda lot: ", ".join(known.codes(closure.paths["lot", lot.id][1:-1][:_NAMED]))),
    )
    return Part("Back to the suppliers' lots", (table,))


def _made_of_it(known: Everything, batch: BatchRow) -> Part:
    reached = known.downstream(("batch", batch.id))
    return Part("Batches that something of it went into", (reached_grid(known, reached),) if reached else ())


def reached_grid(known: Everything, reached: tuple[tuple[BatchRow, tuple[str, ...]], ...]) -> Grid:
    """Batches that something reached, with their bars; of a long way its last steps are named, each with its page."""
    return went_into(known, reached, Column("through", lambda one: ", ".join(one[1][-_NAMED:]) or "directly"))


def went_into(known: Everything, found: Iterable[tuple[BatchRow, How]], how: Column[tuple[BatchRow, How]]) -> Grid:
    """Batches with their bars, and in one column how they come to be here."""
    return grid(
        sorted(found, key=lambda one: (one[0].on, one[0].id)),
        Column("batch", lambda one: one[0].code, bold=True),
        Column("product", lambda one: one[0].product),
        Column("on", lambda one: show_date(one[0].on)),
        how,
        Column("status", lambda one: one[0].status),
        Column("bars", lambda one: str(one[0].made) if one[0].soap and one[0].yield_lot_id else "", right=True),
        Column("here", lambda one: str(known.bars_here(one[0])) if one[0].soap else "", right=True),
    )
