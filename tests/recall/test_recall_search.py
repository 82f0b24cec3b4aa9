"""Which lots a notice means."""

from datetime import date
from typing import Any

import pytest

from ledger.errors import BadInput
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.people.suppliers import SupplierDetails, add_supplier
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, receive
from ledger.rows.people import supplier_by_code
from ledger.storage.personal import PersonDetails
from ledger.views.recall.recall_search import Notice, lots_meant


def codes(shop: Any, *numbers: str, **more: Any) -> list[str]:
    return [lot.code for lot in lots_meant(shop.rows(), Notice(numbers, **more.pop("narrow", {})), **more)]


@pytest.fixture
def twice(shop: Any) -> str:
    """Another supplier's shea butter happens to have the number of our olive oil; returns its lot."""
    add_supplier(shop.book, SupplierDetails("Skerrow", PersonDetails()), own=False, code="skerrow")
    facts = MaterialFacts("shea butter", "Butyrospermum Parkii Butter", None, 180_000, 180_000, "certificate")
    add_material(shop.book, facts, kind="fat", code=None)
    line = DeliveryLine("shea butter", 500_000, "44712", 900)
    return receive(shop.book, DeliveryNote("skerrow", date(2026, 5, 1), (line,)))[0].code


@pytest.mark.parametrize("quoted", ["4471/2", "lot 4471-2", "LOT NO. 4471 / 2", "BN:44712", " 4471.2 ", "#4471_2"])
def test_a_number_is_found_however_it_is_quoted(shop: Any, quoted: str) -> None:
    assert codes(shop, quoted) == [shop.olive]


@pytest.mark.parametrize("quoted", ["04471/2", "4471", "4471/20"])
def test_another_number_is_not_found(shop: Any, quoted: str) -> None:
    with pytest.raises(BadInput, match="No lot with the number"):
        codes(shop, quoted)


def test_our_own_code_is_taken_as_well(shop: Any) -> None:
    assert codes(shop, shop.olive) == [shop.olive]
    assert codes(shop, shop.olive.lower().replace("-", "")) == [shop.olive]


def test_several_numbers_are_several_lots_and_nothing_to_choose(shop: Any) -> None:
    assert codes(shop, "CN 0919", "4471/2") == [shop.olive, shop.coconut]


def test_one_number_with_two_meanings_is_listed_to_be_chosen(shop: Any, twice: str) -> None:
    with pytest.raises(BadInput) as caught:
        codes(shop, "4471/2")
    for words in (f"{shop.olive} olive oil from Tarnlow Oils", f"{twice} shea butter from Skerrow", "--all"):
        assert words in str(caught.value)
    assert codes(shop, "4471/2", every=True) == [shop.olive, twice]
    assert codes(shop, twice) == [twice]
    vendor = supplier_by_code(shop.rows(), "skerrow")
    assert codes(shop, "4471/2", narrow={"supplier_id": vendor.id}) == [twice]


def test_the_same_number_delivered_twice_is_one_thing(shop: Any) -> None:
    line = DeliveryLine("olive oil", 5_000_000, "4471-2", 3250)
    again = receive(shop.book, DeliveryNote("tarnlow", date(2026, 5, 8), (line,)))[0].code
    assert codes(shop, "4471/2") == [shop.olive, again]
    assert codes(shop, "4471/2", narrow={"received_from": date(2026, 5, 8)}) == [again]
    assert codes(shop, "4471/2", narrow={"received_to": date(2026, 5, 7)}) == [shop.olive]


def test_a_number_nobody_knows_brings_near_ones_and_lots_that_came_without(shop: Any) -> None:
    with pytest.raises(BadInput, match="Near it: 4471/2") as caught:
        codes(shop, "4471/3")
    assert f"{shop.water} water" in str(caught.value)


def test_supplier_and_material_do_without_a_number(shop: Any) -> None:
    vendor = supplier_by_code(shop.rows(), "tarnlow")
    water = shop.rows().execute("SELECT material_id FROM lot WHERE code = ?", (shop.water,)).fetchone()[0]
    assert codes(shop, narrow={"supplier_id": vendor.id, "material_id": water}) == [shop.water]
    with pytest.raises(BadInput, match="widen"):
        codes(shop, narrow={"material_id": water, "received_from": date(2026, 3, 3)})
