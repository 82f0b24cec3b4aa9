"""A ledger in memory whose facts a test writes one by one, for shapes that no single shop has."""

import sqlite3
from collections.abc import Iterable
from functools import cache
from typing import Any

from ledger.storage.migrations import migrate
from ledger.units.codes import batch_code, lot_code, supplier_number_key

MATERIALS = {
    "oil": (1, "fat"),
    "mixed oil": (2, "intermediate"),
    "soap": (3, "soap"),
    "offcuts": (4, "rework"),
    "band": (5, "packaging"),
}
PLACES = {"workshop": 1, "retained": 2, "returns": 3, "quay": 4}
DAY = "2026-03-02"


@cache
def _laid() -> sqlite3.Connection:
    """A new ledger to copy, with what every test of it has: laying one takes longer than most of them."""
    raw = sqlite3.connect(":memory:", isolation_level=None)
    migrate(raw)
    _insert(raw, "settings_revision", business="Bare", country="IE", currency="EUR", units="metric", time_zone="UTC")
    _insert(raw, "supplier", code="mill", own=0)
    _insert(raw, "supplier_revision", supplier_id=1, name="The Mill")
    for name, (number, kind) in MATERIALS.items():
        _insert(raw, "material", code=name.replace(" ", "-"), kind=kind)
        _insert(raw, "material_revision", material_id=number, name=name)
    for name in PLACES:
        _insert(raw, "place", code=name, name=name, kind="stall" if name == "quay" else name)
    return raw


def _copy() -> sqlite3.Connection:
    rows = sqlite3.connect(":memory:", isolation_level=None)
    rows.row_factory = sqlite3.Row
    _laid().backup(rows)
    return rows


_the_same = cache(_copy)


def _insert(rows: sqlite3.Connection, table: str, **values: Any) -> int:
    values = {"entry_id": 1, **values}
    names, marks = ", ".join(f'"{name}"' for name in values), ", ".join("?" for _ in values)
    row = rows.execute(f"INSERT INTO {table} ({names}) VALUES ({marks})", tuple(values.values()))
    assert row.lastrowid is not None
    return row.lastrowid


class BareLedger:
    """Every fact carries the entry that is open, 1 until it is closed; the guards are those of a file.

    One `in_turn` takes the place of the last such one, whose facts are gone: a property asks hundreds, and of a new
    connection SQLite reads all the tables anew.
    """

    def __init__(self, *, in_turn: bool = False) -> None:
        self.rows = _the_same() if in_turn else _copy()
        if in_turn:
            if self.rows.in_transaction:
                self.rows.execute("ROLLBACK")
            self.rows.execute("BEGIN")
        self.entry = 1
        self.lots = 0
        self.batches = 0

    def add(self, table: str, **values: Any) -> int:
        """One row of the open entry; returns its number."""
        return _insert(self.rows, table, **{"entry_id": self.entry, **values})

    def close(self, *, reverses: int | None = None) -> int:
        """Close the open entry, so that the next rows are of another; returns its number."""
        number, self.entry = self.entry, self.entry + 1
        self.rows.execute(
            "INSERT INTO entry (id, recorded_at, who, verb, said, reverses, program, previous, digest) "
            "VALUES (?, ?, 'Nuala', 'test', 'Tried.', ?, 'test', ?, ?)",
            (number, f"{DAY}T10:00:{number:02d}Z", reverses, f"{number - 1:064d}", f"{number:064d}"),
        )
        return number

    def undo(self) -> None:
        """Close the open entry, and take it back by one that mirrors its movements."""
        number = self.close()
        for row in self.rows.execute(
            "SELECT * FROM movement WHERE entry_id = ? ORDER BY id DESC", (number,)
        ).fetchall():
            mirror = {**dict(row), "entry_id": self.entry, "quantity": -row["quantity"], "note": f"takes back {number}"}
            self.add("movement", **{name: value for name, value in mirror.items() if name != "id"})
        self.close(reverses=number)

    def buy(
        self, number: str | None, *, quantity: int = 1_000_000, material: str = "oil", on: str = DAY, **more: Any
    ) -> int:
        """A lot from the mill, accepted; `more` are further columns of the lot."""
        lot = self._lot(
            material,
            supplier_id=1,
            supplier_number=number,
            supplier_number_key=supplier_number_key(number) if number else None,
            **{"on": on, **more},
        )
        self.move(lot, quantity, "received", on=on)
        return lot

    def make(
        self,
        process: str,
        used: Iterable[int],
        *,
        bars: int = 20,
        offcuts: bool = False,
        bars_mg: int | None = None,
        loose_mg: int = 100_000,
        **more: Any,
    ) -> tuple[int, list[int]]:
        """A batch that takes a gram of each lot used, and gives so much loose; returns it with the lots it gave."""
        self.batches += 1
        product = "soap" if process in ("cold", "hot", "rebatch") else "mixed oil"
        batch = self.add(
            "batch",
            code=batch_code(2026, self.batches),
            process=process,
            material_id=MATERIALS[product][0],
            on=DAY,
            **more,
        )
        for lot in used:
            self.move(lot, -1000, "consumed", batch_id=batch)
        given = [self._lot(product, batch_id=batch, mass_mg=bars_mg)] + (
            [self._lot("offcuts", batch_id=batch)] if offcuts else []
        )
        for lot, quantity in zip(given, (bars if product == "soap" else loose_mg, loose_mg), strict=False):
            self.move(lot, quantity, "yielded", batch_id=batch)
        return batch, given

    def take_back(self, lot: int, batch: int) -> None:
        """A batch took a lot and an undo mirrored it: the two leave nothing between them."""
        self.move(lot, -1000, "consumed", batch_id=batch)
        self.move(lot, 1000, "consumed", batch_id=batch)

    def move(self, lot: int, quantity: int, kind: str, *, place: str = "workshop", on: str = DAY, **more: Any) -> None:
        """One movement, as the guards let it."""
        self.add("movement", lot_id=lot, place_id=PLACES[place], on=on, quantity=quantity, kind=kind, **more)

    def code(self, table: str, number: int) -> str:
        """The code of a lot or batch."""
        return str(self.rows.execute(f"SELECT code FROM {table} WHERE id = ?", (number,)).fetchone()[0])

    def _lot(self, material: str, **more: Any) -> int:
        soap = material == "soap"
        self.lots += 0 if soap else 1
        code = self.code("batch", more["batch_id"]) if soap else lot_code(self.lots)
        values = {"on": DAY, **more}
        lot = self.add("lot", code=code, material_id=MATERIALS[material][0], **values)
        self.decide(lot, "released" if soap else "accepted", on=values["on"])
        return lot

    def decide(self, lot: int, verdict: str, *, on: str = DAY) -> None:
        """A decision about a lot."""
        self.add("decision", lot_id=lot, verdict=verdict, on=on, by="Nuala")
