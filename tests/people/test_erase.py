"""Erasing a customer, whom to ask for at a supplier, who reported a complaint: what is shown, taken, left and named."""

import json
import re
import sqlite3
from pathlib import Path
from typing import Any

import pytest
from shop import NOW

from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.rows.opened import open_rows
from ledger.storage.book import Book
from ledger.storage.personal import PersonDetails
from ledger.storage.verify import verify

ADD = (
    *("customer", "add", "Ida Marsh", "--person", "--phone", "020 910 0166", "--email", "ida@marsh.example"),
    *("--address", "7 Gorse Hill, Port Emmer", "--note", "a friend of Ida Marsh's mother"),
)
NOTE = ("upkeep", "add", "cleaning", "the pots, with ida marsh")
COMPLAIN = ("complaint", "add", "itched at 7 Gorse Hill", "--name", "Ida Marsh", "--health", "a rash")
STEP = ("complaint", "note", "1", "saw her, at 7 Gorse Hill")
ERASE = ("customer", "erase", "person-1", "--reason", "asked by letter", "--yes")
WORDS = ("Marsh", "marsh", "910 0166", "Gorse Hill", "pays late", "a rash")


def add(book: Book) -> None:
    """The customer of ADD, without the command."""
    person = PersonDetails(phone="020 910 0166", email="ida@marsh.example", address="7 Gorse Hill, Port Emmer")
    add_customer(book, CustomerDetails("Ida Marsh", person, "a friend of Ida Marsh's mother"), kind="person", code=None)


def bytes_of(path: Path) -> list[str]:
    """Which of the words are in a file."""
    content = path.read_bytes()
    return [word for word in WORDS if word.encode() in content]


@pytest.mark.usefixtures("frozen")
def test_what_would_be_erased_is_shown_first_and_no_leaves_all(book: Book, run: Any) -> None:
    book.close()
    for words in (ADD, NOTE, COMPLAIN, STEP, ("upkeep", "add", "training", "as Ida showed")):
        run(*words)
    run("--as", "Ida Marsh", "upkeep", "add", "cleaning", "the sink")
    before = book.path.read_bytes()
    shown = run("customer", "erase", "person-1", "--reason", "asked", input="n\n", code=1).stdout
    assert book.path.read_bytes() == before
    assert shown.splitlines()[:14] == [
        "This would be erased for good:",
        "     where              entry  text",
        "  1  customer person-1      2  Ida Marsh",
        "                               020 910 0166",
        "                               ida@marsh.example",
        "                               7 Gorse Hill, Port Emmer",
        "  2  complaint 1            4  Ida Marsh",
        "                               a rash",
        "  3  customer               2  a friend of Ida Marsh's mother",
        "  4  complaint              4  itched at 7 Gorse Hill",
        "  5  complaint              5  saw her, at 7 Gorse Hill",
        "  6  history                3  Noted cleaning: the pots, with ida marsh.",
        "  7  upkeep                 3  the pots, with ida marsh",
        "What was said of a complaint may be needed of a bar that did harm; to keep one:",
    ]
    assert "2 texts may name the same person, and would stay:" in shown
    assert "as Ida showed" in shown
    assert "it stays: history (entry 7), upkeep (entry 7)." in " ".join(shown.split())
    said = run(*ERASE, "--leave", "4", "--leave", "2", "--also", "as Ida").stdout
    assert "Noted training: as Ida showed." in said
    history = run("history").stdout
    assert "Noted cleaning: the pots, with [erased]." in history
    assert "Noted training: [erased] showed." in history
    assert "itched at 7 Gorse Hill" in run("complaint", "show", "1").stdout
    assert "Ida Marsh" in run("complaint", "show", "1").stdout  # left, by its number
    assert "nothing is wrong" in run("check").stdout


@pytest.mark.usefixtures("frozen")
def test_what_cannot_be_is_said_in_one_line_and_nothing_is_erased(book: Book, run: Any) -> None:
    book.close()
    add(book)
    before = book.path.read_bytes()
    for options, words in (
        (("--leave", "0"), "has the number 0"),
        (("--leave", "3"), "has the number 3"),
        (("--leave", "two"), "The number of what stays"),
        (("--attachment", "12345"), "six signs at least"),
        (("--attachment", "1234567"), "No paper kept here begins with '1234567'"),
        (("--reason", "ida marsh asked"), "leave it out"),
        (("--reason", "she of 7 gorse hill"), "leave it out"),
    ):
        assert words in run(*ERASE, *options, code=2).stderr
        assert book.path.read_bytes() == before, options


