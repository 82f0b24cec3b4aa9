"""What a customer had, brought and owes."""

from dataclasses import dataclass

from ledger.rows.opened import Rows
from ledger.rows.sell.customer import HadOf, had_of_products, sales_of
from ledger.rows.sell.paid import balances


@dataclass(frozen=True)
class CustomerStands:
    """How a customer stands by now; amounts that were never told are left out and counted by the sale."""

    had: tuple[HadOf, ...]
    sales: int
    brought_minor: int  # less what was taken back
    owed_minor: int  # below zero: to be paid back
    untold: int  # sales of which some amount was never told


def customer_stands(rows: Rows, customer_id: int) -> CustomerStands:
    """How one customer stands."""
    numbers = sales_of(rows, customer_id)
    found = balances(rows, numbers).values()
    return CustomerStands(
        had=tuple(had_of_products(rows, customer_id)),
        sales=len(numbers),
        brought_minor=sum(one.amount_minor - one.taken_back_minor for one in found),
        owed_minor=sum(one.owed_minor for one in found),
        untold=sum(one.untold > 0 for one in found),
    )
