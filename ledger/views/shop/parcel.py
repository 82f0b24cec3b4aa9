"""What stands on a parcel."""

from ledger.errors import Refused
from ledger.views.label.parcel import ParcelText
from ledger.views.shop.delivery import Delivery


def parcel_text(found: Delivery) -> ParcelText:
    """Their address and hers, a line each. Raises Refused where no address of theirs is kept."""
    to = _lines(found.customer_address)
    if not to:
        raise Refused(
            f"No address of {found.customer} is kept here. Add it: soapledger customer edit NAME --address ADDRESS"
        )
    sender = [found.business, *(one for one in _lines(found.seller.address) if one != found.business)]
    return ParcelText((found.customer, *to), tuple(sender), found.name)


def _lines(address: str | None) -> list[str]:
    return [one.strip() for one in (address or "").replace("\n", ",").replace(";", ",").split(",") if one.strip()]
