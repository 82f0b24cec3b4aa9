"""What is read grows neither with how many batches an answer is about nor with how long a drum was topped up."""

import sqlite3
from collections.abc import Callable
from datetime import date

import pytest
from bare_ledger import DAY, MATERIALS, PLACES, BareLedger
from making import cut
from shop import Shop

from ledger.operations.cure.weighing import weigh_bars
from ledger.rows.bars import bar_counts
from ledger.rows.batch import BatchRow, batch_by_id, find_batch
from ledger.rows.lot import available, find_lot, held_at, where_lots_are
from ledger.rows.movement import offcuts_of, taken_into
from ledger.rows.reading import masses_in, minutes_worked
from ledger.views.cost.cost import batch_cost
from ledger.views.cure.cure import cure_list
from ledger.views.recall.recall import RecallAnswer
from ledger.views.recall.recall_answer import recall_answer
from ledger.views.recall.recall_search import batches_meant
from ledger.views.recipe.ingredients import bases_of_batch
from ledger.views.recipe.skin import skin_checks
from ledger.views.stock.made_of import Compositions
from ledger.views.stock.stall import at_stall

GRAM = 1000


def statements(rows: sqlite3.Connection, ask: Callable[[], object]) -> int:
    """How many statements an answer takes."""
    run: list[str] = []
    rows.set_trace_callback(run.append)
    ask()
    rows.set_trace_callback(None)
    return len(run)


def of_the_rack(shop: Shop, on: date) -> tuple[int, int]:
    """How many batches are on the rack, and how many statements it takes to say so."""
    with shop.book.look() as rows:
        return len(cure_list(rows, on=on)), statements(rows, lambda: cure_list(rows, on=on))


def test_the_rack_takes_as_many_statements_for_many_batches_as_for_one(shop: Shop) -> None:
    on = date(2026, 5, 20)
    weigh_bars(shop.book, cut(shop.book), {"A": 130_000}, on=on)
    before, for_one = of_the_rack(shop, on)
    for _ in range(3):
        weigh_bars(shop.book, cut(shop.book), {"A": 130_000, "B": 131_000}, on=on)
    after, for_many = of_the_rack(shop, on)
    assert after == before + 3
    assert for_many == for_one > 0


def soap_of_a_drum(times: int) -> tuple[BareLedger, int]:
    """A soap of a drum of which each filling is half the one before and half a new lot."""
    house = BareLedger()
    drum = house.buy("N-0")
    for number in range(times):
        _, (drum,) = house.make("combine", [drum, house.buy(f"N-{number + 1}")])
    return house, house.make("cold", [drum])[0]


@pytest.mark.parametrize("times", [70, 150])
def test_a_drum_is_followed_back_until_what_is_left_of_it_is_dust(times: int) -> None:
    """The last filling is the soap's one fat, the 60th back 1 / 2^59 of it, 1.7e-18, and the 61st 8.7e-19: dust.

    So the lots of the soap and of 60 fillings are read, each of which took the drum before it and a new lot.
    """
    house, soap = soap_of_a_drum(times)
    assert len(Compositions(house.rows, of=[soap]).lots) == 1 + 2 * 60


@pytest.mark.parametrize("times", [2, 70])
def test_a_drum_is_followed_back_in_three_statements(times: int) -> None:
    """What all that stands behind took, what these lots are, and how it was worked."""
    house, soap = soap_of_a_drum(times)
    (drum,) = house.rows.execute("SELECT lot_id FROM movement WHERE batch_id = ?", (soap,)).fetchone()
    made = Compositions(house.rows)
    assert statements(house.rows, lambda: Compositions(house.rows, of=[soap])) == 3
    assert statements(house.rows, lambda: made.taken_by(soap)) == 3
    assert statements(house.rows, lambda: made.shares(made.lot(drum))) == 0


def test_what_is_dust_takes_no_milligram_from_what_went_in() -> None:
    """Of 1 g: 500 mg, 250, 125, 62.5 and so on; the masses add up to the gram, and are those of the whole way back."""
    house, soap = soap_of_a_drum(90)
    short, whole = Compositions(house.rows, of=[soap]), Compositions(house.rows)
    known = [(one.lot.id, one.mass_mg) for one in bases_of_batch(house.rows, soap, short)]
    assert sum(mass for _, mass in known) == GRAM
    assert sorted(mass for _, mass in known)[-3:] == [125, 250, 500]
    assert known == [(one.lot.id, one.mass_mg) for one in bases_of_batch(house.rows, soap, whole)]
    assert known == [(one.lot.id, one.mass_mg) for one in bases_of_batch(house.rows, soap)]
    assert len(short.lots) <= 2 * 61 < 2 * 90 < len(whole.lots)  # two lots a filling


