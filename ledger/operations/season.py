"""Plays the sample season into a ledger, through the same operations that a user calls."""

import csv
import tomllib
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from datetime import date, timedelta
from functools import partial
from pathlib import Path
from typing import Any

from ledger.domain.codes import supplier_number_key
from ledger.domain.money import parse_money
from ledger.domain.quantity import parse_mass
from ledger.operations.assess import assess_recipe
from ledger.operations.combine import combine
from ledger.operations.complaints import Report, book_complaint
from ledger.operations.customers import CustomerDetails, add_customer
from ledger.operations.cut import cut_batch, strain_batch
from ledger.operations.labels import LabelRequest, print_labels
from ledger.operations.lots import count_lot, decide_lots, waste_lot
from ledger.operations.materials import add_material
from ledger.operations.plan import PlanRequest, plan_batch
from ledger.operations.readings import ReadingValue, log_readings, read_reading
from ledger.operations.receive import DeliveryNote, receive
from ledger.operations.recipes import add_recipe
from ledger.operations.release import pass_bars, reject_bars, release_bars
from ledger.operations.season_rows import delivery_line, material_facts, person_details
from ledger.operations.sell import add_stall, dispatch, gift, stall_back, stall_out, take_back
from ledger.operations.setup import Setup, set_up
from ledger.operations.suppliers import SupplierDetails, add_supplier
from ledger.operations.weigh import Weighed, weigh
from ledger.storage.book import Book
from ledger.storage.personal import PersonDetails
from ledger.views.batch import find_batch, plan_lines
from ledger.views.label import LabelText
from ledger.views.settings import Responsible

Draw = Callable[[LabelText, int], bytes]


@dataclass(frozen=True)
class Step:
    """One thing that happens in the season: a sentence for the screen, and what does it."""

    stage: str
    do: Callable[[], object]


