"""What a shop gives back of its commission where money of a sale is taken back."""

from ledger.operations.sale.booked import Charged
from ledger.rows.opened import Rows
from ledger.rows.sell.paid import balances, fees
from ledger.units.money import share_of


def commission_back(rows: Rows, sale: int | None, back_minor: int) -> int:
    """The share of a shop's commission in what is taken back of a sale; all of it once all of the sale is."""
    if sale is None or back_minor <= 0:
        return 0
    kept = sum(one.amount_minor for one in fees(rows, [sale]) if one.kind == "commission" and one.customer_id)
    stands = balances(rows, [sale])[sale]
    if kept <= 0 or stands.amount_minor <= 0:
        return 0
    whole, before = stands.amount_minor, stands.taken_back_minor
    return share_of(kept, whole, min(before, whole), min(before + back_minor, whole))


def charged_back(minor: int) -> list[Charged]:
    """The same as a charge below zero, which goes with the return or the credit."""
    return [Charged("commission", -minor)] if minor else []