def test_no_lot_is_listed_of_which_less_than_a_milligram_went_in() -> None:
    """Of 1 g the 12th filling back brought 1000 mg / 2^12, a quarter of a milligram, and the one before that half."""
    house, soap = soap_of_a_drum(90)
    assert all(one.mass_mg for one in bases_of_batch(house.rows, soap))


def test_a_drum_that_a_damaged_ledger_says_is_made_of_itself_ends() -> None:
    house = BareLedger()
    batch, (drum,) = house.make("combine", [house.buy("N-0")])
    house.move(drum, -1000, "consumed", batch_id=batch)
    assert sum(one.mass_mg for one in bases_of_batch(house.rows, batch, Compositions(house.rows, of=[batch]))) == 2000


def test_a_recall_takes_as_many_statements_for_many_batches_as_for_one() -> None:
    """Each batch has its bars here, some sold and one given away, and complaints do not multiply the question."""
    house = BareLedger()
    bad = find_lot(house.rows, house.code("lot", house.buy("N-0")))

    def ask() -> RecallAnswer:
        return recall_answer(house.rows, [bad], asked=["N-0"], program="test")

    def one_more(complaint: int) -> None:
        _, (bars,) = house.make("cold", [bad.id])
        house.move(bars, -3, "sold")
        house.move(bars, -1, "given", note="a neighbour")
        house.add("complaint", lot_id=bars, on=DAY, what="it itches")
        house.add("complaint_step", complaint_id=complaint, on=DAY, by="Nuala", action="asked", closes=0)

    one_more(1)
    for_one = statements(house.rows, ask)
    for number in (2, 3, 4):
        one_more(number)
    answer = ask()
    assert statements(house.rows, ask) == for_one > 0
    assert (answer.totals.made, answer.totals.on_hand, answer.totals.sold, answer.totals.given) == (80, 64, 12, 4)
    assert [(one.used, one.bars_made) for one in answer.batches] == [(1000, 20)] * 4
    assert [one.bars for one in answer.call] == [0, 0, 0, 0, 4]  # whoever complained, then the neighbour


def test_where_lots_are_is_asked_of_all_of_them_at_once() -> None:
    house = BareLedger()
    oil = house.buy("N-0")
    lots = [house.make("cold", [oil])[1][0] for _ in range(3)]
    house.move(lots[1], -4, "moved")
    house.move(lots[1], 4, "moved", place="quay")
    house.move(lots[2], -20, "wasted")
    found = where_lots_are(house.rows, lots)
    assert {lot: [(place.name, held) for place, held in each] for lot, each in found.items()} == {
        lots[0]: [("workshop", 20)],
        lots[1]: [("workshop", 16), ("quay", 4)],
    }
    assert statements(house.rows, lambda: where_lots_are(house.rows, lots)) == 2
    assert statements(house.rows, lambda: bar_counts(house.rows, lots)) == 2


def test_what_a_batch_cost_takes_as_many_statements_for_a_long_chain_as_for_a_plain_soap() -> None:
    """1 kg of oil for 10.00; each drum takes 1 g of it, 1 cent, and 1 g of the 100 g that the drum before gave.

    So a drum costs 1 cent and a hundredth of what the one before did, which is nothing to the cent.
    """
    house = BareLedger()
    oil = house.buy("N-0", cost_minor=1000)
    _, (drum,) = house.make("combine", [oil])
    short = house.code("batch", house.make("cold", [oil, drum])[0])
    for_one = statements(house.rows, lambda: batch_cost(house.rows, short))
    for _ in range(4):
        _, (drum,) = house.make("combine", [oil, drum])
    long = house.code("batch", house.make("cold", [oil, drum])[0])
    assert statements(house.rows, lambda: batch_cost(house.rows, long)) == for_one > 0
    assert [(line.material, line.cost_minor) for line in batch_cost(house.rows, long).lines] == [
        ("oil", 1),
        ("mixed oil", 0),
    ]


def test_what_a_batch_cost_is_known_though_it_took_of_a_drum_that_was_taken_back() -> None:
    house = BareLedger()
    soap, _ = house.make("cold", [house.buy("N-0", cost_minor=1000)])
    house.close()
    _, (drum,) = house.make("combine", [house.buy("N-1")])
    made = house.close()
    house.move(drum, -1000, "consumed", batch_id=soap)
    house.undo()
    house.close(reverses=made)
    assert batch_cost(house.rows, house.code("batch", soap)).total_minor == 1


def test_what_stands_at_a_stall_takes_as_many_statements_for_many_batches_as_for_one() -> None:
    house = BareLedger()
    oil = house.buy("N-0")

    def one_more() -> None:
        _, (bars,) = house.make("cold", [oil])
        house.move(bars, -4, "moved")
        house.move(bars, 4, "moved", place="quay")

    one_more()
    for_one = statements(house.rows, lambda: at_stall(house.rows, PLACES["quay"]))
    one_more()
    one_more()
    assert statements(house.rows, lambda: at_stall(house.rows, PLACES["quay"])) == for_one > 0
    assert [one.bars for one in at_stall(house.rows, PLACES["quay"])] == [4, 4, 4]