@dataclass
class Season:
    """The sample season being played; batches and lots by the names the diary uses."""

    book: Book
    folder: Path
    on: date  # the day of the demo; every day of the diary counts from it
    draw: Draw
    scenario: dict[str, Any] = field(default_factory=dict)
    batches: dict[str, str] = field(default_factory=dict)
    lots: dict[str, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Read who the season belongs to."""
        self.scenario = tomllib.loads((self.folder / "soapworks.toml").read_text(encoding="utf-8"))

    @property
    def maker(self) -> str:
        """Who decides in the season."""
        return str(self.scenario["maker"])

    def day(self, offset: int) -> date:
        """A day of the diary."""
        return self.on + timedelta(days=offset)

    def steps(self) -> Iterator[Step]:
        """Everything in order, each ready to be done."""
        yield Step("Setting up the soapworks", self._set_up)
        for row in self._rows("suppliers.csv"):
            yield Step("Writing down who supplies", partial(self._supplier, row))
        for row in self._rows("customers.csv"):
            yield Step("Writing down who buys", partial(self._customer, row))
        for row in self._rows("materials.csv"):
            yield Step("Listing the materials", partial(self._material, row))
        for path in sorted((self.folder / "recipes").glob("*.toml")):
            yield Step("Copying the recipes", partial(self._recipe, path))
        for path in sorted((self.folder / "assessments").glob("*.toml")):
            yield Step("Booking what was assessed", partial(self._assessment, path))
        events: list[tuple[int, str, Callable[[], object]]] = []
        for (day, _, _), rows in self._deliveries().items():
            events.append((day, "Receiving, making, curing and selling", partial(self._delivery, rows)))
        diary = tomllib.loads((self.folder / "diary.toml").read_text(encoding="utf-8"))
        for event in diary["event"]:
            events.append((event["day"], "Receiving, making, curing and selling", partial(self._event, event)))
        for _, stage, do in sorted(events, key=lambda one: one[0]):
            yield Step(stage, do)

    def _rows(self, name: str) -> list[dict[str, str]]:
        with (self.folder / name).open(encoding="utf-8", newline="") as file:
            return list(csv.DictReader(file))

    def _set_up(self) -> None:
        told = self.scenario
        set_up(
            self.book,
            Setup(
                business=told["business"],
                country=told["country"],
                currency=told["currency"],
                units=told["units"],
                time_zone=told["time_zone"],
                addresses={code: Responsible(one["name"], one["address"]) for code, one in told["markets"].items()},
                phone=told["phone"],
                labour_minor_per_hour=parse_money(told["labour_per_hour"], told["currency"]),
            ),
        )
        for name in told["stalls"]:
            add_stall(self.book, name)

    def _supplier(self, row: dict[str, str]) -> None:
        person = person_details(row)
        add_supplier(self.book, SupplierDetails(row["name"], person), own=row["own"] == "yes", code=row["code"])

    def _customer(self, row: dict[str, str]) -> None:
        add_customer(self.book, CustomerDetails(row["name"], person_details(row)), kind=row["kind"], code=row["code"])

    def _material(self, row: dict[str, str]) -> None:
        add_material(self.book, material_facts(row), kind=row["kind"], code=row["code"])

    def _recipe(self, path: Path) -> None:
        add_recipe(self.book, path.read_text(encoding="utf-8"), file=path.name)

    def _assessment(self, path: Path) -> None:
        assess_recipe(self.book, path.stem, path.read_text(encoding="utf-8"), file=path.name)

    def _deliveries(self) -> dict[tuple[int, str, str], list[dict[str, str]]]:
        found: dict[tuple[int, str, str], list[dict[str, str]]] = {}
        for row in self._rows("deliveries.csv"):
            found.setdefault((int(row["day"]), row["supplier"], row["note_number"]), []).append(row)
        return found

    def _delivery(self, rows: list[dict[str, str]]) -> None:
        materials = {row["code"]: row for row in self._rows("materials.csv")}
        on, currency = self.day(int(rows[0]["day"])), self.scenario["currency"]
        lines = [delivery_line(row, materials[row["material"]], on, currency) for row in rows]
        note = DeliveryNote(
            supplier=rows[0]["supplier"],
            on=on,
            lines=tuple(lines),
            note_number=rows[0]["note_number"] or None,
            accepted_by=self.maker,
        )
        for row, lot in zip(rows, receive(self.book, note), strict=True):
            self.lots[supplier_number_key(row["lot"])] = lot.code

    def _event(self, event: dict[str, Any]) -> None:
        getattr(self, f"_do_{event['do'].replace(' ', '_')}")(event, self.day(event["day"]))

    def _bars(self, event: dict[str, Any]) -> dict[str, int]:
        return {self.batches[name]: number for name, number in event["bars"].items()}

    def _do_plan(self, event: dict[str, Any], on: date) -> None:
        self.batches[event["batch"]] = plan_batch(self.book, PlanRequest(event["recipe"], on))

    def _do_make(self, event: dict[str, Any], on: date) -> None:
        self._do_plan(event, on)
        code = self.batches[event["batch"]]
        with self.book.look() as rows:
            lines = [one for one in plan_lines(rows, find_batch(rows, code).id) if one.role != "packaging"]
        actual = {name: parse_mass(text) for name, text in event.get("weighed", {}).items()}
        weighed = {}
        for line in lines:
            alone = sum(one.material_code == line.material_code for one in lines) == 1
            weighed[line.number] = [Weighed(actual.get(line.material_code, line.target) if alone else line.target)]
        weigh(self.book, code, weighed, on=on, by=self.maker)
        if readings := tuple(read_reading(text) for text in event.get("readings", ())):
            log_readings(self.book, code, readings, on=on)

    def _do_note(self, event: dict[str, Any], on: date) -> None:
        words = ReadingValue("observation", text=event["text"])
        log_readings(self.book, self.batches[event["batch"]], (words,), on=on)

    def _do_cut(self, event: dict[str, Any], on: date) -> None:
        cut_batch(
            self.book,
            self.batches[event["batch"]],
            bars=event["bars"],
            on=on,
            by=self.maker,
            bars_mg=parse_mass(event["weight"]),
            offcuts_mg=parse_mass(event["offcuts"]) if "offcuts" in event else 0,
        )

    def _do_strain(self, event: dict[str, Any], on: date) -> None:
        mass = parse_mass(event["weight"])
        strain_batch(self.book, self.batches[event["batch"]], mass_mg=mass, on=on, by=self.maker)

    def _do_combine(self, event: dict[str, Any], on: date) -> None:
        codes = [self.lots[supplier_number_key(number)] for number in event["lots"]]
        combine(self.book, codes, on=on, by=self.maker)

    def _do_pass(self, event: dict[str, Any], on: date) -> None:
        pass_bars(
            self.book,
            self.batches[event["batch"]],
            on=on,
            by=self.maker,
            wasted=event.get("wasted", 0),
            reason=event.get("reason"),
        )

    def _do_labels(self, event: dict[str, Any], on: date) -> None:
        count = event["count"]
        request = LabelRequest(self.batches[event["batch"]], event["market"], "belly band", count, on)
        print_labels(self.book, request, lambda view: self.draw(view, count))

    def _do_release(self, event: dict[str, Any], on: date) -> None:
        release_bars(self.book, self.batches[event["batch"]], on=on, by=self.maker, retain=event.get("retain", 0))

    def _do_reject(self, event: dict[str, Any], on: date) -> None:
        reject_bars(self.book, self.batches[event["batch"]], on=on, by=self.maker, reason=event["reason"])

    def _do_stall_out(self, event: dict[str, Any], on: date) -> None:
        stall_out(self.book, event["stall"], self._bars(event), on=on)

    def _do_stall_back(self, event: dict[str, Any], on: date) -> None:
        takings = parse_money(event["takings"], self.scenario["currency"]) if "takings" in event else None
        stall_back(self.book, event["stall"], self._bars(event), on=on, takings_minor=takings)

    def _do_dispatch(self, event: dict[str, Any], on: date) -> None:
        price = parse_money(event["price"], self.scenario["currency"])
        dispatch(self.book, event["customer"], self._bars(event), on=on, price_minor=price, note=event.get("note"))

    def _do_gift(self, event: dict[str, Any], on: date) -> None:
        gift(self.book, self._bars(event), to=event["to"], on=on)

    def _do_return(self, event: dict[str, Any], on: date) -> None:
        take_back(
            self.book,
            self._bars(event),
            customer=event.get("customer"),
            stall=event.get("stall"),
            on=on,
            reason=event["reason"],
        )

    def _do_count(self, event: dict[str, Any], on: date) -> None:
        code = self.lots[supplier_number_key(event["lot"])]
        count_lot(self.book, code, parse_mass(event["weight"]), place=None, on=on, note=event.get("note"))

    def _do_waste(self, event: dict[str, Any], on: date) -> None:
        code, number = self.batches[event["batch"]], event["bars"]
        waste_lot(self.book, code, number, place=None, on=on, reason=event["reason"])

    def _do_accept(self, event: dict[str, Any], on: date) -> None:
        codes = [self.lots[supplier_number_key(event["lot"])]]
        decide_lots(self.book, codes, verdict="accepted", on=on, by=self.maker, reason=event.get("reason"))

    def _do_complaint(self, event: dict[str, Any], on: date) -> None:
        book_complaint(
            self.book,
            Report(
                on=on,
                what=event["what"],
                person=PersonDetails(name=event.get("name"), phone=event.get("phone")),
                batch=self.batches[event["batch"]] if "batch" in event else None,
                bought=event.get("bought"),
                serious=event.get("serious"),
                decided_by=self.maker if "serious" in event else None,
            ),
        )