@pytest.mark.usefixtures("frozen")
def test_a_firm_keeps_its_name_unless_it_is_a_persons(book: Book, run: Any) -> None:
    book.close()
    run("supplier", "add", "Tarnlow Oils", "--contact", "Tom Tarnlow", "--phone", "020 910 0142", "--note", "ask Tom")
    run("supplier", "edit", "tarnlow-oils", "--address", "1 Oil Lane, Port Emmer")
    run("undo", "--yes")
    said = run("supplier", "erase", "tarnlow", "--reason", "left the firm", "--yes").stdout
    assert "Whom to ask for at supplier tarnlow-oils is erased; the firm and its deliveries remain.\n" in said
    content = book.path.read_bytes()
    for word in ("Tom", "910 0142", "Oil Lane"):
        assert word.encode() not in content
    assert "Tarnlow Oils" in run("supplier", "list").stdout
    said = run("supplier", "erase", "tarnlow", "--reason", "it is his own name", "--yes", "--name-too").stdout
    assert "The short name is erased-1 now" in said
    assert b"arnlow" not in book.path.read_bytes()
    shown = json.loads(run("supplier", "list", "--json").stdout)
    assert [(one["code"], one["name"]) for one in shown] == [("erased-1", "[erased, entry 6]")]
    assert "nothing is wrong" in run("check").stdout
    assert "nothing to erase" in run("supplier", "erase", "erased-1", "--reason", "x", "--yes", code=1).stderr
    run("supplier", "edit", "erased-1", "--name", "Oils of the quay")


@pytest.mark.usefixtures("frozen")
def test_of_a_shop_the_notes_on_its_bars_stay_but_where_they_name_whom_to_ask_for(shop: Any, run: Any) -> None:
    run("customer", "add", "Grey Gull", "--shop", "--contact", "Ida Marsh", "--code", "gull")
    with shop.book.write("stock") as tx:
        lot, place = tx.rows.execute("SELECT id, 1 FROM lot WHERE code = ?", (shop.batch,)).fetchone()
        for note in ("W-001", "handed to Ida Marsh"):
            row = {"lot_id": lot, "place_id": place, "on": "2026-06-01", "quantity": -1, "kind": "dispatched"}
            tx.add_rows("movement", [{**row, "customer_id": 1, "note": note}])
        tx.say("Dispatched 2 bars.")
    run("customer", "erase", "gull", "--reason", "asked", "--yes")
    raw = sqlite3.connect(shop.book.path)
    notes = [row[0] for row in raw.execute("SELECT note FROM movement WHERE customer_id = 1 ORDER BY id")]
    assert notes == ["W-001", "handed to [erased]"]
    run("customer", "erase", "gull", "--reason", "asked", "--yes", "--name-too")
    notes = [row[0] for row in raw.execute("SELECT note FROM movement WHERE customer_id = 1 ORDER BY id")]
    assert notes == ["[erased, entry 18]"] * 2
    assert "[erased, entry 18]" in run("customer", "list").stdout
    assert "nothing is wrong" in run("check").stdout


@pytest.mark.usefixtures("frozen")
def test_a_gift_to_her_reads_as_erased_wherever_bars_are_counted(shop: Any, run: Any) -> None:
    run("gift", f"{shop.batch}=2", "--to", "Ida Marsh")
    add(shop.book)
    run(*ERASE)
    for words in (
        ("recall", "bar", shop.batch),
        ("recall", "bar", shop.batch, "--json"),
        ("batch", "show", shop.batch),
        ("batch", "show", shop.batch, "--json"),
        ("batch", "show", shop.batch, "--as-of", "15"),
        ("lot", "show", shop.batch),
    ):
        shown = run(*words).stdout
        assert not re.search("(?i)marsh", shown), words
    assert "[erased, entry 17]" in run("recall", "bar", shop.batch).stdout
    run("undo", "15", "--yes")  # the gift: the two bars are there again, and she is not
    assert not re.search(b"(?i)marsh", shop.book.path.read_bytes())
    assert "nothing is wrong" in run("check").stdout


@pytest.mark.usefixtures("frozen")
def test_one_of_the_same_name_is_named_and_stays(book: Book, run: Any) -> None:
    book.close()
    add(book)
    run("customer", "add", "Ida Marsh the younger", "--person", "--phone", "020 910 0111")
    run(*COMPLAIN, "--phone", "020 910 0111")
    shown = run(*ERASE).stdout
    assert "soapledger customer erase person-2 --reason REASON" in shown
    assert "soapledger complaint erase 1 --reason REASON" in shown  # another number speaks against its being hers
    assert "Ida Marsh the younger" in run("customer", "list").stdout
    assert "Ida Marsh" in run("complaint", "show", "1").stdout


