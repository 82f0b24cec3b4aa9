"""Bars come back, on the returns shelf, with the money for them or with the reason why it stays."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from itertools import groupby
from typing import NamedTuple

from ledger.domain.sale.tax import tax_within
from ledger.errors import BadInput, Refused
from ledger.operations.sale.booked import Outlets, Paid, SoldBars, book_sale
from ledger.operations.sale.given_back import charged_back, commission_back
from ledger.rows.bars import bars_out
from ledger.rows.lot import LotRow, find_lot, place_of_kind, places
from ledger.rows.opened import Rows
from ledger.rows.people import customer_by_code, customer_list
from ledger.rows.sell.assumed import went_as
from ledger.rows.sell.back import LineLeft, left_at, left_of_sale, sold_before
from ledger.rows.sell.paid import balances
from ledger.rows.sell.sale import sales_by_id
from ledger.rows.sell.terms import standing_at_shops
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.transaction import Transaction
from ledger.storage.verbs import Moved
from ledger.units.dates import show_date
from ledger.units.money import share_of, share_out, show_money
from ledger.units.wording import count
from ledger.units.words import PaidBy
from ledger.views.sale.sale import sale_numbered
from ledger.views.sale.words import BarsMoved, in_full, whom_kept
from ledger.views.stock.stall import stall_by_name


class Refund(NamedTuple):
    """What is said of the money: so much, or nothing and why; else what was paid. By which way, where it was given."""

    amount_minor: int | None = None
    none_because: str | None = None
    way: PaidBy | None = None


AS_PAID = Refund()


class CameBack(NamedTuple):
    """What was booked: the returns by their numbers with the sales they take from, the bars in full, the money."""

    returns: tuple[tuple[int, int | None], ...]
    bars: str
    whom: str
    amount_minor: int | None  # None: no price was known of any
    commission_minor: int  # given back by a shop, off what is taken back
    paid_minor: int
    still_open: tuple[tuple[int, int], ...]  # by the sale, what is still to be paid back of it


class _Take(NamedTuple):
    """So many bars of one lot, from a line of a sale, of bars sold before sales were kept, or of bars given away."""

    lot_id: int
    bars: int
    line: LineLeft | None
    sold: bool
    price_minor: int | None  # what they were sold for

    @property
    def sale(self) -> int | None:
        return self.line.sale_id if self.line else None


def take_back(
    book: Book,
    bars: Mapping[str, int],
    *,
    customer: str | None,
    stall: str | None,
    on: date,
    reason: str | None,
    sale: int | None = None,
    refund: Refund = AS_PAID,
) -> CameBack:
    """Book bars that came back, on the returns shelf, and take their money from the sale, the latest first.

    Raises Refused for more bars than that customer has, than were sold (at that stall, or at all) or than are left of
    the sale that is named, and for more money than they were sold for.
    """
    with book.write("return") as tx:
        card = customer_by_code(tx.rows, customer) if customer else None
        place = stall_by_name(tx.rows, stall) if stall else None
        if sale is not None:
            named = sale_numbered(tx.rows, sale)
            card = next((one for one in customer_list(tx.rows) if one.id == named.customer_id), None)
            place = next((one for one in places(tx.rows) if one.id == named.place_id), None)
        whose = Outlets(place.id if place else None, card.id if card else None)
        shelf, currency = place_of_kind(tx.rows, "returns"), settings(tx.rows).currency
        takes: list[_Take] = []
        for code, number in bars.items():
            lot = find_lot(tx.rows, code)
            if number <= 0:
                raise BadInput(f"How many bars of batch {lot.code} came back? Write a number above zero.")
            out = min(bars_out(tx.rows, lot.id, whose.customer_id, whose.place_id, day) for day in (on, None))
            if number > out:
                whom = f"{card.name} has" if card else f"{place.name} sold" if place else "Customers not named have"
                theirs = card and lot.id in {one.lot_id for one in standing_at_shops(tx.rows, card.id)}
                unsold = f" What was not sold there: soapledger consignment back {card.code}" if card and theirs else ""
                raise Refused(
                    f"{whom} {count(out, 'bar')} of batch {lot.code} by {show_date(on)}; "
                    f"{number} cannot have come back from there.{unsold}{went_as(tx.rows, lot.id)}"
                )
            takes += _takes(tx.rows, lot, number, whose, on, sale)
        amounts = _amounts(takes, refund, currency)
        origin = reason if card else "; ".join(w for w in (f"sold at {place.name}" if place else "", reason) if w)
        came = [Moved(one.lot_id, one.bars, customer_id=whose.customer_id, note=origin or None) for one in takes]
        moved = tx.move(came, "returned", place_id=shelf.id, on=on)
        whole = list(zip(takes, amounts, moved, strict=True))
        booked, given = _book(tx, whole, whose, on, refund)
        shown = [(one, None if refund.none_because else amount) for one, amount, _ in whole]
        told = in_full(tx.rows, [BarsMoved(one.lot_id, one.bars, amount) for one, amount in shown], currency)
        known = [amount for amount in amounts if amount is not None]
        paid = sum(known) - given if refund.way else 0
        whom = whom_kept(card) if card else place.name if place else "someone not named"
        numbers = ", ".join(f"{one}{f' of sale {of}' if of else ''}" for one, of in booked)
        tx.say(
            f"{f'Return {numbers}: ' if booked else ''}{told} came back from {whom}"
            f"{f', {show_money(given, currency)} commission given back' if given else ''}"
            f"{f', {show_money(paid, currency)} paid back' if paid else ''}"
            f"{f', nothing taken back: {refund.none_because}' if refund.none_because else ''}."
        )
        owed = balances(tx.rows, sorted({of or one for one, of in booked}))
        short = [(number, -stands.owed_minor) for number, stands in owed.items() if stands.owed_minor < 0]
    return CameBack(
        tuple(booked),
        told,
        card.name if card else whom,
        sum(known) if known else None,
        given,
        paid,
        tuple(short),
    )


def _takes(rows: Rows, lot: LotRow, number: int, whose: Outlets, on: date, sale: int | None) -> Iterable[_Take]:
    """Where so many bars came from, the latest sale first."""
    if sale is None:
        lines = left_at(rows, [lot.id], place_id=whose.place_id, customer_id=whose.customer_id, on=on)
    else:
        lines = [line for line in left_of_sale(rows, sale) if line.lot_id == lot.id]
        left = sum(line.left_bars for line in lines)
        if number > left or any(line.on > on for line in lines):
            raise Refused(
                f"Of sale {sale}, {count(left, 'bar')} of batch {lot.code} may still come back by {show_date(on)}; "
                f"{number} cannot. See: soapledger sale show {sale}"
            )
    for line in lines:
        if taken := min(number, line.left_bars):
            price = None
            if line.amount_minor is not None and line.left_minor is not None:
                before = line.bars - line.left_bars
                price = min(share_of(line.amount_minor, line.bars, before, before + taken), line.left_minor)
            yield _Take(lot.id, taken, line, True, price)
            number -= taken
    if number:
        yield from _before(rows, lot, number, whose, on)


def _before(rows: Rows, lot: LotRow, number: int, whose: Outlets, on: date) -> Iterable[_Take]:
    """Bars that were sold before sales were kept, then bars that were given away."""
    sold, back = sold_before(rows, lot.id, place_id=whose.place_id, customer_id=whose.customer_id, on=on)
    for one in sold:
        gone = min(back, one.bars)
        back -= gone
        if taken := min(number, one.bars - gone):
            price = None if one.amount_minor is None else share_of(one.amount_minor, one.bars, gone, gone + taken)
            yield _Take(lot.id, taken, None, True, price)
            number -= taken
    if number:
        yield _Take(lot.id, number, None, False, None)


def _amounts(takes: Sequence[_Take], refund: Refund, currency: str) -> list[int | None]:
    """What is taken back for each. Raises Refused for more than they were sold for."""
    if refund.none_because is not None:
        return [None if one.price_minor is None else 0 for one in takes]
    prices = [one.price_minor or 0 for one in takes]
    if refund.amount_minor is None:
        return [one.price_minor for one in takes]
    if refund.amount_minor > sum(prices):
        if all(one.price_minor is None for one in takes):
            raise Refused(
                "What those bars were sold for was never booked, so nothing can be taken back for them; book them "
                'with --no-refund "why", which may say what was paid back.'
            )
        sold, asked = show_money(sum(prices), currency), show_money(refund.amount_minor, currency)
        raise Refused(f"Those bars were sold for {sold}; {asked} cannot be taken back for them.")
    shares = share_out(refund.amount_minor, prices) if any(prices) else prices
    return [None if one.price_minor is None else share for one, share in zip(takes, shares, strict=True)]


def _book(
    tx: Transaction, whole: Sequence[tuple[_Take, int | None, int]], whose: Outlets, on: date, refund: Refund
) -> tuple[list[tuple[int, int | None]], int]:
    """Write a return for each sale that bars came from; bars that were given away are no sale.

    Returns them with their sales, and what a shop gives back of its commission.
    """
    parts = sorted((one for one in whole if one[0].sold), key=lambda part: part[0].sale or 0)
    sales = sales_by_id(tx.rows, {one.sale for one, _, _ in parts if one.sale is not None})
    booked: list[tuple[int, int | None]] = []
    all_given = 0
    for number, alike in groupby(parts, key=lambda part: part[0].sale):
        of = sales.get(number or 0)
        outlet = Outlets(of.place_id, of.customer_id, of.whom) if of else whose
        lines = [_line(one, amount, movement, refund.none_because) for one, amount, movement in alike]
        back = -sum(line.gross_minor or 0 for line in lines)
        given = commission_back(tx.rows, number, back)
        paid = [Paid(refund.way, given - back)] if refund.way and back - given else []
        fee = charged_back(given)
        booked.append((book_sale(tx, outlet, lines, on=on, kind="return", paid=paid, charged=fee), number))
        all_given += given
    return booked, all_given


def _line(one: _Take, amount: int | None, movement: int, words: str | None) -> SoldBars:
    """The line of a return: bars and amounts below zero, with its share of the tax."""
    line, ppm, tax = one.line, None, None
    if line and amount is not None and line.tax_ppm is not None and line.left_tax_minor is not None:
        ppm = line.tax_ppm
        whole = amount == line.left_minor
        tax = -(line.left_tax_minor if whole else min(line.left_tax_minor, tax_within(amount, ppm)))
    return SoldBars(
        one.lot_id,
        -one.bars,
        movement,
        None if amount is None else -amount,
        tax_ppm=ppm,
        tax_minor=tax,
        of_line_id=line.id if line else None,
        words=words,
    )
