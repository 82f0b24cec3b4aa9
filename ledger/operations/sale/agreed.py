"""What bars cost a customer with whom something was agreed: the price that holds, less their reduction."""

from collections.abc import Mapping, Sequence
from datetime import date
from fractions import Fraction

from ledger.errors import BadInput
from ledger.operations.sale.booked import Outlets, SoldBars
from ledger.operations.sale.priced import Asked, Gone, priced
from ledger.rows.opened import Rows
from ledger.rows.sell.terms import Terms
from ledger.units.money import half_up
from ledger.units.quantity import WHOLE_PPM


def agreed_price(
    rows: Rows,
    gone: Sequence[Gone],
    outlet: Outlets,
    *,
    on: date,
    asked: Asked,
    terms: Terms | None,
    promised: Mapping[int, int] | None = None,
) -> list[SoldBars]:
    """The lines of a sale of these bars; `promised` is what one bar of a lot was promised for on an order.

    The reduction that is agreed is off the prices that hold; a price that is typed or was promised stays as it is.
    Raises BadInput as `priced`, or for something off of all together where some were promised at prices of their own.
    """
    own = {} if asked.each_minor is not None else promised or {}
    rest = [one for one in gone if one.lot_id not in own]
    if asked.reduction_minor and own and (rest or len({*own.values()}) > 1):
        raise BadInput("The bars have prices of their own on the order; leave --reduction out, or say one --price.")
    lines = {}
    for each in {*own.values()}:
        mine = [one for one in gone if own.get(one.lot_id) == each]
        less = asked.reduction_minor if len(mine) == len(gone) else 0
        for line in priced(rows, mine, outlet, on=on, asked=asked._replace(each_minor=each, reduction_minor=less)):
            lines[line.movement_id, line.lot_id] = line
    for line in _less(rows, rest, outlet, on, asked, terms):
        lines[line.movement_id, line.lot_id] = line
    return [lines[one.movement_id, one.lot_id] for one in gone]


def _less(
    rows: Rows, gone: Sequence[Gone], outlet: Outlets, on: date, asked: Asked, terms: Terms | None
) -> list[SoldBars]:
    if not gone:
        return []
    lines = priced(rows, gone, outlet, on=on, asked=asked)
    share = terms.reduction_ppm if terms and asked.each_minor is None else None
    if not share:
        return lines
    top = sum(one.tax_minor or 0 for one in lines) if asked.on_top else 0
    net = sum((one.gross_minor or 0) - one.reduction_minor for one in lines) - top
    off = half_up(Fraction(net * share, WHOLE_PPM))
    return priced(rows, gone, outlet, on=on, asked=asked._replace(reduction_minor=asked.reduction_minor + off))
