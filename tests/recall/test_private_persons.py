"""Private persons stand in no paper and no list of a recall unless they are asked for; shops do, and health never."""

from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from drawn import Read
from once import once

from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.gift import gift
from ledger.operations.sell.stall_back import stall_back
from ledger.operations.sell.stall_out import stall_out
from ledger.operations.sell.take_back import take_back
from ledger.storage.personal import PersonDetails

pytestmark = pytest.mark.usefixtures("frozen")
Run = Callable[..., Any]
# Orla Fenn bought, got a gift and gave one back; the ferryman is on no book; Ida Marsh and one of Orla's complained.
PRIVATE = ("Orla Fenn", "orla-fenn", "020 910 0177", "Weir Row", "the ferryman", "Ida Marsh", "020 910 0188")
NEVER = ("blisters", "a rash on both hands")


@pytest.fixture
def sold(shop: Any, run: Run) -> Any:
    once(sell)(shop, run)
    return shop


def sell(shop: Any, run: Run) -> None:
    """Of ten bars three at a shop, two with a person, one given to her and one to nobody on the books, one sold."""
    book, batch = shop.book, shop.batch
    add_customer(book, CustomerDetails("Tern Hall", PersonDetails(name="Róisín Ward", phone="020 910 0150")),
                 kind="shop", code="tern-hall")  # fmt: skip
    person = PersonDetails(phone="020 910 0177", address="2 Weir Row")
    add_customer(book, CustomerDetails("Orla Fenn", person), kind="person", code="orla-fenn")
    dispatch(book, "tern-hall", {batch: 3}, on=date(2026, 5, 5), price_minor=450, note=None)
    dispatch(book, "orla-fenn", {batch: 2}, on=date(2026, 5, 6), price_minor=450, note=None)
    take_back(book, {batch: 1}, customer="orla-fenn", stall=None, on=date(2026, 5, 20), reason="cracked")
    gift(book, {batch: 1}, to="orla-fenn", on=date(2026, 5, 21))
    gift(book, {batch: 1}, to="the ferryman", on=date(2026, 5, 21))
    add_stall(book, "quay")
    stall_out(book, "quay", {batch: 2}, on=date(2026, 5, 9))
    stall_back(book, "quay", {batch: 0}, on=date(2026, 5, 9), takings_minor=None)
    take_back(book, {batch: 1}, customer=None, stall="quay", on=date(2026, 5, 23), reason="smelt of petrol")
    harmed = ("--name", "Ida Marsh", "--health", "a rash on both hands", "--phone", "020 910 0188")
    run("complaint", "add", "itched", "--batch", batch, *harmed)
    run("complaint", "add", "itched too", "--at", "orla-fenn", "--health", "blisters", "--on", "2026-05-22")


ASKED = (
    ("recall", "lot", "4471/2"),
    ("recall", "of", "4471/2", "--product", "plain bar"),
    ("recall", "bar", "26-001-4"),
)


def text_of(path: Path) -> str:
    return Read(path.read_bytes()).text()


@pytest.mark.parametrize("words", ASKED)
@pytest.mark.usefixtures("sold")
def test_the_papers_of_a_look_up(run: Run, words: tuple[str, ...]) -> None:
    for names in ((), ("--names",)):
        said = run(*words, "-o", "out.pdf", "--csv", "out.csv", "--force", *names).stdout
        drawn, listed = text_of(Path("out.pdf")), Path("out.csv").read_text(encoding="utf-8")
        for private in PRIVATE:
            assert (private in drawn) <= bool(names), private
            assert (private in listed) <= bool(names), private
        for never in NEVER:
            assert never not in drawn + listed
        for known in ("Tern Hall", "020 910 0150", "complaint 1", "complaint 2", "smelt of petrol"):
            assert known in drawn
        assert "Orla Fenn" in said
        assert ("with names: --names" in said) is not bool(names)
        assert ("left out" in drawn) is not bool(names)  # Ida Marsh's number
        assert "complaint 2 no number" in drawn or names  # of that one none is known
    assert all(one in drawn for one in ("Orla Fenn", "020 910 0177", "the ferryman", "Ida Marsh"))


@pytest.mark.usefixtures("sold")
def test_the_report_alone_says_how_to_have_the_names(run: Run) -> None:
    shown = " ".join(run("recall", "lot", "4471/2", "-o", "out.pdf").stdout.split())
    assert "Private persons stand in it without a name, who complained by number alone; with names: --names" in shown
    both = " ".join(run("recall", "lot", "4471/2", "-o", "two.pdf", "--csv", "two.csv").stdout.split())
    assert both.count("with names: --names") == 1
    assert "Private persons stand in both without a name" in both


@pytest.mark.usefixtures("sold")
def test_the_report_and_the_notices_of_a_recall(run: Run) -> None:
    run("recall", "open", "4471/2", "--reason", "rancid", "--hazard", "irritates the skin")
    run("recall", "note", "R1", "was upset", "--told", "Orla Fenn", "--answered", "Orla Fenn")
    run("recall", "note", "R1", "is better", "--told", "complaint 1")
    run("recall", "note", "R1", "has none left", "--told", "the ferryman (a gift)")
    run("recall", "show", "R1", "-o", "show.pdf")
    for whom in ("customer", "shop", "stall"):
        run("recall", "notice", "R1", whom, "-o", f"{whom}.pdf")
    for name in ("show", "customer", "shop", "stall"):
        drawn = text_of(Path(f"{name}.pdf"))
        for private in (*PRIVATE, *NEVER, "was upset", "is better", "has none left"):
            assert private not in drawn, (name, private)
    assert "smelt of petrol" in text_of(Path("show.pdf"))


def test_a_shop_that_gave_all_back_is_still_named_and_who_has_a_gift_is_not(sold: Any, run: Run) -> None:
    """Of the three of the shop all came back; the one of the ferryman was destroyed, as he said."""
    run("recall", "open", "4471/2", "--reason", "rancid")
    run("recall", "note", "R1", "sends them all", "--told", "tern-hall", "--answered", "tern-hall")
    run("recall", "note", "R1", "threw it away", "--destroyed", "1", "--from", "the ferryman (a gift)")
    run("recall", "note", "R1", "--returned", "3", "--from", "tern-hall")
    run("return", f"{sold.batch}=3", "--from", "tern-hall", "--reason", "recalled")
    run("recall", "show", "R1", "-o", "show.pdf")
    drawn = text_of(Path("show.pdf"))
    people = drawn.split("6. Who has them")[1].split("7. Communication")[0]
    assert "Tern Hall" in people
    assert "020 910 0150" in people
    assert "sends them all" in people
    assert "3 / –" in people
    assert "– / 1" in people
    steps = drawn.split("7. Communication")[1]
    assert "3 bars came back from Tern Hall" in steps
    assert "1 bar destroyed at someone with a gift" in steps
    assert "the ferryman" not in drawn
    assert "threw it away" not in drawn
