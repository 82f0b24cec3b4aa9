"""Label layouts, read from TOML files that a maker may copy and edit."""

from dataclasses import dataclass, replace
from itertools import product
from math import hypot

from ledger.documents.kit.layout_file import (
    FileKind,
    LayoutFile,
    choice,
    fault,
    figures,
    known_words,
    length,
    lengths,
    one_figure,
    rounds_of,
    shipped,
)
from ledger.documents.kit.printed_code import KINDS
from ledger.documents.kit.sheets import PAPER_MM, SheetLayout, sheet_layout
from ledger.domain.label.panel import Front, read_front
from ledger.units.toml_reader import TomlPart

__all__ = [
    "KINDS",
    "PAPER_MM",
    "LabelLayout",
    "Panel",
    "SheetLayout",
    "label_layout",
    "sheet_layout",
    "shipped",
]

HOUSE_X_HEIGHT_MM = 1.2  # the law's text is never smaller; a house rule, few laws name a size
LEAST_MARK_MM = 5.0  # Regulation (EC) 1223/2009, Annex VII, from memory: no size named; a house rule

# By purpose: the fields that must stand exactly once, and the fields that may stand once. A notice stands in
# for the list of ingredients alone (Art 19(3), from memory), so nothing else of the law's text goes on it.
_NEEDED = {
    "bar": (
        "product", "function", "net_quantity", "ingredients", "precautions", "best_before", "responsible",
        "batch_code",
    ),
    "notice": ("product", "ingredients", "batch_code"),
    "sticker": ("net_quantity", "best_before", "batch_code"),
    "ticket": ("product", "net_quantity", "price", "unit_price"),
    "rack": ("product", "batch_code", "made_on", "ready_on", "code"),
    "lot": (
        "lot_code", "material", "came_from", "came_on", "best_before", "caution", "status", "opened_on", "code",
    ),
    "parcel": ("to", "sender"),
}  # fmt: skip
_WELCOME = {
    "bar": ("after_opening", "origin", "code", "leaflet", "business", "line", "use", "web", "price", "picture"),
    "notice": ("function", "net_quantity", "origin", "code"),
    "sticker": ("after_opening", "code"),
    "ticket": ("business", "function", "origin", "batch_code", "code"),
    **dict.fromkeys(("rack", "lot"), ()),
    "parcel": ("delivery",),
}
PURPOSES = tuple(_NEEDED)
ROLES = ("face", "back", "side", "tag")
FAMILIES = ("plain", "leaf")
_ALIGNS = ("left", "centre", "right")
INKS = ("colour", "black")
FIELDS = tuple(dict.fromkeys(field for part in (_NEEDED, _WELCOME) for fields in part.values() for field in fields))


Box = tuple[float, float, float, float]


@dataclass(frozen=True)
class Panel:
    """One field of print, in mm from the label's left and top; what flows from its top, what stands on its foot."""

    name: str
    x_mm: float
    y_mm: float
    width_mm: float
    height_mm: float
    fields: tuple[str, ...]
    foot_fields: tuple[str, ...]
    display_panel: bool = False  # part of what is shown to her customer: the principal display panel
    centred: bool = False
    right: bool = False  # set against its right edge
    bare_mm: Box | None = None  # left, top, width and height where she has no picture
    role: str | None = None  # "face", "back", "side", "tag"; None where the layout tells none

    @property
    def placed(self) -> tuple[str, ...]:
        """All its fields, from the top."""
        return (*self.fields, *self.foot_fields)

    @property
    def edges_mm(self) -> tuple[float, float, float, float]:
        """Left, right, top and foot."""
        return self.x_mm, self.x_mm + self.width_mm, self.y_mm, self.y_mm + self.height_mm


