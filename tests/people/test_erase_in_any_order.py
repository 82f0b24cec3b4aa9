"""Erasures before, between and after what else is written of a person: nothing of it is left, and the check is clean.

What erases, and what it says, is asked by commands in test_erase.py; here the operations take turns.
"""

from collections.abc import Callable
from datetime import date
from functools import partial
from pathlib import Path
from typing import Any

import pytest
from shop import erase_complaint, erase_customer

from ledger.operations.complaint.complaints import Noted, Report, book_complaint, note_complaint
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.operations.people.customers import CustomerDetails, add_customer, edit_customer
from ledger.operations.tools.upkeep import UpkeepNote, add_upkeep
from ledger.rows.history import last_entry
from ledger.rows.opened import open_rows
from ledger.rows.people import customer_by_code
from ledger.storage.book import Book
from ledger.storage.personal import PersonDetails

DAY = date(2026, 6, 1)
WORDS = ("Marsh", "marsh", "910 0166", "Gorse Hill", "pays late", "a rash")


def add(book: Book) -> None:
    person = PersonDetails(phone="020 910 0166", email="ida@marsh.example", address="7 Gorse Hill, Port Emmer")
    details = CustomerDetails("Ida Marsh", person, note="a friend of Ida Marsh's mother")
    add_customer(book, details, kind="person", code=None)


def edit(book: Book, *, phone: str | None = None, address: str | None = None, note: str | None = None) -> None:
    """Change what is given; the rest stays as it was, as the command has it."""
    with book.look() as rows:
        old = customer_by_code(rows, "person-1")
    person = PersonDetails(old.person, phone or old.phone, old.email, address or old.address)
    edit_customer(book, "person-1", CustomerDetails(old.name, person, note or old.note))


def note(book: Book) -> None:
    add_upkeep(book, UpkeepNote("cleaning", "the pots, with ida marsh", DAY, "Nuala"))


def complain(book: Book) -> None:
    person = PersonDetails(name="Ida Marsh", phone="020 910 0166", health="a rash")
    book_complaint(book, Report(DAY, "itched at 7 Gorse Hill", person))


def step(book: Book) -> None:
    note_complaint(book, 1, Noted(DAY, "Nuala", "saw her, at 7 Gorse Hill"))


def undo_last(book: Book) -> None:
    with book.look() as rows:
        last = last_entry(rows)
    undo(book, last)


STEPS: dict[str, Callable[[Book], Any]] = {
    "add": add,
    "edit": partial(edit, note="Ida Marsh pays late", address="9 Marsh Lane"),
    "edit after": partial(edit, phone="020 910 0188", note="comes on Fridays"),
    "note": note,
    "complain": complain,
    "step": step,
    "undo": undo_last,
    "undo 2": partial(undo, number=2),
    "undo 3": partial(undo, number=3),
    "erase": partial(erase_customer, text="person-1", reason="asked by letter"),
    "erase by name": partial(erase_customer, text="ida marsh", reason="asked by letter"),
    "erase complaint": partial(erase_complaint, number=1, reason="asked by letter"),
}


@pytest.mark.parametrize(
    "steps",
    [
        "add, note, erase, undo 3, undo 2",
        "add, edit, undo, note, erase",
        "add, note, undo, erase",
        "add, edit, note, erase, edit after",
        "add, edit, undo, erase, edit after, undo",
        "add, edit, undo, edit, erase",
        "add, edit, edit, undo, undo, erase",
        "add, edit, erase, undo 3",
        "add, edit, erase, edit, erase",
        "add, erase, undo 2",
        "add, erase, edit after, undo",
        "add, undo, erase",
        "add, undo, erase by name",
        "add, undo, add, erase",
        "add, undo, add, edit, erase",
        "complain, undo, erase complaint",
        "complain, step, undo, erase complaint, undo 2",
        "add, complain, step, erase",
        "add, complain, erase, step, erase complaint",
        "add, complain, erase complaint, erase, undo 3",
    ],
)
def test_what_is_erased_is_gone_and_the_check_is_clean_at_once_and_after_every_step(book: Book, steps: str) -> None:
    rows, erased = open_rows(book.path), False
    for name in steps.split(", "):
        STEPS[name](book)
        erased = erased or name.startswith("erase")
        assert not erased or check(rows).findings == (), name
    assert erased
    rows.close()
    book.close()
    left = b"".join(path.read_bytes() for path in book.path.parent.iterdir())
    assert [word for word in WORDS if word.encode() in left] == []


UNDO = ("undo", "--yes")
BACKUP = ("backup", "copy.db", "--force")
ERASE = ("customer", "erase", "person-1", "--reason", "asked by letter", "--yes")
ERASE_COMPLAINT = ("complaint", "erase", "1", "--reason", "asked by letter", "--yes")


@pytest.mark.usefixtures("frozen")
@pytest.mark.parametrize(
    ("written", "commands"),
    [
        ("add", [BACKUP, ("customer", "edit", "person-1", "--note", "Ida Marsh pays late"), UNDO, ERASE, BACKUP]),
        ("add, note, complain, step", [ERASE_COMPLAINT, ERASE, ("undo", "3", "--yes"), BACKUP]),
    ],
)
def test_by_commands_no_list_and_no_copy_has_it_afterwards(
    book: Book, run: Any, written: str, commands: list[tuple[str, ...]]
) -> None:
    for name in written.split(", "):
        STEPS[name](book)
    book.close()
    for words in commands:
        run(*words)
        assert "nothing is wrong" in run("check").stdout, words
    for path in (book.path, Path("copy.db")):
        assert [word for word in WORDS if word.encode() in path.read_bytes()] == []
    for words in (("history", "--all"), ("customer", "list"), ("complaint", "list"), ("upkeep", "list")):
        for shown in (run(*words).stdout, run(*words, "--json").stdout):
            assert not any(word in shown for word in WORDS), words
