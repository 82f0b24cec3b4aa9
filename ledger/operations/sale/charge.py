"""What selling cost is booked: the pitch of a stall, card, post, a shop's commission."""

from datetime import date

from ledger.errors import BadInput
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.tables.sale import Fee
from ledger.units.money import show_money
from ledger.units.words import FeeKind
from ledger.views.sale.sale import sale_numbered


def charge(
    book: Book,
    kind: FeeKind,
    amount_minor: int,
    *,
    on: date,
    sale: int | None = None,
    place_id: int | None = None,
    customer_id: int | None = None,
    at: str = "",
    note: str | None = None,
) -> None:
    """Book a fee of a sale, of an outlet (`at` is how it is named), or of none. Raises BadInput for no amount."""
    if amount_minor <= 0:
        raise BadInput("A fee of nothing is none; write how much it was, such as 15.00.")
    with book.write("sale fee") as tx:
        if sale is not None:
            of = sale_numbered(tx.rows, sale)
            place_id, customer_id = of.place_id, of.customer_id
        tx.add(
            Fee(
                sale_id=sale,
                place_id=place_id,
                customer_id=customer_id,
                on=on,
                kind=kind,
                amount_minor=amount_minor,
                note=note,
            )
        )
        where = f" of sale {sale}" if sale is not None else f" at {at}" if at else ""
        tx.say(f"Fee{where}: {kind}, {show_money(amount_minor, settings(tx.rows).currency)}.")