def test_what_is_free_takes_as_many_statements_for_many_lots_as_for_one() -> None:
    house = BareLedger()
    on = date.fromisoformat(DAY)

    def one_more(number: str) -> None:
        house.make("cold", [house.buy(number)])

    one_more("N-0")
    for_one = statements(house.rows, lambda: available(house.rows, MATERIALS["oil"][0], on=on))
    one_more("N-1")
    one_more("N-2")
    assert statements(house.rows, lambda: available(house.rows, MATERIALS["oil"][0], on=on)) == for_one > 0
    assert [one.free for one in available(house.rows, MATERIALS["oil"][0], on=on)] == [999_000] * 3


def test_which_bars_a_recall_means_takes_as_many_statements_for_many_as_for_one() -> None:
    """Each code is looked up as it was typed; what came of the batches is read at once."""
    house = BareLedger()
    oil = house.buy("N-0")
    codes = [house.code("batch", house.make("cold", [oil])[0]) for _ in range(4)]
    looking = statements(house.rows, lambda: find_batch(house.rows, codes[0]))
    for_one = statements(house.rows, lambda: batches_meant(house.rows, codes[:1]))
    assert statements(house.rows, lambda: batches_meant(house.rows, codes)) - 3 * looking == for_one >= looking


def test_a_recall_of_bars_of_many_doughs_takes_as_many_statements_as_of_one() -> None:
    """Of each dough one portion is asked for, and the other may have been in the same pot."""
    house = BareLedger()
    oil = house.buy("N-0")
    asked: list[BatchRow] = []

    def one_more() -> None:
        dough, (bulk,) = house.make("combine", [oil])
        portions = [house.make("cold", [bulk], part_of=dough)[0] for _ in range(2)]
        asked.append(batch_by_id(house.rows, portions[0]))

    def ask() -> RecallAnswer:
        return recall_answer(house.rows, [], bars_of=asked, asked=["bars"], program="test")

    one_more()
    for_one = statements(house.rows, ask)
    one_more()
    one_more()
    # what to look at next asks how often each of the nearest lots was used, here two doughs more
    assert statements(house.rows, ask) - 2 == for_one > 0
    assert [one.why.split(";")[0] for one in ask().cannot_exclude] == [
        f"cut from the same dough as {one.code}" for one in asked
    ]


def test_the_skin_limits_take_as_many_statements_for_many_fragrances_as_for_one() -> None:
    house = BareLedger()
    put_in: list[tuple[int, int | None, int]] = []

    def one_more() -> None:
        scent = house.add("material", code=f"scent-{len(put_in)}", kind="fragrance")
        house.add("material_revision", material_id=scent, name=f"scent {len(put_in)}")
        paper = {"certificate": "C-1", "category": "9", "dated": DAY}
        house.add("skin_limit", material_id=scent, limit_ppm=20_000, **paper)
        put_in.append((scent, None, GRAM))

    one_more()
    for_one = statements(house.rows, lambda: skin_checks(house.rows, put_in, 100 * GRAM))
    one_more()
    one_more()
    assert statements(house.rows, lambda: skin_checks(house.rows, put_in, 100 * GRAM)) == for_one > 0
    checks = skin_checks(house.rows, put_in, 100 * GRAM)  # 1 g of 100 is 1 %, and 2 % are allowed
    assert [(one.share_ppm, one.limit_ppm) for one in checks] == [(10_000, 20_000)] * 3


def test_what_is_asked_of_a_lot_or_a_batch_twice_is_counted_once() -> None:
    """A recall of bars names lots that it reaches as well."""
    house = BareLedger()
    oil = house.buy("N-0")
    batch, (bars, _) = house.make("cold", [oil], offcuts=True)
    house.add("reading", batch_id=batch, on=DAY, what="labour", value=30, unit="min")
    assert held_at(house.rows, [oil, oil], PLACES["workshop"]) == {oil: 999_000}
    assert offcuts_of(house.rows, [batch, batch]) == {batch: 100_000}
    assert minutes_worked(house.rows, [batch, batch]) == {batch: 30}
    assert masses_in(house.rows, [batch, batch]) == {batch: 1000}
    assert len(taken_into(house.rows, [batch, batch])) == 1
    assert [held for _, held in where_lots_are(house.rows, [bars, bars])[bars]] == [20]
    bar = find_lot(house.rows, house.code("lot", bars))
    assert [one.received for one in recall_answer(house.rows, [bar], asked=["bars"], program="test").lots] == [20]
