"""Money of a sale is taken back though no bars come back."""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import NamedTuple

from ledger.domain.sale.tax import tax_within
from ledger.errors import BadInput, Refused
from ledger.operations.sale.booked import Outlets, Paid, SoldBars, SoldElse, book_sale
from ledger.operations.sale.given_back import charged_back, commission_back
from ledger.operations.sale.pay import kept_name
from ledger.rows.lot import find_lot
from ledger.rows.opened import Rows
from ledger.rows.sell.back import LineLeft, left_of_sale
from ledger.rows.sell.paid import balances
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.units.money import share_of, share_out, show_money
from ledger.units.wording import count
from ledger.units.words import PaidBy
from ledger.views.sale.sale import sale_numbered


class Credited(NamedTuple):
    """A credit as it was booked."""

    number: int
    of: int
    amount_minor: int
    tax_minor: int | None
    paid_minor: int
    open_minor: int  # still to be paid back
    commission_minor: int  # given back by a shop, off what is taken back


def credit(
    book: Book,
    number: int,
    *,
    on: date,
    reason: str,
    amount_minor: int | None = None,
    line: int | None = None,
    bars: Mapping[str, int] | None = None,
    way: PaidBy | None = None,
) -> Credited:
    """Take back an amount of a sale, of one line of it, or what so many bars were sold for; all that is left if none.

    Raises BadInput for no reason, no such sale or line; Refused for more than is left of what it takes from.
    """
    if not reason.strip():
        raise BadInput('Why is it taken back? Add --reason, such as --reason "two bars arrived broken".')
    with book.write("sale credit") as tx:
        sale, currency = sale_numbered(tx.rows, number), settings(tx.rows).currency
        if sale.kind != "sale":
            raise BadInput(f"{number} is a {sale.kind}; a credit is of a sale. See: soapledger sale show {number}")
        lines = left_of_sale(tx.rows, number)
        if line is not None and not 0 < line <= len(lines):
            raise BadInput(f"Sale {number} has {count(len(lines), 'line')}; --of-line takes one of 1 to {len(lines)}.")
        wanted = lines if line is None else [lines[line - 1]]
        if all(one.amount_minor is None for one in wanted):
            raise Refused(f"What sale {number} brought was never booked, so nothing can be taken back of it.")
        parts = (
            _of_bars(tx.rows, number, wanted, bars) if bars else [(one, max(0, one.left_minor or 0)) for one in wanted]
        )
        of_sale = max(0, sum(one.left_minor or 0 for one in lines))  # a difference may be below zero
        left = min(of_sale, sum(most for _, most in parts))
        asked = left if amount_minor is None else amount_minor
        if asked > left:
            raise Refused(
                f"{show_money(left, currency)} is left of {'those bars' if bars else f'sale {number}'}; "
                f"{show_money(asked, currency)} cannot be taken back. See: soapledger sale show {number}"
            )
        if asked <= 0:
            raise BadInput(f"Nothing is left of sale {number} to take back; see: soapledger sale show {number}")
        shares = share_out(asked, [most for _, most in parts])
        booked = [_line(one, share, reason.strip()) for (one, _), share in zip(parts, shares, strict=True) if share]
        outlet = Outlets(sale.place_id, sale.customer_id, sale.whom)
        given = commission_back(tx.rows, number, asked)
        paid = [Paid(way, given - asked)] if way and asked - given else []
        made = book_sale(tx, outlet, booked, on=on, kind="credit", paid=paid, charged=charged_back(given))
        taxes = [-one.tax_minor for one in booked if one.tax_minor is not None]
        tx.say(
            f"Credit {made} of sale {number} ({kept_name(tx.rows, sale)}): {show_money(asked, currency)} taken back"
            f"{f', {show_money(given, currency)} commission given back' if given else ''}"
            f"{', paid back' if way else ''}: {reason.strip()}."
        )
        owed = balances(tx.rows, [number])[number].owed_minor
    tax, paid_minor = sum(taxes) if taxes else None, asked - given if way else 0
    return Credited(made, number, asked, tax, paid_minor, max(0, -owed), given)


def _of_bars(rows: Rows, number: int, lines: Sequence[LineLeft], bars: Mapping[str, int]) -> list[tuple[LineLeft, int]]:
    """What so many bars of each batch were sold for, by the line, as far as it is left."""
    parts = []
    for code, many in bars.items():
        lot, wanted = find_lot(rows, code), many
        if many <= 0:
            raise BadInput(f"How many bars of batch {lot.code}? Write a number above zero.")
        for one in lines:
            if one.lot_id == lot.id and one.amount_minor is not None and (taken := min(wanted, one.bars)):
                price = share_of(one.amount_minor, one.bars, 0, taken)
                parts.append((one, min(price, one.left_minor or 0)))
                wanted -= taken
        if wanted:
            raise Refused(
                f"Sale {number} has {count(many - wanted, 'bar')} of batch {lot.code} with a price, not {many}; see: "
                f"soapledger sale show {number}"
            )
    return parts


def _line(one: LineLeft, share: int, words: str) -> SoldBars | SoldElse:
    """The line of a credit: an amount below zero with its share of the tax, and no bars, since none came."""
    tax = None
    if one.tax_ppm is not None and one.left_tax_minor is not None:
        whole = share == one.left_minor
        tax = -(one.left_tax_minor if whole else min(one.left_tax_minor, tax_within(share, one.tax_ppm)))
    ppm = None if tax is None else one.tax_ppm
    if one.lot_id is None:
        return SoldElse(one.kind, -share, words, tax_ppm=ppm, tax_minor=tax, of_line_id=one.id)
    return SoldBars(one.lot_id, 0, None, -share, tax_ppm=ppm, tax_minor=tax, of_line_id=one.id, words=words)
