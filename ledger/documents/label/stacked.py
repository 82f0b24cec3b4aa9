"""A face on which the net quantity does not fit in its place: it takes the foot of the face, and the rest closes up."""

from collections.abc import Sequence
from dataclasses import replace
from math import inf

from reportlab.lib.units import mm

from ledger.documents.kit.fitting import FACE, Missing, Near, Room, Wanted, set_text
from ledger.documents.kit.fonts import FIGURE_HEIGHT
from ledger.documents.kit.layout import Box, LabelLayout, Panel
from ledger.documents.label.lowest import front_edges_mm

_EDGE = 1.9  # mm that print keeps off the edge of the label
_LEAST_NAME = 8.0  # points
_OVERSHOOT = 0.1  # mm that a round figure reaches over a level one
_CLEAR = 2.4  # mm
_FIELD = "net_quantity"


def stacked(layout: LabelLayout, net: Wanted, lowest: float, gap: float) -> LabelLayout | None:
    """The layout with the net quantity across the foot of the face, in the lowest share of the front where one is.

    What stands over it keeps its order and takes less height in proportion. None for a face without the room, for
    a round, and for a layout that tells no face.
    """
    face = [one for one in layout.panels if one.role == "face"]
    own = next((one for one in face if _FIELD in one.placed), None)
    if own is None or any(_within(own, one) for one in layout.rounds_mm):
        return None
    left, right = min(one.x_mm for one in face), max(one.edges_mm[1] for one in face)
    top, foot = min(one.y_mm for one in face), max(one.edges_mm[3] for one in face)
    near = _beside(layout, left, right, foot)
    room = Room(own.name, (right - left) * mm, 0.0, (net,), (), own.centred, own.right, near=near, group=FACE)
    block = set_text(net, room, (1.0, 1.0), gap, keep_parts=True)
    if isinstance(block, Missing):
        return None
    high, above = block.high / mm, max(block.above, gap) / mm
    front_top, front_foot = front_edges_mm(layout, own)
    begins = foot - high
    if lowest:
        first = block.filled.lines[0]
        reach = (first.base - FIGURE_HEIGHT / 1000 * first.size) / mm  # from the top of the block to its capitals
        begins = max(begins, front_foot - lowest * (front_foot - front_top) - reach + _OVERSHOOT)
        if begins + high > front_foot - _EDGE + 0.3:
            return None
    share = (begins - above - top) / (foot - top)
    if share <= 0.4:
        return None
    strip = Panel(
        name=own.name, x_mm=left, y_mm=begins, width_mm=right - left, height_mm=high + 0.01, fields=(),
        foot_fields=(_FIELD,), centred=own.centred, right=own.right, role="face",
    )  # fmt: skip
    panels = [_squeezed(one, own, top, share) if one.role == "face" else one for one in layout.panels]
    blocks = tuple(_cut(one, strip, begins - above) for one in layout.blocks_mm)
    rules = tuple(
        (x, top + (y - top) * share, long) if top < y < foot and left <= x < right else (x, y, long)
        for x, y, long in layout.rules_mm
    )
    kept = tuple(one for one in panels if one.placed)
    least = min(layout.product_min_pt, max(_LEAST_NAME, share * layout.product_min_pt))
    return replace(layout, panels=(*kept, strip), blocks_mm=blocks, rules_mm=rules, product_min_pt=least)


def _beside(layout: LabelLayout, left: float, right: float, foot: float) -> Near:
    """How far the print beside the foot of a face lies from it, in points."""
    others = [one.edges_mm for one in layout.panels if one.role != "face" and one.y_mm < foot < one.edges_mm[3] + 10]
    before = min((left - edge for _, edge, _, _ in others if edge <= left), default=inf)
    after = min((edge - right for edge, _, _, _ in others if edge >= right), default=inf)
    return Near(left=before * mm, right=after * mm)


def _within(panel: Panel, circle: tuple[float, float, float]) -> bool:
    """Whether a panel stands on a round."""
    x, y, across = circle
    left, right, top, foot = panel.edges_mm
    return x - across / 2 <= left and right <= x + across / 2 and y - across / 2 <= top and foot <= y + across / 2


def _squeezed(one: Panel, own: Panel, top: float, share: float) -> Panel:
    """A panel of the face in less height; what stood beside the net quantity takes its width too."""
    left, right, y, foot = one.edges_mm
    if one is own:
        fields, foots = (tuple(name for name in part if name != _FIELD) for part in (one.fields, one.foot_fields))
        one = replace(one, fields=fields, foot_fields=foots)
    elif one.placed == ("picture",):  # as narrow as it is low, and the white round it clear of a rule over it
        y += min(_CLEAR, (foot - y) / 4) * (1 - share) / share
        left = right - (right - left) * share if one.right else left
    elif y < own.edges_mm[3] and own.y_mm < foot and "picture" not in one.placed and own.placed == (_FIELD,):
        left, right = min(left, own.x_mm), max(right, own.edges_mm[1])
    return replace(one, x_mm=left, width_mm=right - left, y_mm=top + (y - top) * share, height_mm=(foot - y) * share)


def _cut(block: Box, strip: Panel, over: float) -> Box:
    """A block of colour, ended between the net quantity and what stands over it where it does not hold it whole."""
    x, y, wide, high = block
    left, right, _, foot = strip.edges_mm
    holds = x <= left and right <= x + wide and foot <= y + high - 1.0
    if holds or y + high <= over or y >= foot or x >= right or x + wide <= left:
        return block
    return x, y, wide, (over + strip.y_mm) / 2 - y


def net_of(fields: Sequence[object]) -> Wanted | None:
    """The net quantity among the fields of a label."""
    return next((one for one in fields if isinstance(one, Wanted) and one.field == _FIELD), None)
