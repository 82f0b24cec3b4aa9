"""What she should know of how a label looks before she prints it; a person decides."""

from ledger.documents.kit.fitting import plainly
from ledger.documents.kit.layout import LabelLayout
from ledger.documents.label.face import looks_of, picture_room
from ledger.documents.label.picture import picture_doubts
from ledger.errors import Refused
from ledger.markets import known_market
from ledger.units.colour import SHAPE_CONTRAST, WHITE, contrast, ink_on
from ledger.views.label.label import LabelText


def check_placed(view: LabelText, layout: LabelLayout) -> None:
    """Raise Refused for a label of a bar without the place for an origin, or with what its market lets on no tag."""
    if layout.purpose == "bar" and view.origin and "origin" not in layout.placed:
        raise Refused(
            f"The layout '{layout.name}' has no place for the origin '{view.origin}'; write \"origin\" among the "
            "fields of a panel, or take a shipped layout, which all have one (--layout box). Nothing was printed."
        )
    law = known_market(view.market)
    tags = [field for panel in layout.panels if panel.role == "tag" for field in panel.placed]
    if law and (alone := [plainly(field) for field in law.not_on_tag if field in tags]):
        raise Refused(
            f"In {law.name} the {' and the '.join(alone)} never {'stands' if len(alone) == 1 else 'stand'} on a tag "
            f"alone ({law.tag_source}), and the layout '{layout.name}' has {'it' if len(alone) == 1 else 'them'} "
            'there; give them a panel of role = "back" that goes onto the bar, or take a shipped layout, of which tag, '
            "card and round have a strip for it. Nothing was printed."
        )


def look_doubts(view: LabelText, layout: LabelLayout) -> tuple[str, ...]:
    """A sentence for each doubt. Raises Refused for a picture that cannot be drawn."""
    looks, found = looks_of(view, layout), []
    place = next((one for one in layout.panels if "picture" in one.placed), None)
    if view.picture and place is None:
        found.append(f"The layout '{layout.name}' has no place for a picture, so {view.picture.name} is not on it.")
    elif view.picture and place:
        found += picture_doubts(view.picture, *picture_room(looks, place), black=layout.ink == "black")
    if looks.colour and (layout.blocks_mm or place) and contrast(looks.colour, WHITE) < SHAPE_CONTRAST:
        words = "black" if ink_on(looks.colour) == "#000000" else "white"
        found.append(
            f"The colour {looks.colour} stands out from white paper by {contrast(looks.colour, WHITE):.1f} to 1; a "
            f"shape is seen at a glance from {SHAPE_CONTRAST:g} to 1 (WCAG 2.1, 1.4.11, from memory). What stands "
            f"on it is {words}, at {contrast(looks.colour, ink_on(looks.colour)):.1f} to 1."
        )
    return tuple(found)
