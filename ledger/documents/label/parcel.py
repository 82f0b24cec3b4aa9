"""The fields of a parcel's label."""

from ledger.documents.kit.fonts import BOLD, REGULAR
from ledger.documents.kit.layout import LabelLayout
from ledger.documents.label.levels import Field, large, small, whole
from ledger.views.label.parcel import ParcelText


def parcel_fields(view: ParcelText, layout: LabelLayout) -> dict[str, Field]:
    """By the name of its place: an address is a line for each of its parts."""
    to = [large(layout, "to", one, layout.product_pt) for one in view.to]
    sender = [small(layout, "sender", one, BOLD if not i else REGULAR) for i, one in enumerate(view.sender)]
    return {
        "to": tuple(one for field in to for one in field),
        "sender": tuple(one for field in sender for one in field),
        "delivery": small(layout, "delivery", whole(view.name.capitalize())),
    }
