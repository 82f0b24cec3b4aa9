"""What is asked before bars go to a customer."""

from collections.abc import Mapping
from datetime import date

from ledger.cli.kit.desk import Desk, now
from ledger.domain.sale.pricing import Outlet
from ledger.operations.sale.booked import Outlets
from ledger.operations.sale.priced import Asked, Gone, priced
from ledger.rows.lot import find_lot
from ledger.rows.people import customer_by_code
from ledger.units.money import show_money
from ledger.views.sale.doubts import Taken, same_again, unlikely
from ledger.views.sell.order_doubts import order_doubts


def sale_doubts(
    here: Desk,
    customer: str,
    bars: Mapping[str, int],
    asked: Asked,
    on: date,
    received: int = 0,
    order: int | None = None,
) -> list[str]:
    """What to look at twice: the same sale once more, what orders wait for, a price that may be a slip, overpaying."""
    rows, currency = here.rows(), here.settings.currency
    outlet = Outlet(customer_id=customer_by_code(rows, customer).id)
    found = [(find_lot(rows, code), number) for code, number in bars.items()]
    lots = {lot.id: number for lot, number in found}
    again = same_again(rows, outlet, lots, on, now())
    first = [*([again] if again else []), *order_doubts(rows, found, order)]
    if asked.each_minor is None and not received:
        return first
    gone = [Gone(lot, number, None) for lot, number in lots.items()]
    lines = priced(rows, gone, Outlets(customer_id=outlet.customer_id), on=on, asked=asked)
    taken = [Taken(one.lot_id, one.bars, one.gross_minor) for one in lines if one.gross_minor is not None]
    slip = unlikely(rows, taken, outlet, on, currency) if asked.each_minor is not None else None
    total = sum(one.gross_minor - one.reduction_minor for one in lines if one.gross_minor is not None)
    over = None
    if received > total:
        over = f"{show_money(total, currency)} is what they come to, not {show_money(received, currency)}."
    return [*first, *(one for one in (slip, over) if one)]