@pytest.mark.usefixtures("frozen")
def test_copies_beside_the_ledger_that_hold_it_still_are_named(book: Book, run: Any, tmp_path: Path) -> None:
    book.close()
    run("backup", "before.db")
    add(book)
    run("backup", "with.db")
    (tmp_path / "notes.txt").write_text("Ida Marsh")
    (tmp_path / "folder").mkdir()
    run("backup", "folder/away.db")
    Book.create(tmp_path / "other.db", who="Nuala", now=lambda: NOW).close()
    (tmp_path / "torn.db").write_bytes((tmp_path / "with.db").read_bytes()[:5000])
    shown = " ".join(run(*ERASE).stdout.split())
    assert "2 ledgers in the same folder may hold it still: torn.db, with.db." in shown
    assert "Copies in other folders" in shown
    run("backup", "with.db", "--force")
    assert bytes_of(tmp_path / "with.db") == []


@pytest.mark.usefixtures("frozen")
def test_it_can_be_looked_for_again_by_words_that_nobody_thought_of(book: Book, run: Any) -> None:
    book.close()
    add(book)
    run("upkeep", "add", "cleaning", "the pots, with Mrs M.")
    run(*ERASE)
    assert "nothing to erase" in run(*ERASE, code=1).stderr
    run(*ERASE, "--also", "Mrs M")
    assert b"Mrs M" not in book.path.read_bytes()
    assert verify(open_rows(book.path)) == ()
    assert "cannot be taken back" in run("undo", "5", "--yes", code=1).stderr


@pytest.mark.usefixtures("frozen")
def test_a_short_name_made_from_hers_goes_too(book: Book, run: Any) -> None:
    book.close()
    run(*ADD, "--code", "ida")
    run("customer", "erase", "ida", "--reason", "asked", "--yes")
    assert not re.search(rb"(?i)\bida\b", book.path.read_bytes())
    assert json.loads(run("customer", "list", "--json").stdout)[0]["code"] == "erased-1"
    assert "Added [erased]." in run("history").stdout
    assert "nothing is wrong" in run("check").stdout


@pytest.mark.usefixtures("frozen")
def test_a_name_that_is_the_word_for_an_oil_takes_no_oil_with_it(shop: Any, run: Any) -> None:
    run("gift", f"{shop.batch}=1", "--to", "Olive")
    run("customer", "add", "Olive", "--person", "--phone", "020 910 0166")
    run("upkeep", "add", "cleaning", "the shelf, with Olive")
    shown = run("customer", "erase", "person-1", "--reason", "asked", "--yes").stdout
    assert re.search(r"^  2  note on stock +15  Olive$", shown, re.MULTILINE)  # nothing else is said there
    assert "texts may name the same person, and would stay:" in shown
    assert "the shelf, with Olive" in run("upkeep", "list").stdout
    assert "olive oil, lot L1-X" in run("lot", "show", "L1-X").stdout
    run("customer", "erase", "person-1", "--reason", "asked", "--yes", "--also", "with Olive")
    assert "the shelf, [erased]" in run("upkeep", "list").stdout
    assert "nothing is wrong" in run("check").stdout


@pytest.mark.usefixtures("frozen")
def test_who_works_here_is_not_taken_for_one_of_the_same_surname(book: Book, run: Any) -> None:
    book.close()
    add(book)
    run("--as", "Orla Marsh", "upkeep", "add", "cleaning", "the shelf, says Orla Marsh")
    assert "may name the same person" not in run(*ERASE).stdout
    run("customer", "add", "Ida Marsh", "--person")
    run("upkeep", "add", "cleaning", "the sink: Orla Marsh and Mrs Marsh")
    assert "2 texts may name the same person" in run("customer", "erase", "ida marsh", "--reason", "x", "--yes").stdout


@pytest.mark.usefixtures("frozen")
def test_one_who_is_named_in_notes_alone_is_added_and_erased(shop: Any, run: Any) -> None:
    run("gift", f"{shop.batch}=1", "--to", "Ida Marsh")
    run("batch", "note", shop.batch, "Ida Marsh stirred")
    run("customer", "add", "Ida Marsh", "--person")
    run(*ERASE)
    assert not re.search(b"(?i)marsh", shop.book.path.read_bytes())
    assert "[erased] stirred" in run("batch", "show", shop.batch).stdout
    assert "nothing is wrong" in run("check").stdout


@pytest.mark.usefixtures("frozen")
def test_a_surname_left_beside_what_goes_is_shown_too(book: Book, run: Any) -> None:
    book.close()
    add(book)
    run("upkeep", "add", "cleaning", "Mrs Marsh's order; Ida Marsh pays cash")
    shown = run("customer", "erase", "person-1", "--reason", "asked", input="n\n", code=1).stdout
    would_stay = shown.split("may name the same person, and would stay:")[1]
    assert "Mrs Marsh's order" in would_stay
    said = run(*ERASE, "--also", "Mrs Marsh").stdout
    assert "would stay" not in said
    assert bytes_of(book.path) == []
