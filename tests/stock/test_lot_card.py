"""Everything known of one lot stands on its card."""

from datetime import date
from typing import Any

from ledger.operations.bench.plan import PlanRequest, plan_batch
from ledger.operations.keep.undo import undo
from ledger.operations.stock.lots import decide_lots, waste_lot
from ledger.views.stock.lot_card import lot_card


def test_where_it_came_from_what_was_decided_and_where_it_went(full: Any) -> None:
    decide_lots(full.book, [full.olive], verdict="on hold", on=date(2026, 6, 1), by="Orla", reason="cloudy")
    card = lot_card(full.rows(), full.olive)
    assert (card.lot.supplier, card.lot.supplier_number, card.note_number) == ("Tarnlow Oils", "4471/2", "D-118")
    assert [(one.what, one.quantity, one.batch) for one in card.movements] == [
        ("received", 5_000_000, None),
        ("consumed", -600_000, full.batch),
    ]
    assert [(one.verdict, one.by, one.reason) for one in card.decisions] == [
        ("accepted", "Nuala", None),
        ("on hold", "Orla", "cloudy"),
    ]
    assert [(one.name, one.kind) for one in card.papers] == [("coa-4471.txt", "CoA")]
    assert card.here == (("workshop", 4_400_000),)


def test_bars_show_every_place_and_who_made_them(full: Any) -> None:
    # 10 made; 4 went to the market, 1 came back and 3 were sold there
    card = lot_card(full.rows(), full.batch)
    assert card.lot.batch_code == full.batch
    assert card.here == (("workshop", 7),)
    assert [(one.what, one.quantity) for one in card.movements if one.place == "Quay market"] == [
        ("moved", 4),
        ("moved", -1),
        ("sold", -3),
    ]


def test_a_planned_batch_is_named_until_it_is_taken_back(shop: Any) -> None:
    batch = plan_batch(shop.book, PlanRequest("plain-bar", date(2026, 6, 1)))
    assert lot_card(shop.rows(), shop.olive).planned == ((batch, 600_000),)
    undo(shop.book, shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0])
    assert lot_card(shop.rows(), shop.olive).planned == ()


def test_what_was_taken_back_did_not_happen_to_it(shop: Any) -> None:
    before = lot_card(shop.rows(), shop.olive).movements
    waste_lot(shop.book, shop.olive, 1_000, place=None, on=date(2026, 6, 1), reason="spilt")
    assert len(lot_card(shop.rows(), shop.olive).movements) == len(before) + 1
    undo(shop.book, shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0])
    assert lot_card(shop.rows(), shop.olive).movements == before
