"""What the benchmarks ask of a ledger can be asked: every word in braces has its query."""

import io
import sqlite3
import string
from datetime import date
from pathlib import Path
from typing import Any

from benchmarks.commands import COMMANDS
from benchmarks.compare import compare
from benchmarks.facts import QUERIES, Facts
from reportlab.pdfgen.canvas import Canvas

from ledger.operations.bench.plan import PlanRequest, plan_batch
from ledger.operations.sell.gift import gift


def test_the_words_of_a_command_begin_with_it() -> None:
    assert all(one.words.startswith(command) for command, found in COMMANDS.items() for one in found)


def test_a_command_of_several_kinds_is_measured_in_each() -> None:
    assert {one.kind for one in COMMANDS["batch show"]} == {"view", "paper"}
    assert {one.kind for one in COMMANDS["label runs"]} == {"list", "view"}


def test_what_was_prepared_does_not_change_what_is_asked(shop: Any, tmp_path: Path) -> None:
    facts = Facts(shop.book.path, tmp_path)
    assert (facts.value("released"), facts.value("last_batch")) == (shop.batch, shop.batch)
    gift(shop.book, {shop.batch: 9}, to="a neighbour", on=date(2026, 5, 9))  # 1 of 10 left, too few to be asked for
    again = plan_batch(shop.book, PlanRequest("plain-bar", date(2026, 5, 9)))
    assert (facts.value("released"), facts.value("last_batch")) == (shop.batch, again)
    assert Facts(shop.book.path, tmp_path).value("released") is None


def test_every_word_in_braces_has_a_value(shop: Any, tmp_path: Path) -> None:
    facts = Facts(shop.book.path, tmp_path)
    for found in COMMANDS.values():
        for one in found:
            for text in (one.words, *one.before):
                for _, name, _, _ in string.Formatter().parse(text):
                    if name and not name.startswith("out") and not name.endswith("_file"):
                        assert name in QUERIES, f"{name} of: {text}"
    # 10 bars of the one batch, all in the workshop; what the shop does not have is None
    assert {name: facts.value(name) for name in ("released", "recipe", "supplier", "lot", "planned")} == {
        "released": shop.batch,
        "recipe": "plain-bar",
        "supplier": "tarnlow",
        "lot": shop.olive,  # of the two fats the more is left of it: 4.4 kg against 2.6
        "planned": None,
    }


def test_every_query_can_be_asked(shop: Any) -> None:
    raw = sqlite3.connect(shop.book.path)
    for name, query in QUERIES.items():
        assert len(raw.execute(query).fetchall()) <= 1, name
    raw.close()


def test_two_sayings_are_compared_byte_for_byte() -> None:
    one = {"a.txt": b"5 kg\nolive\n", "b.txt": b"same", "c.txt": b"gone"}
    other = {"a.txt": b"5 kg\nOlive\n", "b.txt": b"same", "d.txt": b"new"}
    assert compare(one, dict(one), 8) == []
    assert compare(one, other, 8) == [
        "c.txt: only in the first",
        "d.txt: only in the second",
        "a.txt\n    -olive\n    +Olive",
    ]


def test_of_a_paper_it_is_said_what_differs() -> None:
    def paper(word: str, left: int) -> bytes:
        out = io.BytesIO()
        canvas = Canvas(out, invariant=1)
        canvas.drawString(left, 700, word)
        canvas.save()
        return out.getvalue()

    same = "worksheet.pdf: its text is the same, its pages look "
    assert compare({"worksheet.pdf": paper("olive oil", 72)}, {"worksheet.pdf": paper("olive oil", 72)}, 8) == []
    assert compare({"worksheet.pdf": paper("olive oil", 72)}, {"worksheet.pdf": paper("olive oil", 90)}, 8) == [
        f"{same}different"
    ]
    assert compare({"worksheet.pdf": paper("olive oil", 72)}, {"worksheet.pdf": paper("palm oil", 72)}, 8) == [
        "worksheet.pdf: its text differs, its pages look different\n    -olive oil\n    +palm oil"
    ]
