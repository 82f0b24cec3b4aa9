"""What stands on the returns shelf is put back on sale, kept there or thrown away, each by name; a trace shows it."""

import json
from typing import Any

import pytest
from once import once
from shop import Shop

from ledger.operations.keep.check import check
from ledger.rows.bars import back_on_sale
from ledger.rows.lot import find_lot, whereabouts

ONE = "26-001-4"


@pytest.fixture
def back(selling: Shop, run: Any) -> Shop:
    once(come_back)(selling, run)
    return selling


def come_back(_: Shop, run: Any) -> None:
    """Four bars of ten stand on the returns shelf."""
    run("dispatch", "tern", f"{ONE}=5", "--price", "4.50", "--on", "2026-05-10")
    run("return", f"{ONE}=4", "--from", "tern", "--on", "2026-05-20")


def here(shop: Shop) -> dict[str, int]:
    rows = shop.rows()
    return {place.kind: held for place, held in whereabouts(rows, find_lot(rows, ONE).id)}


def test_each_way_is_by_name_and_a_trace_shows_it(back: Shop, run: Any) -> None:
    """Of four one is sold again, two are kept, one of them is thrown away later: 6 here, 2 on the shelf."""
    run("resell", f"{ONE}=1", "--by", "Orla", "--reason", "seal unbroken", "--on", "2026-05-21")
    said = run("shelf", "keep", f"{ONE}=2", "--by", "Orla", "--reason", "a complaint is open", "--on", "2026-05-22")
    assert said.stdout == f"2 bars of Plain Bar {ONE}: kept on the returns shelf, as Orla decided.\n"
    assert here(back) == {"workshop": 6, "returns": 3}
    said = run("shelf", "waste", f"{ONE}=1", "--by", "Orla", "--reason", "torn", "--on", "2026-05-23")
    assert " ".join(said.stdout.split()) == (
        f"1 bar of Plain Bar {ONE}: thrown away from the returns shelf, as Orla decided."
    )
    assert here(back) == {"workshop": 6, "returns": 2}
    shown = " ".join(run("trace", ONE).stdout.split())
    for words in (
        "1 bar back on sale on 21 May 2026, from the returns shelf (Orla: seal unbroken)",
        "2 bars kept on the returns shelf on 22 May 2026 (Orla: a complaint is open)",
        "1 bar thrown away from the returns shelf on 23 May 2026 (Orla: torn)",
    ):
        assert words in shown
        assert words in " ".join(run("shelf", "list").stdout.split())
    assert [one.bars for one in back_on_sale(back.rows(), [find_lot(back.rows(), ONE).id])] == [1]
    totals = json.loads(run("recall", "bar", ONE, "--json").stdout)["totals"]
    assert (totals["on_hand"], totals["returned"], totals["dispatched"], totals["unexplained"]) == (6, 2, 1, 0)
    assert check(back.rows()).findings == ()


def test_an_undo_takes_each_back(back: Shop, run: Any) -> None:
    for verb in ("keep", "waste"):
        run("shelf", verb, f"{ONE}=4", "--by", "Orla", "--reason", "so")
        run("undo", "--yes")
        assert here(back) == {"workshop": 5, "returns": 4}
        assert "Orla" not in run("trace", ONE).stdout
    assert check(back.rows()).findings == ()


@pytest.mark.parametrize("verb", ["keep", "waste"])
def test_all_that_is_there_and_no_more(back: Shop, run: Any, verb: str) -> None:
    more = run("shelf", verb, f"{ONE}=5", "--by", "Orla", "--reason", "so", code=1).stderr
    assert f"4 bars of batch {ONE} stand on the returns shelf; 5 cannot be" in more
    early = ("--by", "Orla", "--reason", "so", "--on", "2026-05-19")
    assert "0 bars of batch" in run("shelf", verb, f"{ONE}=1", *early, code=1).stderr
    assert "above zero" in run("shelf", verb, f"{ONE}=0", "--by", "Orla", "--reason", "so", code=2).stderr
    assert "--reason" in run("shelf", verb, f"{ONE}=1", "--by", "Orla", code=2).stderr
    run("shelf", verb, f"{ONE}=4", "--by", "Orla", "--reason", "so", "--on", "2026-05-20")
    assert here(back)["workshop"] == 5


def test_an_empty_shelf_says_so(selling: Shop, run: Any) -> None:
    assert run("shelf", "list").stdout == "Nothing stands on the returns shelf.\n"
    assert json.loads(run("shelf", "list", "--json").stdout) == []
    assert selling.batch == ONE


def test_the_list_is_of_what_stands_there(back: Shop, run: Any) -> None:
    (one,) = json.loads(run("shelf", "list", "--json").stdout)
    assert one == {"batch": ONE, "product": "Plain Bar", "bars": 4, "last_on": "2026-05-20", "decided": []}
    assert back.batch == ONE
