"""Which shipped layout has more room than another, and on which sheet a label goes."""

from functools import cache

from ledger.documents.kit.layout import LabelLayout, label_layout, sheet_layout, shipped
from ledger.errors import BadInput


@cache
def shipped_layout(name: str) -> LabelLayout:
    """A shipped layout, read once: a label without room is tried in every larger one, panel by panel."""
    return label_layout(name)


def larger_layouts(layout: LabelLayout) -> tuple[str, ...]:
    """The shipped layouts of the same purpose with more room than this one, in all or on the face."""
    room, face = _room(layout), layout.display_panel_cm2
    others = ((name, shipped_layout(name)) for name in shipped("label"))
    return tuple(
        name
        for name, other in others
        if other.purpose == layout.purpose and (_room(other) > room or other.display_panel_cm2 > face)
    )


def _room(layout: LabelLayout) -> float:
    return sum(panel.width_mm * panel.height_mm for panel in layout.panels)


def usual_sheet(name: str, *, paper: str) -> str:
    """The shipped sheet on her paper whose places fit a label most closely. Raises BadInput for an unknown label."""
    label = label_layout(name)
    fitting = []
    for one in shipped("sheet"):
        sheet = sheet_layout(one)
        if sheet.paper == paper and sheet.width_mm >= label.width_mm and sheet.height_mm >= label.height_mm:
            fitting.append((sheet.width_mm * sheet.height_mm, one))
    if not fitting:
        raise BadInput(f"No shipped {paper} sheet has room for the label '{label.name}'; name one with --sheet.")
    return min(fitting)[1]
