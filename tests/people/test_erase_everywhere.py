"""A person named in every free text of the ledger is gone from it, and the ledger still proves what it says."""

import hashlib
import json
import shutil
import sqlite3
import unicodedata
from datetime import date
from functools import partial
from pathlib import Path
from typing import Any

import pytest

from ledger.errors import BadInput, Refused
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.people.erase import Erased, erase
from ledger.operations.record.attach import attach
from ledger.rows.opened import as_known, open_rows
from ledger.storage.book import Book
from ledger.storage.erasing import redone
from ledger.storage.personal import PersonDetails
from ledger.storage.tables.tools import Upkeep
from ledger.storage.verify import _chain, verify
from ledger.units.words import FREE_TEXT
from ledger.views.people.erasable import Sought, erasable_customer

NAME = "Zoë Fallon"
CONTACT = PersonDetails(phone="020 910 0166", email="zoe@fallon.example", address="5 Gorse Hill, Port Emmer")
WORDS = ("Zoë", "Fallon", "Gorse Hill", "910 0166", "020-910", "pays late")
LETTER, PICTURE = f"I am {NAME}.".encode(), b"\xff\xd8 her likeness"
# The entry that attached the last paper: 25 of the shop, hers, one a table, 3 papers.
LAST = 26 + 1 + len(FREE_TEXT.keys() - {"entry", "attachment"}) + 3
ALONE = {"lot": "L99-9", "batch": "26-099-9"}  # codes of their own, where a row is written once more


def mention_everywhere(book: Book) -> None:
    """One row more in every table, with her name in every column that holds free text; and papers that name her."""
    add_customer(book, CustomerDetails(NAME, CONTACT, note="pays late"), kind="person", code=None)
    forms = (f"for {NAME}", f"FOR {NAME.upper()}", f"for {unicodedata.normalize('NFD', NAME)}", "rang 020-910 0166")
    for turn, (table, columns) in enumerate(FREE_TEXT.items()):
        if table in ("entry", "attachment"):
            continue
        with book.write("stock") as tx:
            row = dict(tx.rows.execute(f"SELECT * FROM {table} ORDER BY id LIMIT 1").fetchone())
            del row["id"], row["entry_id"]
            row |= dict.fromkeys(columns, forms[turn % len(forms)])
            if "code" in row:
                row["code"] = ALONE.get(table, "zoë-fallon-corner")
            if table == "movement":
                row |= {"quantity": 1, "kind": "counted"}
            if table == "skin_limit":
                row["material_id"] = None  # it is of the one or of the other
            if table == "recipe_figures":
                row["recipe_version_id"] = tx.rows.execute("SELECT max(id) FROM recipe_version").fetchone()[0]
                row["figures"] = f'{{"name":"{NAME}\\nand others"}}'
            tx.add_rows(table, [row])
            tx.say(f"Noted something of {table}.")
    for content, name in ((LETTER, "letter-fallon.txt"), (PICTURE, "picture.jpg"), (LETTER, "again.txt")):
        with book.write("attach") as tx:
            digest = hashlib.sha256(content).hexdigest()
            tx.rows.execute("INSERT OR IGNORE INTO attached_content VALUES (?, ?)", (digest, content))
            tx.add_rows("attachment", [{"digest": digest, "name": name, "kind": "paper", "lot_id": 1}])
            tx.say(f"Attached {name} for {NAME}.")


@pytest.fixture
def mentioned(full: Any, built: Any) -> Book:
    """The full shop, where she is named everywhere."""
    path, _ = built("mentioned", mention_everywhere, full.book.path)
    shutil.copyfile(path, full.book.path)
    book: Book = full.book
    return book


@pytest.fixture
def erased(mentioned: Book, built: Any) -> Book:
    """The same after she was erased."""
    path, _ = built("mentioned and erased", erase_her, mentioned.path)
    shutil.copyfile(path, mentioned.path)
    return mentioned


def erase_her(book: Book, *papers: str) -> Erased:
    find = partial(erasable_customer, text=NAME, sought=Sought(papers=papers))
    return erase(book, find, reason="asked by letter")


