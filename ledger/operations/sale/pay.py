"""What was paid of a sale is booked, or what was paid back."""

from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput
from ledger.operations.sale.booked import Paid, add_payments
from ledger.rows.opened import Rows
from ledger.rows.people import customer_list
from ledger.rows.sell.paid import balances
from ledger.rows.sell.sale import SaleRow
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.units.money import show_money
from ledger.units.words import PaidBy
from ledger.views.sale.sale import sale_numbered, sale_shown
from ledger.views.sale.words import by_way, whom_kept


class Stands(NamedTuple):
    """What is owed of a sale by now; below zero: to be paid back; None where its price is not known."""

    to: str
    owed_minor: int | None


def pay(
    book: Book, number: int, amount_minor: int, way: PaidBy, *, on: date, back: bool = False, note: str | None = None
) -> Stands:
    """Book a payment of a sale, or what was paid back of it.

    Raises BadInput for nothing, for no such sale, or for a return or a credit, whose money goes by its sale.
    """
    if amount_minor <= 0:
        raise BadInput("Nothing was paid; write how much it was, such as 26.00.")
    with book.write("sale pay") as tx:
        sale = payable(tx.rows, number)
        add_payments(tx, number, [Paid(way, -amount_minor if back else amount_minor, note=note)], on=on)
        money = show_money(amount_minor, settings(tx.rows).currency)
        words = f"Paid back {money} of" if back else f"{money} was paid of"
        tx.say(f"{words} {sale.kind} {number} ({kept_name(tx.rows, sale)}), {by_way(way)}.")
        stands, shown = balances(tx.rows, [number])[number], sale_shown(tx.rows, number)
    return Stands(shown.to, None if stands.untold else stands.owed_minor)


def payable(rows: Rows, number: int) -> SaleRow:
    """The sale that is paid under a number; a return of bars sold before sales were kept stands for itself."""
    sale = sale_numbered(rows, number)
    if sale.kind != "sale" and (of := sale_shown(rows, number).of):
        raise BadInput(
            f"{number} is a {sale.kind} of sale {of[0]}; what was paid back of it is booked there: "
            f"soapledger sale pay {of[0]} AMOUNT --back --cash"
        )
    return sale


def kept_name(rows: Rows, sale: SaleRow) -> str:
    """Where or to whom a sale was, as a sentence that is kept names it."""
    card = next((one for one in customer_list(rows) if one.id == sale.customer_id), None)
    return f"to {whom_kept(card)}" if card else sale.whom or sale.place or "someone not named"
