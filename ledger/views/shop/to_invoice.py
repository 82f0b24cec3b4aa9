"""What is to be invoiced of what a customer bought."""

from collections.abc import Collection, Iterable
from datetime import date

from ledger.errors import BadInput, Refused
from ledger.rows.opened import Rows
from ledger.rows.sell.invoice import ToInvoice, invoiced, to_invoice
from ledger.units.dates import show_date


def sales_to_invoice(rows: Rows, customer_id: int, name: str, *, on: date, only: Collection[int] = ()) -> list[int]:
    """The sales to a customer up to a day that are on no invoice, with what takes from them again.

    `only` names some of them. Raises BadInput for one that is not to be invoiced, Refused for none, or for one
    without an amount.
    """
    known, done = to_invoice(rows, customer_id), invoiced(rows, customer_id=customer_id)
    by_number = {one.id: one for one in known}
    for number in only:
        one = by_number.get(number)
        if one is None or one.of:
            raise BadInput(f"There is no sale {number} to {name}; see: soapledger sale list")
        if number in done:
            raise BadInput(f"Sale {number} is on invoice {done[number]} already.")
        if one.on > on:
            raise BadInput(f"Sale {number} is of {show_date(one.on)}, after the day of the invoice; look at --on.")
    wanted = [
        one for one in known if not one.of and one.id not in done and one.on <= on and (not only or one.id in only)
    ]
    if not wanted:
        if not any(one.on <= on and not one.of for one in known):
            raise Refused(f"Nothing was sold to {name} by {show_date(on)}, so there is nothing to invoice.")
        raise Refused(f"Everything that was sold to {name} by {show_date(on)} is on an invoice.")
    mine = {one.id for one in wanted}
    back = [one for one in known if one.of and one.id not in done and one.on <= on and {*one.of} <= mine]
    must_have_amounts([*wanted, *back])
    return [one.id for one in (*wanted, *back)]


def must_have_amounts(wanted: Iterable[ToInvoice]) -> None:
    """Raise Refused for a sale without an amount."""
    for one in wanted:
        if one.untold:
            raise Refused(
                f"Sale {one.id} has no amount, so it cannot be invoiced. Take it back, with soapledger undo "
                f"{one.entry}, and book it with --price."
            )
