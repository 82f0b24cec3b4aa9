"""What a batch gives: bars and offcuts, or an infused oil."""

from datetime import date

import pytest
from making import MADE, POURED, batch_of, cut, deliver, lines_of, planned, weighed
from once import once
from shop import Shop

from ledger.errors import BadInput, Refused
from ledger.operations.bench.bulk import strain_batch
from ledger.operations.bench.cut import cut_batch
from ledger.operations.bench.readings import log_readings
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.keep.undo import undo
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.history import last_entry
from ledger.rows.lot import find_lot
from ledger.views.record.record import batch_record

PETALS = """
name = "Calendula oil"
code = "calendula-oil"
process = "infusion"
[infusion]
yields = "calendula oil"
days = 28
[[part]]
material = "olive oil"
grams = 500
[[part]]
material = "petals"
grams = 50
"""
DAY_AFTER = date(2026, 5, 7)


def cut_it(shop: Shop, code: str, bars: int = 10, **more: object) -> int:
    return cut_batch(shop.book, code, bars=bars, **{"on": DAY_AFTER, "by": "Nuala", **more})  # type: ignore[arg-type]


def test_bars_carry_the_batch_code_and_wait_in_the_workshop(shop: Shop) -> None:
    code = weighed(shop.book, planned(shop.book))
    # 600 + 400 g fats, 293.652 g water, 146.826 g alkali
    assert cut_it(shop, code, bars_mg=1_310_000, offcuts_mg=64_000).put_in_mg == 1_440_478
    with shop.book.look() as rows:
        bars = find_lot(rows, code)
    assert (bars.on_hand, bars.mass_mg, bars.status, bars.counted) == (10, 1_310_000, "curing", True)
    batch = batch_of(shop.book, code)
    assert (batch.status, batch.made, batch.ready_on) == ("curing", 10, date(2026, 6, 4))  # 7 May and 28 days


def test_offcuts_are_kept_as_an_accepted_lot_for_rework(shop: Shop) -> None:
    code = weighed(shop.book, planned(shop.book))
    cut_it(shop, code, offcuts_mg=64_000)
    with shop.book.look() as rows:
        rest = [one for one in batch_record(rows, code, program="1").came_out.yields if not one.pieces]
    assert [(one.material, one.quantity, one.status) for one in rest] == [("offcuts", 64_000, "accepted")]


def test_no_more_comes_out_than_went_in(shop: Shop) -> None:
    code = weighed(shop.book, planned(shop.book))
    with pytest.raises(Refused, match=r"1.?441 g came out and only 1.?440.5 g went in"):
        cut_it(shop, code, bars_mg=1_400_000, offcuts_mg=41_000)
    with pytest.raises(Refused, match="went in"):
        cut_it(shop, code, bars_mg=1_400_000, offcuts_mg=40_479)  # a milligram more than the 1 440.478 g
    assert batch_of(shop.book, code).yield_lot_id is None
    assert cut_it(shop, code, bars_mg=1_400_000, offcuts_mg=40_478).loss_mg == 0


def test_every_bar_may_be_weighed_and_then_their_sum_is_known(shop: Shop) -> None:
    code = weighed(shop.book, planned(shop.book))
    with pytest.raises(BadInput, match="3 weights are too many for 2 bars"):
        cut_it(shop, code, bars=2, weights_mg=[600_000, 610_000, 620_000])
    cut_it(shop, code, bars=2, weights_mg=[600_000, 610_000])
    with shop.book.look() as rows:
        assert find_lot(rows, code).mass_mg == 1_210_000


def test_nothing_is_cut_before_all_is_weighed_and_poured(shop: Shop) -> None:
    code = planned(shop.book)
    with pytest.raises(Refused, match="has 4 lines still to be weighed"):
        cut_it(shop, code)
    targets = {line.number: [Weighed(line.target)] for line in lines_of(shop.book, code)}
    weigh(shop.book, code, targets, on=MADE, by="Nuala")
    with pytest.raises(Refused, match="is not booked as poured yet: soapledger batch log"):
        cut_it(shop, code)
    log_readings(shop.book, code, POURED, on=MADE)
    cut_it(shop, code)
    with pytest.raises(Refused, match="is curing already"):
        cut_it(shop, code)


