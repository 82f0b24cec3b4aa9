"""Every table as a CSV file (RFC 4180) that a person opens in a spreadsheet."""

import csv
from collections.abc import Iterable
from pathlib import Path

from ledger.documents.kit.csv_cells import plain_text
from ledger.views.keep.sheets import Cell, Sheet


def write_sheets(sheets: Iterable[Sheet], folder: Path) -> None:
    """One file a table; texts in quotes and safe against formulas, numbers bare, with a mark that it is UTF-8."""
    folder.mkdir()
    for sheet in sheets:
        with (folder / f"{sheet.name}.csv").open("w", encoding="utf-8-sig", newline="") as out:
            writer = csv.writer(out, quoting=csv.QUOTE_NONNUMERIC)
            writer.writerow(sheet.heads)
            writer.writerows([_cell(one) for one in row] for row in sheet.rows)


def _cell(one: Cell) -> Cell:
    return "" if one is None else plain_text(one) if isinstance(one, str) else one
