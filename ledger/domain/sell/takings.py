"""What was taken at a stall: by cash and card, for bars and for other goods, and what it differs by."""

from collections.abc import Mapping
from typing import NamedTuple

from ledger.errors import BadInput
from ledger.units.money import share_out
from ledger.units.words import PaidBy

BY: dict[PaidBy, str] = {"cash": "in cash", "card": "by card", "bank": "by bank", "other": "in all"}


class Takings(NamedTuple):
    """What was told of the money of a day; None where nothing was, which is not nothing."""

    cash_minor: int | None = None  # as counted in the box
    float_minor: int | None = None  # of that, what was in it in the morning
    card_minor: int | None = None
    whole_minor: int | None = None  # in all, where nobody parts it
    other_minor: int = 0  # of that, for goods that are not in the ledger
    complete: bool = False  # somebody says that nothing more comes
    reason: str | None = None  # for a difference, where somebody gives one

    @property
    def told(self) -> bool:
        """Whether any amount was told."""
        return not (self.cash_minor is None and self.card_minor is None and self.whole_minor is None)

    @property
    def paid(self) -> list[tuple[PaidBy, int, int | None]]:
        """Each way with what was taken by it, and the float of the box."""
        found: list[tuple[PaidBy, int, int | None]] = []
        if self.whole_minor is not None:
            found.append(("other", self.whole_minor, None))
        if self.cash_minor is not None:
            found.append(("cash", self.cash_minor - (self.float_minor or 0), self.float_minor))
        if self.card_minor is not None:
            found.append(("card", self.card_minor, None))
        return found

    @property
    def taken_minor(self) -> int | None:
        """What was taken in all, as far as it is told; None where nothing is."""
        return sum(amount for _, amount, _ in self.paid) if self.told else None

    @property
    def ways(self) -> set[PaidBy]:
        """The ways of which something was told."""
        return {way for way, _, _ in self.paid}


def check_takings(takings: Takings) -> None:
    """Raises BadInput for what cannot stand together."""
    if takings.whole_minor is not None and (takings.cash_minor is not None or takings.card_minor is not None):
        raise BadInput("Give --takings in all, or --cash and --card, not both.")
    if takings.float_minor is not None and takings.cash_minor is None:
        raise BadInput("Of which cash is that the float? Add --cash with what was counted in the box.")
    if takings.cash_minor is not None and takings.cash_minor < (takings.float_minor or 0):
        raise BadInput("The box held less than its float; look at --cash, which counts the float in, and at --float.")


def all_told(takings: Takings, before: set[PaidBy]) -> bool:
    """Whether all of a day's money is told: somebody says so, or cash and card are; `before` was told earlier."""
    ways = takings.ways | before
    return takings.complete or "other" in ways or {"cash", "card"} <= ways


class Brought(NamedTuple):
    """What the bars of one lot brought: at their price before offers, what those take off; None: never told."""

    gross_minor: int | None
    reduction_minor: int = 0

    @property
    def net_minor(self) -> int:
        """What is left, or nothing where it was never told."""
        return (self.gross_minor or 0) - self.reduction_minor


def brought(
    sold: Mapping[int, int], prices: Mapping[int, tuple[int, int]], taken_minor: int | None, *, other_minor: int
) -> dict[int, Brought]:
    """What bars sold (by lot) brought: by their (price, reduction), else a share of what else was taken, by bars.

    Raises BadInput where other goods were sold for more than all that was taken, and no bar has a price.
    """
    found = {lot: Brought(*prices[lot]) if lot in prices else Brought(None) for lot, bars in sold.items() if bars}
    open_ = {lot: sold[lot] for lot, one in found.items() if one.gross_minor is None}
    rest = (taken_minor or 0) - other_minor - sum(one.net_minor for one in found.values())
    if taken_minor and rest < 0 and len(open_) == len(found) and found:
        raise BadInput("The other goods come to more than what was taken; look at --other-goods.")
    if rest > 0 and open_:
        shares = share_out(rest, list(open_.values()))
        found |= {lot: Brought(share) for lot, share in zip(open_, shares, strict=True)}
    return found


def difference(taken_minor: int, lines_minor: int) -> int:
    """What was taken over (above zero) or under (below) what stands on the lines."""
    return taken_minor - lines_minor