def test_a_loaf_is_not_cut_before_the_day_it_was_poured(shop: Shop) -> None:
    code = planned(shop.book)
    weighed(shop.book, code, on=DAY_AFTER)
    with pytest.raises(BadInput, match="was still being made on 7 May 2026"):
        cut_it(shop, code, on=MADE)
    with pytest.raises(BadInput, match="How many bars"):
        cut_it(shop, code, bars=0)


def test_a_cut_taken_back_can_be_booked_again(shop: Shop) -> None:
    code = cut(shop.book, bars=10)
    with shop.book.look() as rows:
        number = last_entry(rows)
    undo(shop.book, number)
    assert batch_of(shop.book, code).status == "poured"
    cut_it(shop, code, bars=11)
    with shop.book.look() as rows:
        assert find_lot(rows, code).on_hand == 11


def test_what_a_cut_stands_on_is_not_taken_back(shop: Shop) -> None:
    code = cut(shop.book)
    with shop.book.look() as rows:
        number = last_entry(rows) - 1
    with pytest.raises(Refused, match=code):
        undo(shop.book, number)


@pytest.fixture
@once
def jar(shop: Shop) -> str:
    """A jar of olive oil on petals, weighed on 6 May."""
    add_material(shop.book, MaterialFacts("calendula oil", "Olea Europaea Fruit Oil"), kind="intermediate", code=None)
    add_material(shop.book, MaterialFacts("petals", "Calendula Officinalis Flower"), kind="botanical", code=None)
    add_recipe(shop.book, PETALS, file="petals.toml")
    certified = DeliveryLine("olive oil", 500_000, "5400", 400, date(2026, 12, 31), sap_mg_per_kg=(189_000, 191_000))
    deliver(shop.book, certified)
    deliver(shop.book, DeliveryLine("petals", 60_000, None, 0))
    code = planned(shop.book, "calendula-oil")
    targets = {line.number: [Weighed(line.target)] for line in lines_of(shop.book, code)}
    weigh(shop.book, code, targets, on=MADE, by="Nuala")
    return code


def test_an_infusion_is_strained_into_a_lot_that_knows_its_oil(shop: Shop, jar: str) -> None:
    assert batch_of(shop.book, jar).status == "infusing"
    oil = strain_batch(shop.book, jar, mass_mg=470_000, on=date(2026, 6, 3), by="Nuala")
    with shop.book.look() as rows:
        lot = find_lot(rows, oil)
    assert (lot.material, lot.on_hand, lot.status) == ("calendula oil", 470_000, "accepted")
    assert lot.best_before == date(2026, 12, 31)  # of the olive oil
    assert (lot.sap_low_mg_per_kg, lot.sap_high_mg_per_kg) == (189_000, 191_000)
    assert batch_of(shop.book, jar).status == "strained"


def test_an_infusion_is_not_cut_and_a_soap_not_strained(shop: Shop, jar: str) -> None:
    with pytest.raises(Refused, match=f"gives no bars; strain it: soapledger batch strain {jar}"):
        cut_it(shop, jar)
    loaf = weighed(shop.book, planned(shop.book))
    with pytest.raises(Refused, match=f"is soap; it is cut: soapledger batch cut {loaf}"):
        strain_batch(shop.book, loaf, mass_mg=1_000, on=DAY_AFTER, by="Nuala")


def test_no_more_is_strained_off_than_went_in(shop: Shop, jar: str) -> None:
    with pytest.raises(Refused, match="551 g came out and only 550 g went in"):
        strain_batch(shop.book, jar, mass_mg=551_000, on=DAY_AFTER, by="Nuala")
    with pytest.raises(BadInput, match="How much came of it"):
        strain_batch(shop.book, jar, mass_mg=0, on=DAY_AFTER, by="Nuala")
