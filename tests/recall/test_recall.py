"""recall at the command line: the sentence for the telephone, the files, and what it refuses."""

import csv
import json
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pypdf
import pytest
from making import cut
from once import once
from typer.testing import CliRunner

from ledger.cli.main import app
from ledger.errors import Refused
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.sell.dispatch import dispatch
from ledger.operations.sell.gift import gift
from ledger.operations.sell.stall_back import stall_back
from ledger.operations.sell.stall_out import stall_out
from ledger.operations.sell.take_back import take_back
from ledger.operations.stock.lots import count_lot
from ledger.storage.personal import PersonDetails
from ledger.storage.verbs import Moved

pytestmark = pytest.mark.usefixtures("frozen")


@pytest.fixture
def sold(shop: Any) -> Any:
    once(sell)(shop)
    return shop


def sell(shop: Any) -> None:
    """Of 10 bars: 3 sold at the quay (4 out, 1 home), 2 to a shop of which 1 came back, 1 given, 1 missing.

    That leaves 10 - 3 - 2 - 1 - 1 = 3 in the workshop and 1 on the returns shelf.
    """
    book, batch = shop.book, shop.batch
    add_stall(book, "quay")
    stall_out(book, "quay", {batch: 4}, on=date(2026, 5, 9))
    stall_back(book, "quay", {batch: 1}, on=date(2026, 5, 9), takings_minor=1350)
    details = CustomerDetails("=The Tern Hall", PersonDetails(name="Róisín Ward", phone="+353 20 910 0177"))
    add_customer(book, details, kind="shop", code="tern-hall")
    dispatch(book, "tern-hall", {batch: 2}, on=date(2026, 5, 12), price_minor=450, note=None)
    take_back(book, {batch: 1}, customer="tern-hall", stall=None, on=date(2026, 5, 20), reason="cracked")
    gift(book, {batch: 1}, to="the ferryman", on=date(2026, 5, 21))
    count_lot(book, batch, 3, place=None, on=date(2026, 5, 30), note=None)


def test_the_first_line_is_the_answer(sold: Any, run: Callable[..., Any]) -> None:
    first = run("recall", "lot", "LOT 4471-2").stdout.split("\n\n")[0]
    assert " ".join(first.split()) == (
        f"olive oil, lot {sold.olive} (their number 4471/2): 1 batch, 10 bars. 3 here, 0 at a stall, 0 retained, "
        "1 returned, 3 sold, 1 dispatched, 1 given away, 0 thrown away, 1 unexplained."
    )


def test_the_answer_says_where_whom_to_call_and_what_is_in_doubt(sold: Any, run: Callable[..., Any]) -> None:
    run("complaint", "add", "itched", "--on", "2026-05-25", "--bought", "some market in May")
    run("complaint", "add", "too soft", "--on", "2026-03-30")  # before the first of these bars was cut
    shown = " ".join(run("recall", "lot", "4471/2").stdout.split())
    for words in ("600 g", "quay", "9 May 2026", "Róisín Ward", "+353 20 910 0177", "the ferryman (a gift)"):
        assert words in shown
    doubts = shown.split("Cannot be excluded:")[1]
    assert f"1 bar of batch {sold.batch}: missing at a count on 30 May 2026" in doubts
    assert "complaint 1 of 25 May 2026: its batch is not known; bought some market in May" in doubts
    assert "complaint 2" not in doubts
    assert f"Hold 4 bars and 1 lot now? soapledger recall lot {sold.olive} --hold" in shown


def test_a_lot_of_the_same_material_without_a_number_cannot_be_excluded(shop: Any, run: Callable[..., Any]) -> None:
    run("receive", "tarnlow", "--on", "2026-05-05", "--line", "olive oil; 2 kg; lot unknown; 14.00", "--accept")
    shown = " ".join(run("recall", "lot", "4471/2").stdout.split())
    assert "their lot number is unknown; it went into nothing yet" in shown
    water = run("recall", "lot", shop.water).stdout  # itself without a number: named, and in no doubt
    assert "(their number unknown): 1 batch, 10 bars" in water
    assert "Cannot be excluded" not in water


