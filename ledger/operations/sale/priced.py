"""What bars that go to an outlet cost: a price each or the prices that hold there, what is off, the tax within."""

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from ledger.domain.sale.pricing import Outlet
from ledger.domain.sale.tax import tax_upon, tax_within
from ledger.errors import BadInput
from ledger.operations.sale.booked import Outlets, SoldBars
from ledger.rows.opened import Rows
from ledger.rows.sell.tax import recipes_of, taxes_at
from ledger.units.money import share_out
from ledger.views.sale.prices import LotWorth, worth_of


class Gone(NamedTuple):
    """Bars of one lot with the movement by which they went."""

    lot_id: int
    bars: int
    movement_id: int | None


class Asked(NamedTuple):
    """What is said of the price: of one bar (None: as the prices that hold say), and what is off of all together."""

    each_minor: int | None = None
    reduction_minor: int = 0
    on_top: bool = False  # the tax comes on top of the price


AS_PRICED = Asked()


def priced(rows: Rows, gone: Sequence[Gone], outlet: Outlets, *, on: date, asked: Asked = AS_PRICED) -> list[SoldBars]:
    """The lines of a sale of these bars; a lot without any price has no amount.

    Raises BadInput for more off than the bars cost, or for a tax on top where none is set.
    """
    each, holds = asked.each_minor, _worth(rows, gone, outlet, on) if asked.each_minor is None else {}
    whole = [_gross(one, each, holds.get(one.lot_id)) for one in gone]
    less = [holds[one.lot_id].reduction_minor if one.lot_id in holds else 0 for one in gone]
    net = [0 if gross is None else gross - off for gross, off in zip(whole, less, strict=True)]
    if asked.reduction_minor > sum(net):
        raise BadInput("That is more off than the bars cost together; look at --reduction and --price.")
    if asked.reduction_minor:
        more = share_out(asked.reduction_minor, net)
        less = [off + share for off, share in zip(less, more, strict=True)]
    taxes = taxes_at(rows, place_id=outlet.place_id, customer_id=outlet.customer_id, on=on)
    recipes = recipes_of(rows, [one.lot_id for one in gone]) if taxes.rates else {}
    lines = []
    for one, gross, off in zip(gone, whole, less, strict=True):
        line = SoldBars(one.lot_id, one.bars, one.movement_id, gross, off)
        rate = taxes.of(recipes.get(one.lot_id))
        if gross is not None and rate is not None and rate.rate_ppm is not None:
            tax = (tax_upon if asked.on_top else tax_within)(gross - off, rate.rate_ppm)
            line = line._replace(
                gross_minor=gross + tax if asked.on_top else gross, tax_ppm=rate.rate_ppm, tax_minor=tax
            )
        lines.append(line)
    if asked.on_top and all(line.tax_ppm is None for line in lines):
        raise BadInput("No tax is set there to come on top of the price; set it with: soapledger tax set RATE")
    return lines


def _gross(one: Gone, each: int | None, worth: LotWorth | None) -> int | None:
    if each is not None:
        return each * one.bars
    return worth.gross_minor if worth else None


def _worth(rows: Rows, gone: Sequence[Gone], outlet: Outlets, on: date) -> dict[int, LotWorth]:
    bars: dict[int, int] = {}
    for one in gone:
        bars[one.lot_id] = bars.get(one.lot_id, 0) + one.bars
    return worth_of(rows, bars, on=on, outlet=Outlet(outlet.place_id, outlet.customer_id))
