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


def sale_doubts(
    here: Desk, customer: str, bars: Mapping[str, int], asked: Asked, on: date, received: int = 0
) -> list[str]:
    """What to look at twice: the same sale once more, a price that may be a slip, more paid than it comes to."""
    rows, currency = here.rows(), here.settings.currency
    outlet = Outlet(customer_id=customer_by_code(rows, customer).id)
    lots = {find_lot(rows, code).id: number for code, number in bars.items()}
    again = same_again(rows, outlet, lots, on, now())
    if asked.each_minor is None and not received:
        return [again] if again else []
    gone = [Gone(lot, number, None) for lot, number in lots.items()]
    lines = priced(rows, gone, Outlets(customer_id=outlet.customer_id), on=on, asked=asked)
    taken = [Taken(one.lot_id, one.bars, one.gross_minor) for one in lines if one.gross_minor is not None]
    slip = unlikely(rows, taken, outlet, on, currency) if asked.each_minor is not None else None
    total = sum(one.gross_minor - one.reduction_minor for one in lines if one.gross_minor is not None)
    over = None
    if received > total:
        over = f"{show_money(total, currency)} is what they come to, not {show_money(received, currency)}."
    return [one for one in (again, slip, over) if one]
