"""One drum of oil, followed by hand through petals, a topped-up drum and grated offcuts to every bar."""

from dataclasses import dataclass
from datetime import date
from typing import Any

import pytest
from once import once

from ledger.operations.bench.bulk import strain_batch
from ledger.operations.bench.cut import cut_batch
from ledger.operations.bench.plan import PlanRequest, plan_batch
from ledger.operations.bench.readings import ReadingValue, log_readings
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.keep.undo import undo
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recall.hold_reached import hold_reached
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.stock.combine import combine
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, receive
from ledger.rows.batch import find_batch, plan_lines
from ledger.rows.lot import find_lot
from ledger.storage.book import Book
from ledger.views.recall.reach import Starts
from ledger.views.recall.recall import RecallAnswer
from ledger.views.recall.recall_answer import recall_answer
from ledger.views.recall.recall_way import way_to
from ledger.views.recall.trace import trace

PETAL_OIL = """
name = "Petal Oil"
code = "petal-oil"
process = "infusion"
[infusion]
yields = "petal oil"
days = 28
[[part]]
material = "olive oil"
grams = 1000
[[part]]
material = "petals"
grams = 80
"""
PETAL_BAR = """
name = "Petal Bar"
code = "petal-bar"
process = "cold"
superfat = 5
fats_total = "500 g"
[alkali]
material = "sodium hydroxide"
kind = "NaOH"
[water]
material = "water"
per_alkali = 2.0
[[fat]]
material = "petal oil"
percent = 60
[[fat]]
material = "coconut oil"
percent = 40
[mould]
bars = 6
"""
TWICE_ROUND = """
name = "Twice Round"
code = "twice-round"
process = "rebatch"
[[rework]]
material = "offcuts"
grams = 90
[water]
material = "water"
grams = 10
[mould]
bars = 1
"""


@dataclass
class Deep:
    """The codes of everything that was made on the way."""

    shop: Any
    infusion: str
    petal_oil: str
    petal_bar: str
    offcuts: str
    twice_round: str
    topping: str
    drum: str

    def ask(self, *codes: str) -> RecallAnswer:
        rows = self.shop.rows()
        return recall_answer(rows, [find_lot(rows, code) for code in codes], asked=codes, program="test")


def work(book: Book, shop: Any, recipe: str, on: date) -> str:
    """Plan a batch and weigh every line as it was planned."""
    code = plan_batch(book, PlanRequest(recipe, on))
    rows = shop.rows()
    lines = plan_lines(rows, find_batch(rows, code).id)
    weigh(book, code, {line.number: [Weighed(line.target)] for line in lines}, on=on, by="Nuala")
    return code


@pytest.fixture
def deep(shop: Any) -> Deep:
    """The shop's olive oil (600 g of it in ten plain bars already) goes three other ways as well."""
    return Deep(shop, *three_ways(shop))


@once
def three_ways(shop: Any) -> tuple[str, ...]:
    """The codes of all that is made on them."""
    book = shop.book
    for facts, kind in (
        (MaterialFacts("petals", "Calendula Officinalis Flower"), "botanical"),
        (MaterialFacts("petal oil", "Olea Europaea Fruit Oil", None, 190_000, 190_000, "certificate"), "fat"),
    ):
        add_material(book, facts, kind=kind, code=None)
    for recipe in (PETAL_OIL, PETAL_BAR, TWICE_ROUND):
        add_recipe(book, recipe, file="recipe.toml")
    line = DeliveryLine("petals", 200_000, "P-3", 500)
    receive(book, DeliveryNote("tarnlow", date(2026, 3, 3), (line,), accepted_by="Nuala"))
    infusion = work(book, shop, "petal-oil", date(2026, 3, 4))
    petal_oil = strain_batch(book, infusion, mass_mg=900_000, on=date(2026, 4, 1), by="Nuala")
    petal_bar = work(book, shop, "petal-bar", date(2026, 4, 10))
    log_readings(book, petal_bar, (ReadingValue("poured", at="14:05"),), on=date(2026, 4, 10))
    cut_batch(book, petal_bar, bars=6, on=date(2026, 4, 11), by="Nuala", bars_mg=570_000, offcuts_mg=90_000)
    offcuts = next(step.code for step in trace(shop.rows(), petal_bar, forward=True).steps if step.what == "offcuts")
    twice_round = work(book, shop, "twice-round", date(2026, 4, 20))
    cut_batch(book, twice_round, bars=1, on=date(2026, 4, 21), by="Nuala", bars_mg=95_000)
    fresh = DeliveryLine("olive oil", 2_000_000, "4598/1", 1300)
    topping = receive(book, DeliveryNote("tarnlow", date(2026, 5, 1), (fresh,), accepted_by="Nuala"))[0].code
    drum = combine(book, [shop.olive, topping], on=date(2026, 5, 2), by="Nuala").code
    return infusion, petal_oil, petal_bar, offcuts, twice_round, topping, drum