def test_the_json_has_the_same_figures(sold: Any, run: Callable[..., Any]) -> None:
    answer = json.loads(run("recall", "lot", "4471/2", "--json").stdout)
    assert answer["totals"] == {
        "made": 10, "on_hand": 3, "at_stall": 0, "retained": 0, "returned": 1, "sold": 3, "dispatched": 1,
        "given": 1, "wasted": 0, "reworked": 0, "unexplained": 1, "at_shop": 0,
    }  # fmt: skip
    assert [one["batch_code"] for one in answer["batches"]] == [sold.batch]
    assert sum(one["count"] for one in answer["bars"]) == 10


@pytest.mark.usefixtures("sold")
def test_the_contact_list_holds_no_formula(run: Callable[..., Any]) -> None:
    run("recall", "lot", "4471/2", "--csv", "call.csv", "--names")
    with Path("call.csv").open(encoding="utf-8", newline="") as file:
        lines = {line["name"]: line for line in csv.DictReader(file)}
    shop = lines["'=The Tern Hall (Róisín Ward)"]
    assert (shop["phone"], shop["bars"], shop["last_on"]) == ("tel:+353-20-910-0177", "1", "2026-05-12")
    assert lines["the ferryman (a gift)"]["bars"] == "1"


def test_who_brought_everything_back_is_called_no_more(sold: Any, run: Callable[..., Any]) -> None:
    """The shop's second bar comes back as well: 0 dispatched, 2 on the shelf, and only the ferryman to call."""
    take_back(sold.book, {sold.batch: 1}, customer="tern-hall", stall=None, on=date(2026, 5, 31), reason=None)
    answer = json.loads(run("recall", "lot", "4471/2", "--json").stdout)
    assert (answer["totals"]["dispatched"], answer["totals"]["returned"]) == (0, 2)
    assert [one["name"] for one in answer["call"]] == ["the ferryman (a gift)"]


def test_the_report_is_written_and_nothing_is_overwritten(sold: Any, run: Callable[..., Any]) -> None:
    run("recall", "lot", "4471/2", "--exercise", "-o", "recall.pdf")
    text = " ".join(page.extract_text() for page in pypdf.PdfReader("recall.pdf").pages)
    assert sold.batch in text
    assert "EXERCISE" in text
    before = Path("recall.pdf").read_bytes()
    run("recall", "lot", "4471/2", "-o", "recall.pdf", "--hold", code=2)
    assert Path("recall.pdf").read_bytes() == before
    assert "on hold" not in run("lot", "show", sold.olive).stdout  # refused before anything was held
    run("recall", "lot", "4471/2", "-o", "recall.pdf", "--force")


def test_hold_stops_all_of_it_and_says_so(sold: Any, run: Callable[..., Any]) -> None:
    shown = run("recall", "lot", "4471/2", "--hold", "--reason", "rancid").stdout
    assert "Everything of it that is here is on hold." in shown
    assert "now? soapledger" not in shown
    for code in (sold.olive, sold.batch):
        assert "on hold" in run("lot", "show", code).stdout


@pytest.mark.usefixtures("shop")
@pytest.mark.parametrize(
    ("words", "message"),
    [
        ((), "Give their lot number"),
        (("--supplier", "tarnlow"), "both --supplier and --material"),
        (("9999",), "No lot with the number '9999'"),
        (("4471/2", "--exercise", "--hold"), "An exercise holds nothing back"),
        (("4471/2", "--from", "31/12"), "The day of --from"),
        (("4471/2", "--csv", "no/such/folder.csv"), "There is no folder"),
    ],
)
def test_what_cannot_be_answered_is_said_in_one_line(
    run: Callable[..., Any], words: tuple[str, ...], message: str
) -> None:
    said = run("recall", "lot", *words, code=2).stderr
    assert message in said
    assert len(said.splitlines()) == 1


def test_supplier_material_and_days_do_without_a_number(shop: Any, run: Callable[..., Any]) -> None:
    words = ("recall", "lot", "--supplier", "tarnlow", "--material", "olive oil")
    assert f"lot {shop.olive}" in run(*words, "--from", "2026-03-01", "--to", "2026-03-31").stdout
    assert "widen" in run(*words, "--from", "2026-03-03", code=2).stderr


