"""Commands that are seldom typed: labels that fall due, tickets and test sheets; people changed, shown and erased."""

import json
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from making import planned, weighed
from once import once
from pypdf import PdfReader
from shop import Shop

from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.material.skin import state_contents
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.stall_out import stall_out
from ledger.storage.personal import PersonDetails
from ledger.storage.tables.label import LabelRun

pytestmark = pytest.mark.usefixtures("frozen")  # today is 1 Jun 2026
Run = Callable[..., Any]


def printed(path: str) -> str:
    """The text of a paper, spaces made even."""
    return " ".join(" ".join(page.extract_text() for page in PdfReader(path).pages).split())


@pytest.fixture
def labelled(shop: Shop) -> Shop:
    once(labels_of_may)(shop)
    return shop


def labels_of_may(shop: Shop) -> None:
    """Ten bars under labels of May, in which camphor, on the long list alone, exceeds 0.01 %."""
    state_contents(shop.book, "olive oil", {"Camphor": 1000}, source="a statement made up")
    with shop.book.write("label print") as tx:
        lot = tx.rows.execute("SELECT id FROM lot WHERE code = ?", (shop.batch,)).fetchone()[0]
        on = date(2026, 5, 5)
        tx.add(LabelRun(lot_id=lot, on=on, layout="band", market="eu", count=10, text="", text_digest="0" * 64))
        tx.say("Printed.")


def test_what_is_due_up_to_a_year_from_today(labelled: Shop, run: Run) -> None:
    said = run("label", "due").stdout.splitlines()
    assert said[0] == "1 batch with labels that stop being usable up to 1 Jun 2027:"
    (row,) = (line for line in said if labelled.batch in line)
    assert row.split()[:9] == [labelled.batch, "eu", "10", "on", "hand", "31", "Jul", "2026", "to"]
    assert "Camphor too" in " ".join(" ".join(said).split())
    assert all(len(line) <= 80 for line in said)


@pytest.mark.usefixtures("labelled")
def test_the_runs_fit_a_screen_of_80_columns(run: Run) -> None:
    said = run("label", "runs").stdout.splitlines()
    assert "10, not counted yet" in said[2]
    run("label", "count", "1", "--spoiled", "2", "--returned", "1")
    said = run("label", "runs").stdout.splitlines()
    assert "7 of 10; 2 spoiled, 1 unused" in " ".join(" ".join(said).split())
    assert all(len(line) <= 80 for line in said)


def test_bars_of_one_batch_at_two_places_are_one_batch_that_is_due(labelled: Shop, run: Run) -> None:
    add_stall(labelled.book, "Quay market")
    stall_out(labelled.book, "Quay market", {labelled.batch: 4}, on=date(2026, 5, 9))
    said = run("label", "due").stdout.splitlines()
    assert said[0] == "1 batch with labels that stop being usable up to 1 Jun 2027:"
    assert len([line for line in said if labelled.batch in line]) == 2


@pytest.mark.parametrize(("by", "bars"), [("2026-07-30", []), ("2026-07-31", [10]), ("2026-08-01", [10])])
def test_what_is_due_up_to_the_last_day_of_the_list(labelled: Shop, run: Run, by: str, bars: list[int]) -> None:
    """Regulation (EU) 2023/1545: the first list for bars first supplied up to 31 July 2026."""
    assert labelled
    assert [one["bars"] for one in json.loads(run("label", "due", "--by", by, "--json").stdout)] == bars
    if not bars:
        said = run("label", "due", "--by", by).stdout
        assert said == "No printed label stops being usable up to 30 Jul 2026, by the rules known here.\n"


def test_a_price_ticket_says_what_a_kilogram_costs(shop: Shop, run: Run) -> None:
    """5.50 for 100 g is 55.00 for a kilogram."""
    said = run("label", "ticket", shop.batch, "--price", "5.50", "--count", "2", "-o", "tickets.pdf").stdout
    assert said.splitlines()[0] == "2 cards in tickets.pdf."
    assert printed("tickets.pdf").count("€55.00 per kg") == 2
    assert "exists already" in run("label", "ticket", shop.batch, "--price", "5", "-o", "tickets.pdf", code=2).stderr


def test_a_card_for_the_rack_says_when_the_bars_are_ready(shop: Shop, run: Run) -> None:
    """Cut on 2 April 2026 and cured 28 days: 30 April."""
    assert run("label", "rack", shop.batch, "-o", "rack.pdf").stdout == "1 card in rack.pdf.\n"
    assert "30 Apr 2026" in printed("rack.pdf")


def test_the_outlines_of_a_sheet(run: Run) -> None:
    said = run("label", "try-sheet", "a4-24", "-o", "outlines.pdf").stdout
    assert " ".join(said.split()) == (
        "The outlines of a4-24 are outlines.pdf; hold it against a sheet, then print with --nudge."
    )
    assert Path("outlines.pdf").read_bytes().startswith(b"%PDF-")
    assert "at most 5 mm" in run("label", "try-sheet", "a4-24", "--nudge", "5.1,0", "-o", "other.pdf", code=2).stderr


