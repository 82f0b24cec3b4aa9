"""Every table as a person reads it: units in its heads, codes in place of row numbers."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal

from ledger.domain.tools.equipment import READ_WITH
from ledger.rows.opened import Row, Rows
from ledger.rows.settings import settings_if_any
from ledger.storage.whole import TableRows, equipment_kinds, every_table, in_pieces_here, row_names, taken_back
from ledger.units.money import currency_digits
from ledger.units.words import EquipmentKind, ReadingUnit

Cell = str | int | Decimal | None
# How many decimals a whole number stands for, by the end of its column's name, and the unit behind the comma.
_SCALED = {
    "_mg_per_kg": ("mg/g", 3),
    "_mg_per_ml": ("g/mL", 3),
    "_mg": ("g", 3),
    "_ppm": ("%", 4),
}
_READ_IN: dict[ReadingUnit, tuple[str, int]] = {
    "mg": ("g", 3), "uL": ("mL", 3), "milli-C": ("°C", 3), "milli-pH": ("pH", 3), "min": ("min", 0),
}  # fmt: skip
# Whose quantity is a mass or pieces, by what the row is about; which of its columns tells that.
_EITHER = {
    "movement": ("lot_id", ("quantity",)),
    "plan_line": ("material_id", ("target", "low", "high")),
    "plan_target": ("plan_line_id", ("target", "low", "high")),
}
_TRIED = {"equipment_revision": ("expected", "tolerance"), "equipment_check": ("expected", "found", "tolerance")}
_YES = ("own", "retired", "passed", "good", "serious", "closes", "in_demand", "consignment")
_CALLED = {"personal": "person"}


@dataclass(frozen=True)
class Sheet:
    """One table; a number is a number, with as many decimals as the ledger keeps, and a text is a text."""

    name: str
    heads: tuple[str, ...]
    rows: Iterator[tuple[Cell, ...]]


@dataclass(frozen=True)
class _Known:
    """What the rows of other tables are called, and what tells a mass from pieces."""

    names: Mapping[str, Mapping[int, str]]
    pieces: Mapping[str, set[int]]
    tools: Mapping[int, EquipmentKind]
    undone: Mapping[int, int]
    currency: str
    parents: frozenset[str]  # tables whose rows others name


_Read = Callable[[Row], Cell]


def sheets(rows: Rows) -> Iterator[Sheet]:
    """Every table with every row, those taken back too: the last column names the entry that did."""
    own = settings_if_any(rows)
    tables = list(every_table(rows))
    known = _Known(
        names=row_names(rows),
        pieces=in_pieces_here(rows),
        tools=equipment_kinds(rows),
        undone=taken_back(rows),
        currency=own.currency if own else "EUR",
        parents=frozenset(parent for table in tables for parent in table.parents.values()),
    )
    for table in tables:
        columns = [one for name in table.columns for one in _columns(table, name, known)]
        if "entry_id" in table.columns:
            columns.append(("taken back by entry", lambda row: known.undone.get(row["entry_id"])))
        elif table.name == "entry":
            columns.append(("taken back by entry", lambda row: known.undone.get(row["id"])))
        yield Sheet(table.name, tuple(head for head, _ in columns), _written(table, [read for _, read in columns]))


def _written(table: TableRows, columns: list[_Read]) -> Iterator[tuple[Cell, ...]]:
    return (tuple(read(row) for read in columns) for row in table.rows)


def _columns(table: TableRows, name: str, known: _Known) -> list[tuple[str, _Read]]:
    """The columns that one stored column is read as: none for a row number nobody asks for, two for mass or pieces."""
    words = name.replace("_", " ")
    about, amounts = _EITHER.get(table.name, ("", ()))
    if name == "id":
        return _number(table.name, known)
    if name in ("entry_id", "reverses"):
        return [("entry" if name == "entry_id" else "takes back entry", lambda row: row[name])]
    if name in table.parents:
        parent = table.parents[name]
        called = words.removesuffix(" id") if name != "personal_id" else "person"
        return [(called, lambda row: _called(parent, row[name], known))]
    if name in amounts:
        counted = known.pieces[about]
        return [
            (f"{words}, g", lambda row: None if row[about] in counted else _scaled(row[name], 3)),
            (f"{words}, pieces", lambda row: row[name] if row[about] in counted else None),
        ]
    if table.name == "reading" and name in ("value", "unit"):
        return [(words, _value if name == "value" else lambda row: row["unit"] and _READ_IN[row["unit"]][0])]
    if name in _TRIED.get(table.name, ()):
        figures: list[tuple[str, _Read]] = [(words, lambda row: _scaled(row[name], 3))]
        unit = ("unit", lambda row: _READ_IN[READ_WITH[known.tools[row["equipment_id"]]].unit][0])
        return [*figures, unit] if name == "tolerance" else figures
    if name in _YES:
        return [(words, lambda row: None if row[name] is None else "yes" if row[name] else "no")]
    return [_scaled_column(name, words, known)]


def _number(table: str, known: _Known) -> list[tuple[str, _Read]]:
    """The number of a row: of an entry it is its name; of others it stands only where other tables say it."""
    if table == "entry":
        return [("entry", lambda row: row["id"])]
    if table in known.parents and table not in known.names:
        return [(_CALLED.get(table, table.replace("_", " ")), lambda row: _called(table, row["id"], known))]
    return []


def _called(table: str, number: int | None, known: _Known) -> str | None:
    if number is None:
        return None
    return known.names.get(table, {}).get(number) or f"{_CALLED.get(table, table.replace('_', ' '))} {number}"


def _scaled_column(name: str, words: str, known: _Known) -> tuple[str, _Read]:
    end = next((end for end in _SCALED if name.endswith(end)), None)
    if end:
        unit, digits = _SCALED[end]
        return f"{words.removesuffix(end.replace('_', ' '))}, {unit}", lambda row: _scaled(row[name], digits)
    if name.endswith("_minor") or "_minor_" in name:
        coins = currency_digits(known.currency)
        return f"{words.replace(' minor', '')}, {known.currency}", lambda row: _scaled(row[name], coins)
    return words, lambda row: row[name]


def _scaled(value: int | None, digits: int) -> Decimal | None:
    return None if value is None else Decimal(value).scaleb(-digits)


def _value(row: Row) -> Cell:
    return _scaled(row["value"], _READ_IN[row["unit"]][1]) if row["unit"] else None
