"""What bars brought by outlet, less what came back and what selling cost, and what is gained on each."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from fractions import Fraction
from typing import NamedTuple

from ledger.units.money import half_up, share_out

Outlet = tuple[int | None, int | None]  # a place, a customer


class Brought(NamedTuple):
    """Bars of one lot that were sold for so much at an outlet; below zero: given back."""

    outlet: Outlet
    bars: int
    money_minor: int
    tax_minor: int


class Charge(NamedTuple):
    """A fee of a sale, and the lines of that sale: (lot, bars, amount)."""

    outlet: Outlet
    amount_minor: int
    lines: Sequence[tuple[int | None, int, int]]


class OutletSum(NamedTuple):
    """What bars of one lot brought at one outlet."""

    outlet: Outlet
    bars: int
    taken_minor: int
    returned_minor: int  # given back for bars that came back, and credited
    tax_minor: int  # in what was taken, less what was given back
    fees_minor: int

    @property
    def left_minor(self) -> int:
        """What is left of it for her."""
        return self.taken_minor - self.returned_minor - self.tax_minor - self.fees_minor


def by_outlet(brought: Iterable[Brought], charges: Iterable[Charge], lot_id: int) -> tuple[OutletSum, ...]:
    """What bars of a lot brought, outlet by outlet, in the order in which they were first sold there."""
    sums: dict[Outlet, list[int]] = defaultdict(lambda: [0] * 5)
    for one in brought:
        found = sums[one.outlet]
        found[0] += one.bars
        found[2 if one.money_minor < 0 else 1] += abs(one.money_minor)
        found[3] += one.tax_minor
    for charge in charges:
        if share := fee_share(charge, lot_id):
            sums[charge.outlet][4] += share
    return tuple(OutletSum(outlet, *found) for outlet, found in sums.items())


def fee_share(charge: Charge, lot_id: int) -> int:
    """What bars of a lot bear of a fee: by the amounts of the sale's lines, by their bars where none has any.

    A fee of a return or a credit is what was given back of one, and is shared by what was taken back.
    """
    sign = -1 if charge.amount_minor < 0 else 1
    weights = [max(sign * amount, 0) for _, _, amount in charge.lines]
    if not any(weights):
        weights = [max(bars, 0) for _, bars, _ in charge.lines]
    if not any(weights):
        return 0
    shares = share_out(charge.amount_minor, weights)
    return sum(share for (lot, _, _), share in zip(charge.lines, shares, strict=True) if lot == lot_id)


def gain_each(left_minor: int, cost_minor: int, bars: int) -> int | None:
    """What is gained on each of so many bars, half up; None of none."""
    return half_up(Fraction(left_minor - cost_minor, bars)) if bars > 0 else None
