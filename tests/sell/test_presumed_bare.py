"""Where a product is sold bare, the bars without a label are taken to go first, and the screen says how many."""

from datetime import date
from typing import Any

import pytest
from making import LOOKED_GOOD, cut
from once import once
from shop import Shop

from ledger.domain.release.bars import Passing
from ledger.domain.release.releasing import Releasing
from ledger.operations.label.bare import Bare, settle_bare
from ledger.operations.label.labels import Counted, LabelRequest, approve_label, count_run, print_labels
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.release.release import pass_bars, release_bars
from ledger.operations.sell.add_stall import add_stall

PASSED = date(2026, 6, 3)


@pytest.fixture
def packed(shop: Shop) -> str:
    return str(once(pack)(shop))


def pack(shop: Shop) -> str:
    """Ten bars, of which seven have a label; sold bare at the quay market and to The Heron, nowhere else."""
    add_stall(shop.book, "Quay market")
    add_stall(shop.book, "Church hall")
    add_customer(shop.book, CustomerDetails("The Heron"), kind="shop", code="heron")
    code = cut(shop.book)
    pass_bars(shop.book, code, Passing(on=PASSED, by="Nuala"))
    request = LabelRequest(code, "eu", "band", 7, PASSED, layout_source="layout", sheet_source="sheet")
    approve_label(shop.book, request, by="Nuala")
    print_labels(shop.book, request, lambda _: b"drawn")
    count_run(shop.book, 1, Counted(0, 0, specimen=0), on=PASSED)
    for stall, customer in (("Quay market", None), (None, "heron")):
        asked = Bare("plain-bar", stall, customer, PASSED, "Nuala", "on the tray")
        settle_bare(shop.book, asked, notice="notice-shelf", code_on="tray")
    release_bars(shop.book, code, Releasing(on=PASSED, by="Nuala", anyway="a trial", checks=LOOKED_GOOD))
    return code


def said(run: Any, *words: str) -> str:
    return " ".join(run(*words, "--on", "2026-06-03").stdout.split())


def test_how_many_are_taken_for_bare_is_said_at_every_door(packed: str, run: Any) -> None:
    """Three of ten have no label: two go, all home but one, one more by post, the last as a gift."""
    out = said(run, "stall", "out", "quay", f"{packed}=2")
    assert f"Of batch {packed}, 2 bars without a label are counted as gone: where it is sold bare, those" in out
    back = said(run, "stall", "back", "quay", f"{packed}=1")
    assert f"Of batch {packed}, 1 bar without a label is counted as home again" in back
    assert "taken to be the first sold. Nobody looked which they were." in back
    assert "1 bar without a label is counted as gone" in said(run, "dispatch", "heron", f"{packed}=1")
    assert "1 bar without a label is counted as gone" in said(run, "gift", f"{packed}=2", "--to", "heron")


def test_nothing_is_said_where_none_is_taken_for_bare(packed: str, run: Any) -> None:
    assert "without a label" not in said(run, "stall", "out", "church", f"{packed}=7")


@pytest.mark.usefixtures("packed")
def test_it_is_said_when_it_is_settled(run: Any) -> None:
    told = said(
        run, "label", "bare", "plain-bar", "--stall", "church", "--notice", "n", "--code-on", "tray", "--reason", "r"
    )
    assert "those without are taken to be the first to go there" in told
