"""Label layouts and sheets, read from TOML files that a maker may copy and edit."""

import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from ledger.domain.names import near
from ledger.errors import BadInput
from ledger.reference.shipped import templates

FIELDS = (
    "product", "function", "net_quantity", "ingredients", "precautions", "best_before", "responsible", "batch_code",
)  # fmt: skip
HOUSE_X_HEIGHT_MM = 1.2  # the law's text is never smaller; a house rule, few laws name a size
PAPER_MM = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}


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


@dataclass(frozen=True)
class LabelLayout:
    """One label: its size, its panels, and how small its type may get."""

    file: str
    name: str
    width_mm: float
    height_mm: float
    law_min_x_height_mm: float
    law_max_pt: float
    product_pt: float
    product_min_pt: float
    what_pt: float
    folds_mm: tuple[float, ...]
    panels: tuple[Panel, ...]


@dataclass(frozen=True)
class SheetLayout:
    """A sheet of labels, in mm from the paper's left and top."""

    file: str
    paper: str
    columns: int
    rows: int
    left_mm: float
    top_mm: float
    pitch_x_mm: float
    pitch_y_mm: float
    width_mm: float
    height_mm: float
    cut_marks: bool  # plain paper, to be cut; not labels cut already

    @property
    def places(self) -> int:
        """How many labels it takes."""
        return self.columns * self.rows


def shipped(kind: str) -> tuple[str, ...]:
    """The names of the layouts ('label') or sheets ('sheet') that come with the program."""
    return tuple(sorted(path.stem.removeprefix(f"{kind}-") for path in templates().glob(f"{kind}-*.toml")))


class _File:
    """One layout file; every fault names the file, the key and the reason."""

    def __init__(self, name: str, kind: str) -> None:
        path = Path(name) if name.endswith(".toml") else templates() / f"{kind}-{name}.toml"
        self.name = path.name
        if not path.exists():
            known = shipped(kind)
            close = near(name, known, 1)
            hint = f" Did you mean {close[0]}?" if close else ""
            raise BadInput(
                f"There is no {kind} '{name}'.{hint} Choose from {', '.join(known)}, or name a file of your own."
            )
        try:
            self.data: dict[str, Any] = tomllib.loads(path.read_text(encoding="utf-8"))
        except (tomllib.TOMLDecodeError, UnicodeDecodeError, OSError) as error:
            raise BadInput(f"{self.name} cannot be read: {error}.") from None
        if self.data.get("what") != kind:
            raise BadInput(f'{self.name}, what: this file is no {kind}; write what = "{kind}" in it.')

    def keys(self, part: dict[str, Any], known: tuple[str, ...], where: str = "") -> None:
        """Raise for a key nobody knows."""
        for key in part:
            if key not in known:
                close = near(key, known, 1)
                hint = f"did you mean {close[0]}?" if close else f"known are {', '.join(known)}."
                raise BadInput(f"{self.name}, {where}{key}: not known here; {hint}")

    def number(self, part: dict[str, Any], key: str, low: float, high: float, where: str = "") -> float:
        """A number within bounds."""
        value = part.get(key)
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            raise BadInput(f"{self.name}, {where}{key}: a number is missing, such as {key} = {low:g}.")
        if not low <= value <= high:
            raise BadInput(f"{self.name}, {where}{key}: {value} does not lie between {low:g} and {high:g}.")
        return float(value)

    def numbers(self, part: dict[str, Any], key: str, low: float, high: float) -> tuple[float, ...]:
        """A list of numbers within bounds; empty where it is left out."""
        values = part.get(key, [])
        if not isinstance(values, list):
            raise BadInput(f"{self.name}, {key}: a list of numbers is meant, such as {key} = [60.0].")
        return tuple(self.number({key: value}, key, low, high) for value in values)


