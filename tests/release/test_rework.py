"""Rejected bars become a lot on hold for a rebatch, and every answer goes through it."""

import json
from datetime import date, timedelta
from typing import Any

import pytest
from making import batch_of, cut, planned, weighed
from once import once
from pypdf import PdfReader
from shop import Shop

from ledger.errors import BadInput, Refused
from ledger.operations.bench.cut import cut_batch
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.release.release import reject_bars
from ledger.operations.release.rework import rework_bars
from ledger.operations.stock.lots import decide_lots, waste_lot
from ledger.rows.lot import find_lot, place_of_kind
from ledger.storage.tables.bench import Batch
from ledger.storage.tables.decision import Decision
from ledger.storage.tables.stock import Movement
from ledger.views.recall.recall_answer import recall_answer
from ledger.views.recall.trace import trace
from ledger.views.recipe.ingredients import parts_of_batch

LATER = date(2026, 6, 10)
REBATCH = """
name = "Twice Round"
code = "second"
process = "rebatch"
[[rework]]
material = "offcuts"
grams = 400
[water]
material = "water"
grams = 60
[mould]
bars = 4
net_weight = "100 g"
"""


@pytest.fixture
def rejected(shop: Shop) -> str:
    return str(once(cut_and_reject)(shop))


def cut_and_reject(shop: Shop) -> str:
    """Ten bars of 1 320 g together at the cut, rejected."""
    code = cut(shop.book)
    reject_bars(shop.book, code, on=LATER, by="Nuala", reason="orange spots")
    return code


def rework(shop: Shop, code: str, mass_mg: int = 820_000, **more: Any) -> str:
    return rework_bars(shop.book, code, mass_mg, on=LATER, by="Nuala", **more).lot


def test_bars_are_reworked_from_the_day_of_the_cut(shop: Shop) -> None:
    code = cut(shop.book)
    on = find_lot(shop.rows(), code).on
    reject_bars(shop.book, code, on=on, by="Nuala", reason="orange spots")
    with pytest.raises(BadInput, match="was cut on"):
        rework_bars(shop.book, code, 820_000, on=on - timedelta(days=1), by="Nuala")
    assert rework_bars(shop.book, code, 820_000, on=on, by="Nuala").lot


def test_bars_become_a_lot_of_offcuts_on_hold(shop: Shop, rejected: str) -> None:
    done = rework_bars(shop.book, rejected, 820_000, on=LATER, by="Nuala", bars=7)
    lot = find_lot(shop.rows(), done.lot)
    assert (lot.material_code, lot.on_hand, lot.status, lot.batch_code) == ("offcuts", 820_000, "on hold", done.batch)
    assert find_lot(shop.rows(), rejected).on_hand == 3
    assert batch_of(shop.book, done.batch).status == "reworked"
    assert check(shop.rows()).findings == ()


def test_no_more_than_the_bars_weighed(shop: Shop, rejected: str) -> None:
    with pytest.raises(Refused, match=r"5 bars of batch .* weighed 660 g at the cut, not 660\.1 g now"):
        rework(shop, rejected, 660_100, bars=5)  # 1 320 g of 10 bars: 132 g each
    rework(shop, rejected, 660_000, bars=5)
    with pytest.raises(Refused, match="has 5 bars in the workshop; 6 cannot be reworked"):
        rework(shop, rejected, 1000, bars=6)
    assert check(shop.rows()).findings == ()


def test_only_bars_that_may_not_leave(shop: Shop) -> None:
    code = cut(shop.book)
    with pytest.raises(Refused, match="are curing; only rejected bars are reworked"):
        rework(shop, code)
    decide_lots(shop.book, [code], verdict="on hold", on=LATER, by="Nuala", reason="smells")
    assert find_lot(shop.rows(), rework(shop, code)).status == "on hold"
    with pytest.raises(BadInput, match="What do they weigh"):
        rework(shop, code, 0)
    with pytest.raises(Refused, match="it has no bars to rework"):
        rework(shop, planned(shop.book))


