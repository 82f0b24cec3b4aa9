"""From the code on a bar to every drum, on the worked shop."""

from datetime import date
from typing import Any

import pytest

from ledger.errors import BadInput, Refused
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, receive
from ledger.views.recall.trace import trace


def test_a_bar_goes_back_to_the_four_lots_of_its_delivery(shop: Any) -> None:
    """Olive 600 g and coconut 400 g. Saponification: 600 × 190/1000 + 400 × 257/1000 = 216.8 g KOH; as NaOH
    × 39.997/56.105 = 154.56 g; less 5 % = 146.83 g; water twice that."""
    found = trace(shop.rows(), shop.batch)
    assert not found.forward
    assert found.supplier_lots == (shop.olive, shop.coconut, shop.lye, shop.water)
    took = {step.code: step.quantity for step in found.steps[1:]}
    assert (took[shop.olive], took[shop.coconut]) == (600_000, 400_000)
    assert took[shop.lye] == pytest.approx(146_830, abs=10)
    assert took[shop.water] == pytest.approx(2 * 146_830, abs=20)
    olive = next(step for step in found.steps if step.code == shop.olive)
    assert (olive.supplier, olive.supplier_lot, olive.on.isoformat()) == ("Tarnlow Oils", "4471/2", "2026-03-02")
    assert next(step for step in found.steps if step.code == shop.water).number_unknown


def test_a_drum_goes_on_to_the_bars(shop: Any) -> None:
    found = trace(shop.rows(), shop.olive, forward=True)
    assert [(s.depth, s.kind, s.code) for s in found.steps] == [
        (0, "lot", shop.olive),
        (1, "batch", shop.batch),
        (2, "lot", shop.batch),
    ]
    assert found.steps[2].quantity == 10
    assert found.batches == (shop.batch,)


def test_a_mistyped_code_is_refused_with_the_right_one(shop: Any) -> None:
    """The last character is the check character, so one digit fits and no other."""
    wrong = shop.batch[:-1] + ("1" if shop.batch[-1] != "1" else "2")
    with pytest.raises(Refused, match=f"it would be {shop.batch}"):
        trace(shop.rows(), wrong)


def test_what_is_no_code_at_all_is_bad_input(shop: Any) -> None:
    with pytest.raises(BadInput, match="not a lot code"):
        trace(shop.rows(), "lavender")


def test_a_supplier_s_number_is_traced_as_it_is_quoted_where_it_is_one_lot(shop: Any) -> None:
    assert trace(shop.rows(), "LOT 4471-2", forward=True).code == shop.olive
    other = receive(shop.book, DeliveryNote("tarnlow", date(2026, 5, 1), (DeliveryLine("coconut oil", 1, "44712", 1),)))
    with pytest.raises(BadInput, match=f"{shop.olive} olive oil.*{other[0].code} coconut oil"):
        trace(shop.rows(), "4471/2")