def label_layout(name: str) -> LabelLayout:
    """A label layout by its name, or by a file of her own. Raises BadInput by file, key and reason."""
    file = _File(name, "label")
    data = file.data
    own = ("width_mm", "height_mm", "law_min_x_height_mm", "law_max_pt", "product_pt", "product_min_pt")
    file.keys(data, ("what", "name", "what_pt", "folds_mm", "panel", *own))
    wide, high = file.number(data, "width_mm", 10, 280), file.number(data, "height_mm", 10, 280)
    panels: list[Panel] = []
    for index, part in enumerate(data.get("panel", []), 1):
        where = f"panel {index}, "
        file.keys(part, ("name", "x_mm", "y_mm", "width_mm", "height_mm", "fields", "foot_fields"), where)
        for field in (*part.get("fields", ()), *part.get("foot_fields", ())):
            if field not in FIELDS:
                close = near(str(field), FIELDS, 1)
                hint = f"did you mean {close[0]}?" if close else f"known are {', '.join(FIELDS)}."
                raise BadInput(f"{file.name}, {where}fields: '{field}' is not known; {hint}")
        panel = Panel(
            name=str(part.get("name", index)),
            x_mm=file.number(part, "x_mm", 0, wide, where),
            y_mm=file.number(part, "y_mm", 0, high, where),
            width_mm=file.number(part, "width_mm", 8, wide, where),
            height_mm=file.number(part, "height_mm", 8, high, where),
            fields=tuple(part.get("fields", ())),
            foot_fields=tuple(part.get("foot_fields", ())),
        )
        if panel.x_mm + panel.width_mm > wide + 0.01 or panel.y_mm + panel.height_mm > high + 0.01:
            raise BadInput(f"{file.name}, {where}width_mm: the panel reaches beyond its label.")
        for other in panels:
            if _over(panel, other):
                raise BadInput(f"{file.name}, {where}x_mm: the panel lies over the panel '{other.name}'.")
        panels.append(panel)
    placed = [field for panel in panels for field in (*panel.fields, *panel.foot_fields)]
    for field in FIELDS:
        if placed.count(field) != 1:
            raise BadInput(f"{file.name}, fields: '{field}' stands {placed.count(field)} times; it belongs once.")
    return LabelLayout(
        file=file.name,
        name=str(data.get("name", name)),
        width_mm=wide,
        height_mm=high,
        law_min_x_height_mm=file.number(data, "law_min_x_height_mm", HOUSE_X_HEIGHT_MM, 5),
        law_max_pt=file.number(data, "law_max_pt", 4, 30),
        product_pt=file.number(data, "product_pt", 6, 72),
        product_min_pt=file.number(data, "product_min_pt", 6, 72),
        what_pt=file.number(data, "what_pt", 6, 72),
        folds_mm=file.numbers(data, "folds_mm", 0, wide),
        panels=tuple(panels),
    )


def larger_layouts(layout: LabelLayout) -> tuple[str, ...]:
    """The shipped layouts with more room than this one."""
    room = sum(panel.width_mm * panel.height_mm for panel in layout.panels)
    found = []
    for name in shipped("label"):
        other = label_layout(name)
        if sum(panel.width_mm * panel.height_mm for panel in other.panels) > room:
            found.append(name)
    return tuple(found)


def _over(one: Panel, other: Panel) -> bool:
    """Whether two panels lie over each other."""
    return (
        one.x_mm < other.x_mm + other.width_mm
        and other.x_mm < one.x_mm + one.width_mm
        and one.y_mm < other.y_mm + other.height_mm
        and other.y_mm < one.y_mm + one.height_mm
    )


def sheet_layout(name: str) -> SheetLayout:
    """A sheet by its name, or by a file of her own. Raises BadInput by file, key and reason."""
    file = _File(name, "sheet")
    data = file.data
    own = ("left_mm", "top_mm", "pitch_x_mm", "pitch_y_mm", "width_mm", "height_mm")
    file.keys(data, ("what", "paper", "columns", "rows", "cut_marks", *own))
    if data.get("paper") not in PAPER_MM:
        raise BadInput(f"{file.name}, paper: write one of {', '.join(PAPER_MM)}.")
    columns, rows = int(file.number(data, "columns", 1, 20)), int(file.number(data, "rows", 1, 40))
    cut_marks = data.get("cut_marks")
    if not isinstance(cut_marks, bool):
        raise BadInput(f"{file.name}, cut_marks: write true for plain paper to be cut, false for labels cut already.")
    lengths = {key: file.number(data, key, 0, 300) for key in own}
    sheet = SheetLayout(file.name, data["paper"], columns, rows, **lengths, cut_marks=cut_marks)
    if sheet.pitch_x_mm < sheet.width_mm or sheet.pitch_y_mm < sheet.height_mm:
        raise BadInput(f"{file.name}, pitch_x_mm: a pitch below the label's own size lays labels over each other.")
    wide, high = PAPER_MM[sheet.paper]
    if sheet.left_mm + (columns - 1) * sheet.pitch_x_mm + sheet.width_mm > wide + 0.5:
        raise BadInput(f"{file.name}, pitch_x_mm: the last column reaches beyond the paper.")
    if sheet.top_mm + (rows - 1) * sheet.pitch_y_mm + sheet.height_mm > high + 0.5:
        raise BadInput(f"{file.name}, pitch_y_mm: the last row reaches beyond the paper.")
    return sheet