def test_it_is_let_into_a_rebatch_by_a_decision_and_a_recall_goes_through(shop: Shop, rejected: str) -> None:
    add_recipe(shop.book, REBATCH, file="second.toml")
    lot = rework(shop, rejected)
    with pytest.raises(Refused):
        planned(shop.book, "second", on=LATER)
    decide_lots(shop.book, [lot], verdict="accepted", on=LATER, by="Nuala", reason="only spots")
    second = weighed(shop.book, planned(shop.book, "second", on=LATER), on=LATER)
    cut_batch(shop.book, second, bars=4, on=LATER, by="Nuala", bars_mg=410_000)
    waste_lot(shop.book, second, 1, place=None, on=LATER, reason="crumbled")
    rows = shop.rows()
    assert shop.olive in trace(rows, second).supplier_lots
    assert {one.inci for one in parts_of_batch(rows, batch_of(shop.book, second).id)} == {
        "OLEA EUROPAEA FRUIT OIL", "COCOS NUCIFERA OIL", "SODIUM HYDROXIDE", "AQUA",
    }  # fmt: skip
    answer = recall_answer(rows, [find_lot(rows, shop.olive)], asked=["4471/2"], program="t")
    totals = answer.totals
    # ten bars of the worked shop and ten rejected, all of these reworked into four, of which one crumbled
    assert (totals.made, totals.on_hand, totals.reworked, totals.wasted, totals.unexplained) == (24, 13, 10, 1, 0)
    assert [(one.where, one.detail, one.count) for one in answer.bars if one.batch_code == rejected] == [
        ("reworked", f"lot {lot}", 10)
    ]
    assert check(rows).findings == ()


@pytest.mark.parametrize(("process", "verdict"), [("rebatch", "rejected"), ("combine", None), ("rework", "released")])
def test_the_file_itself_lets_bars_into_nothing_else(shop: Shop, process: str, verdict: str | None) -> None:
    bars = find_lot(shop.rows(), shop.batch if verdict == "released" else cut(shop.book))

    def consume() -> None:
        with shop.book.write("trial") as tx:
            if verdict == "rejected":
                tx.add(Decision(lot_id=bars.id, verdict=verdict, on=LATER, by="Nuala", reason="spots"))
            batch = tx.add(Batch(code="26-900-1", process=process, material_id=bars.material_id, on=LATER))
            workshop = place_of_kind(tx.rows, "workshop").id
            tx.add(
                Movement(lot_id=bars.id, place_id=workshop, on=LATER, quantity=-1, kind="consumed", batch_id=batch.id)
            )
            tx.say("Tried.")

    with pytest.raises(Refused, match="was not accepted on that date"):
        consume()


def test_a_rework_is_taken_back_whole(shop: Shop, rejected: str) -> None:
    lot = rework(shop, rejected)
    entry = shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0]
    undo(shop.book, entry)
    assert find_lot(shop.rows(), rejected).on_hand == 10
    with pytest.raises(BadInput):
        find_lot(shop.rows(), lot)
    assert check(shop.rows()).findings == ()


@pytest.mark.usefixtures("frozen")
def test_the_command_says_what_comes_next(shop: Shop, run: Any) -> None:
    assert shop.batch
    reject_bars(shop.book, shop.batch, on=date(2026, 6, 1), by="Nuala", reason="orange spots")
    assert "soapledger lot accept L" in run("rework", shop.batch, "500 g", "--bars", "4").stdout
    assert json.loads(run("rework", shop.batch, "100 g", "--bars", "1", "--json").stdout)["bars"] == 1
    assert "5 reworked, 0 unexplained" in run("recall", "lot", "4471/2", "-o", "r.pdf").stdout
    words = PdfReader("r.pdf").pages[0].extract_text()
    assert "reworked" in words
    assert "reworked" in run("batch", "show", shop.batch).stdout
