"""Where a law wants the net quantity: in the lowest part of the label's front."""

from collections.abc import Callable, Sequence

from reportlab.lib.units import mm

from ledger.documents.kit.fitting import Filled
from ledger.documents.kit.fonts import FIGURE_HEIGHT, HEAVY
from ledger.documents.kit.layout import LabelLayout, Panel
from ledger.documents.label.flowing import NoRoomOnFace
from ledger.views.label.label import LabelText


def front_edges_mm(layout: LabelLayout, panel: Panel) -> tuple[float, float]:
    """Top and foot of the piece of the label that a panel stands on: a round, or what level folds and cuts leave."""
    _, _, top, foot = panel.edges_mm
    for _, y, across in layout.rounds_mm:
        if y - across / 2 <= top and foot <= y + across / 2:
            return y - across / 2, y + across / 2
    ends = (0.0, *layout.folds_y_mm, *layout.cuts_y_mm, layout.height_mm)
    return max(one for one in ends if one <= top), min(one for one in ends if one >= foot)


def check_lowest(view: LabelText, layout: LabelLayout, filled: Sequence[Filled], remedy: Callable[[], str]) -> None:
    """Raise NoRoomOnFace where the net quantity reaches above the part of the front that the law leaves it."""
    share = 0.0 if layout.purpose == "sticker" else view.lettering.lowest  # where a sticker goes is said beside it
    for panel, print_ in zip(layout.panels, filled, strict=True):
        lines = [one for one in print_.lines if one.face == HEAVY]
        if not share or not lines:
            continue
        top, foot = front_edges_mm(layout, panel)
        limit = foot - share * (foot - top)
        over = limit - min(panel.y_mm + (one.base - FIGURE_HEIGHT / 1000 * one.size) / mm for one in lines)
        if over > 1e-6:
            raise NoRoomOnFace(
                f"The net quantity reaches {over:.1f} mm above the lowest {share:.0%} of the front, where it has to "
                f"stand in this market. {remedy()} Nothing was printed."
            )
