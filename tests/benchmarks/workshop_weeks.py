"""Four weeks of an invented workshop, played through the operations that commands call.

Every turn of four weeks draws the same chances from the same seed, so that from some turn on each is like the one
before it, four weeks later: what came in is used up or thrown away, what was made is sold.
"""

import heapq
from collections.abc import Callable
from datetime import timedelta
from functools import partial

from benchmarks.workshop_setup import MAKER, RECIPES
from benchmarks.workshop_stores import TURN, WRAPPINGS, Bars, Stores

from ledger.domain.release.bars import Passing
from ledger.domain.release.releasing import Releasing
from ledger.domain.tools.bar_checks import Check
from ledger.operations.bench.bulk import fill_batch, strain_batch
from ledger.operations.bench.cut import cut_batch
from ledger.operations.bench.deviations import decide_deviation, report_deviation
from ledger.operations.bench.plan import PlanRequest, plan_batch
from ledger.operations.bench.portions import divide_batch
from ledger.operations.bench.readings import log_readings, read_reading
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.cure.weighing import weigh_bars
from ledger.operations.label.labels import Counted, LabelRequest, approve_label, count_run, print_labels
from ledger.operations.release.release import pass_bars, reject_bars, release_bars
from ledger.operations.release.rework import rework_bars
from ledger.operations.stock.lots import decide_lots
from ledger.rows.batch import PlanLineRow, find_batch, plan_lines
from ledger.rows.decision import open_deviations
from ledger.rows.reading import mass_in

MONDAY, SATURDAY = 0, 5
_LOOKS = ("look", "smell", "weight")