@dataclass(frozen=True)
class LabelLayout:
    """One label: its size, its panels, and how small its type may get."""

    file: str
    name: str
    purpose: str  # "bar", "notice", "sticker", "ticket", "rack", "lot", "parcel"
    width_mm: float
    height_mm: float
    law_min_x_height_mm: float
    law_max_pt: float
    product_pt: float
    product_min_pt: float
    what_pt: float
    price_pt: float
    mark_mm: float  # how high the marks stand
    best_before_mark: bool  # the hourglass before the date
    clear_space: bool  # round the net quantity
    code: str | None  # "qr", "code128", "ean13"
    module_mm: float  # the narrowest bar or square at its widest
    folds_mm: tuple[float, ...]
    folds_y_mm: tuple[float, ...]
    cuts_mm: tuple[float, ...]
    rounds_mm: tuple[tuple[float, float, float], ...]  # circles to cut out: middle and diameter
    panels: tuple[Panel, ...]
    pack: Front | None = None  # the side of the pack that bears the front
    family: str = "plain"  # "leaf" has our ornament where no picture of hers is
    ink: str = "colour"  # "black" for brown board: heavy rules, no colour
    business_pt: float = 0.0
    face_mm: Box | None = None  # all of the face
    blocks_mm: tuple[Box, ...] = ()  # what takes the product's colour: left, top, width, height
    rules_mm: tuple[tuple[float, float, float], ...] = ()  # level rules: left, top, length

    def without_picture(self) -> "LabelLayout":
        """The same where she has no picture: what stands beside its place takes the room."""
        if self.family != "plain":
            return self
        panels = []
        for one in self.panels:
            x, y, wide, high = one.bare_mm or (one.x_mm, one.y_mm, one.width_mm, one.height_mm)
            if one.placed != ("picture",):
                panels.append(replace(one, x_mm=x, y_mm=y, width_mm=wide, height_mm=high))
        return replace(self, panels=tuple(panels))

    @property
    def parted(self) -> bool:
        """Whether it tells its face from its back, each then fitted by itself."""
        return any(panel.role for panel in self.panels)

    @property
    def display_panel_cm2(self) -> float:
        """The area of the face; of the panels that are displayed, or of the largest, where a layout tells no face."""
        if self.face_mm:
            return self.face_mm[2] * self.face_mm[3] / 100
        areas = [p.width_mm * p.height_mm / 100 for p in self.panels if p.display_panel]
        return sum(areas) if areas else max(p.width_mm * p.height_mm / 100 for p in self.panels)

    @property
    def placed(self) -> tuple[str, ...]:
        """All fields of all panels."""
        return tuple(field for panel in self.panels for field in panel.placed)


_HEAD = (
    "what", "name", "for", "width_mm", "height_mm", "law_min_x_height_mm", "law_max_pt", "product_pt",
    "product_min_pt", "what_pt", "price_pt", "mark_mm", "best_before_mark", "clear_space", "code", "module_mm",
    "folds_mm", "folds_y_mm", "cuts_mm", "rounds_mm", "family", "ink", "business_pt", "face_mm", "blocks_mm",
    "rules_mm", "pack",
)  # fmt: skip
_PANEL = (
    "role", "bare_mm", "name", "x_mm", "y_mm", "width_mm", "height_mm", "fields", "foot_fields",
    "display_panel", "align",
)  # fmt: skip


class _LabelFile(LayoutFile):
    kind: FileKind = "label"
    words = {"": _HEAD, "panel": _PANEL}


def label_layout(name: str) -> LabelLayout:
    """A label layout by its name, or by a file of her own. Raises BadInput by file, key and reason."""
    file = _LabelFile(name)
    head = file.head
    purpose = choice(head, "for", PURPOSES, "bar")
    wide, high = length(head, "width_mm", 10, 280), length(head, "height_mm", 10, 280)
    rounds = rounds_of(head, wide, high)
    panels = _panels(file, wide, high, rounds)
    placed = [field for panel in panels for field in panel.placed]
    _check_fields(head, purpose, placed)
    code = choice(head, "code", tuple(KINDS)) if "code" in head.data or "code" in placed else None
    if code and "code" not in placed:
        raise fault(head, "code", "no panel has the field 'code' to print it in.")
    what_pt = length(head, "what_pt", 6, 144)
    kind, product_pt = KINDS[code or "qr"], length(head, "product_pt", 6, 144)
    return LabelLayout(
        file=file.file,
        name=head.maybe_word("name") or name,
        purpose=purpose,
        width_mm=wide,
        height_mm=high,
        law_min_x_height_mm=length(head, "law_min_x_height_mm", HOUSE_X_HEIGHT_MM, 5),
        law_max_pt=length(head, "law_max_pt", 4, 30),
        product_pt=product_pt,
        product_min_pt=length(head, "product_min_pt", 6, 144),
        what_pt=what_pt,
        price_pt=length(head, "price_pt", 6, 144, product_pt),
        mark_mm=length(head, "mark_mm", LEAST_MARK_MM, 20, 7.0),
        best_before_mark=head.flag("best_before_mark") or False,
        clear_space=head.flag("clear_space") or False,
        code=code,
        module_mm=length(head, "module_mm", kind.least_mm, kind.most_mm, kind.usual_mm),
        folds_mm=lengths(head, "folds_mm", 0, wide),
        folds_y_mm=lengths(head, "folds_y_mm", 0, high),
        cuts_mm=lengths(head, "cuts_mm", 0, wide),
        rounds_mm=rounds,
        panels=panels,
        pack=head.read("pack", read_front),
        family=choice(head, "family", FAMILIES, "plain"),
        ink=choice(head, "ink", INKS, "colour"),
        business_pt=length(head, "business_pt", 6, 144, what_pt),
        face_mm=one_figure(head, "face_mm", wide, high),
        blocks_mm=figures(
            head, "blocks_mm", 4, wide, high, "blocks, each [left, top, width, height]; write [[3, 3, 60, 40]]"
        ),
        rules_mm=figures(head, "rules_mm", 3, wide, high, "level rules, each [left, top, length]; write [[6, 12, 54]]"),
    )