def rows_of(path: Path) -> dict[str, list[dict[str, Any]]]:
    """Every row of every table, by table."""
    raw = sqlite3.connect(path)
    raw.row_factory = sqlite3.Row
    tables = [row[0] for row in raw.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")]
    found = {one: [dict(row) for row in raw.execute(f"SELECT * FROM {one} ORDER BY 1")] for one in tables}
    raw.close()
    return found


def forms_of(word: str) -> set[bytes]:
    """A word as bytes, in one sign for a letter or two, as written, in small letters and in capitals."""
    return {
        unicodedata.normalize(form, one).encode(code)
        for form in ("NFC", "NFD")
        for one in (word, word.lower(), word.upper())
        for code in ("utf-8", "utf-16-le")
    }


def test_no_byte_of_what_was_erased_is_left_in_the_file_or_beside_it(mentioned: Book) -> None:
    before = mentioned.path.read_bytes()
    assert all(any(form in before for form in forms_of(word)) for word in WORDS)
    erase_her(mentioned)
    mentioned.close()
    left = b"".join(one.read_bytes() for one in mentioned.path.parent.iterdir() if one.name.startswith("soap.db"))
    assert [word for word in WORDS for form in forms_of(word) if form in left] == []


def test_only_texts_differ_and_the_digests_stay(built: Any, erased: Book) -> None:
    before, after = rows_of(built("mentioned", mention_everywhere)[0]), rows_of(erased.path)
    differ = {
        (table, column): new[column]
        for table in before
        if table not in ("personal_text", "attached_content")
        for old, new in zip(before[table], after[table], strict=False)
        for column in old
        if old[column] != new[column]
    }
    free = {(table, column) for table, columns in FREE_TEXT.items() for column in columns}
    assert differ.keys() == free | {
        ("entry_salt", "salt"),
        ("entry", "marks"),
    }  # each of them named her, and nothing else is touched
    assert all("erased" in text for place, text in differ.items() if place != ("entry", "marks"))
    assert json.loads(after["recipe_figures"][-1]["figures"]) == {"name": "[erased]\nand others"}
    assert verify(open_rows(erased.path)) == ()


def test_what_was_known_before_the_erasure_shows_nothing_of_it(erased: Book) -> None:
    last = max(one["id"] for one in rows_of(erased.path)["entry"])
    for horizon in (last - 1, last):
        rows = open_rows(erased.path)
        as_known(rows, horizon)
        for table in FREE_TEXT:
            texts = [str(value) for row in rows.execute(f"SELECT * FROM {table}") for value in row]
            assert not any("Fallon" in text or "Zo" in text for text in texts), table
        rows.close()


def test_each_value_of_an_erased_row_that_is_changed_afterwards_is_found(erased: Book) -> None:
    raw = sqlite3.connect(erased.path, isolation_level=None)
    raw.row_factory = sqlite3.Row
    raw.execute("PRAGMA writable_schema = ON")  # all at once: after each DROP TRIGGER the whole schema is read anew
    raw.execute("DELETE FROM sqlite_schema WHERE type = 'trigger'")
    raw.execute("PRAGMA writable_schema = RESET")
    raw.execute("PRAGMA ignore_check_constraints = ON")
    places = raw.execute("SELECT DISTINCT of_table, of_row, of_entry FROM blanked WHERE of_table <> 'entry'").fetchall()
    assert {place["of_table"] for place in places} == {*FREE_TEXT, "entry_salt"} - {"entry"}
    rows = [dict(raw.execute(f"SELECT * FROM {table} WHERE id = ?", (row,)).fetchone()) for table, row, _ in places]
    values = [[one for one in row.items() if one[0] not in ("id", "entry_id")] for row in rows]
    for turn in range(max(map(len, values))):  # one column of each row at a time; each row has an entry of its own
        raw.execute("BEGIN")
        wanted = set()
        for (table, number, entry), row in zip(places, values, strict=True):
            for column, value in row[turn : turn + 1]:
                other = value + 1 if isinstance(value, int) else f"{value or ''}x"
                raw.execute(f'UPDATE {table} SET "{column}" = ? WHERE id = ?', (other, number))
                wanted.add(entry)
        assert wanted <= {one.entry for one in _chain(raw)}, turn
        raw.execute("ROLLBACK")
    columns = ("recorded_at", "who", "verb", "said", "program", "previous", "digest")
    each = dict(zip(sorted(place["of_entry"] for place in places)[::2], columns, strict=False))  # none after another
    assert len(each) == len(columns)
    raw.execute("BEGIN")
    for entry, column in each.items():
        raw.execute(f'UPDATE entry SET "{column}" = "{column}" || \'x\' WHERE id = ?', (entry,))
    assert each.keys() <= {one.entry for one in _chain(raw)}
    raw.execute("ROLLBACK")
    raw.close()


def test_a_paper_that_was_erased_is_found_where_something_is_put_in_its_place(erased: Book) -> None:
    raw = sqlite3.connect(erased.path, isolation_level=None)
    raw.execute("DROP TRIGGER content_never_changed")
    raw.execute("UPDATE attached_content SET content = 'something else' WHERE content = x''")
    raw.close()
    found = verify(open_rows(erased.path, any_schema=True))
    assert [(one.what.partition(",")[0], one.entry) for one in found if one.entry] == [
        ("[erased", LAST - 2),  # it was called letter-fallon.txt
        ("again.txt", LAST),
    ]


def test_a_picture_is_erased_where_she_says_which(mentioned: Book) -> None:
    digest = hashlib.sha256(PICTURE).hexdigest()
    rows = open_rows(mentioned.path)
    assert erasable_customer(rows, NAME).unread == 1
    rows.close()
    for start, words in ((digest[:5], "six signs at least"), ("0" * 64, "No paper kept here begins with")):
        with pytest.raises(BadInput, match=words):
            erase_her(mentioned, start)
    erase_her(mentioned, digest[:6])
    assert b"her likeness" not in mentioned.path.read_bytes()
    assert verify(open_rows(mentioned.path)) == ()
    with pytest.raises(Refused, match="was erased; it is not kept again"):
        attach(mentioned, PICTURE, name="picture.jpg", kind="photograph", to="L2-8")


@pytest.mark.parametrize(
    ("statement", "refused"),
    [
        ("UPDATE movement SET note = 'erased' WHERE id = :row", False),
        ("UPDATE movement SET note = 'nothing of it' WHERE id = :row", True),
        ("UPDATE movement SET note = NULL WHERE id = :row", True),
        ("UPDATE movement SET note = 'erased', quantity = quantity + 1 WHERE id = :row", True),
        ("UPDATE movement SET quantity = quantity + 1 WHERE id = :row", True),
        ("UPDATE movement SET note = 'erased' WHERE id = :row - 1", True),
        ("UPDATE decision SET reason = 'erased'", True),
        ("UPDATE entry SET said = 'erased' WHERE id = 2", True),
        ("UPDATE attached_content SET content = x''", True),
    ],
)
def test_a_guard_lets_an_erasure_change_that_one_text_and_nothing_else(
    mentioned: Book, statement: str, refused: bool
) -> None:
    raw = sqlite3.connect(mentioned.path, isolation_level=None)
    row, entry = raw.execute("SELECT max(id), (SELECT max(id) FROM entry) FROM movement").fetchone()
    for open_still in (True, False):
        raw.execute("BEGIN")
        raw.execute(
            "INSERT INTO blanked (entry_id, of_entry, of_table, of_row, of_column, digest) "
            "VALUES (?, ?, 'movement', ?, 'note', 'x')",
            (entry + 1, entry, row),
        )
        if not open_still:  # what an entry blanked once is not blanked again with it
            raw.execute(
                "INSERT INTO entry (id, recorded_at, who, verb, said, program, previous, digest) "
                "VALUES (?, '2026-06-01T09:30:00Z', 'x', 'x', 'x', 'x', "
                "(SELECT digest FROM entry WHERE id = ?), 'x')",
                (entry + 1, entry),
            )
        if refused or not open_still:
            with pytest.raises(sqlite3.IntegrityError, match="never changed"):
                raw.execute(statement, {"row": row})
        else:
            raw.execute(statement, {"row": row})
        raw.execute("ROLLBACK")


def test_an_erasure_whose_entry_is_never_written_is_none(mentioned: Book) -> None:
    raw = sqlite3.connect(mentioned.path, isolation_level=None)
    row, entry = raw.execute("SELECT max(id), (SELECT max(id) FROM entry) FROM movement").fetchone()
    raw.execute(
        "INSERT INTO blanked (entry_id, of_entry, of_table, of_row, of_column, digest) "
        "VALUES (?, ?, 'movement', ?, 'note', 'x')",
        (entry + 1, entry, row),
    )
    raw.execute("UPDATE movement SET note = 'erased' WHERE id = ?", (row,))
    raw.close()
    assert {entry, entry + 1} <= {one.entry for one in verify(open_rows(mentioned.path))}


def test_who_guesses_right_what_was_erased_finds_no_proof_in_the_digest(built: Any, erased: Book) -> None:
    raw = sqlite3.connect(built("mentioned", mention_everywhere)[0], isolation_level=None)
    row, number, text = raw.execute("SELECT id, entry_id, what FROM upkeep ORDER BY id DESC").fetchone()
    known = raw.execute("SELECT digest FROM entry WHERE id = ?", (number,)).fetchone()[0]
    guess = {number: {("upkeep", row): {"what": text}}}
    assert redone(raw, guess)[number].digest == known
    raw.close()
    raw = sqlite3.connect(erased.path, isolation_level=None)
    assert raw.execute("SELECT digest FROM entry WHERE id = ?", (number,)).fetchone()[0] == known
    assert redone(raw, guess)[number].digest != known


def test_what_was_written_of_her_after_she_was_shown_it_all_is_not_left_out(mentioned: Book) -> None:
    find = partial(erasable_customer, text=NAME)
    rows = open_rows(mentioned.path)
    shown = find(rows)
    rows.close()
    with mentioned.write("upkeep add") as tx:
        tx.add(Upkeep(kind="cleaning", on=date(2026, 5, 20), by="Nuala", what=f"the shelf, with {NAME}"))
        tx.say("Noted cleaning.")
    before = mentioned.path.read_bytes()
    with pytest.raises(Refused, match="written in meanwhile"):
        erase(mentioned, find, reason="asked by letter", shown=shown)
    assert mentioned.path.read_bytes() == before