class Weeks(Stores):
    """The workshop at work."""

    def play_turn(self, selling: "Callable[[Weeks], None]") -> None:
        """Four weeks: each day what falls due on it, then the work of its weekday, then `selling`."""
        self.chance.seed(self.seed)
        turn = self.day // TURN
        for _ in range(TURN):
            if self.day % TURN == 0:
                self.deliveries(turn)
                self._ahead()
            while self.to_do and self.to_do[0][0] <= self.day:
                heapq.heappop(self.to_do)[2]()
            if 1 <= self.day % 7 <= 4:
                self._make_a_day(turn)
            if self.day % TURN == TURN - 3:
                self._rebatch()
            selling(self)
            if self.day % TURN == TURN - 1:
                self.clear_out(turn)
            self.day += 1

    # what is made

    def _ahead(self) -> None:
        """The oils set to infuse for the next turn, and a jug of stock lye."""
        for _ in range(self._of_the_fen(self.scale.batches_a_week * 4)):
            oil, mass = self._weighed("marigold-oil")
            self.later(27, partial(self._strain, oil, mass))
        jug, mass = self._weighed("half-lye-jug")
        self.raw.append((self.day // TURN, "half-lye", fill_batch(self.book, jug, mass_mg=mass, on=self.on, by=MAKER)))

    @staticmethod
    def _of_the_fen(batches: int) -> int:
        return sum(number % 4 == 1 for number in range(batches))

    def _strain(self, code: str, mass: int) -> None:
        lot = strain_batch(self.book, code, mass_mg=mass - 150_000, on=self.on, by=MAKER, spent_mg=130_000)
        self.raw.append((self.day // TURN + 1, "marigold-olive", lot))

    def _recipe(self, number: int, turn: int) -> str:
        """Every fourth batch is of the infused oil, once there is some; the dough that divides comes once."""
        if number % 4 == 1 and turn:
            return "fen-gold"
        if number == 6:
            return "two-shores"
        return "hearth" if number % 4 == 3 else "harbour"

    def _make_a_day(self, turn: int) -> None:
        """The batches of a working day, of those that the week makes in four days."""
        week, place = self.day % TURN // 7, self.day % 7 - 1
        each = self.scale.batches_a_week
        for number in range(each * place // 4, each * (place + 1) // 4):
            self._make(week * each + number, turn)

    def _make(self, number: int, turn: int) -> None:
        recipe = self._recipe(number, turn)
        using = {}
        if recipe == "harbour" and number in (0, 2):
            using["lye"] = self.lot("half-lye")
        code, mass = self._weighed(recipe, using=using, number=number)
        if recipe == "two-shores":
            for place, (_, child, _) in enumerate(divide_batch(self.book, code, {}, on=self.on, by=MAKER)):
                self._weigh(child, poured=True)
                with self.book.look() as rows:
                    part = mass_in(rows, find_batch(rows, child).id)
                self.later(1, partial(self._cut, child, number + place, part, (20, 10)[place]))
            return
        self.later(1, partial(self._cut, code, number, mass, 30))

    def lot(self, material: str) -> str:
        """The lot of this turn."""
        return next(lot for turn, code, lot in self.raw if (turn, code) == (self.day // TURN, material))

    def _weighed(self, recipe: str, *, using: dict[str, str] | None = None, number: int = -1) -> tuple[str, int]:
        """A batch planned and weighed; its code and what went in, in mg."""
        wrapped = {one: self.lot(one) for one in WRAPPINGS if f'material = "{one}"' in RECIPES[recipe]}
        code = plan_batch(self.book, PlanRequest(recipe, self.on, using={**wrapped, **(using or {})}))
        poured = recipe in ("harbour", "fen-gold", "hearth")
        self._weigh(code, poured=poured, number=number, near=number >= 0)
        with self.book.look() as rows:
            return code, mass_in(rows, find_batch(rows, code).id)

    def _weigh(self, code: str, *, poured: bool, number: int = -1, near: bool = False) -> None:
        with self.book.look() as rows:
            batch = find_batch(rows, code)
            lines = [one for one in plan_lines(rows, batch.id) if one.role != "packaging" and not one.logged]
        read = []
        if poured:
            warm = 60 if number == 4 else 46 + self.chance.randint(0, 4)
            read = [f"lye temperature={warm} C", f"fats temperature={46 + self.chance.randint(0, 4)} C"]
            read += ["trace=9 min", f"poured={14 + number % 3}:05"]
        if lines:
            found = {one.number: [Weighed(self._near(one) if near else one.target)] for one in lines}
            weigh(self.book, code, found, on=self.on, by=MAKER, readings=[read_reading(one) for one in read])
        else:
            log_readings(self.book, code, [read_reading(one) for one in read], on=self.on)
        if number == 8:
            first = lines[0]
            less = [Weighed(first.low)]
            weigh(self.book, code, {first.number: less}, on=self.on, by=MAKER, correct=True)
        if number == 9:
            report_deviation(self.book, code, "the mould leaked a little", on=self.on)
        with self.book.look() as rows:
            found_open = open_deviations(rows, find_batch(rows, code).id)
        for one in found_open:
            why = "watched, and came to trace as always"
            decide_deviation(self.book, code, one.number, "accept", on=self.on, by=MAKER, reason=why)

    def _near(self, line: PlanLineRow) -> int:
        """What the scale showed: fats a little under the target, the rest on it."""
        if line.role != "fat":
            return line.target
        return line.target - self.chance.randint(0, (line.target - line.low) // 2)

    def _cut(self, code: str, number: int, mass: int, bars: int, *, days: int = 29) -> None:
        rest = mass * 3 // 100
        cut_batch(
            self.book, code, bars=bars, on=self.on, by=MAKER, bars_mg=mass * 94 // 100, offcuts_mg=rest, weights_mg=()
        )
        with self.book.look() as rows:
            lot = rows.execute("SELECT code FROM lot WHERE code LIKE 'L%' ORDER BY id DESC LIMIT 1").fetchone()[0]
        self.offcuts.append(lot)
        if number % 3 == 0:
            for week in range(4):
                self.later(7 * week, partial(self._weigh_marked, code, mass * 94 // 100 // bars, week))
        if number == 7:
            self.later(days, partial(self._rework, code, mass))
        else:
            self.later(days, partial(self._pack, code, number, bars))

    def _weigh_marked(self, code: str, each: int, week: int) -> None:
        gone = 80 - 80 // 4**week  # per mille: the most of its water in the first week, and little after the third
        weights = {mark: each * (1000 - gone) // 1000 + 100 * place for place, mark in enumerate("AB")}
        weigh_bars(self.book, code, weights, on=self.on)

    def _rework(self, code: str, mass: int) -> None:
        reject_bars(self.book, code, on=self.on, by=MAKER, reason="crumbles at the edges")
        made = rework_bars(self.book, code, mass * 85 // 100, on=self.on, by=MAKER)
        decide_lots(self.book, [made.lot], verdict="accepted", on=self.on, by=MAKER, reason="good for a rebatch")
        self.offcuts.append(made.lot)

    def _rebatch(self) -> None:
        """As many rebatches as there are offcuts for; theirs go into the next turn's."""
        while self.held(self.offcuts) >= 1_500_000:
            code, mass = self._weighed("second-turn")
            self.offcuts = [one for one in self.offcuts if self.held([one])]
            self.later(1, partial(self._cut, code, 100, mass, 12, days=22))

    def _pack(self, code: str, number: int, bars: int) -> None:
        """Passed, labelled, counted, released, and on sale."""
        wasted = int(number % 5 == 2)
        pass_bars(
            self.book, code, Passing(on=self.on, by=MAKER, wasted=wasted, reason="cracked through" if wasted else None)
        )
        request = LabelRequest(code, "eu", "band", bars + 2, self.on, layout_source="", sheet_source="")
        approve_label(self.book, request, by=MAKER)
        print_labels(self.book, request, lambda _: b"")
        with self.book.look() as rows:
            run = rows.execute("SELECT max(id) FROM label_run").fetchone()[0]
        count_run(self.book, run, Counted(1, 1 + wasted, specimen=0), on=self.on)
        checks = [Check("pH", "9.6; 1 % in water", True), *(Check(one, "good", True) for one in _LOOKS)]
        until = self.on + timedelta(days=1100)
        release_bars(
            self.book, code, Releasing(on=self.on, by=MAKER, retain=1, kept_at="tin 3", keep_until=until, checks=checks)
        )
        self.on_sale.append(Bars(code, number, bars - wasted - 1))