def test_the_drum_reaches_bars_through_everything_that_was_made_of_it(deep: Deep) -> None:
    """Ten plain bars, six petal bars and one of the offcuts: 17, all still here."""
    answer = deep.ask(deep.shop.olive)
    rows, olive = deep.shop.rows(), deep.shop.olive
    starts = Starts((find_lot(rows, olive),))
    ways = {
        one.batch_code: tuple(step.code for step in way_to(rows, starts, find_batch(rows, one.batch_code)))
        for one in answer.batches
        if one.yields_bars
    }
    assert ways == {
        deep.shop.batch: (olive, deep.shop.batch),
        deep.petal_bar: (olive, deep.infusion, deep.petal_oil, deep.petal_bar),
        deep.twice_round: (
            *(olive, deep.infusion, deep.petal_oil, deep.petal_bar),
            *(deep.offcuts, deep.twice_round),
        ),
    }
    assert (answer.totals.made, answer.totals.on_hand, answer.totals.unexplained) == (17, 17, 0)
    took = {one.batch_code: one.used for one in answer.batches}
    # 60 % of 1000 g, 1000 g into the petals, 60 % of 500 g, 90 g of offcuts
    assert took[deep.shop.batch] == 600_000
    assert took[deep.infusion] == 1_000_000
    # 1000 g of oil and 80 g of petals came through as 900 g: at most all of that is the oil. 300 g of them went into
    # the petal bars (1/3 of at most 900 g = 300 g), of which 90 of 660 g of what was cut are offcuts: 40.91 g
    assert took[deep.petal_bar] == 300_000
    assert took[deep.twice_round] == 40_909
    at_most = {one.batch_code for one in answer.batches if one.at_most}
    assert at_most == {deep.petal_bar, deep.twice_round}


def test_what_is_loose_and_still_here_is_named(deep: Deep) -> None:
    """Petal oil 900 - 300 = 600 g; the drum 5000 - 600 - 1000 + 2000 = 5400 g; the offcuts are used up."""
    bulk = {one.lot_code: one.on_hand for one in deep.ask(deep.shop.olive).bulk}
    assert bulk == {deep.petal_oil: 600_000, deep.drum: 5_400_000}


def test_the_topping_reaches_the_drum_and_no_bar(deep: Deep) -> None:
    answer = deep.ask(deep.topping)
    assert [one.lot_code for one in answer.bulk] == [deep.drum]
    assert answer.bars == ()
    assert answer.totals.made == 0


def test_two_lots_at_once_are_answered_as_one(deep: Deep) -> None:
    """The combined drum took 3400 g of the old lot and 2000 g of the new: 5400 g of what is named, all of it."""
    answer = deep.ask(deep.shop.olive, deep.topping)
    assert answer.totals.made == 17
    combined = [one for one in answer.batches if not one.yields_bars and one.batch_code != deep.infusion]
    assert [(one.used, one.share_ppm) for one in combined] == [(5_400_000, 1_000_000)]
    # the drum took 5400 g, of which the old lot alone is 3400 g: 62.963 %
    alone = [one for one in deep.ask(deep.shop.olive).batches if one.batch_code == combined[0].batch_code]
    assert [(one.used, one.share_ppm) for one in alone] == [(3_400_000, 629_630)]


def test_the_last_bar_traces_back_to_every_supplier_s_lot(deep: Deep) -> None:
    """Offcuts of petal bars: olive, coconut, lye, water twice over, petals; the topping came later."""
    shop = deep.shop
    found = trace(shop.rows(), deep.twice_round)
    numbers = {step.supplier_lot for step in found.steps if step.supplier}
    assert numbers == {"4471/2", "CN-0919", "SH 88 A", None, "P-3"}
    assert deep.topping not in found.supplier_lots
    assert shop.batch not in found.batches


def test_a_hold_stops_all_of_it_that_is_here(deep: Deep) -> None:
    shop = deep.shop
    named = [find_lot(shop.rows(), shop.olive)]
    hold_reached(shop.book, named, asked=["4471/2"], on=date(2026, 6, 1), by="Nuala", reason="rancid")
    rows = shop.rows()
    for code in (deep.petal_oil, deep.drum, shop.batch, deep.petal_bar, deep.twice_round):
        assert find_lot(rows, code).status == "on hold"
    for code in (shop.olive, deep.offcuts, deep.topping):  # nothing is left of these three
        assert find_lot(rows, code).status == "accepted"


def test_what_was_taken_back_is_reached_no_more(deep: Deep) -> None:
    shop = deep.shop
    last = shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0]
    undo(shop.book, last)  # the pouring together
    answer = deep.ask(deep.topping)
    assert (answer.batches, answer.bulk) == ((), ())
    assert answer.lots[0].on_hand == 2_000_000
