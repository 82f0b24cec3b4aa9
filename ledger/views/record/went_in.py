"""What went into a batch, from the supplier's drum on, as its record shows it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from typing import NamedTuple

from ledger.rows.movement import Weighing, weighings_of
from ledger.units.dates import show_date
from ledger.units.quantity import show_mass, whole
from ledger.units.words import AS_PLANNED, AS_RECKONED, NOT_READ, READ_AS, Units, UsedAs
from ledger.views.record.head import Head, Section
from ledger.views.record.pieces import GAP, Column, Pieces, Words, grid
from ledger.views.record.sources import Sources


class UsedMaterial(NamedTuple):
    """One lot that went in; quantities in mg, or pieces for packaging."""

    number: int | None
    role: UsedAs
    material: str
    inci: str | None
    lot_code: str
    supplier: str | None
    supplier_lot: str | None  # None: unknown (or our own growing or making, see `origin`)
    origin: str  # "supplier", "own", "batch"
    lot_status: str
    certificate: str | None  # the saponification value or purity used, with where it came from
    target: int | None
    used: int
    low: int | None
    high: int | None
    pieces: bool
    weighed_by: str
    weighed_at: str  # UTC timestamp of the entry
    unread: str | None  # the note of a weight that nobody read from the scale
    read_as: str | None  # a weight as it was typed, in another unit than the ledger shows

    @property
    def their_number(self) -> str:
        """The supplier's number on paper, or why there is none."""
        return self.supplier_lot or {"own": "own growing", "batch": "own making"}.get(self.origin, "number unknown")

    @property
    def their_number_shortly(self) -> str:
        """Likewise on the screen."""
        return self.supplier_lot or {"supplier": "unknown", "own": "own growing"}.get(self.origin, self.supplier or "")


@dataclass(frozen=True)
class WentIn(Section):
    """Every lot that went in by line, with its papers and who weighed it."""

    title = "What went in"
    materials: tuple[UsedMaterial, ...]
    corrections: tuple[str, ...]  # what corrected lines were logged as before

    def paper(self, head: Head) -> Pieces:
        """With the window each line had to lie in, and who weighed it when."""
        units = head.units
        table = grid(
            self.materials,
            Column("", lambda one: str(one.number or ""), 0.04),
            Column("material, INCI name", lambda one: _lines(one.material, one.inci), 0.225),
            Column("lot", lambda one: one.lot_code, 0.08, bold=True),
            Column("their number, supplier", lambda one: _lines(one.their_number, one.supplier), 0.17),
            Column("target", lambda one: _printed(one.target, one.pieces, units), 0.095, right=True),
            Column("OK", lambda one: _window(one, units), 0.15, right=True),
            Column("weighed", lambda one: _printed(one.used, one.pieces, units), 0.1, right=True, bold=True),
            Column("by, UTC", lambda one: f"{one.weighed_by}\n{_at(one.weighed_at)}", 0.14),
        )
        return (table if self.materials else Words("Nothing weighed yet."), *map(Words, self._said_below()))

    def screen(self, head: Head) -> Pieces:
        """What was meant and what went in."""
        units = head.units
        table = grid(
            self.materials,
            Column("line", lambda one: str(one.number or ""), right=True),
            Column("material", lambda one: one.material),
            Column("lot", lambda one: one.lot_code),
            Column("their number", lambda one: one.their_number_shortly),
            Column("target", lambda one: _said(one.target, one.pieces, units), right=True),
            Column("used", lambda one: _said(one.used, one.pieces, units), right=True),
        )
        return (*((GAP, table) if self.materials else ()), *map(Words, self._said_below()))

    def _said_below(self) -> tuple[str, ...]:
        """Which weights nobody read or were read in another unit, and what was corrected."""
        found = []
        notes = (one.unread for one in self.materials if one.unread)
        for note in dict.fromkeys((AS_PLANNED, AS_RECKONED, *notes)):
            lines = list(dict.fromkeys(str(one.number) for one in self.materials if one.unread == note))
            if lines:
                found.append(f"{'Line' if len(lines) == 1 else 'Lines'} {', '.join(lines)}: {note} from the scale.")
        found += [f"Line {one.number}, {one.material}: read as {one.read_as}." for one in self.materials if one.read_as]
        return (*found, *self.corrections)


def went_in(read: Sources) -> WentIn:
    """Every lot that went in, and what each corrected line was logged as before."""
    return WentIn(tuple(_materials(read)), tuple(_corrections(read)))


def _materials(read: Sources) -> Iterator[UsedMaterial]:
    lines = {line.id: line for line in read.lines}
    for one in read.went_in:
        lot, line = read.lots[one.lot_id], lines.get(one.line_id or 0)
        if one.used > 0:
            yield UsedMaterial(
                number=line.number if line else None,
                role=line.role if line else lot.kind,
                material=lot.material,
                inci=lot.inci,
                lot_code=lot.code,
                supplier=lot.supplier or (f"batch {lot.batch_code}" if lot.batch_code else None),
                supplier_lot=lot.supplier_number,
                origin="batch" if lot.batch_id else "own" if lot.supplier_own else "supplier",
                lot_status=lot.status,
                certificate=read.check.figures.get(lot.id),
                target=line.target if line else None,
                used=one.used,
                low=line.low if line else None,
                high=line.high if line else None,
                pieces=lot.counted,
                weighed_by=one.who,
                weighed_at=one.at,
                unread=one.note if one.note and one.note.endswith(NOT_READ) else None,
                read_as=one.note.removeprefix(READ_AS) if one.note and one.note.startswith(READ_AS) else None,
            )


def _corrections(read: Sources) -> Iterator[str]:
    """What each corrected line was logged as before, entry by entry, so that the first value stays to be read."""
    every = weighings_of(read.rows, [line.id for line in read.lines])
    for line in read.lines:
        if line.role == "packaging":
            continue
        for one, held in _states([one for one in every if one.line_id == line.id])[:-1]:
            was = ", ".join(f"{show_mass(mass, read.own.units)} of lot {code}" for code, mass in held.items() if mass)
            yield (
                f"Line {line.number}, {line.material}: logged as {was or 'nothing'} by {one.who} "
                f"(entry {one.entry}), corrected since."
            )


def _states(weighings: Sequence[Weighing]) -> list[tuple[Weighing, dict[str, int]]]:
    """What stood on a line after each entry, by the lot."""
    states: list[tuple[Weighing, dict[str, int]]] = []
    for one in weighings:
        if not states or states[-1][0].entry != one.entry:
            states.append((one, dict(states[-1][1]) if states else {}))
        held = states[-1][1]
        held[one.lot_code] = held.get(one.lot_code, 0) + one.used
    return states


def _lines(*words: str | None) -> str:
    return "\n".join(word for word in words if word)


def _printed(quantity: int | None, pieces: bool, units: Units) -> str:
    return "" if quantity is None else whole(f"{quantity} pcs" if pieces else show_mass(quantity, units))


def _said(quantity: int | None, pieces: bool, units: Units) -> str:
    return "" if quantity is None else str(quantity) if pieces else show_mass(quantity, units)


def _window(one: UsedMaterial, units: Units) -> str:
    if one.low is None or one.high is None or one.pieces:
        return ""
    low, high = show_mass(one.low, units), show_mass(one.high, units)
    same = low.rsplit(" ", 1)[-1] == high.rsplit(" ", 1)[-1]
    return whole(f"{low.rsplit(' ', 1)[0] if same else low} to {high}")


def _at(moment: str) -> str:
    return whole(f"{show_date(date.fromisoformat(moment[:10]))}, {moment[11:16]}")
