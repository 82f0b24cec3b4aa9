"""Bars leave: to a stall and back, to a shop, as gifts; and some come back."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from ledger.domain.bench.status import in_words
from ledger.domain.release.supply import may_leave
from ledger.errors import BadInput, Refused
from ledger.operations.release.facts import bars_of, door_of, supply_of
from ledger.operations.release.first_supply import FirstSupplied, before_of, write_first_supply
from ledger.rows.bars import bars_out
from ledger.rows.batch import find_batch
from ledger.rows.lot import LotRow, PlaceRow, find_lot, on_hand_at, place_of_kind, places
from ledger.rows.people import CustomerCard, customer_by_code, customer_list
from ledger.storage.book import Book
from ledger.storage.tables.stock import Place
from ledger.storage.transaction import Transaction
from ledger.storage.verbs import Moved
from ledger.units.dates import show_date
from ledger.units.money import share_out
from ledger.units.shortcode import short_code
from ledger.units.signs import folded
from ledger.units.wording import count
from ledger.views.label.bare import Outlet
from ledger.views.stock.stall import at_stall, stall_by_name


def add_stall(book: Book, name: str) -> str:
    """Add a market stall by name and return its short name. Raises BadInput when there is one already."""
    with book.write("stall add") as tx:
        known = places(tx.rows)
        if any(folded(one.name) == folded(name) for one in known):
            raise BadInput(f"There is a place '{name}' already.")
        code = short_code(name, {one.code for one in known})
        tx.add(Place(code=code, name=name, kind="stall"))
        tx.say(f"Added stall {name}.")
    return code


def _may_leave(
    tx: Transaction, code: str, number: int, on: date, first: FirstSupplied | None, to: PlaceRow | CustomerCard | None
) -> LotRow:
    """The bars of a batch, if so many of them may leave the workshop on that day, for a stall or a customer.

    Raises Refused.

    What is said of their first supply is kept where they leave by it.
    """
    lot = find_lot(tx.rows, code, on=on)
    if lot.kind != "soap":
        raise Refused(f"Lot {lot.code} is {lot.material}; only bars are sold or given, by their batch code.")
    if lot.status != "released":
        steps = {"curing": f"soapledger pass {lot.code}", "passed": f"soapledger release {lot.code}"}
        hint = f" Next: {steps[lot.status]}" if lot.status in steps else ""
        raise Refused(f"The bars of batch {lot.code} are {in_words(lot.status)}; only released bars leave.{hint}")
    workshop = place_of_kind(tx.rows, "workshop")
    held = min(on_hand_at(tx.rows, lot.id, workshop.id, on=on), on_hand_at(tx.rows, lot.id, workshop.id))
    if number <= 0:
        raise BadInput(f"How many bars of batch {lot.code}? Write a number above zero.")
    if number > held:
        raise Refused(
            f"Batch {lot.code} has {count(held, 'bar')} in the workshop; {number} cannot leave. Nothing was written."
        )
    batch = find_batch(tx.rows, lot.code)
    bars, supply = bars_of(tx.rows, batch, on)[0], supply_of(tx.rows, batch, on)
    before = before_of(tx.rows, lot.id, first)
    stall = to is not None and isinstance(to, PlaceRow)
    outlet = Outlet(to.id if stall else None, None if stall else to.id) if to else Outlet()
    option = f"--{'stall' if stall else 'to'} {to.code}" if to else ""
    door = door_of(tx.rows, batch, outlet, on, option=option)
    if may_leave(bars, supply, on, number, before, recipe=batch.recipe_code, door=door) and first:
        write_first_supply(tx, lot.id, first, number, on=on)
    return lot


def stall_out(book: Book, stall: str, bars: Mapping[str, int], *, on: date, first: FirstSupplied | None = None) -> str:
    """Take released bars to a stall; returns its name. Raises Refused for bars that may not leave."""
    with book.write("stall out") as tx:
        place = stall_by_name(tx.rows, stall)
        workshop = place_of_kind(tx.rows, "workshop")
        for code, number in bars.items():
            lot = _may_leave(tx, code, number, on, first, place)
            tx.transfer([(lot.id, number)], source_id=workshop.id, target_id=place.id, on=on)
        tx.say(f"Took {sum(bars.values())} bars to {place.name}.")
    return place.name


@dataclass(frozen=True)
class StallDay:
    """How a day at a stall ended: by batch, how many were sold and how many came home."""

    stall: str
    sold: tuple[tuple[str, int], ...]
    back: int
    held: tuple[str, ...]  # batches on hold of which bars were sold all the same


def stall_back(
    book: Book, stall: str, back: Mapping[str, int], *, on: date, takings_minor: int | None = None
) -> StallDay:
    """Close a day at a stall: so many of each batch came back, the rest was sold.

    Takings are shared by bars sold, exactly. Raises Refused for more back than went, BadInput for a
    batch that is not there, one left out, or takings without a sale.
    """
    with book.write("stall back") as tx:
        place = stall_by_name(tx.rows, stall)
        standing = {one.code: one for one in at_stall(tx.rows, place.id)}
        if not standing:
            raise Refused(f"Nothing stands at {place.name}; bars go out with: soapledger stall out {place.code} CODE=N")
        wanted = {find_lot(tx.rows, code).code: number for code, number in back.items()}
        if strange := sorted(wanted.keys() - standing.keys()):
            raise BadInput(f"No bars of batch {strange[0]} went to {place.name}; there are {', '.join(standing)}.")
        if missing := sorted(standing.keys() - wanted.keys()):
            raise BadInput(f"How many of batch {', '.join(missing)} came back? Write {missing[0]}=0 if none did.")
        workshop = place_of_kind(tx.rows, "workshop")
        sold, home = [], []
        for code, number in wanted.items():
            one = standing[code]
            if number > one.bars:
                raise Refused(f"{count(one.bars, 'bar')} of batch {code} went out, so {number} cannot have come back.")
            if on < one.out_on:
                raise BadInput(f"The bars of batch {code} went out on {one.out_on.isoformat()}; look at --on.")
            sold.append(one.bars - number)
            if number:
                home.append((one.lot_id, number))
        if takings_minor and not any(sold):
            raise BadInput("Nothing was sold, so there are no takings to share; look at the numbers that came back.")
        shares = share_out(takings_minor, sold) if takings_minor else [None] * len(sold)
        tx.transfer(home, source_id=place.id, target_id=workshop.id, on=on)
        gone = [
            Moved(standing[code].lot_id, -number, money_minor=share)
            for code, number, share in zip(wanted, sold, shares, strict=True)
            if number
        ]
        tx.move(gone, "sold", place_id=place.id, on=on)
        tx.say(f"Back from {place.name}: {sum(sold)} bars sold, {sum(wanted.values())} came home.")
        pairs = tuple(zip(wanted, sold, strict=True))
        held = tuple(code for code, number in pairs if number and standing[code].status == "on hold")
    return StallDay(place.name, pairs, sum(wanted.values()), held)


def dispatch(
    book: Book,
    customer: str,
    bars: Mapping[str, int],
    *,
    on: date,
    price_minor: int | None,
    note: str | None,
    first: FirstSupplied | None = None,
) -> str:
    """Send released bars to a customer; returns the customer's name. Raises Refused for bars that may not leave."""
    with book.write("dispatch") as tx:
        card = customer_by_code(tx.rows, customer)
        workshop = place_of_kind(tx.rows, "workshop")
        for code, number in bars.items():
            lot = _may_leave(tx, code, number, on, first, card)
            money = None if price_minor is None else price_minor * number
            sent = Moved(lot.id, -number, customer_id=card.id, money_minor=money, note=note)
            tx.move([sent], "dispatched", place_id=workshop.id, on=on)
        tx.say(f"Dispatched {sum(bars.values())} bars to {card.code}.")
    return card.name


