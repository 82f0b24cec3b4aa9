"""What happens in the sample season's diary, each through the operation that a user calls."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from datetime import date, timedelta
from pathlib import Path
from typing import Any

from ledger.domain.release.bars import Passing
from ledger.domain.release.releasing import Releasing
from ledger.domain.tools.bar_checks import read_check
from ledger.domain.tools.bounds import PH_AT_MOST
from ledger.operations.bench.bulk import strain_batch
from ledger.operations.bench.cut import cut_batch
from ledger.operations.bench.deviations import decide_deviation
from ledger.operations.bench.plan import PlanRequest, plan_batch
from ledger.operations.bench.portions import divide_batch
from ledger.operations.bench.readings import ReadingValue, log_readings, read_reading
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.complaint.complaints import Report, book_complaint
from ledger.operations.cure.weighing import weigh_bars
from ledger.operations.label.labels import Counted, LabelRequest, approve_label, count_run, print_labels
from ledger.operations.release.release import pass_bars, reject_bars, release_bars
from ledger.operations.season.selling import Selling
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.gift import gift
from ledger.operations.sell.stall_back import stall_back
from ledger.operations.sell.stall_out import stall_out
from ledger.operations.sell.take_back import take_back
from ledger.operations.stock.combine import combine
from ledger.operations.stock.lots import count_lot, decide_lots, waste_lot
from ledger.reference.shipped import templates
from ledger.rows.batch import find_batch, plan_lines
from ledger.rows.decision import open_deviations
from ledger.rows.label import runs
from ledger.rows.lot import on_hand_at, place_of_kind
from ledger.rows.opened import Rows
from ledger.storage.book import Book
from ledger.storage.personal import PersonDetails
from ledger.units.codes import supplier_number_key
from ledger.units.quantity import parse_mass
from ledger.units.toml_reader import TomlFile
from ledger.views.label.label import LabelText
from ledger.views.label.usable import label_doubts, labels_on_bars

Draw = Callable[[LabelText, int], bytes]
LAYOUT, SHEET = "label-band", "sheet-a4-6"  # all labels of the season are bands of six to a sheet


@dataclass
class Diary(Selling):
    """The sample season as far as it has been played; batches and lots by the names the diary uses."""

    book: Book
    folder: Path
    on: date  # the day of the demo; every day of the diary counts from it
    draw: Draw
    rows: Callable[[], Rows]  # what is booked, held still until it is let go
    scenario: dict[str, Any] = field(default_factory=dict)
    batches: dict[str, str] = field(default_factory=dict)
    lots: dict[str, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Read who the season belongs to."""
        self.scenario = TomlFile((self.folder / "soapworks.toml").read_text(encoding="utf-8"), "soapworks.toml").data

    @property
    def maker(self) -> str:
        """Who decides in the season."""
        return str(self.scenario["maker"])

    def day(self, offset: int) -> date:
        """A day of the diary."""
        return self.on + timedelta(days=offset)

    def happen(self, event: dict[str, Any]) -> None:
        """One event, on its day."""
        getattr(self, f"_do_{event['do'].replace(' ', '_')}")(event, self.day(event["day"]))

    def _bars(self, event: dict[str, Any]) -> dict[str, int]:
        return {self.batches[name]: number for name, number in event["bars"].items()}

    def _do_plan(self, event: dict[str, Any], on: date) -> None:
        self.batches[event["batch"]] = plan_batch(self.book, PlanRequest(event["recipe"], on))

    def _do_make(self, event: dict[str, Any], on: date) -> None:
        self._do_plan(event, on)
        code = self.batches[event["batch"]]
        with self.look() as rows:
            lines = [one for one in plan_lines(rows, find_batch(rows, code).id) if one.role != "packaging"]
        actual = {name: parse_mass(text) for name, text in event.get("weighed", {}).items()}
        weighed = {}
        for line in lines:
            alone = sum(one.material_code == line.material_code for one in lines) == 1
            weighed[line.number] = [Weighed(actual.get(line.material_code, line.target) if alone else line.target)]
        weigh(self.book, code, weighed, on=on, by=self.maker)
        if readings := tuple(read_reading(text) for text in event.get("readings", ())):
            log_readings(self.book, code, readings, on=on)
        self._accept(code, event, on)

    def _do_divide(self, event: dict[str, Any], on: date) -> None:
        for name, code, _ in divide_batch(self.book, self.batches[event["batch"]], {}, on=on, by=self.maker):
            self.batches[f"{event['batch']} {name}"] = code
            with self.look() as rows:
                lines = [one for one in plan_lines(rows, find_batch(rows, code).id) if one.role != "packaging"]
            weighed = {line.number: [Weighed(line.target)] for line in lines if not line.logged}
            poured = (read_reading(f"poured={event['poured']}"),)
            if weighed:
                weigh(self.book, code, weighed, on=on, by=self.maker, readings=poured)
            else:
                log_readings(self.book, code, poured, on=on)

    def _do_note(self, event: dict[str, Any], on: date) -> None:
        words = ReadingValue("observation", text=event["text"])
        log_readings(self.book, self.batches[event["batch"]], (words,), on=on)

    def _accept(self, code: str, event: dict[str, Any], on: date) -> None:
        """Decide about what lay outside a limit, with the reason the diary gives."""
        with self.look() as rows:
            found = open_deviations(rows, find_batch(rows, code).id)
        for one in found:
            decide_deviation(self.book, code, one.number, "accept", on=on, by=self.maker, reason=event["accepted"])

    def _do_cut(self, event: dict[str, Any], on: date) -> None:
        cut_batch(
            self.book,
            self.batches[event["batch"]],
            bars=event["bars"],
            on=on,
            by=self.maker,
            bars_mg=parse_mass(event["weight"]),
            offcuts_mg=parse_mass(event["offcuts"]) if "offcuts" in event else 0,
            waste_mg=parse_mass(event["waste"]) if "waste" in event else 0,
            weights_mg=[parse_mass(one) for one in event.get("each", ())],
        )
        self._accept(self.batches[event["batch"]], event, on)

    def _do_weigh_bars(self, event: dict[str, Any], on: date) -> None:
        weights = {mark: parse_mass(text) for mark, text in event["marked"].items()}
        weigh_bars(self.book, self.batches[event["batch"]], weights, on=on)

    def _do_strain(self, event: dict[str, Any], on: date) -> None:
        mass = parse_mass(event["weight"])
        spent = parse_mass(event["spent"]) if "spent" in event else 0
        strain_batch(self.book, self.batches[event["batch"]], mass_mg=mass, on=on, by=self.maker, spent_mg=spent)

    def _do_combine(self, event: dict[str, Any], on: date) -> None:
        codes = [self.lots[supplier_number_key(number)] for number in event["lots"]]
        combine(self.book, codes, on=on, by=self.maker)

    def _do_pass(self, event: dict[str, Any], on: date) -> None:
        asked = Passing(on, self.maker, event.get("wasted", 0), event.get("reason"))
        pass_bars(self.book, self.batches[event["batch"]], asked)

    def _do_labels(self, event: dict[str, Any], on: date) -> None:
        code, printed, spoiled = self.batches[event["batch"]], event["count"], event.get("spoiled", 0)
        with self.look() as rows:
            batch = find_batch(rows, code)
            here = on_hand_at(rows, batch.yield_lot_id or 0, place_of_kind(rows, "workshop").id, on=on)
            bare = max(0, here - labels_on_bars(rows, batch, on=on))
        left_over = max(0, printed - spoiled - bare)  # one label for each bar, and the others go back
        self._label(code, event["market"], printed, on, spoiled=spoiled, returned=left_over)

    def _label(self, code: str, market: str, count: int, on: date, *, spoiled: int = 0, returned: int = 0) -> None:
        form, page = ((templates() / f"{name}.toml").read_text(encoding="utf-8") for name in (LAYOUT, SHEET))
        request = LabelRequest(code, market, "belly band", count, on, layout_source=form, sheet_source=page)
        approve_label(self.book, request, by=self.maker)
        print_labels(self.book, request, lambda view: self.draw(view, count))
        with self.look() as rows:
            run = runs(rows)[-1].number
        specimen = min(1, returned)
        count_run(self.book, run, Counted(spoiled, returned - specimen, specimen=specimen), on=on)

    def _label_anew(self, codes: Iterable[str], on: date) -> None:
        """Labels that the day made unusable are replaced before the bars leave, one for each bar here."""
        for code in codes:
            with self.look() as rows:
                batch = find_batch(rows, code)
                doubts = label_doubts(rows, batch, on=on)
                here = on_hand_at(rows, batch.yield_lot_id or 0, place_of_kind(rows, "workshop").id, on=on)
            for market in {**doubts.stated, **doubts.changed}:
                self._label(code, market, here, on)

    def _do_release(self, event: dict[str, Any], on: date) -> None:
        looked = [read_check(what, found, ph=(0, PH_AT_MOST)) for what, found in event["checks"].items()]
        code, retain = self.batches[event["batch"]], event.get("retain", 0)
        kept_at = event.get("kept_at", "tin box, larder")
        self._label_anew([code], on)
        asked = Releasing(on, self.maker, retain=retain, kept_at=kept_at, checks=looked)
        release_bars(self.book, code, asked)

    def _do_reject(self, event: dict[str, Any], on: date) -> None:
        reject_bars(self.book, self.batches[event["batch"]], on=on, by=self.maker, reason=event["reason"])

    def _do_stall_out(self, event: dict[str, Any], on: date) -> None:
        self._label_anew(self._bars(event), on)
        stall_out(self.book, event["stall"], self._bars(event), on=on)

    def _do_stall_back(self, event: dict[str, Any], on: date) -> None:
        stall_back(
            self.book,
            event["stall"],
            self._bars(event),
            on=on,
            takings_minor=self._money(event, "takings"),
            takings=self._takings(event),
            pitch_minor=self._money(event, "pitch"),
        )

    def _do_dispatch(self, event: dict[str, Any], on: date) -> None:
        self._label_anew(self._bars(event), on)
        dispatch(
            self.book,
            event["customer"],
            self._bars(event),
            on=on,
            price_minor=self._money(event, "price"),
            note=event.get("note"),
            order_id=event.get("order"),
        )

    def _do_gift(self, event: dict[str, Any], on: date) -> None:
        self._label_anew(self._bars(event), on)
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
