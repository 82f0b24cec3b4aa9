"""Where and to whom something is sold, by its name."""

from collections.abc import Iterable
from typing import NamedTuple

from ledger.rows.lot import places
from ledger.rows.opened import Rows
from ledger.rows.people import contacts, customer_list
from ledger.rows.sell.sale import SaleRow
from ledger.units.names import match_name
from ledger.views.sale.words import whom_kept


class OutletNamed(NamedTuple):
    """A stall or a customer by row number; one of the two."""

    place_id: int | None
    customer_id: int | None
    name: str
    kept: str  # as a sentence that is kept names it: a person by the short name alone


def outlet_named(rows: Rows, text: str) -> OutletNamed:
    """The stall or the customer meant by a name or the start of one. Raises BadInput with near matches."""
    stalls = [one for one in places(rows) if one.kind == "stall"]
    customers = customer_list(rows)
    code = match_name(
        text,
        [*((one.code, one.name) for one in stalls), *((one.code, one.name) for one in customers)],
        noun="stall or customer",
        add="soapledger stall add NAME, or soapledger customer add NAME with --shop or --person",
    )
    place = next((one for one in stalls if one.code == code), None)
    if place:
        return OutletNamed(place.id, None, place.name, place.name)
    customer = next(one for one in customers if one.code == code)
    return OutletNamed(None, customer.id, customer.name, whom_kept(customer))


def names_of(rows: Rows, sales: Iterable[SaleRow]) -> dict[int, str]:
    """To whom or where each of some sales was, by its number: the customer, her words, or the place."""
    every = list(sales)
    known = contacts(rows, sorted({one.customer_id for one in every if one.customer_id is not None}))
    return {
        one.id: (known[one.customer_id].name if one.customer_id in known else None)
        or one.whom
        or one.place
        or "someone not named"
        for one in every
    }
