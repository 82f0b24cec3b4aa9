"""What was taken on a day at a stall is told after its evening, as the card total that comes days later."""

from datetime import date

from ledger.domain.sell.takings import BY, Takings, all_told, check_takings
from ledger.errors import BadInput, Refused
from ledger.operations.sell.stall_money import Money, book_later
from ledger.rows.sell.paid import payments_of
from ledger.rows.sell.sale import sales_by_id
from ledger.rows.sell.stall import last_sale_at
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.units.dates import show_date
from ledger.units.money import show_money
from ledger.views.stock.stall import stall_by_name


def stall_takings(book: Book, stall: str, told: Takings, *, on: date | None, today: date) -> tuple[str, date, Money]:
    """Book what was taken on the last day at a stall, or on the day told; returns the stall, the day and its money.

    Raises Refused where nothing was sold there then, BadInput for a way of which something is told already.
    """
    check_takings(told)
    if not told.told and not told.complete and not told.other_minor:
        raise BadInput("What was taken? Add --cash, --card or --takings, or --complete where nothing more comes.")
    with book.write("stall takings") as tx:
        place = stall_by_name(tx.rows, stall)
        sale = last_sale_at(tx.rows, place.id, on)
        if sale is None:
            when = f" on {show_date(on)}" if on else " yet"
            raise Refused(
                f"Nothing was sold at {place.name}{when}; close the day first: soapledger stall back {place.code}"
            )
        sold_on = sales_by_id(tx.rows, [sale])[sale].on
        before = {one.way for one in payments_of(tx.rows, [sale])[sale]}
        in_all = "other" in before | told.ways  # which parts nothing
        twice = sorted(before) if in_all and before and told.ways else sorted(told.ways & before)
        if twice:
            raise BadInput(
                f"What was taken {BY[twice[0]]} on {show_date(sold_on)} is booked already (sale {sale}); to correct it "
                "take that entry back first, see: soapledger history"
            )
        money = book_later(tx, place, sale, told, on=today, sold_on=sold_on, complete=all_told(told, before))
        currency = settings(tx.rows).currency
        ways = ", ".join(f"{show_money(minor, currency)} {BY[way]}" for way, minor, _ in told.paid)
        tx.say(f"Takings at {place.name} on {show_date(sold_on)}{f', {ways}' if ways else ''}.")
    return place.name, sold_on, money
