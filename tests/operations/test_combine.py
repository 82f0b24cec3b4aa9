"""A drum topped up: one new lot that carries the strictest of what went in."""

from datetime import date
from typing import Any

import pytest

from ledger.errors import BadInput, Refused
from ledger.operations.combine import combine
from ledger.operations.lots import decide_lots, waste_lot
from ledger.operations.receive import DeliveryLine, DeliveryNote, receive
from ledger.views.cost import batch_cost
from ledger.views.lots import LotRow, find_lot
from ledger.views.trace import trace

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


def test_one_lot_named_twice_is_not_two(shop: Any) -> None:
    with pytest.raises(BadInput, match="at least two"):
        pour(shop, shop.olive, shop.olive.lower())


def test_lots_of_two_materials_are_named(shop: Any) -> None:
    with pytest.raises(Refused, match=f"{shop.coconut} is coconut oil and {shop.olive} is olive oil"):
        pour(shop, shop.olive, shop.coconut)


def test_a_lot_that_is_held_out_of_date_empty_or_not_there_yet_is_refused(shop: Any) -> None:
    topping = fresh(shop, best_before=date(2026, 5, 31))
    with pytest.raises(Refused, match=f"{topping} was best before 31 May 2026"):
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