def test_who_complained_of_a_reached_bar_is_called_and_counted_once(sold: Any, run: Callable[..., Any]) -> None:
    """Three of the three bars sold were complained of: they are among the sold, so all the figures stay."""
    before = json.loads(run("recall", "lot", "4471/2", "--json").stdout)["totals"]
    code = ("--batch", sold.batch)
    run("complaint", "add", "too soft", *code, "--name", "Sorcha Lane", "--phone", "020 910 0133", "--on", "2026-05-24")
    run("complaint", "add", "itched", "--on", "2026-05-25", "--name", "Ida Marsh", "--health", "red hands")
    run("complaint", "add", "smells", *code, "--name", "Brid Toal", "--at", "quay", "--on", "2026-05-26")
    run("complaint", "note", "1", "rang")
    run("complaint", "note", "2", "code read from the bar", *code)  # the batch is known by now
    run("complaint", "erase", "3", "--reason", "asked by letter", "--yes")
    answer = json.loads(run("recall", "lot", "4471/2", "--json").stdout)
    assert answer["totals"] == before
    called = [(one["name"], one["phone"], one["bars"], one["complaint"]) for one in answer["call"]]
    assert called[:3] == [
        ("Ida Marsh (complaint 2)", None, 0, 2),  # health was reported
        ("Sorcha Lane (complaint 1)", "020 910 0133", 0, 1),
        ("no name kept (complaint 3), bought at quay", None, 0, 3),
    ]
    assert len(called) == 5  # the shop and the ferryman after them
    shown = run("recall", "bar", sold.batch).stdout.split("To call:")[1]
    assert shown.index("Ida Marsh") < shown.index("Sorcha Lane") < shown.index("Róisín Ward")
    assert "red hands" not in shown
    assert "Brid Toal" not in shown


def test_a_complaint_of_a_batch_that_is_not_reached_is_not_called(shop: Any, run: Callable[..., Any]) -> None:
    other = cut(shop.book)
    run("complaint", "add", "too soft", "--batch", other, "--name", "Sorcha Lane", "--on", "2026-06-01")
    assert "Sorcha Lane" not in run("recall", "bar", shop.batch).stdout
    assert "Sorcha Lane" in run("recall", "bar", other).stdout


def test_the_contact_list_names_nobody_who_complained(sold: Any, run: Callable[..., Any]) -> None:
    """The file may be handed on; it says that there is a complaint, and the ledger says whose."""
    words = ("--name", "Ida Marsh", "--phone", "020 910 0133", "--health", "red hands", "--on", "2026-05-25")
    run("complaint", "add", "itched", "--batch", sold.batch, *words)
    shown = run("recall", "lot", "4471/2", "--csv", "call.csv").stdout
    assert "Private persons stand in it without a name, who complained by number alone" in shown
    text = Path("call.csv").read_text(encoding="utf-8")
    for private in ("the ferryman", "Ida", "Marsh", "020 910 0133", "red hands", "itched"):
        assert private not in text
    lines = list(csv.DictReader(text.splitlines()))
    assert lines[-1] == {
        "name": "complaint 1", "phone": "", "email": "", "address": "", "bars": "0", "batches": sold.batch,
        "last_on": "2026-05-25",
    }  # fmt: skip
    assert [line["name"] for line in lines[:-1]] == ["'=The Tern Hall (Róisín Ward)", "a gift"]


def test_a_notice_without_a_number_says_what_it_means_and_claims_no_number(shop: Any, run: Callable[..., Any]) -> None:
    """The water came without a number; so did a delivery after the days of the notice, which cannot be excluded."""
    words = ("--supplier", "tarnlow", "--material", "water", "--from", "2026-03-01", "--to", "2026-03-31")
    run("recall", "lot", *words, "-o", "alone.pdf")
    alone = " ".join(" ".join(page.extract_text() for page in pypdf.PdfReader("alone.pdf").pages).split())
    assert "water from Tarnlow Oils, received from 1 Mar 2026 up to 31 Mar 2026" in alone
    assert "has a number" not in alone
    assert "no other lot of water is without a number" in alone
    run("receive", "tarnlow", "--on", "2026-05-05", "--line", "water; 2 kg; lot unknown; 1", "--accept")
    shown = " ".join(run("recall", "lot", *words, "-o", "two.pdf").stdout.split())
    assert f"water, lot {shop.water} (their number unknown): 1 batch, 10 bars." in shown
    assert (
        "their lot number is unknown; it went into nothing yet"
        in " ".join(shown.split()).split("Cannot be excluded:")[1]
    )
    two = " ".join(" ".join(page.extract_text() for page in pypdf.PdfReader("two.pdf").pages).split())
    assert "their lot number is unknown; it went into nothing yet" in two
    assert "Nothing beside these" not in two


