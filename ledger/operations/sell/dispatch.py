"""Bars go to a shop or a person."""

from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from typing import NamedTuple

from ledger.errors import BadInput
from ledger.operations.release.first_supply import FirstSupplied
from ledger.operations.sale.agreed import agreed_price
from ledger.operations.sale.booked import Outlets, Paid, SoldBars, book_sale
from ledger.operations.sale.priced import AS_PRICED, Asked, Gone
from ledger.operations.sell.consigned import check_order, consign, place_on_sale_or_return
from ledger.operations.sell.leaving import may_go
from ledger.rows.lot import place_of_kind
from ledger.rows.people import customer_by_code
from ledger.rows.sell.terms import terms_on
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.verbs import Moved
from ledger.units.money import show_money
from ledger.units.words import PaidBy
from ledger.views.sale.words import BarsMoved, in_full, whom_kept


class Sent(NamedTuple):
    """A sale to a customer, as it was booked; none where the bars are hers until the shop counts them."""

    sale: int | None
    whom: str
    bars: str  # in full
    amount_minor: int | None  # None: no price was told of any of it
    tax_minor: int | None
    paid_minor: int


def dispatch(
    book: Book,
    customer: str,
    bars: Mapping[str, int],
    *,
    on: date,
    price_minor: int | None,
    note: str | None,
    first: FirstSupplied | None = None,
    asked: Asked = AS_PRICED,
    paid: Sequence[Paid] = (),
    all_by: PaidBy | None = None,
    order_id: int | None = None,
) -> Sent:
    """Send released bars to a customer at a price each, or at those that hold for them; `all_by`: paid in full so.

    To a shop on sale or return they go and stay hers: no sale is booked before its count. Raises Refused for bars that
    may not leave, BadInput for money of bars on sale or return.
    """
    if price_minor is not None:
        asked = asked._replace(each_minor=price_minor)
    with book.write("dispatch") as tx:
        card = customer_by_code(tx.rows, customer)
        workshop, currency = place_of_kind(tx.rows, "workshop"), settings(tx.rows).currency
        lots = [(may_go(tx, code, number, on, first, card), number) for code, number in bars.items()]
        agreed = terms_on(tx.rows, on, [card.id]).get(card.id)
        promised = {} if order_id is None else check_order(tx, order_id, card.id, lots)
        on_order = f" on order {order_id}" if order_id else ""
        if place := place_on_sale_or_return(tx, card.id, agreed):
            if asked != AS_PRICED or paid or all_by:
                raise BadInput("Bars on sale or return are priced and paid at the shop's count; leave the money out.")
            consign(tx, lots, place=place, workshop=workshop, on=on, note=note, order=order_id)
            told = in_full(tx.rows, [BarsMoved(lot.id, number) for lot, number in lots], currency)
            tx.say(f"Took {told} to {whom_kept(card)} on sale or return{on_order}.")
            return Sent(None, card.name, told, None, None, 0)
        sent = [Moved(lot.id, -number, customer_id=card.id, note=note) for lot, number in lots]
        moved = tx.move(sent, "dispatched", place_id=workshop.id, on=on)
        gone = [Gone(lot.id, number, movement) for (lot, number), movement in zip(lots, moved, strict=True)]
        outlet = Outlets(customer_id=card.id)
        lines = agreed_price(tx.rows, gone, outlet, on=on, asked=asked, terms=agreed, promised=promised)
        amount, tax = amount_of(lines), tax_of(lines)
        if all_by and amount:
            paid = [Paid(all_by, amount)]
        pay_by = on + timedelta(agreed.pay_days) if agreed and agreed.pay_days is not None else None
        number = book_sale(tx, outlet, lines, on=on, paid=paid, order_id=order_id, pay_by=pay_by)
        told = in_full(tx.rows, [moved_of(line) for line in lines], currency)
        received = sum(one.amount_minor for one in paid)
        tx.say(
            f"Sale {number}: dispatched {told} to {whom_kept(card)}{on_order}"
            f"{f', {show_money(received, currency)} paid' if received else ''}."
        )
    return Sent(number, card.name, told, amount, tax, received)


def moved_of(line: SoldBars) -> BarsMoved:
    """The bars of a line with what they brought."""
    amount = None if line.gross_minor is None else line.gross_minor - line.reduction_minor
    return BarsMoved(line.lot_id, line.bars, amount)


def amount_of(lines: Sequence[SoldBars]) -> int | None:
    """What lines come to; None where no price was told of any."""
    told = [line.gross_minor - line.reduction_minor for line in lines if line.gross_minor is not None]
    return sum(told) if told else None


def tax_of(lines: Sequence[SoldBars]) -> int | None:
    """The tax within them; None where none is booked."""
    taxes = [line.tax_minor for line in lines if line.tax_minor is not None]
    return sum(taxes) if taxes else None
