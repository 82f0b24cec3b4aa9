"""The page of a lot: where it came from, which batches have something of it, and all that happened to it."""

from collections.abc import Iterator

from ledger.domain.bench.status import in_words
from ledger.rows.batch import BatchRow
from ledger.units.dates import show_best_before, show_date
from ledger.views.keep.batch_pages import reached_grid, went_into
from ledger.views.keep.everything import Everything
from ledger.views.keep.page import Page, Part
from ledger.views.record.pieces import Column, Facts, grid
from ledger.views.stock.lot_card import LotCard, lot_card


def lot_pages(known: Everything) -> Iterator[Page]:
    """One page for each lot that counts, bars apart: those stand on the page of their batch."""
    for lot in known.lots.values():
        if lot.kind != "soap":
            card = lot_card(known.rows, lot.code)
            yield Page(
                "lot", lot.code, lot.material, in_words(lot.status), _facts(known, card), tuple(_parts(known, card))
            )


def _facts(known: Everything, card: LotCard) -> Facts:
    lot, figures = card.lot, card.figures
    number = lot.supplier_number or ("own growing" if lot.supplier_own else "unknown")
    certificate = [lot.certificate or ""]
    if lot.sap_low_mg_per_kg is not None:
        certificate.append(f"saponification value {figures.sap_words()}")
    if lot.purity_ppm:
        certificate.append(f"purity {figures.purity_words()}")
    return Facts(
        (
            ("supplier", lot.supplier or ""),
            ("their number", number if lot.supplier else ""),
            ("from batch", lot.batch_code or ""),
            ("delivery note", card.note_number or ""),
            ("came" if lot.supplier else "made", show_date(lot.on)),
            ("best before", show_best_before(lot.best_before) if lot.best_before else ""),
            ("cost", known.money(lot.cost_minor)),
            ("certificate", "; ".join(filter(None, certificate))),
            ("here now", ", ".join(f"{place} {known.amount(held, lot)}" for place, held in card.here) or "nothing"),
            ("set aside for", ", ".join(f"{code} {known.amount(held, lot)}" for code, held in card.planned)),
        )
    )


def _parts(known: Everything, card: LotCard) -> Iterator[Part]:
    lot = card.lot
    reached = known.downstream(("lot", lot.id))
    of_it = Column[tuple[BatchRow, int]]("of this lot", lambda one: known.amount(one[1], lot), right=True)
    direct = [(batch, known.used.get((lot.id, batch.id), 0)) for batch, way in reached if not way]
    yield Part("Batches it went into", (went_into(known, direct, of_it),) if direct else (), "None.")
    further = tuple(one for one in reached if one[1])
    yield Part("Batches made from those", (reached_grid(known, further),) if further else ())
    yield Part(
        "What happened to it",
        (
            grid(
                card.movements,
                Column("on", lambda one: show_date(one.on)),
                Column("what", lambda one: one.what),
                Column("quantity", lambda one: known.amount(one.quantity, lot), right=True),
                Column("place", lambda one: one.place),
                Column("batch", lambda one: one.batch or ""),
                Column("note", lambda one: one.note or ""),
                Column("entry", lambda one: str(one.entry), right=True),
            ),
        ),
    )
    decided = grid(
        card.decisions,
        Column("on", lambda one: show_date(one.on)),
        Column("decided", lambda one: in_words(one.verdict), bold=True),
        Column("by", lambda one: one.by),
        Column("why", lambda one: one.reason or ""),
        Column("entry", lambda one: str(one.entry), right=True),
    )
    yield Part("What was decided", (decided,) if card.decisions else ())
    papers = grid(
        card.papers,
        Column("paper", lambda one: one.name),
        Column("kind", lambda one: one.kind),
        Column("SHA-256, the name of its file in data/papers", lambda one: one.sha256),
    )
    yield Part("Papers", (papers,) if card.papers else ())
