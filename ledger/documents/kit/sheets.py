"""Sheets and rolls of labels, read from TOML files that a maker may copy and edit."""

from dataclasses import dataclass

from ledger.documents.kit.layout_file import FileKind, LayoutFile, choice, fault, length
from ledger.units.toml_reader import TomlPart

PAPER_MM = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
_LENGTHS = ("left_mm", "top_mm", "pitch_x_mm", "pitch_y_mm", "width_mm", "height_mm")
ROLL = "roll"  # a page of a roll is as wide as the roll and as long as the label


class _SheetFile(LayoutFile):
    kind: FileKind = "sheet"
    words = {"": ("what", "paper", "columns", "rows", "cut_marks", *_LENGTHS)}


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

    def page_mm(self, label_height_mm: float | None = None) -> tuple[float, float]:
        """Width and height of a page; a roll is cut off after the label, or after its longest one."""
        if self.paper == ROLL:
            return self.width_mm, self.height_mm if label_height_mm is None else label_height_mm
        return PAPER_MM[self.paper]

    def corner_mm(self, position: int, width_mm: float, height_mm: float) -> tuple[float, float]:
        """Left and top of something that size in the middle of a place; places count from 0 along the rows."""
        row, column = divmod(position, self.columns)
        left = self.left_mm + column * self.pitch_x_mm + (self.width_mm - width_mm) / 2
        if self.paper == ROLL:
            return left, 0.0
        return left, self.top_mm + row * self.pitch_y_mm + (self.height_mm - height_mm) / 2


def sheet_layout(name: str) -> SheetLayout:
    """A sheet by its name, or by a file of her own. Raises BadInput by file, key and reason."""
    file = _SheetFile(name)
    head = file.head
    paper = choice(head, "paper", (*PAPER_MM, ROLL))
    if paper == ROLL:
        return _roll(file.file, head)
    columns, rows = _count(head, "columns", 20), _count(head, "rows", 40)
    cut_marks = head.flag("cut_marks")
    if cut_marks is None:
        raise fault(head, "cut_marks", "write true for plain paper to be cut, false for labels cut already.")
    lengths = {key: length(head, key, 0, 300) for key in _LENGTHS}
    sheet = SheetLayout(file.file, paper, columns, rows, **lengths, cut_marks=cut_marks)
    if sheet.pitch_x_mm < sheet.width_mm or sheet.pitch_y_mm < sheet.height_mm:
        raise fault(head, "pitch_x_mm", "a pitch below the label's own size lays labels over each other.")
    wide, high = PAPER_MM[sheet.paper]
    if sheet.left_mm + (columns - 1) * sheet.pitch_x_mm + sheet.width_mm > wide + 0.5:
        raise fault(head, "pitch_x_mm", "the last column reaches beyond the paper.")
    if sheet.top_mm + (rows - 1) * sheet.pitch_y_mm + sheet.height_mm > high + 0.5:
        raise fault(head, "pitch_y_mm", "the last row reaches beyond the paper.")
    return sheet


def _count(head: TomlPart, key: str, top: int) -> int:
    number = head.whole(key, top)
    if number is None:
        raise head.bad(f"{key} is missing; write {key} = 1.")
    return number


def _roll(file: str, head: TomlPart) -> SheetLayout:
    """A roll has one place, and nothing to state but its width and its longest label."""
    for key in head.data:
        if key not in ("what", "paper", "width_mm", "height_mm"):
            raise fault(head, key, "a roll has one label to a page; state only width_mm and height_mm.")
    wide, high = (length(head, key, 10, 300) for key in ("width_mm", "height_mm"))
    return SheetLayout(file, ROLL, 1, 1, 0.0, 0.0, wide, high, wide, high, cut_marks=False)
