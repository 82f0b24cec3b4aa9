"""What stands on a parcel."""

from ledger.errors import Refused
from ledger.views.label.parcel import ParcelText
from ledger.views.shop.delivery import Delivery

_MOST_LINES = 5


def parcel_text(found: Delivery) -> ParcelText:
    """Their address and hers, a line each. Raises Refused where no address of theirs is kept."""
    to = address_lines(found.customer_address)
    if not to:
        raise Refused(
            f"No address of {found.customer} is kept here. Add it: soapledger customer edit NAME --address ADDRESS"
        )
    to = _fewer(to)
    sender = [found.business, *(one for one in address_lines(found.seller.address) if one != found.business)]
    return ParcelText((found.customer, *to), tuple(_fewer(sender)), found.name)


def _fewer(lines: list[str]) -> list[str]:
    """The same on no more lines than a label has: the shortest neighbours share one; the last, the country, never."""
    lines = list(lines)
    while len(lines) > _MOST_LINES:
        at = min(range(len(lines) - 2), key=lambda i: len(lines[i]) + len(lines[i + 1]))
        lines[at : at + 2] = [f"{lines[at]}, {lines[at + 1]}"]
    return lines


def address_lines(address: str | None) -> list[str]:
    """A postal address as it stands on an envelope: a line for each part between commas or lines."""
    return [one.strip() for one in (address or "").replace("\n", ",").replace(";", ",").split(",") if one.strip()]
