"""A drum topped up: one new lot that carries the strictest of what went in."""

from datetime import date
from typing import Any

import pytest

from ledger.errors import BadInput, Refused
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.stock.combine import combine, next_batch_code
from ledger.operations.stock.lots import decide_lots, waste_lot
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, next_lot_code, receive
from ledger.rows.lot import LotRow, find_lot, place_of_kind
from ledger.rows.material import material_by_code
from ledger.storage.tables.bench import Batch
from ledger.storage.verbs import FirstDecision, LotFigures, NewLot
from ledger.views.cost.cost import batch_cost
from ledger.views.recall.trace import trace

CAME = date(2026, 5, 20)
ON = date(2026, 6, 1)


def fresh(shop: Any, material: str = "olive oil", **figures: Any) -> str:
    line = DeliveryLine(material, 2_000_000, "4598/1", 1300, **figures)
    (lot,) = receive(shop.book, DeliveryNote("tarnlow", CAME, (line,), accepted_by="Nuala"))
    return lot.code


def pour(shop: Any, *codes: str, **more: Any) -> LotRow:
    return combine(shop.book, codes, on=more.pop("on", ON), by="Nuala", **more)


def test_the_new_lot_holds_the_sum_and_the_old_ones_nothing(shop: Any) -> None:
    # 5 000 g less 600 g for the batch, and 2 000 g
    drum = pour(shop, shop.olive, topping := fresh(shop), into="drum 2")
    assert (drum.on_hand, drum.status, drum.material) == (6_400_000, "accepted", "olive oil")
    rows = shop.rows()
    assert [find_lot(rows, code).on_hand for code in (shop.olive, topping)] == [0, 0]
    note = rows.execute("SELECT note FROM movement WHERE lot_id = ? AND kind = 'yielded'", (drum.id,)).fetchone()[0]
    assert note == "drum 2"


def test_both_histories_go_on_in_it(shop: Any) -> None:
    topping = fresh(shop)
    drum = pour(shop, shop.olive, topping)
    assert trace(shop.rows(), drum.code).supplier_lots == (shop.olive, topping)


def test_it_costs_what_was_left_of_both(shop: Any) -> None:
    # 32.50 for 5 000 g, of which 600 g (3.90) went into the batch: 28.60; and 13.00
    drum = pour(shop, shop.olive, fresh(shop))
    assert batch_cost(shop.rows(), drum.batch_code or "").total_minor == 2860 + 1300


def test_it_keeps_the_earliest_best_before(shop: Any) -> None:
    drum = pour(shop, shop.olive, fresh(shop, best_before=date(2027, 2, 28)))
    assert drum.best_before == date(2027, 2, 28)


def test_its_saponification_range_holds_for_both(shop: Any) -> None:
    # one lot has 186 to 188 on its certificate, the other none, so the material's 190 counts for it: give or take 5.7
    drum = pour(shop, shop.olive, fresh(shop, sap_mg_per_kg=(186_000, 188_000)))
    assert (drum.sap_low_mg_per_kg, drum.sap_high_mg_per_kg) == (184_300, 195_700)


def test_without_any_certificate_the_materials_value_goes_on_counting(shop: Any) -> None:
    drum = pour(shop, shop.olive, fresh(shop))
    assert (drum.sap_low_mg_per_kg, drum.sap_high_mg_per_kg) == (None, None)


@pytest.mark.parametrize(
    ("first", "second", "expected"),
    [
        (985_000, 992_000, 992_000),  # the purest errs towards more superfat
        (985_000, None, 1_000_000),  # no figure on lot or material is reckoned as pure
        (None, None, None),
    ],
)
def test_its_purity_is_that_of_the_purest(
    shop: Any, first: int | None, second: int | None, expected: int | None
) -> None:
    codes = [fresh(shop, "sodium hydroxide", purity_ppm=purity) for purity in (first, second)]
    assert pour(shop, *codes).purity_ppm == expected


def stock_lye(shop: Any, water_ppm: int | None) -> str:
    """A kilogram of stock lye made ahead, of which that much is known to be water."""
    with shop.book.write("batch fill") as tx:
        card = material_by_code(tx.rows, "lye-50")
        made = tx.add(Batch(code=next_batch_code(tx, CAME), process="blend", material_id=card.id, on=CAME))
        figures = LotFigures(purity_ppm=500_000, water_ppm=water_ppm)
        lot = NewLot(
            code := next_lot_code(tx), card.id, 1_000_000, figures=figures, decided=FirstDecision("accepted", "N")
        )
        tx.open_lots([lot], place_id=place_of_kind(tx.rows, "workshop").id, on=CAME, batch_id=made.id)
        tx.say("Filled.")
    return code


@pytest.mark.parametrize(
    ("first", "second", "expected"),
    [
        (480_000, 490_000, 480_000),
        (490_000, 480_000, 480_000),
        (510_000, None, 500_000),  # its material has 500 000, which is less
        (490_000, None, 490_000),
        (None, None, None),
    ],
)
def test_its_water_is_the_least_of_theirs(
    shop: Any, first: int | None, second: int | None, expected: int | None
) -> None:
    facts = MaterialFacts("lye 50", "Aqua", alkali_kind="NaOH", purity_ppm=500_000, water_ppm=500_000)
    add_material(shop.book, facts, kind="alkali", code="lye-50")
    drum = pour(shop, stock_lye(shop, first), stock_lye(shop, second))
    assert find_lot(shop.rows(), drum.code).water_ppm == expected


@pytest.mark.parametrize("on", [CAME, ON])
def test_on_the_day_a_lot_came_and_on_its_last_good_day_it_is_poured(shop: Any, on: date) -> None:
    assert pour(shop, shop.olive, fresh(shop, best_before=on), on=on).best_before == on


def test_one_lot_named_twice_is_not_two(shop: Any) -> None:
    with pytest.raises(BadInput, match="at least two"):
        pour(shop, shop.olive, shop.olive.lower())


def test_lots_of_two_materials_are_named(shop: Any) -> None:
    with pytest.raises(Refused, match=f"{shop.coconut} is coconut oil and {shop.olive} is olive oil"):
        pour(shop, shop.olive, shop.coconut)


def test_a_lot_that_is_held_out_of_date_empty_or_not_there_yet_is_refused(shop: Any) -> None:
    topping = fresh(shop, best_before=date(2026, 5, 31))
    with pytest.raises(Refused, match=f"{topping} was best before end May 2026"):
        pour(shop, shop.olive, topping)
    with pytest.raises(BadInput, match="not there before 20 May 2026"):
        pour(shop, shop.olive, topping, on=date(2026, 5, 19))
    decide_lots(shop.book, [topping], verdict="on hold", on=ON, by="Nuala", reason="cloudy")
    with pytest.raises(Refused, match=f"{topping} is on hold"):
        pour(shop, shop.olive, topping)
    waste_lot(shop.book, shop.olive, 4_400_000, place=None, on=ON, reason="spilt")
    with pytest.raises(Refused, match=f"{shop.olive} holds nothing"):
        pour(shop, shop.olive, fresh(shop))


def test_bars_are_not_poured(shop: Any) -> None:
    with pytest.raises(Refused, match="only lots of one material"):
        pour(shop, shop.olive, shop.batch)


def test_a_refusal_writes_nothing(shop: Any) -> None:
    before = shop.rows().execute("SELECT count(*) FROM batch").fetchone()[0]
    with pytest.raises(Refused):
        pour(shop, shop.olive, shop.coconut)
    assert shop.rows().execute("SELECT count(*) FROM batch").fetchone()[0] == before
