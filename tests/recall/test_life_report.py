"""The report of a recall that was opened: page one for the telephone, the way drawn, private names only when asked."""

from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from drawn import Read
from once import once

from ledger.documents.recall.way_drawn import MOST, way_of
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.sell.dispatch import dispatch
from ledger.rows.settings import PrintedFrom
from ledger.storage.personal import PersonDetails
from ledger.views.recall.recall import BarsAt, NamedLot, ReachedBatch, RecallAnswer, Totals

pytestmark = pytest.mark.usefixtures("frozen")
Run = Callable[..., Any]


@pytest.fixture
def opened(shop: Any, run: Run) -> Any:
    once(sold_and_opened)(shop, run)
    return shop


def sold_and_opened(shop: Any, run: Run) -> None:
    """Four bars at a shop, two with a person; the recall is open and the shop told."""
    details = CustomerDetails("Tern Hall", PersonDetails(phone="020 910 0150"))
    add_customer(shop.book, details, kind="shop", code="tern-hall")
    add_customer(shop.book, CustomerDetails("Orla Fenn", PersonDetails(phone="020 910 0177")), kind="person", code=None)
    dispatch(shop.book, "tern-hall", {shop.batch: 4}, on=date(2026, 5, 5), price_minor=450, note=None)
    dispatch(shop.book, "Orla Fenn", {shop.batch: 2}, on=date(2026, 5, 6), price_minor=450, note=None)
    run(
        "recall", "open", "4471/2", "--reason", "rancid", "--hazard", "irritates the skin", "--found-by", "the supplier"
    )
    run(
        "recall",
        "note",
        "R1",
        "keeps them apart",
        "--told",
        "tern-hall",
        "--how",
        "telephone",
        "--answered",
        "tern-hall",
    )


def pages(path: Path) -> list[str]:
    drawn = Read(path.read_bytes())
    return [drawn.text(page) for page in range(len(drawn.pages))]


def test_the_first_page_alone_does_for_the_telephone(opened: Any, run: Run, tmp_path: Path) -> None:
    """Of 10 bars 4 and 2 are out, so 4 are on hand."""
    path = tmp_path / "R1.pdf"
    run("recall", "show", "R1", "-o", str(path), "--names")
    first, drawn, *rest = pages(path)
    for words in ("Recall R1", "telephone", "rancid", "irritates the skin", "Plain Bar", "100 g",
                  opened.batch, "Orla Fenn", "020 910 0177", "none set by an authority", "page 1 of"):  # fmt: skip
        assert words in first
    assert "6 bars with customers and unknown buyers" in first
    assert "Tern Hall" not in first.split("Whom to call")[1]  # was told already
    assert opened.olive in drawn
    assert "4 bars dispatched" in drawn
    told = " ".join(rest)
    places = [told.index(one) for one in ("1. The product", "2. The reason", "3. The risk", "4. Made", "5. Still out",
              "6. Who has them", "7. Communication", "8. Strategy", "9. Who answers", "It adds up: the bars",
              "It adds up: the lots", "Day by day")]  # fmt: skip
    assert places == sorted(places)
    assert "told Tern Hall, by telephone" in told
    assert "keeps them apart" in told


def test_private_persons_are_named_only_when_asked_for(opened: Any, run: Run, tmp_path: Path) -> None:
    with_a_rash = (
        "a rash",
        "--batch",
        opened.batch,
        "--name",
        "Ida Marsh",
        "--health",
        "blisters",
        "--phone",
        "020 77",
    )
    run("complaint", "add", *with_a_rash)
    run("recall", "note", "R1", "is better now", "--answered", "complaint 1")
    run("recall", "note", "R1", "hers are used up", "--answered", "Orla Fenn")
    for words, shown in (((), False), (("--names",), True)):
        path = tmp_path / f"{shown}.pdf"
        said = run("recall", "show", "R1", "-o", str(path), *words).stdout
        text = " ".join(pages(path))
        assert ("--names" in said) is not shown
        for private in ("Ida Marsh", "Orla Fenn", "020 910 0177", "is better now", "hers are used up"):
            assert (private in text) is shown, private
        assert "blisters" not in text
        assert "Tern Hall" in text
        assert "complaint 1" in text


def test_an_exercise_is_marked_on_every_page(opened: Any, run: Run, tmp_path: Path) -> None:
    run("recall", "rehearse", opened.olive)
    path = tmp_path / "R2.pdf"
    run("recall", "show", "R2", "-o", str(path))
    assert all("EXERCISE" in page for page in pages(path))
    run("recall", "show", "R1", "-o", str(tmp_path / "R1.pdf"))
    assert not any("EXERCISE" in page for page in pages(tmp_path / "R1.pdf"))


def answer(batches: int) -> RecallAnswer:
    """One lot in so many batches of two soaps, each with ten bars at one stall and two here."""
    lot = NamedLot("L1-X", "olive oil", "Tarnlow", "4471/2", date(2026, 3, 2), 5_000_000, 0, False, "on hold")
    codes = [f"26-{number:03}" for number in range(batches)]
    made = tuple(
        ReachedBatch(code, f"Bar {turn % 2}", date(2026, 4, 1), "on hold", "L1-X", "L1-X", 1, 1, False, 12, True)
        for turn, code in enumerate(codes)
    )
    bars = tuple(
        BarsAt(code, "Bar", where, place, date(2026, 5, 1), many, False, None)
        for code in codes
        for where, place, many in (("sold", "quay", 10), ("on hand", "workshop", 2))
    )
    none = PrintedFrom(1, "2026-06-01T12:00:00Z", "1", "")
    totals = Totals(12 * batches, 2 * batches, 0, 0, 0, 10 * batches, 0, 0, 0, 0, 0)
    return RecallAnswer("W", "metric", ("4471/2",), (lot,), made, bars, (), (), totals, (), False, False, none)


@pytest.mark.parametrize(("batches", "drawn", "ties"), [(1, 1, 3), (MOST, 20, 60), (MOST + 1, 2, 6)])
def test_twenty_batches_are_drawn_each_and_more_by_product(batches: int, drawn: int, ties: int) -> None:
    """Each spot in the middle has one tie from the lot, and one to the stall and to the workshop."""
    way = way_of(answer(batches))
    lots, middle, outlets = way.columns
    assert (len(lots), len(middle), len(outlets)) == (1, drawn, 2)
    assert len(way.ties) == ties
    assert way.summed == (batches > 20)
    assert {one.line for one in outlets} == {f"{10 * batches} bars sold", f"{2 * batches} bars on hand"}
    if way.summed:
        assert [one.line for one in middle] == ["11 batches, 132 bars", "10 batches, 120 bars"]