@pytest.mark.usefixtures("sold")
def test_a_report_that_cannot_be_drawn_hides_neither_the_answer_nor_the_contacts(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def broken(*_: Any, **__: Any) -> bytes:
        raise Refused("The report cannot be drawn.")

    monkeypatch.setattr("ledger.documents.recall.recall_report.draw_recall", broken)
    result = CliRunner().invoke(app, ["recall", "lot", "4471/2", "-o", "recall.pdf", "--csv", "call.csv"])
    assert result.exit_code != 0
    assert "1 batch, 10 bars" in result.stdout
    assert "Róisín Ward" in result.stdout
    assert "a gift" in Path("call.csv").read_text(encoding="utf-8")
    assert not Path("recall.pdf").exists()


def test_what_was_taken_back_is_no_day_on_which_somebody_had_bars(sold: Any, run: Callable[..., Any]) -> None:
    """Two bars went there on 12 May and one came back on 20 May; what was sent on 28 May was taken back."""
    with sold.book.write("dispatch") as tx:
        lot = tx.rows.execute("SELECT id FROM lot WHERE code = ?", (sold.batch,)).fetchone()[0]
        shop = tx.rows.execute("SELECT id FROM customer WHERE code = 'tern-hall'").fetchone()[0]
        workshop = tx.rows.execute("SELECT id FROM place WHERE kind = 'workshop'").fetchone()[0]
        tx.move([Moved(lot, -1, customer_id=shop)], "dispatched", place_id=workshop, on=date(2026, 5, 28))
        tx.say("Sent.")
    call = json.loads(run("recall", "bar", sold.batch, "--json").stdout)["call"]
    assert [(one["bars"], one["last_on"]) for one in call if one["customer_id"]] == [(2, "2026-05-28")]
    run("undo", "--yes")
    call = json.loads(run("recall", "bar", sold.batch, "--json").stdout)["call"]
    assert [(one["bars"], one["last_on"]) for one in call if one["customer_id"]] == [(1, "2026-05-12")]


def test_an_answer_of_an_earlier_day_says_so_on_the_screen_and_on_paper(sold: Any, run: Callable[..., Any]) -> None:
    entry = sold.rows().execute("SELECT max(id) FROM entry").fetchone()[0] - 1
    for words, known in (((), False), (("--as-of", str(entry)), True)):
        said = run("recall", "lot", "4471/2", "-o", "then.pdf", "--force", *words).stdout
        text = " ".join(pypdf.PdfReader("then.pdf").pages[0].extract_text().split())
        sentence = f"This is what was known at entry {entry}, written 1 Jun 2026, 09:30 UTC."
        assert said.startswith(sentence) is known
        assert (sentence in text) is known


def test_what_is_no_soap_is_no_product(shop: Any, run: Callable[..., Any]) -> None:
    assert shop.batch
    assert run("recall", "of", "--product", "olive oil", code=2).stderr == (
        "olive oil is no soap but a material; for its lots name their numbers, or --supplier with --material.\n"
    )
    said = run("recall", "of", "--product", "plain ber", code=2).stderr
    assert "Did you mean Plain Bar" in said
    assert "material add" not in said


def test_what_came_back_from_a_stall_is_taken_off_what_its_notice_is_for(sold: Any, run: Callable[..., Any]) -> None:
    """Three were sold at the quay; one came back from there, then one of which nobody said from where."""

    def notices() -> list[tuple[str, int]]:
        found = json.loads(run("recall", "bar", sold.batch, "--json").stdout)
        return [(one["place"], one["bars"]) for one in found["notices"]]

    assert notices() == [("quay", 3)]
    run("return", f"{sold.batch}=1", "--stall", "quay", "--reason", "smelt odd")
    assert notices() == [("quay", 2)]
    assert "nobody said from where" not in run("recall", "bar", sold.batch).stdout
    run("return", f"{sold.batch}=1")
    assert notices() == [("quay", 2)]
    sentence = "1 of these bars came back, and nobody said from where."
    assert sentence in run("recall", "bar", sold.batch, "-o", "bar.pdf").stdout
    assert sentence in pypdf.PdfReader("bar.pdf").pages[0].extract_text()
    run("undo", "--yes")
    run("return", f"{sold.batch}=2", "--stall", "quay")
    assert notices() == []
