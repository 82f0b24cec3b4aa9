"""Plays the sample season into a ledger, through the same operations that a user calls."""

import csv
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import get_args

from ledger.domain.material.skin_limits import Limit
from ledger.operations.house.setup import Setup, set_up
from ledger.operations.material.materials import add_material
from ledger.operations.material.skin import state_contents, state_limit
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.people.suppliers import SupplierDetails, add_supplier
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.release.assess import assess_recipe
from ledger.operations.season.events import Diary
from ledger.operations.season.rows import delivery_line, material_facts, person_details
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.stock.receive import DeliveryNote, receive
from ledger.rows.settings import Responsible
from ledger.units.codes import supplier_number_key
from ledger.units.money import parse_money
from ledger.units.quantity import parse_share
from ledger.units.toml_reader import TomlFile
from ledger.units.words import CustomerKind, MaterialKind, checked


@dataclass(frozen=True)
class SeasonStep:
    """One thing that happens in the season: a sentence for the screen, and what does it."""

    stage: str
    do: Callable[[], object]


class Season(Diary):
    """The sample season, step by step."""

    def steps(self) -> Iterator[SeasonStep]:
        """Everything in order, each ready to be done."""
        yield SeasonStep("Setting up the soapworks", self._set_up)
        for row in self._rows("suppliers.csv"):
            yield SeasonStep("Writing down who supplies", partial(self._supplier, row))
        for row in self._rows("customers.csv"):
            yield SeasonStep("Writing down who buys", partial(self._customer, row))
        for row in self._rows("materials.csv"):
            yield SeasonStep("Listing the materials", partial(self._material, row))
        for row in self._rows("skin_limits.csv"):
            yield SeasonStep("Copying the papers of the fragrances", partial(self._limit, row))
        for path in sorted((self.folder / "recipes").glob("*.toml")):
            yield SeasonStep("Copying the recipes", partial(self._recipe, path))
        for path in sorted((self.folder / "assessments").glob("*.toml")):
            yield SeasonStep("Booking what was assessed", partial(self._assessment, path))
        events: list[tuple[int, str, Callable[[], object]]] = []
        for (day, _, _), rows in self._deliveries().items():
            events.append((day, "Receiving, making, curing and selling", partial(self._delivery, rows)))
        for (day, *_), stated in self._contents().items():
            events.append((day, "Receiving, making, curing and selling", partial(self._contains, stated)))
        diary = TomlFile((self.folder / "diary.toml").read_text(encoding="utf-8"), "diary.toml").data
        for event in diary["event"]:
            events.append((event["day"], "Receiving, making, curing and selling", partial(self.happen, event)))
        for _, stage, do in sorted(events, key=lambda one: one[0]):
            yield SeasonStep(stage, do)

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
                maker=told["maker"],
                labour_minor_per_hour=parse_money(told["labour_per_hour"], told["currency"]),
            ),
        )
        for name in told["stalls"]:
            add_stall(self.book, name)

    def _supplier(self, row: dict[str, str]) -> None:
        person = person_details(row)
        add_supplier(self.book, SupplierDetails(row["name"], person), own=row["own"] == "yes", code=row["code"])

    def _customer(self, row: dict[str, str]) -> None:
        kind = checked(row["kind"], get_args(CustomerKind), what="a kind of customer")
        add_customer(self.book, CustomerDetails(row["name"], person_details(row)), kind=kind, code=row["code"])

    def _material(self, row: dict[str, str]) -> None:
        kind = checked(row["kind"], get_args(MaterialKind), what="a kind of material")
        add_material(self.book, material_facts(row), kind=kind, code=row["code"])

    def _limit(self, row: dict[str, str]) -> None:
        facts = Limit(
            parse_share(row["percent"]),
            row["certificate"],
            row["amendment"],
            row["category"],
            self.day(int(row["day"])),
        )
        whole = not row["constituent"]
        state_limit(
            self.book, facts, material=row["what"] if whole else None, constituent=None if whole else row["what"]
        )

    def _contents(self) -> dict[tuple[int, str, str], list[dict[str, str]]]:
        """The statements, each of one material or lot."""
        return self._by_day("contents.csv", "material", "lot")

    def _contains(self, rows: list[dict[str, str]]) -> None:
        first = rows[0]
        lot = self.lots[supplier_number_key(first["lot"])] if first["lot"] else None
        shares = {row["name"]: parse_share(row["percent"]) for row in rows}
        state_contents(self.book, first["material"], shares, source=first["source"], lot=lot)

    def _recipe(self, path: Path) -> None:
        add_recipe(self.book, path.read_text(encoding="utf-8"), file=path.name)

    def _assessment(self, path: Path) -> None:
        assess_recipe(self.book, path.stem, path.read_text(encoding="utf-8"), file=path.name)

    def _deliveries(self) -> dict[tuple[int, str, str], list[dict[str, str]]]:
        return self._by_day("deliveries.csv", "supplier", "note_number")

    def _by_day(self, name: str, of: str, which: str) -> dict[tuple[int, str, str], list[dict[str, str]]]:
        """The rows of a table that belong together, by their day and by two columns."""
        found: dict[tuple[int, str, str], list[dict[str, str]]] = {}
        for row in self._rows(name):
            found.setdefault((int(row["day"]), row[of], row[which]), []).append(row)
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
