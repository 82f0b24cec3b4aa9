"""Random seasons written fact by fact, and beside them what was done, for whoever wants to reckon it another way."""

import sqlite3
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta
from typing import Any

from bare_ledger import MATERIALS, PLACES, BareLedger

from ledger.units.codes import batch_code

FIRST = date(2026, 3, 2)
SHOP = "shop"  # a place of the kind consignment
BARS_MG = 100_000
SIZES = (1, 2, 3, 7, 1000, 999_983, 1_000_000)
COSTS = (None, 0, 1, 2, 3, 100, 999, 1000, 123_457)


@dataclass
class Lot:
    """One lot as the season knows it; `goods` is what was paid for it without carriage, None where nobody knows."""

    id: int
    material: str
    on: date
    entry: int
    batch: int | None = None
    goods: int | None = None
    carriage: int = 0
    mass_mg: int = 0  # of bars, all of them
    rejected: list[tuple[date, bool]] = field(default_factory=list)


@dataclass
class Moved:
    """So much of a lot that came or left at a place, in the order it was written."""

    lot: int
    on: date
    quantity: int
    way: str
    place: str
    batch: int | None
    entry: int
    note: str = ""


@dataclass
class Batch:
    """One batch as the season knows it."""

    id: int
    process: str
    on: date
    entry: int
    done: bool = False
    given_up: date | None = None


@dataclass
class Told:
    """Minutes of work on a batch: by stage, or read at the bench."""

    batch: int
    on: date
    minutes: int
    by_stage: bool
    entry: int


Step = tuple[int, int, int, int, int]  # what; three numbers that say how much of what; days until it


