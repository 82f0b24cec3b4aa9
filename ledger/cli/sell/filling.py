"""What goes out with a dispatch: what was typed, or what fills an order, the oldest batches first."""

from collections import Counter
from datetime import date
from typing import Annotated, NamedTuple

import typer

from ledger.cli.kit.desk import Desk
from ledger.cli.kit.show import confirm, count, say, say_next, say_wrapped, warn
from ledger.cli.stock.bars import read_bars
from ledger.errors import BadInput, Refused
from ledger.rows.lot import LotRow
from ledger.rows.people import customer_by_code
from ledger.rows.sell.order import order_lines
from ledger.rows.settings import printed_from
from ledger.units.quantity import parse_pieces
from ledger.views.sell.filling import filling
from ledger.views.sell.ready import lot_or_product, ready

Order = Annotated[
    str | None, typer.Option("--order", help="The order it fills; batches left out are proposed.", metavar="NUMBER")
]


class Going(NamedTuple):
    """To whom what goes, and the order it fills."""

    customer: str
    bars: dict[str, int]
    order: int | None


def to_go(here: Desk, customer: str | None, bars: list[str], order: str | None, day: date, *, yes: bool) -> Going:
    """What goes out; what is proposed, of an order or a product, is asked about. Raises BadInput for nothing said."""
    if order is None:
        if customer is None or not bars:
            raise BadInput(
                "What goes to whom? Write it like: soapledger dispatch tern-hall 26-118-0=12; or add --order."
            )
        return Going(customer, _by_batch(here, read_bars(bars), day, yes=yes), None)
    number = parse_pieces(order.strip().casefold().removeprefix("order"), what="the number of the order")
    if customer is not None and "=" in customer:
        bars, customer = [customer, *bars], None  # the order says whose it is
    found = filling(here.rows(), number)
    if customer is not None and customer_by_code(here.rows(), customer).id != found.customer.id:
        raise BadInput(f"Order {number} is of {found.customer.name}; leave the customer out, or look at --order.")
    if bars:
        return Going(found.customer.code, _by_batch(here, read_bars(bars), day, yes=yes), number)
    for what, few in found.short:
        warn(f"No released bars are left for {count(few, 'bar')} of {what}; they stay on the order.")
    for code in found.passed:
        warn(f"Batch {code} is passed for packing; once it may go: soapledger release {code}")
    if not found.bars and found.passed:
        raise Refused(f"Nothing of order {number} can go yet.")
    if not found.bars:
        raise Refused(f"Nothing of order {number} can go yet; see: soapledger cure list")
    proposed = ", ".join(f"{code}={bars}" for code, bars in found.bars.items())
    say(f"Order {number}, {found.customer.name}: {proposed}")
    confirm("Send these?", yes)
    return Going(found.customer.code, found.bars, number)


def _by_batch(here: Desk, typed: dict[str, int], day: date, *, yes: bool) -> dict[str, int]:
    """How many of each batch; of a product the oldest that are ready, whose codes are on the bars to be looked at."""
    standing = None  # what stands in the workshop is read where a product is named, and once
    found: Counter[str] = Counter()
    for text, number in typed.items():
        meant = lot_or_product(here.rows(), text)
        if isinstance(meant, LotRow):
            found[meant.code] += number
            continue
        if number <= 0:
            raise BadInput(f"How many bars of {meant.name}? Write a number above zero.")
        if standing is None:
            standing = ready(here.rows(), day)
        left = number
        for lot in standing.get(meant.material_id, ()):
            if part := min(left, max(0, lot.bars - found[lot.code])):
                found[lot.code] += part
                left -= part
        if left:
            few = "is" if number - left == 1 else "are"
            raise Refused(f"{count(number - left, 'bar')} of {meant.name} {few} ready; {number} cannot go.")
    if standing is not None:
        say_wrapped(f"The oldest first: {', '.join(f'{code}={bars}' for code, bars in found.items())}")
        confirm("Are these their codes, and shall they go?", yes)
    return dict(found)


def say_papers(here: Desk, going: Going, sale: int | None) -> None:
    """What is still to go, and how the delivery note is printed."""
    rows = here.rows()
    if going.order:
        still = sum(one.open for one in order_lines(rows, going.order).get(going.order, []))
        left = f"{count(still, 'bar')} still to go" if still else "all of it went"
        say(f"Order {going.order}: {left}.")
    if sale is None:
        card = customer_by_code(rows, going.customer)
        say_next(f"They stay yours until {card.name} counts: soapledger consignment count {card.code} PRODUCT=NUMBER")
    which = f"--entry {printed_from(rows, '').entry}" if sale is None else str(sale)
    say(f"Its delivery note: soapledger delivery-note {which} -o note.pdf")