def gift(book: Book, bars: Mapping[str, int], *, to: str | None, on: date, first: FirstSupplied | None = None) -> str:
    """Give released bars away, to a known customer or to someone named in words; returns to whom."""
    with book.write("gift") as tx:
        card = next((one for one in customer_list(tx.rows) if to and folded(to) in (one.code, folded(one.name))), None)
        workshop = place_of_kind(tx.rows, "workshop")
        for code, number in bars.items():
            lot = _may_leave(tx, code, number, on, first, card)
            given = Moved(lot.id, -number, customer_id=card.id if card else None, note=None if card else to)
            tx.move([given], "given", place_id=workshop.id, on=on)
        tx.say(f"Gave {sum(bars.values())} bars away.")
    return card.name if card else to or "someone not named"


def take_back(
    book: Book,
    bars: Mapping[str, int],
    *,
    customer: str | None,
    stall: str | None,
    on: date,
    reason: str | None,
) -> None:
    """Book bars that came back, on the returns shelf.

    Raises Refused for more bars than that customer has, or than were sold (at that stall, or at all).
    """
    with book.write("return") as tx:
        card = customer_by_code(tx.rows, customer) if customer else None
        place = stall_by_name(tx.rows, stall) if stall else None
        shelf = place_of_kind(tx.rows, "returns")
        for code, number in bars.items():
            lot = find_lot(tx.rows, code)
            if number <= 0:
                raise BadInput(f"How many bars of batch {lot.code} came back? Write a number above zero.")
            whose = (card.id if card else None, place.id if place else None)
            out = min(bars_out(tx.rows, lot.id, *whose, day) for day in (on, None))
            if number > out:
                whom = f"{card.name} has" if card else f"{place.name} sold" if place else "Customers not named have"
                raise Refused(
                    f"{whom} {count(out, 'bar')} of batch {lot.code} by {show_date(on)}; "
                    f"{number} cannot have come back from there."
                )
            origin = reason if card else "; ".join(w for w in (f"sold at {place.name}" if place else "", reason) if w)
            came = Moved(lot.id, number, customer_id=card.id if card else None, note=origin or None)
            tx.move([came], "returned", place_id=shelf.id, on=on)
        tx.say(f"{sum(bars.values())} bars came back from {card.code if card else place.name if place else 'someone'}.")
