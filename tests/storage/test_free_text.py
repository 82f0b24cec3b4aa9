"""Every column that holds text is either one that an erasure may blank, or told here why it is none."""

import sqlite3

from ledger.storage.book import Book
from ledger.units.words import COLUMNS, FREE_TEXT, STAYS

DATE = {
    "on",
    "best_before",
    "bought_on",
    "next_on",
    "keep_until",
    "dated",
    "supplied_on",
    "due_on",
    "pay_by",
}  # a day, as the program writes it
# Texts that nobody writes as she likes, each with what it is.
NO_FREE_TEXT = {
    "entry.recorded_at": "a moment",
    "entry.verb": "a word of the program's",
    "entry.marks": "short digests of the rows, made anew when a text of one is erased",
    "entry.program": "a number of the program's",
    "entry.previous": "a digest",
    "entry.digest": "a digest",
    "entry_salt.salt": "drawn by lot; it goes with a text of its entry",
    "blanked.of_table": "the name of a table",
    "blanked.of_column": "the name of a column",
    "blanked.digest": "a digest",
    "personal.salted_digest": "a digest, and nothing without the salt, which goes with the details",
    "personal_text.salt": "drawn by lot; the whole row is deleted",
    "personal_text.name": "the whole row is deleted",
    "personal_text.phone": "the whole row is deleted",
    "personal_text.email": "the whole row is deleted",
    "personal_text.address": "the whole row is deleted",
    "personal_text.health": "the whole row is deleted",
    "attached_content.digest": "a digest",
    "attachment.digest": "a digest",
    "attachment.kind": "one of the program's kinds of papers",
    "constituent.stated": "a figure with its unit",
    "name_meant.meant": "the name of a row of the published allergens",
    "batch.code": "a number with a check character",
    "lot.code": "a number with a check character",
    "lot.supplier_number_key": "the number on the drum once more, as it is compared",
    "label_run.market": "a market's code",
    "label_run.text_digest": "a digest",
    "label_words.market": "a market's code",
    "label_words.digest": "a digest",
    "label_approval.market": "a market's code",
    "label_approval.text_digest": "a digest",
    "market_address.market": "a market's code",
    "material_revision.reference_key": "a row of the published figures",
    "reading.at": "a time of day",
    "reading.unit": "a unit",
    "decision_doubt.subject": "a word of the program's",
    "settings_revision.country": "a code of ISO 3166",
    "settings_revision.currency": "a code of ISO 4217",
    "settings_revision.time_zone": "the name of a time zone",
    "customer_terms.country": "a code of ISO 3166",
    "tax_rate.country": "a code of ISO 3166",
    "skin_limit.category": "a number of the standard's",
}


def text_columns(book: Book) -> set[tuple[str, str]]:
    raw = sqlite3.connect(book.path)
    tables = [row[0] for row in raw.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")]
    return {(one, row[1]) for one in tables for row in raw.execute(f"PRAGMA table_info({one})") if row[2] == "TEXT"}


def test_every_column_of_text_is_free_or_told_why_not(book: Book) -> None:
    free = {(table, column) for table, columns in FREE_TEXT.items() for column in columns}
    stays = {(table, column) for table, columns in STAYS.items() for column in columns}
    told = {tuple(name.split(".")) for name in NO_FREE_TEXT}
    words = {*COLUMNS}
    days = {one for one in text_columns(book) if one[1] in DATE}
    decided = [free, stays, told, words, days]
    assert text_columns(book) == set().union(*decided)
    assert sum(map(len, decided)) == len(text_columns(book)), "one is told twice"
