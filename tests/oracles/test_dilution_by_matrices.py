"""How much of a lot is in everything, and the sums of grams and of bars, against linear equations solved by numpy."""

from collections import defaultdict
from dataclasses import dataclass, field

import numpy as np
from bare_ledger import BareLedger
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.recall.dilution import FINE, Came, Pot, diluted
from ledger.rows.lot import lot_by_id
from ledger.views.recall.recall_answer import recall_answer


@dataclass
class Story:
    """A ledger, and beside it what was poured where, kept by hand."""

    ledger: BareLedger
    bought: list[int] = field(default_factory=list)
    size: dict[int, int] = field(default_factory=dict)  # mg, of bars pieces
    weighs: dict[int, int] = field(default_factory=dict)  # mg of all of it
    took: dict[int, dict[int, int]] = field(default_factory=lambda: defaultdict(dict))
    gave: dict[int, list[int]] = field(default_factory=dict)
    wasted: dict[int, int] = field(default_factory=lambda: defaultdict(int))
    counted: dict[int, int] = field(default_factory=lambda: defaultdict(int))
    here: dict[int, int] = field(default_factory=dict)

    def lot(self, number: int, size: int, weighs: int | None = None) -> None:
        self.size[number] = self.here[number] = size
        self.weighs[number] = size if weighs is None else weighs

    def solve(self, suspect: set[int]) -> dict[int, float]:
        """x = s + A x: of what a pot took, each lot it gave has its part by weight."""
        numbers = sorted(self.size)
        at = {number: row for row, number in enumerate(numbers)}
        matrix, given_ = np.zeros((len(numbers), len(numbers))), np.zeros(len(numbers))
        for number in suspect:
            given_[at[number]] = self.weighs[number]
        for batch, lots in self.gave.items():
            out = sum(self.weighs[lot] for lot in lots)
            for lot in lots:
                for used, quantity in self.took[batch].items():
                    if lot not in suspect:
                        matrix[at[lot], at[used]] += quantity / self.size[used] * self.weighs[lot] / out
        found = np.linalg.solve(np.eye(len(numbers)) - matrix, given_)
        return {number: float(found[at[number]]) for number in numbers}


@st.composite
def stories(draw: st.DrawFn) -> Story:
    """Deliveries, then pots that take of whatever is there; some is thrown away, some goes missing at a count."""
    story = Story(BareLedger(in_turn=True))
    for number in range(draw(st.integers(1, 4))):
        size = draw(st.integers(10, 5_000_000))
        lot = story.ledger.buy(f"N{number}", quantity=size)
        story.lot(lot, size)
        story.bought.append(lot)
    for _ in range(draw(st.integers(0, 9))):
        stock = [lot for lot, left in story.here.items() if left > 0 and story.weighs[lot] == story.size[lot]]
        if not stock:
            break
        process = draw(st.sampled_from(["cold", "rebatch", "blend", "combine"]))
        batch, lots = story.ledger.make(process, [], offcuts=process in ("cold", "rebatch") and draw(st.booleans()),
                                        bars_mg=draw(st.integers(100, 2_000_000)))  # fmt: skip
        for lot in draw(st.lists(st.sampled_from(stock), min_size=1, max_size=3, unique=True)):
            quantity = draw(st.integers(1, story.here[lot]))
            story.ledger.move(lot, -quantity, "consumed", batch_id=batch)
            story.took[batch][lot] = quantity
            story.here[lot] -= quantity
        story.gave[batch] = lots
        for lot in lots:
            row = story.ledger.rows.execute("SELECT mass_mg, material_id FROM lot WHERE id = ?", (lot,)).fetchone()
            soap = row["material_id"] == 3
            story.lot(lot, 20 if soap else 100_000, row["mass_mg"] if soap else None)
    for lot in draw(st.lists(st.sampled_from(story.bought), max_size=3)):
        gone = draw(st.integers(0, story.here[lot]))
        if gone:
            way = draw(st.sampled_from(["wasted", "counted"]))
            story.ledger.move(lot, -gone, way)
            story.here[lot] -= gone
            (story.wasted if way == "wasted" else story.counted)[lot] += gone
    return story


