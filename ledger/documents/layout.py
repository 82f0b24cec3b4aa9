"""Label layouts and sheets, read from TOML files that a maker may copy and edit."""

import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from ledger.domain.names import near
from ledger.errors import BadInput
from ledger.reference.shipped import templates

FIELDS = ("product", "function", "net_quantity", "ingredients", "best_before", "responsible", "batch_code")
PAPER_MM = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}


@dataclass(frozen=True)
class Panel:
    """One field of print, in mm from the label's left and top."""

    name: str
    x_mm: float
    y_mm: float
    width_mm: float
    height_mm: float
    fields: tuple[str, ...]


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


def label_layout(name: str) -> LabelLayout:
    """A label layout by its name, or by a file of her own. Raises BadInput by file, key and reason."""
    file = _File(name, "label")
    data = file.data
    own = ("width_mm", "height_mm", "law_min_x_height_mm", "law_max_pt", "product_pt", "product_min_pt")
    file.keys(data, ("what", "name", "panel", *own))
    wide, high = file.number(data, "width_mm", 10, 280), file.number(data, "height_mm", 10, 280)
    panels = []
    for index, part in enumerate(data.get("panel", []), 1):
        where = f"panel {index}, "
        file.keys(part, ("name", "x_mm", "y_mm", "width_mm", "height_mm", "fields"), where)
        for field in part.get("fields", []):
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
        )
        if panel.x_mm + panel.width_mm > wide + 0.01 or panel.y_mm + panel.height_mm > high + 0.01:
            raise BadInput(f"{file.name}, {where}width_mm: the panel reaches beyond its label.")
        panels.append(panel)
    placed = [field for panel in panels for field in panel.fields]
    for field in FIELDS:
        if placed.count(field) != 1:
            raise BadInput(f"{file.name}, fields: '{field}' stands {placed.count(field)} times; it belongs once.")
    return LabelLayout(
        file=file.name,
        name=str(data.get("name", name)),
        width_mm=wide,
        height_mm=high,
        law_min_x_height_mm=file.number(data, "law_min_x_height_mm", 0.8, 5),
        law_max_pt=file.number(data, "law_max_pt", 4, 30),
        product_pt=file.number(data, "product_pt", 6, 72),
        product_min_pt=file.number(data, "product_min_pt", 6, 72),
        panels=tuple(panels),
    )


def sheet_layout(name: str) -> SheetLayout:
    """A sheet by its name, or by a file of her own. Raises BadInput by file, key and reason."""
    file = _File(name, "sheet")
    data = file.data
    own = ("left_mm", "top_mm", "pitch_x_mm", "pitch_y_mm", "width_mm", "height_mm")
    file.keys(data, ("what", "paper", "columns", "rows", *own))
    if data.get("paper") not in PAPER_MM:
        raise BadInput(f"{file.name}, paper: write one of {', '.join(PAPER_MM)}.")
    columns, rows = int(file.number(data, "columns", 1, 20)), int(file.number(data, "rows", 1, 40))
    sheet = SheetLayout(file.name, data["paper"], columns, rows, *(file.number(data, key, 0, 300) for key in own))
    wide, high = PAPER_MM[sheet.paper]
    if sheet.left_mm + (columns - 1) * sheet.pitch_x_mm + sheet.width_mm > wide + 0.5:
        raise BadInput(f"{file.name}, pitch_x_mm: the last column reaches beyond the paper.")
    if sheet.top_mm + (rows - 1) * sheet.pitch_y_mm + sheet.height_mm > high + 0.5:
        raise BadInput(f"{file.name}, pitch_y_mm: the last row reaches beyond the paper.")
    return sheet
