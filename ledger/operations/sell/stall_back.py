"""A day at a stall ends: what came back, and what was sold."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from ledger.errors import BadInput, Refused
from ledger.operations.sale.booked import Outlets, Paid, SoldBars, book_sale
from ledger.rows.lot import find_lot, place_of_kind
from ledger.storage.book import Book
from ledger.storage.verbs import Moved
from ledger.units.money import share_out
from ledger.units.wording import count
from ledger.views.stock.stall import at_stall, stall_by_name


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
        went = [(standing[code].lot_id, n, share) for code, n, share in zip(wanted, sold, shares, strict=True) if n]
        moved = tx.move([Moved(lot_id, -n) for lot_id, n, _ in went], "sold", place_id=place.id, on=on)
        lines = [SoldBars(lot_id, n, one, share) for (lot_id, n, share), one in zip(went, moved, strict=True)]
        if lines:
            paid = [Paid("other", takings_minor)] if takings_minor else []
            book_sale(tx, Outlets(place_id=place.id), lines, on=on, paid=paid)
        tx.say(f"Back from {place.name}: {sum(sold)} bars sold, {sum(wanted.values())} came home.")
        pairs = tuple(zip(wanted, sold, strict=True))
        held = tuple(code for code, number in pairs if number and standing[code].status == "on hold")
    return StallDay(place.name, pairs, sum(wanted.values()), held)