def _panels(
    file: LayoutFile, wide: float, high: float, rounds: tuple[tuple[float, float, float], ...]
) -> tuple[Panel, ...]:
    """The panels, each within the label, none over another, none over the edge of a round."""
    panels: list[Panel] = []
    parts = file.parts("panel")
    if not parts:
        raise fault(file.head, "panel", "a label has one panel or more; begin each with a line [[panel]].")
    for index, part in enumerate(parts, 1):
        panel = _panel(part, index, wide, high)
        if panel.x_mm + panel.width_mm > wide + 0.01 or panel.y_mm + panel.height_mm > high + 0.01:
            raise fault(part, "width_mm", "the panel reaches beyond its label.")
        for other in panels:
            if _over(panel, other):
                raise fault(part, "x_mm", f"the panel lies over the panel '{other.name}'.")
        for one in rounds:
            if _crosses(panel, one):
                raise fault(
                    part, "x_mm", f"the panel lies across the edge of the round of {one[2]:g} mm; keep it in or out."
                )
        panels.append(panel)
    if any(one.role for one in panels):
        for panel, part in zip(panels, parts, strict=True):
            if panel.role is None:
                raise fault(part, "role", f"the panel '{panel.name}' has none; write one of {', '.join(ROLES)}.")
    return tuple(panels)


def _panel(part: TomlPart, index: int, wide: float, high: float) -> Panel:
    return Panel(
        name=part.maybe_word("name") or str(index),
        x_mm=length(part, "x_mm", 0, wide),
        y_mm=length(part, "y_mm", 0, high),
        width_mm=length(part, "width_mm", 8, max(wide, 8)),
        height_mm=length(part, "height_mm", 4, max(high, 4)),
        fields=known_words(part, "fields", FIELDS),
        foot_fields=known_words(part, "foot_fields", FIELDS),
        display_panel=part.flag("display_panel") or False,
        centred=choice(part, "align", _ALIGNS, "left") == "centre",
        right=choice(part, "align", _ALIGNS, "left") == "right",
        bare_mm=one_figure(part, "bare_mm", wide, high),
        role=choice(part, "role", ROLES) if "role" in part.data else None,
    )


def _check_fields(head: TomlPart, purpose: str, placed: list[str]) -> None:
    """What a purpose needs stands once, what it welcomes at most once, and nothing else."""
    for field in _NEEDED[purpose]:
        if placed.count(field) != 1:
            raise fault(head, "fields", f"'{field}' stands {placed.count(field)} times; it belongs once.")
    for field in placed:
        if field not in _NEEDED[purpose] and field not in _WELCOME[purpose]:
            raise fault(head, "fields", f"'{field}' does not belong on a layout for = \"{purpose}\".")
        if placed.count(field) > 1:
            raise fault(head, "fields", f"'{field}' stands {placed.count(field)} times; it belongs once at most.")


def _over(one: Panel, other: Panel) -> bool:
    """Whether two panels lie over each other."""
    (left, right, top, foot), (o_left, o_right, o_top, o_foot) = one.edges_mm, other.edges_mm
    return left < o_right and o_left < right and top < o_foot and o_top < foot


def _crosses(panel: Panel, circle: tuple[float, float, float]) -> bool:
    """Whether a panel is neither wholly within a circle nor wholly beyond it."""
    x, y, across = circle
    left, right, top, foot = panel.edges_mm
    farthest = max(hypot(px - x, py - y) for px, py in product((left, right), (top, foot)))
    nearest = hypot(min(max(x, left), right) - x, min(max(y, top), foot) - y)
    return nearest < across / 2 < farthest
