"""The calendar and the stores of an invented workshop: what comes in on a Monday, and what is left four weeks later."""

import heapq
import math
import random
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time, timedelta

from benchmarks.workshop_setup import MAKER, STUFF, Scale

from ledger.operations.record.attach import attach
from ledger.operations.stock.combine import combine
from ledger.operations.stock.lots import count_lot, decide_lots, waste_lot
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, receive
from ledger.storage.book import Book

TURN = 28  # days: four whole weeks, so that a Saturday stays one
DRUM = "olive-oil"  # topped up every turn
WRAPPINGS = ("band", "box")


@dataclass
class Bars:
    """One batch of bars and what of it is still to be sold."""

    code: str
    number: int  # of the batch in its turn
    left: int
    saturdays: int = 0


@dataclass
class Stores:
    """The workshop as far as it has been played: its calendar, and what stands in it."""

    book: Book
    scale: Scale
    start: date  # a Monday
    seed: int
    day: int = 0
    chance: random.Random = field(default_factory=random.Random)
    to_do: list[tuple[int, int, Callable[[], object]]] = field(default_factory=list)
    booked: int = 0
    drum: str | None = None
    raw: list[tuple[int, str, str]] = field(default_factory=list)  # (turn, material, lot) not used up yet
    offcuts: list[str] = field(default_factory=list)  # lots not used up yet
    on_sale: list[Bars] = field(default_factory=list)

    @property
    def on(self) -> date:
        """The day it is."""
        return self.start + timedelta(days=self.day)

    def now(self) -> datetime:
        """Everything is booked in the evening."""
        return datetime.combine(self.on, time(18), UTC)

    def later(self, days: int, do: Callable[[], object]) -> None:
        """Something to be done so many days from today."""
        self.booked += 1
        heapq.heappush(self.to_do, (self.day + days, self.booked, do))

    def held(self, lots: Iterable[str]) -> int:
        with self.book.look() as rows:
            query = "SELECT coalesce(sum(quantity), 0) FROM movement WHERE lot_id = (SELECT id FROM lot WHERE code = ?)"
            return sum(int(rows.execute(query, (one,)).fetchone()[0]) for one in lots)

    def _used(self, material: str) -> int:
        """What the turn before used of a material."""
        since = (self.on - timedelta(days=TURN)).isoformat()
        with self.book.look() as rows:
            found = rows.execute(
                "SELECT coalesce(-sum(v.quantity), 0) FROM movement v JOIN lot l ON l.id = v.lot_id "
                "JOIN material m ON m.id = l.material_id JOIN batch b ON b.id = v.batch_id "
                "WHERE m.code = ? AND v.kind = 'consumed' AND v.\"on\" >= ? AND b.process <> 'combine'",
                (material, since),
            )
            return int(found.fetchone()[0])

    def _comes(self, material: str, turn: int) -> int:
        """How much to order: the drum as much as was used, the rest a twentieth more, in whole bags."""
        batches = self.scale.batches_a_week * 4 + 4
        if material in WRAPPINGS:
            return 40 * batches
        if turn < 3:  # nothing to go by yet
            each = {"fat": 3_500_000, "liquid": 2_500_000, "alkali": 700_000}
            return each.get(STUFF[material].kind, 400_000) * batches
        used = self._used(material)
        return used if material == DRUM else math.ceil(used * 1.05 / 100_000) * 100_000

    def deliveries(self, turn: int) -> None:
        for supplier in dict.fromkeys(stuff.supplier for stuff in STUFF.values() if stuff.supplier):
            codes = [code for code, stuff in STUFF.items() if stuff.supplier == supplier]
            lines = [self._line(code, self._comes(code, turn), place) for place, code in enumerate(codes, 1)]
            own = supplier == "plot"
            note = DeliveryNote(
                supplier,
                self.on,
                tuple(lines),
                None if own else f"note {self.on.isoformat()}",
                0 if own else 950,
                MAKER,
            )
            for code, lot in zip(codes, receive(self.book, note), strict=True):
                if code == DRUM:
                    into = [self.drum, lot.code] if self.drum else []
                    self.drum = combine(self.book, into, on=self.on, by=MAKER, into="drum 1").code if into else lot.code
                elif code == "shea-butter":
                    decide_lots(self.book, [lot.code], verdict="on hold", on=self.on, by=MAKER, reason="seal torn")
                    reason = "smells and melts as it should"
                    decide_lots(self.book, [lot.code], verdict="accepted", on=self.on, by=MAKER, reason=reason)
                elif code == "coconut-oil":
                    attach(self.book, b"certificate of analysis, invented", name="coa.txt", kind="CoA", to=lot.code)
                if code != DRUM:
                    self.raw.append((turn, code, lot.code))

    def _line(self, code: str, quantity: int, place: int) -> DeliveryLine:
        stuff = STUFF[code]
        known = stuff.supplier not in ("plot", "foldyard")
        fat = stuff.kind == "fat" and code != DRUM
        return DeliveryLine(
            code,
            quantity,
            f"{self.on.isoformat()}/{place}" if known else None,
            quantity * stuff.minor_per_kg // (100 if code in WRAPPINGS else 1_000_000),
            best_before=self.on + timedelta(days=540) if fat or stuff.kind == "fragrance" else None,
            purity_ppm=990_000 if code == "lye" else None,
            certificate="CoA" if code == "lye" else None,
        )

    def clear_out(self, turn: int) -> None:
        """The ends of cans and bags, and offcuts too few for a rebatch; wrapping two turns later, as it is used."""
        kept = []
        for place, (of, material, lot) in enumerate(self.raw):
            if turn < of + (2 if material in WRAPPINGS else 0):
                kept.append((of, material, lot))
            elif (held := self.held([lot])) and place % 2:
                count_lot(self.book, lot, 0, place=None, on=self.on, note=None)
            elif held:
                waste_lot(self.book, lot, held, place=None, on=self.on, reason="the end of it, not worth keeping")
        self.raw = kept
        rest = self._of_other_soap(self.offcuts)  # what the rebatches left goes into the next
        for lot in rest:
            waste_lot(self.book, lot, self.held([lot]), place=None, on=self.on, reason="too little for a rebatch")
        self.offcuts = [one for one in self.offcuts if one not in rest]

    def _of_other_soap(self, lots: Sequence[str]) -> list[str]:
        with self.book.look() as rows:
            query = "SELECT b.process FROM lot l JOIN batch b ON b.id = l.batch_id WHERE l.code = ?"
            return [one for one in lots if rows.execute(query, (one,)).fetchone()[0] != "rebatch"]