class Season:
    """A ledger, and what was written into it; what the guards of the file refuse is not done."""

    def __init__(self, steps: Sequence[Step], *, written_off: bool = False, hour: int | None = None) -> None:
        self.ledger = BareLedger()
        self.ledger.add(
            "settings_revision",
            business="Bare", country="IE", currency="EUR", units="metric", time_zone="UTC",
            labour_minor_per_hour=hour, rejected_bars="written off" if written_off else None,
        )  # fmt: skip
        self.places = {**PLACES, SHOP: self.ledger.add("place", code=SHOP, name=SHOP, kind="consignment")}
        self.ledger.close()
        self.hour, self.written_off = hour, written_off
        self.lots: list[Lot] = []
        self.moved: list[Moved] = []
        self.batches: list[Batch] = []
        self.told: list[Told] = []
        self.rates: list[tuple[str, date, int, int]] = []  # kind, from, minor, entry
        self.gone: set[int] = set()
        self.day = FIRST
        for what, a, b, c, days in steps:
            self.day += timedelta(days=days)
            self._try(self._steps()[what % len(self._steps())], a, b, c)

    def _steps(self) -> tuple[Callable[[int, int, int], None], ...]:
        return (
            self.buy, self.buy, self.begin, self.begin, self.finish, self.finish, self.wrap, self.correct,
            self.carry, self.carry, self.sell, self.sell, self.send, self.send, self.give, self.come_back, self.waste,
            self.waste, self.count, self.count, self.reject, self.rework, self.give_up, self.work, self.rate,
            self.take_back, self.take_back,
        )  # fmt: skip

    def _try(self, step: Callable[[int, int, int], None], a: int, b: int, c: int) -> None:
        marks = [len(known) for known in (self.lots, self.moved, self.batches, self.told, self.rates)]
        done = [(one, one.done) for one in self.batches]
        self.ledger.rows.execute("SAVEPOINT step")
        entry, counters = self.ledger.entry, (self.ledger.lots, self.ledger.batches)
        try:
            step(a, b, c)
            if self.ledger.entry == entry:
                self.ledger.close()
        except sqlite3.IntegrityError:
            self.ledger.rows.execute("ROLLBACK TO step")
            self.ledger.entry, (self.ledger.lots, self.ledger.batches) = entry, counters
            for known, mark in zip((self.lots, self.moved, self.batches, self.told, self.rates), marks, strict=True):
                del known[mark:]  # type: ignore[attr-defined]
            self.gone.discard(entry)
            for one, was in done:
                one.done = was
        self.ledger.rows.execute("RELEASE step")

    # what there is

    def stands(self, one: Any) -> bool:
        """Whether it was not taken back."""
        return one.entry not in self.gone

    def held(self, lot: Lot, place: str | None = None, on: date | None = None) -> int:
        """What is on hand of a lot."""
        return sum(
            one.quantity
            for one in self.moved
            if one.lot == lot.id and self.stands(one) and place in (None, one.place) and (on is None or one.on <= on)
        )

    def _pick(self, number: int, material: Sequence[str], place: str = "workshop") -> Lot | None:
        fit = [one for one in self.lots if one.material in material and self.stands(one) and self.held(one, place) > 0]
        return fit[number % len(fit)] if fit else None

    def _move(
        self, lot: Lot, quantity: int, way: str, place: str = "workshop", batch: int | None = None, note: str = ""
    ) -> None:
        on = self.day
        self.ledger.add(
            "movement", lot_id=lot.id, place_id=self.places[place], on=on.isoformat(), quantity=quantity, kind=way,
            batch_id=batch, note=note or None,
        )  # fmt: skip
        self.moved.append(Moved(lot.id, on, quantity, way, place, batch, self.ledger.entry, note))

    def _open(self, material: str, quantity: int, way: str, batch: Batch | None = None, **more: Any) -> Lot:
        paid = {one: more.pop(one) for one in ("goods", "carriage") if one in more}
        number = self.ledger._lot(
            material, on=self.day.isoformat(), batch_id=batch.id if batch else None,
            supplier_id=None if batch else 1, **more,
        )  # fmt: skip
        lot = Lot(number, material, self.day, self.ledger.entry, batch.id if batch else None, **paid)
        lot.mass_mg = more.get("mass_mg") or 0
        self.lots.append(lot)
        self._move(lot, quantity, way, batch=batch.id if batch else None)
        return lot

    # what can be done

    def buy(self, a: int, b: int, c: int) -> None:
        """Two lots in one delivery, each of known or unknown cost, with carriage borne by those that are known."""
        goods = [COSTS[a % len(COSTS)], COSTS[b % len(COSTS)]]
        known = [place for place, one in enumerate(goods) if one is not None]
        carriage = c % 50 if c % 3 == 0 else 0
        borne = [0, 0]
        for place in known:  # however it is shared, nothing of it is lost; the last takes the rest
            borne[place] = carriage - sum(borne) if place == known[-1] else carriage // 3
        delivery = self.ledger.add("delivery", supplier_id=1, on=self.day.isoformat(), carriage_minor=carriage)
        for place, material in enumerate(("oil", "band" if c % 2 else "oil")):
            paid = goods[place]
            size = SIZES[(a + b + place) % len(SIZES)] if material == "oil" else 1 + b % 40
            self._open(
                material, size, "received", goods=paid, carriage=borne[place], delivery_id=delivery,
                cost_minor=None if paid is None else paid + borne[place],
            )  # fmt: skip

    def begin(self, a: int, b: int, c: int) -> None:
        """A batch takes of some lots: soap, an infused oil, a combined drum, a rebatch."""
        process = ("cold", "hot", "infusion", "combine", "rebatch")[a % 5]
        product = "mixed oil" if process in ("infusion", "combine") else "soap"
        self.ledger.batches += 1
        number = self.ledger.add(
            "batch", code=batch_code(2026, self.ledger.batches), process=process,
            material_id=MATERIALS[product][0], on=self.day.isoformat(),
        )  # fmt: skip
        self.batches.append(Batch(number, process, self.day, self.ledger.entry))
        for turn in range(1 + b % 3):
            lot = self._pick(b + c * turn, ("oil", "mixed oil", "offcuts"))
            if lot:
                held = self.held(lot, "workshop")
                self._move(lot, -(held if c % 4 == 0 else 1 + (held - 1) * (c % 7) // 7), "consumed", batch=number)

    def finish(self, a: int, b: int, c: int) -> None:
        """What was begun is cut or filled off; bars may be weighed, and there may be offcuts."""
        fit = [one for one in self.batches if self.stands(one) and not one.done and one.given_up is None]
        if not fit:
            return
        batch = fit[a % len(fit)]
        batch.done = True
        if batch.process in ("infusion", "combine"):
            self._open("mixed oil", SIZES[b % len(SIZES)], "yielded", batch)
            return
        self._open("soap", 1 + b % 30, "yielded", batch, mass_mg=None if c % 4 == 0 else BARS_MG + c)
        if c % 3:
            self._open("offcuts", 1 + c * 977, "yielded", batch)

    def _soap(self, number: int) -> Lot | None:
        fit = [one for one in self.lots if one.material == "soap" and self.stands(one)]
        return fit[number % len(fit)] if fit else None

    def wrap(self, a: int, b: int, c: int) -> None:
        """Bands go round bars, before or after the cut."""
        band, fit = self._pick(b, ("band",)), [one for one in self.batches if self.stands(one)]
        if band and fit:
            self._move(band, -(1 + c % self.held(band, "workshop")), "consumed", batch=fit[a % len(fit)].id)

    def correct(self, a: int, b: int, c: int) -> None:
        """Less went in than was booked."""
        used: dict[tuple[int, int], int] = {}
        for one in self.moved:
            if one.way == "consumed" and one.batch is not None and self.stands(one):
                used[one.lot, one.batch] = used.get((one.lot, one.batch), 0) - one.quantity
        fit = [(key, much) for key, much in used.items() if much > 0]
        if fit:
            (number, batch), much = fit[a % len(fit)]
            if self._process(batch) != "rework":
                lot = next(one for one in self.lots if one.id == number)
                self._move(lot, much if c % 3 == 0 else 1 + b % much, "consumed", batch=batch)

    def _process(self, number: int) -> str:
        return next(one.process for one in self.batches if one.id == number)

    def carry(self, a: int, b: int, c: int) -> None:
        """Bars change their place."""
        if lot := self._pick(a, ("soap",)):
            many = 1 + b % self.held(lot, "workshop")
            self._move(lot, -many, "moved")
            self._move(lot, many, "moved", ("quay", SHOP, "retained", "quay", SHOP)[c % 5])

    def sell(self, a: int, b: int, c: int) -> None:
        """Bars are sold at the stall or by the shop that has them."""
        place = ("quay", SHOP)[c % 2]
        if lot := self._pick(a, ("soap",), place):
            self._move(lot, -(1 + b % self.held(lot, place)), "sold", place)

    def send(self, a: int, b: int, *_: int) -> None:
        """Bars are dispatched."""
        if lot := self._pick(a, ("soap",)):
            self._move(lot, -(1 + b % self.held(lot, "workshop")), "dispatched")

    def give(self, a: int, b: int, c: int) -> None:
        """Bars are given away, or used by herself."""
        if lot := self._pick(a, ("soap",)):
            many = 1 + b % self.held(lot, "workshop")
            self._move(lot, -many, "given", note=("own use", "a neighbour", "Ida (own use)")[c % 3])

    def come_back(self, a: int, b: int, *_: int) -> None:
        """Bars that were sold come back, on the returns shelf."""
        if lot := self._soap(a):
            ways = ("sold", "dispatched", "returned")
            out = -sum(one.quantity for one in self.moved if one.lot == lot.id and one.way in ways and self.stands(one))
            if out > 0:
                self._move(lot, 1 + b % out, "returned", "returns")

    def waste(self, a: int, b: int, c: int) -> None:
        """Something is thrown away, or goes back to whom it came from."""
        place = ("workshop", "workshop", "returns", "quay")[c % 4]
        if lot := self._pick(a, tuple(MATERIALS), place):
            held = self.held(lot, place)
            self._move(
                lot,
                -(held if c % 5 == 0 else 1 + b % held),
                "wasted",
                place,
                note=("spilt", "sent back, rancid")[b % 2],
            )

    def count(self, a: int, b: int, c: int) -> None:
        """A count finds less or more; what is not there at all may be found too."""
        fit = [one for one in self.lots if self.stands(one)]
        if not fit:
            return
        lot, place = fit[a % len(fit)], "quay" if c % 5 == 4 else "workshop"
        held = self.held(lot, place)
        if c % 2 or not held:
            self._move(lot, 1 + b % 25, "counted", place)
        else:
            self._move(lot, -(held if c % 3 == 0 else 1 + b % held), "counted", place)

    def reject(self, a: int, b: int, *_: int) -> None:
        """Bars are rejected, or released again."""
        if lot := self._soap(a):
            self.ledger.decide(lot.id, "released" if b % 4 == 0 else "rejected", on=self.day.isoformat())
            lot.rejected.append((self.day, b % 4 != 0))

    def rework(self, a: int, b: int, c: int) -> None:
        """Rejected bars are booked back in as offcuts."""
        if lot := self._pick(a, ("soap",)):
            many = 1 + b % self.held(lot, "workshop")
            self.ledger.batches += 1
            number = self.ledger.add(
                "batch", code=batch_code(2026, self.ledger.batches), process="rework",
                material_id=MATERIALS["offcuts"][0], on=self.day.isoformat(),
            )  # fmt: skip
            batch = Batch(number, "rework", self.day, self.ledger.entry, done=True)
            self.batches.append(batch)
            self._move(lot, -many, "consumed", batch=number)
            self._open("offcuts", 1 + c * 1009, "yielded", batch)

    def give_up(self, a: int, b: int, *_: int) -> None:
        """A batch is given up before the cut."""
        fit = [one for one in self.batches if self.stands(one) and not one.done and one.given_up is None]
        if fit and b % 3 == 0:
            batch = fit[a % len(fit)]
            self.ledger.add("decision", batch_id=batch.id, verdict="discarded", on=self.day.isoformat(), by="Nuala")
            batch.given_up = self.day

    def work(self, a: int, b: int, c: int) -> None:
        """Minutes of work, by stage or as read at the bench."""
        fit = [one for one in self.batches if self.stands(one)]
        if fit:
            batch, by_stage, minutes = fit[a % len(fit)], bool(c % 2), 1 + b % 90
            day = self.day.isoformat()
            if by_stage:
                stage = ("making", "cutting", "wrapping")[c % 3]
                self.ledger.add("work", batch_id=batch.id, on=day, stage=stage, minutes=minutes, by="Nuala")
            else:
                self.ledger.add("reading", batch_id=batch.id, on=day, what="labour", value=minutes, unit="min")
            self.told.append(Told(batch.id, self.day, minutes, by_stage, self.ledger.entry))

    def rate(self, a: int, b: int, c: int) -> None:
        """What an hour or a batch costs from a day on, which may lie behind."""
        kind, on, minor = ("hour", "batch")[a % 2], self.day - timedelta(days=b % 20), (0, 1, 599, 1500)[c % 4]
        self.ledger.add("cost_rate", on=on.isoformat(), kind=kind, minor=minor)
        self.rates.append((kind, on, minor, self.ledger.entry))

    def take_back(self, a: int, b: int, *_: int) -> None:
        """An entry that only moved something is taken back; so is the last one that did something else."""
        entries = [one.entry for one in self.moved if self.stands(one)]
        opened = {one.entry for one in (*self.lots, *self.batches)}
        fit = sorted({one for one in entries if one not in opened})
        last = self.ledger.entry - 1
        if b % 3 == 0 and last in opened and last not in self.gone:
            number = last
        elif fit:
            number = fit[a % len(fit)]
        else:
            return
        for row in self.ledger.rows.execute("SELECT * FROM movement WHERE entry_id = ? ORDER BY id DESC", (number,)):
            mirror = {**dict(row), "entry_id": self.ledger.entry, "quantity": -row["quantity"]}
            self.ledger.add("movement", **{name: value for name, value in mirror.items() if name != "id"})
        self.gone.add(number)
        for lot in self.lots:
            if lot.entry == number and lot.batch is not None:
                next(one for one in self.batches if one.id == lot.batch).done = False
        self.ledger.close(reverses=number)
