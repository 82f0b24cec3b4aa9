"""A lot without the supplier's number cannot be told from the one recalled; a lot with another number can."""

import json
from datetime import date
from typing import Any

import pytest
from making import deliver
from shop import Shop

from ledger.operations.people.suppliers import SupplierDetails, add_supplier
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, receive


@pytest.mark.usefixtures("frozen")
@pytest.mark.parametrize(("number", "doubts"), [("5101", 0), (None, 1)])
def test_only_a_lot_of_unknown_number_cannot_be_excluded(shop: Shop, run: Any, number: str | None, doubts: int) -> None:
    deliver(shop.book, DeliveryLine("olive oil", 500_000, number, 400))
    assert len(json.loads(run("recall", "lot", shop.olive, "--json").stdout)["cannot_exclude"]) == doubts


@pytest.mark.usefixtures("frozen")
def test_what_she_grew_herself_has_no_number_to_learn(shop: Shop, run: Any) -> None:
    add_supplier(shop.book, SupplierDetails("The garden"), own=True, code="garden")
    receive(shop.book, DeliveryNote("garden", date(2026, 3, 2), (DeliveryLine("olive oil", 500_000, None, None),)))
    assert json.loads(run("recall", "lot", shop.olive, "--json").stdout)["cannot_exclude"] == []
