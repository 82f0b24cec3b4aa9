"""What goes with bars to a customer: the delivery note, and whose address stands on the parcel."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput, LedgerError, Refused
from ledger.markets import home_markets
from ledger.rows.batch import BatchRow, batches_by_id
from ledger.rows.lot import LotRow, lots_by_id
from ledger.rows.opened import Rows
from ledger.rows.people import contacts
from ledger.rows.recipe import versions_by_id
from ledger.rows.sell.sale import lines_of, sales_by_id
from ledger.rows.sell.terms import brought_by, note_with
from ledger.rows.settings import PrintedFrom, Responsible, Settings, printed_from, settings
from ledger.units.dates import show_best_before
from ledger.units.quantity import show_mass
from ledger.views.label.label import label_text
from ledger.views.shop.invoice import seller_of


class DeliveredLine(NamedTuple):
    """Bars of one batch that went, with what stands on their label."""

    product: str
    batch: str
    bars: int
    best_before: str  # as on the label, or the period after opening; empty where neither is known
    net_weight: str  # of one bar, as on the label


@dataclass(frozen=True)
class Delivery:
    """One delivery as its note tells it."""

    name: str  # sale 12, or delivery 34 where no sale is booked yet
    on: date
    consignment: bool
    order: int | None
    note: str | None
    seller: Responsible
    business: str
    phone: str | None
    customer: str
    customer_address: str | None
    customer_phone: str | None
    lines: tuple[DeliveredLine, ...]
    printed_from: PrintedFrom

    @property
    def bars(self) -> int:
        """All that went."""
        return sum(one.bars for one in self.lines)


def delivery(rows: Rows, *, sale: int | None = None, entry: int | None = None, program: str) -> Delivery:
    """The delivery that a sale booked or that an entry took to a shop on sale or return.

    Raises BadInput for one that is not there, Refused for one with no bars, or to nobody on the books.
    """
    own = settings(rows)
    order = None
    if sale is not None:
        found = sales_by_id(rows, [sale]).get(sale)
        if found is None or found.kind != "sale":
            raise BadInput(f"There is no sale {sale}; see: soapledger sale list")
        if found.customer_id is None:
            raise Refused(f"Sale {sale} is to nobody on the books, so no delivery note goes with it.")
        if found.place_id is not None:
            raise Refused(f"Sale {sale} is a shop's count; what was brought there has a note by its entry: --entry N")
        bars = [(one.lot_id, one.bars) for one in lines_of(rows, [sale])[sale] if one.lot_id is not None]
        customer, on, order, name, horizon = found.customer_id, found.on, found.order_id, f"sale {sale}", found.entry
    else:
        assert entry is not None
        brought = brought_by(rows, entry)
        if not brought:
            raise BadInput(f"Entry {entry} took nothing to a shop on sale or return; see: soapledger history")
        bars = [(one.lot_id, one.bars) for one in brought]
        customer, on, name, horizon = brought[0].customer_id, brought[0].on, f"delivery {entry}", entry
    if not bars:
        raise Refused(f"No bars went with {name}.")
    card = contacts(rows, [customer])[customer]
    return Delivery(
        name,
        on,
        sale is None,
        order,
        note_with(rows, horizon),
        seller_of(own),
        own.business,
        own.phone,
        card.name,
        card.address,
        card.phone,
        _lines(rows, bars, own, on),
        printed_from(rows, program, entry=horizon),
    )


def _lines(rows: Rows, bars: Sequence[tuple[int, int]], own: Settings, on: date) -> tuple[DeliveredLine, ...]:
    lots = lots_by_id(rows, {lot for lot, _ in bars})
    batches = batches_by_id(rows, {lot.batch_id for lot in lots.values() if lot.batch_id is not None})
    recipes = versions_by_id(rows, {one.recipe_version_id for one in batches.values() if one.recipe_version_id})
    found = []
    for number, many in bars:
        lot = lots[number]
        batch = batches.get(lot.batch_id or 0)
        until, net = _on_the_label(rows, lot, batch, own, on)
        recipe = recipes.get(batch.recipe_version_id or 0) if batch else None
        if not net and recipe and recipe.net_weight_mg:
            net = show_mass(recipe.net_weight_mg, own.units)
        found.append(DeliveredLine(lot.material, lot.code, many, until, net))
    return tuple(found)


def _on_the_label(rows: Rows, lot: LotRow, batch: BatchRow | None, own: Settings, on: date) -> tuple[str, str]:
    """The date and the weight as the label of her own market tells them; what it cannot tell is empty."""
    until = show_best_before(lot.best_before) if lot.best_before else ""
    laws = home_markets(own.addresses.keys(), own.country)
    if batch is None or not laws:
        return until, ""
    try:
        label = label_text(rows, batch.code, laws[0].code, on=on, checking=True)
    except LedgerError:
        return until, ""
    opened = f"{label.after_opening_months} months after opening" if label.after_opening_months else ""
    return until or label.best_before or opened, label.net_quantity
