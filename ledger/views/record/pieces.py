"""What a section of a batch record is told in, on paper and on the screen: facts, tables, sentences, a chart."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any, Generic, NamedTuple, TypeVar

from ledger.domain.cure.weighings import Weighing
from ledger.views.cure.cure_forecast import Forecast

Row = TypeVar("Row")


@dataclass(frozen=True)
class Column(Generic[Row]):
    """One column of a table: its head, what stands in the cell of a row, and its look."""

    head: str
    cell: Callable[[Row], str]
    share: float = 0  # of the width of the paper; the screen takes what the cells need
    right: bool = False
    bold: bool = False  # on paper


class Grid(NamedTuple):
    """A table with its cells written out."""

    columns: tuple[Column[Any], ...]
    rows: tuple[tuple[str, ...], ...]

    @property
    def heads(self) -> tuple[str, ...]:
        """What stands over its columns."""
        return tuple(one.head for one in self.columns)

    @property
    def right(self) -> tuple[int, ...]:
        """The columns set to the right."""
        return tuple(i for i, one in enumerate(self.columns) if one.right)


@dataclass(frozen=True)
class Facts:
    """Labels with their values; one without a value is left out."""

    pairs: tuple[tuple[str, str], ...]


class Words(NamedTuple):
    """A sentence; on the screen `first` stands before it, and it is wrapped or one line."""

    text: str
    first: str = "  "
    wrapped: bool = True
    bold: bool = False  # on paper


@dataclass(frozen=True)
class Chart:
    """How the bars dry, drawn on paper where one was weighed."""

    forecast: Forecast
    weighings: tuple[Weighing, ...]


Pieces = tuple[Facts | Grid | Words | Chart, ...]
GAP = Words("", first="", wrapped=False)  # on the screen


def grid(rows: Iterable[Row], *columns: Column[Row]) -> Grid:
    """A table of these rows in these columns."""
    return Grid(columns, tuple(tuple(one.cell(row) for one in columns) for row in rows))
