"""What is agreed with a customer: sale or return, commission, reduction, when they pay, where it goes."""

from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput
from ledger.rows.lot import places
from ledger.rows.people import customer_by_code
from ledger.rows.sell.terms import Terms, shop_places, terms_on
from ledger.storage.book import Book
from ledger.storage.tables.sale import CustomerTerms
from ledger.storage.tables.stock import Place
from ledger.units.dates import show_date
from ledger.units.quantity import WHOLE_PPM
from ledger.units.shortcode import short_code
from ledger.views.sale.words import whom_kept
from ledger.views.shop.terms import terms_words

_LONGEST_DAYS = 731  # two years, one of them a leap year: a longer term is a slip; ours, no source


class Agreed(NamedTuple):
    """What changes; None leaves it as it was."""

    consignment: bool | None = None
    commission_ppm: int | None = None
    reduction_ppm: int | None = None
    pay_days: int | None = None
    country: str | None = None


def agree(book: Book, customer: str, change: Agreed, *, on: date) -> Terms:
    """Write what holds with a customer from a day on, and give back all of it.

    Whoever takes bars on sale or return gets a place of their own, where bars stand that are hers. Raises BadInput for
    nothing said, a share of more than all, or a commission where the bars are bought.
    """
    if change == Agreed():
        raise BadInput("What is agreed? Add --sale-or-return, --commission, --reduction, --pay-in or --country.")
    for what, share in (("commission", change.commission_ppm), ("reduction", change.reduction_ppm)):
        if share is not None and share > WHOLE_PPM:
            raise BadInput(f"A {what} of more than all of the price cannot be; write it like 30%.")
    if change.pay_days is not None and change.pay_days > _LONGEST_DAYS:
        raise BadInput(f"{change.pay_days} days are more than two years; write --pay-in like 30.")
    with book.write("customer terms") as tx:
        card = customer_by_code(tx.rows, customer)
        old = terms_on(tx.rows, on, [card.id]).get(card.id) or Terms(card.id, on, False, None, None, None, None)
        said = {name: value for name, value in change._asdict().items() if value is not None}
        new = old._replace(**said, on=on)
        if new.commission_ppm and not new.consignment:
            raise BadInput(
                f"A commission is what a shop keeps of bars that are yours until it counts them; {card.name} buys "
                "them. Write --reduction for what the price is less, or add --sale-or-return."
            )
        tx.add(CustomerTerms(**new._asdict() | {"consignment": int(new.consignment)}))
        if new.consignment and card.id not in shop_places(tx.rows):
            code = short_code(card.code, {one.code for one in places(tx.rows)})
            name = card.name if card.kind == "shop" else card.code  # a person's name stands where it can be erased
            tx.add(Place(code=code, name=name, kind="consignment", customer_id=card.id))
        tx.say(f"Agreed with customer {whom_kept(card)} from {show_date(on)} on: {terms_words(new)}.")
    return new
