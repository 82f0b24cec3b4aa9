"""What is on hand, where, and how much of it no plan has taken yet."""

from datetime import date
from typing import Any

from ledger.operations.bench.discard import discard_batch
from ledger.operations.bench.plan import PlanRequest, plan_batch
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.sell.stall_out import stall_out
from ledger.operations.stock.lots import waste_lot
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, receive
from ledger.rows.material import material_by_code
from ledger.views.stock.stock import MaterialStock, stock

ON = date(2026, 6, 1)


def held(shop: Any, material: str) -> MaterialStock:
    rows = shop.rows()
    (found,) = stock(rows, material_id=material_by_code(rows, material).id)
    return found


def test_what_came_less_what_was_used_is_on_hand(shop: Any) -> None:
    # 5 000 g came, the batch took 600 g
    olive = held(shop, "olive oil")
    assert (olive.on_hand, olive.free, olive.counted) == (4_400_000, 4_400_000, False)


def test_a_planned_batch_leaves_less_free_until_it_is_given_up(shop: Any) -> None:
    batch = plan_batch(shop.book, PlanRequest("plain-bar", ON))
    assert (held(shop, "olive oil").on_hand, held(shop, "olive oil").free) == (4_400_000, 3_800_000)
    discard_batch(shop.book, batch, on=ON, by="Nuala", reason="no time")
    assert held(shop, "olive oil").free == 4_400_000


def test_bars_are_counted_at_every_place(shop: Any) -> None:
    add_stall(shop.book, "Quay market")
    stall_out(shop.book, "Quay market", {shop.batch: 4}, on=ON)
    bars = held(shop, "plain-bar")
    assert (bars.on_hand, bars.counted) == (10, True)
    assert bars.lots[0].here == (("workshop", 6), ("Quay market", 4))


def test_first_to_expire_stands_first_and_without_a_date_last(shop: Any) -> None:
    lines = (
        DeliveryLine("olive oil", 1000, "N1", 10),
        DeliveryLine("olive oil", 1000, "N2", 10, best_before=date(2026, 12, 31)),
    )
    undated, sooner = (lot.code for lot in receive(shop.book, DeliveryNote("tarnlow", ON, lines)))
    assert [line.lot.code for line in held(shop, "olive oil").lots] == [sooner, shop.olive, undated]


def test_one_kind_alone_by_the_alphabet(shop: Any) -> None:
    assert [one.name for one in stock(shop.rows(), kind="fat")] == ["coconut oil", "olive oil"]


def test_a_lot_used_up_is_shown_only_when_asked_for(shop: Any) -> None:
    waste_lot(shop.book, shop.olive, 4_400_000, place=None, on=ON, reason="spilt")
    rows = shop.rows()
    olive = material_by_code(rows, "olive oil").id
    assert stock(rows, material_id=olive) == ()
    assert [line.lot.code for line in stock(rows, material_id=olive, empty=True)[0].lots] == [shop.olive]
