"""What is on hand: lots by material, where they are, and what of them is still free."""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import NamedTuple

from ledger.rows.lot import LotRow, PlaceRow, all_lots, lots_by_id, planned_use, where_lots_are
from ledger.rows.opened import Rows
from ledger.units.words import MaterialKind
from ledger.views.stock.promised import OUT_OF_SIGHT, promised_by_material


class StockLine(NamedTuple):
    """One lot with what is here of it; mg, or pieces where `counted`."""

    lot: LotRow
    here: tuple[tuple[str, int], ...]  # (place, quantity)
    free: int
    elsewhere: bool  # not in the workshop alone

    @property
    def counted(self) -> bool:
        """Whether it is counted in pieces."""
        return self.lot.counted


class MaterialStock(NamedTuple):
    """One material with its lots, first to expire first; totals in mg, or pieces."""

    code: str
    name: str
    kind: MaterialKind
    counted: bool
    on_hand: int
    free: int  # of soap: bars in the workshop that may leave one day, less those promised
    lots: tuple[StockLine, ...]
    promised: int = 0  # bars on open orders, still to go


def stock(
    rows: Rows, *, material_id: int | None = None, kind: MaterialKind | None = None, empty: bool = False
) -> tuple[MaterialStock, ...]:
    """What is on hand by material, in the order of the alphabet; empty lots only when asked for."""
    held, planned = where_lots_are(rows), planned_use(rows)
    by_material: dict[int, list[StockLine]] = {}
    for lot in all_lots(rows) if empty else lots_by_id(rows, held.keys()).values():
        if material_id not in (None, lot.material_id) or kind not in (None, lot.kind):
            continue
        if lot.on_hand or empty:
            here = tuple((place.name, quantity) for place, quantity in held.get(lot.id, ()))
            elsewhere = any(place.kind != "workshop" for place, _ in held.get(lot.id, ()))
            line = StockLine(lot, here, lot.on_hand - planned.get(lot.id, 0), elsewhere)
            by_material.setdefault(lot.material_id, []).append(line)
    found = []
    promised = promised_by_material(rows) if kind in (None, "soap") else {}
    for lines in by_material.values():
        lines.sort(key=lambda line: (line.lot.best_before or date.max, line.lot.on, line.lot.id))
        lot = lines[0].lot
        due = promised.get(lot.material_id, 0)
        found.append(
            MaterialStock(
                code=lot.material_code,
                name=lot.material,
                kind=lot.kind,
                counted=lot.counted,
                on_hand=sum(line.lot.on_hand for line in lines),
                free=max(0, sum(_may_leave(line, held) if lot.kind == "soap" else line.free for line in lines) - due),
                lots=tuple(lines),
                promised=due,
            )
        )
    return tuple(sorted(found, key=lambda one: one.name.casefold()))


def _may_leave(line: StockLine, held: Mapping[int, Sequence[tuple[PlaceRow, int]]]) -> int:
    """The bars of a lot that stand in the workshop, curing ones too; none where they are held or rejected."""
    if line.lot.status in OUT_OF_SIGHT:
        return 0
    here = sum(bars for place, bars in held.get(line.lot.id, ()) if place.kind == "workshop")
    return min(here, line.free)