@given(story=stories(), which=st.sets(st.integers(0, 3), min_size=1, max_size=2))
def test_what_is_in_each_batch_and_bar_is_what_the_equations_say(story: Story, which: set[int]) -> None:
    rows = story.ledger.rows
    suspect = {story.bought[number % len(story.bought)] for number in which}
    answer = recall_answer(rows, [lot_by_id(rows, lot) for lot in sorted(suspect)], asked=["N"], program="test")
    x = story.solve(suspect)
    by_code = {story.ledger.code("batch", batch): batch for batch in story.gave}
    assert {by_code[one.batch_code] for one in answer.batches} == {
        batch for batch, took in story.took.items() if any(x[lot] > 0 for lot in took)
    }
    for one in answer.batches:
        batch = by_code[one.batch_code]
        inside = sum(x[lot] * quantity / story.size[lot] for lot, quantity in story.took[batch].items())
        whole = sum(story.took[batch].values())
        assert one.used is not None
        assert abs(one.used - inside) <= 0.5 + 1e-6 * inside
        assert one.share_ppm is not None
        assert abs(one.share_ppm - min(1e6, inside / whole * 1e6)) <= 0.5 + 1e-6 * 1e6
        if one.yields_bars:
            assert one.in_a_bar_ug is not None
            in_a_bar = x[story.gave[batch][0]] / 20 * 1000
            assert abs(one.in_a_bar_ug - in_a_bar) <= 0.5 + 1e-6 * in_a_bar
        assert not one.at_most


@given(story=stories())
def test_the_grams_of_each_lot_and_the_bars_of_each_batch_come_to_what_came_in(story: Story) -> None:
    """What a count missed is the only thing that nobody told of."""
    rows = story.ledger.rows
    answer = recall_answer(rows, [lot_by_id(rows, lot) for lot in story.bought], asked=["N"], program="test")
    for lot, one in zip(story.bought, answer.lots, strict=True):
        used = sum(took.get(lot, 0) for took in story.took.values())
        assert (one.received, one.into_batches, one.on_hand) == (story.size[lot], used, story.here[lot])
        assert (one.wasted, one.returned, one.unexplained) == (story.wasted[lot], 0, story.counted[lot])
    assert answer.differences == ()


POTS = st.lists(st.tuples(st.sets(st.integers(0, 11), min_size=1, max_size=3), st.integers(1, 3)), max_size=8)


@given(shape=POTS, sizes=st.lists(st.integers(1, 10**9), min_size=12, max_size=12))
def test_nothing_is_lost_and_nothing_added(shape: list[tuple[set[int], int]], sizes: list[int]) -> None:
    """All of the suspect lot is in what is left of it and in the last things made of it, but for the rounding."""
    pots: dict[int, Pot] = {}
    left = {0: sizes[0]}
    made = {0: sizes[0]}
    for number, (wanted, outs) in enumerate(shape):
        took = {lot: left[lot] // 2 + 1 for lot in wanted if left.get(lot, 0) > 0}
        names = [one for one in range(1, 12) if one not in made][:outs]
        if not took or len(names) < outs:
            continue
        for lot, quantity in took.items():
            left[lot] -= quantity
        each = max(1, sum(took.values()) // outs)
        pots[number] = Pot(took, sum(took.values()), dict.fromkeys(names, Came(each, each)), strained=False)
        for lot in names:
            left[lot] = made[lot] = each
    found = diluted(pots, {0})
    known = {0: made[0] * FINE, **{lot: held.fine for lot, held in found.lots.items()}}
    standing = sum(known[lot] * left[lot] / made[lot] for lot in known)
    assert abs(standing - made[0] * FINE) <= 1e-9 * made[0] * FINE + 100