def test_a_supplier_is_changed_and_what_is_left_out_stays(shop: Shop, run: Run) -> None:
    assert shop
    said = run("supplier", "edit", "tarnlow", "--email", "post@tarnlow.example").stdout
    assert said == "Tarnlow Oils is changed; documents printed before keep what stood then.\n"
    shown = run("supplier", "show", "tarnlow").stdout
    assert "020 910 0142" in shown
    assert "post@tarnlow.example" in shown
    assert "'nobody'" in run("supplier", "edit", "nobody", "--phone", "1", code=2).stderr


@pytest.fixture
def customers(shop: Shop) -> Shop:
    once(two_customers)(shop)
    return shop


def two_customers(shop: Shop) -> None:
    """A shop that got three bars, and a person."""
    add_customer(shop.book, CustomerDetails("The Heron", PersonDetails(phone="01 555 0177")), kind="shop", code="heron")
    add_customer(shop.book, CustomerDetails("Orla Fenn", PersonDetails(phone="01 555 0188")), kind="person", code=None)
    dispatch(shop.book, "heron", {shop.batch: 3}, on=date(2026, 5, 9), price_minor=400, note=None)


def test_customers_are_listed_with_their_bars(customers: Shop, run: Run) -> None:
    assert customers
    said = run("customer", "list").stdout.splitlines()
    assert said[0] == "2 customers."
    rows = [line.split() for line in said if "555" in line]
    assert [(row[0], row[-1]) for row in rows] == [("person-2", "0"), ("heron", "3")]


def test_a_customer_is_changed_and_what_is_left_out_stays(customers: Shop, run: Run) -> None:
    assert customers
    said = run("customer", "edit", "heron", "--name", "The Grey Heron", "--contact", "Ida").stdout
    assert said == "The Grey Heron is changed; documents printed before keep what stood then.\n"
    shown = run("customer", "show", "heron").stdout
    assert shown.splitlines()[0] == "The Grey Heron (heron), a shop: 3 bars went there and stayed."
    assert "Ida" in shown
    assert "01 555 0177" in shown


def test_a_person_is_erased_and_the_rest_stays(customers: Shop, run: Run) -> None:
    said = run("customer", "erase", "person-2", "--reason", "asked by letter", "--yes").stdout
    assert "The personal details of customer person-2 are erased; the sales remain.\n" in said
    shown = run("customer", "show", "person-2").stdout
    assert shown == "person-2 (person-2), a person: 0 bars went there and stayed.\n"
    assert "Orla" not in run("customer", "list").stdout
    assert "nothing to erase" in run("customer", "erase", "person-2", "--reason", "again", "--yes", code=1).stderr
    assert b"555 0188" not in customers.book.path.read_bytes()


def test_stalls_are_listed_with_what_stands_there(shop: Shop, run: Run) -> None:
    assert run("stall", "list").stdout == 'No stall yet. Add one: soapledger stall add "Saturday market"\n'
    add_stall(shop.book, "Quay market")
    add_stall(shop.book, "Hill market")
    stall_out(shop.book, "Quay market", {shop.batch: 4}, on=date(2026, 5, 9))
    said = run("stall", "list").stdout.splitlines()
    assert said[0] == "2 stalls."
    rows = [line.split() for line in said if "market" in line]
    assert rows == [["Quay", "market", "4", shop.batch], ["Hill", "market", "0"]]
    shown = json.loads(run("stall", "list", "--json").stdout)
    assert [(one["stall"]["name"], [lot["bars"] for lot in one["bars"]]) for one in shown] == [
        ("Quay market", [4]),
        ("Hill market", []),
    ]


INFUSION = """
name = "Bay oil"
code = "bay-oil"
process = "infusion"
[infusion]
yields = "bay oil"
days = 14
[[part]]
material = "olive oil"
grams = 500
"""


def test_an_infusion_is_strained_and_stands_in_stock(shop: Shop, run: Run) -> None:
    add_material(shop.book, MaterialFacts("bay oil", "Olea Europaea Fruit Oil"), kind="intermediate", code=None)
    add_recipe(shop.book, INFUSION, file="bay-oil.toml")
    jar = weighed(shop.book, planned(shop.book, "bay-oil", on=date(2026, 5, 10)), on=date(2026, 5, 10))
    assert "480 g" in run("batch", "strain", jar, "480 g", "--on", "2026-05-24").stdout
    assert '"on_hand": 480000' in run("stock", "--json").stdout  # mg


def test_a_batch_is_given_up_with_its_reason(shop: Shop, run: Run) -> None:
    code = planned(shop.book)
    run("batch", "discard", code, "--reason", "the pot boiled over")
    assert "discarded" in run("batch", "show", code).stdout
    assert "the pot boiled over" in run("history").stdout


def test_bars_are_given_away_to_someone_in_words(shop: Shop, run: Run) -> None:
    said = run("gift", f"{shop.batch}=2", "--to", "the school fair").stdout
    assert "2 bars" in said
    assert "the school fair" in said
    assert "the school fair" in run("recall", "bar", shop.batch).stdout


@pytest.mark.usefixtures("shop")
def test_suppliers_are_listed_with_their_numbers(run: Run) -> None:
    said = run("supplier", "list").stdout
    assert "1 supplier" in said
    assert "Tarnlow Oils" in said
    assert "020 910 0142" in said
