"""A lot without the supplier's number cannot be told from the one recalled; a lot with another number can."""

import json
from typing import Any

import pytest
from making import deliver
from shop import Shop

from ledger.operations.stock.receive import DeliveryLine


@pytest.mark.usefixtures("frozen")
@pytest.mark.parametrize(("number", "doubts"), [("5101", 0), (None, 1)])
def test_only_a_lot_of_unknown_number_cannot_be_excluded(shop: Shop, run: Any, number: str | None, doubts: int) -> None:
    deliver(shop.book, DeliveryLine("olive oil", 500_000, number, 400))
    assert len(json.loads(run("recall", "lot", shop.olive, "--json").stdout)["cannot_exclude"]) == doubts
