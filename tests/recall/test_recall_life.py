"""A recall has a life: opened with its hold, told and answered, closed by name; each step told and taken back."""

import json
import shlex
from collections.abc import Callable
from datetime import date
from typing import Any

import pytest
from once import once

from ledger.domain.recall.effectiveness import level
from ledger.domain.recall.question import Question, Start
from ledger.errors import BadInput
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.recall.recall_life import Opening, close_recall, open_recall
from ledger.operations.sell.dispatch import dispatch
from ledger.rows.decision import recalls
from ledger.rows.lot import find_lot
from ledger.storage.personal import PersonDetails

pytestmark = pytest.mark.usefixtures("frozen")
Run = Callable[..., Any]
OPEN = ("recall", "open", "4471/2", "--reason", "rancid, the supplier rang")


@pytest.fixture
def sold(shop: Any) -> Any:
    once(sell)(shop)
    return shop


def sell(shop: Any) -> None:
    """Of the ten bars four are at a shop, two went to a person; four are here."""
    details = CustomerDetails("Tern Hall", PersonDetails(phone="020 910 0150"))
    add_customer(shop.book, details, kind="shop", code="tern-hall")
    add_customer(shop.book, CustomerDetails("Orla Fenn", PersonDetails(phone="020 910 0177")), kind="person", code=None)
    dispatch(shop.book, "tern-hall", {shop.batch: 4}, on=date(2026, 5, 5), price_minor=450, note=None)
    dispatch(shop.book, "Orla Fenn", {shop.batch: 2}, on=date(2026, 5, 6), price_minor=450, note=None)


@pytest.fixture
def opened(sold: Any, run: Run) -> Any:
    """A recall of the oil is open."""
    once(open_one)(sold, run)
    return sold


def open_one(_: Any, run: Run) -> None:
    run(*OPEN)


def life(run: Run, number: str = "R1") -> Any:
    return json.loads(run("recall", "show", number, "--json").stdout)


def test_a_recall_is_opened_holds_what_is_here_and_is_told_noted_and_closed(sold: Any, run: Run) -> None:
    """4 bars here and 4400 g of the oil are held; of six bars out four come back, two are destroyed."""
    said = run(*OPEN, "--hazard", "may irritate the skin", "--found-by", "Tarnlow Oils").stdout
    assert f"Recall R1 is open: put {sold.olive}, {sold.batch} on hold." in " ".join(said.split())
    card = recalls(sold.rows())[0]
    rows = sold.rows()
    decided = [tuple(row) for row in rows.execute("SELECT entry_id, verdict FROM decision WHERE verdict = 'on hold'")]
    assert decided == [(card.entry, "on hold")] * 2
    assert card.asked_at == card.entry - 1
    assert json.loads(card.question)["starts"] == [["number", "4471/2"]]
    assert life(run)["answer"]["totals"]["dispatched"] == 6
    shown = run("recall", "show", "r1").stdout
    assert "2 calls left" in shown
    assert "hazard: may irritate the skin" in shown
    run("recall", "note", "R1", "sends all four back", "--told", "tern-hall", "--how", "telephone", "--answered",
        "Tern Hall", "--returned", "4")  # fmt: skip
    run("return", f"{sold.batch}=4", "--from", "tern-hall")
    run("recall", "note", "1", "--told", "Orla Fenn", "--how", "letter", "--destroyed", "2")
    run("recall", "note", "R1", "--notice", "the quay", "--insurer", "Ness Mutual", "--authority", "the county")
    run("recall", "note", "R1", "--authority", "the county", "--class", "II")
    run("recall", "note", "R1", "asked the printer for new labels")
    people = {one["one"]["name"]: one for one in life(run)["people"]}
    tern, orla = people["Tern Hall"], people["Orla Fenn"]
    assert (tern["how"], tern["answer"], tern["back"], tern["destroyed"]) == ("telephone", "sends all four back", 4, 0)
    assert (orla["how"], orla["answered_on"], orla["back"], orla["destroyed"]) == ("letter", None, 0, 2)
    told = " ".join(run("recall", "show", "R1").stdout.split())
    for words in (
        "Told: 2 of 2.",
        "notice put up: the quay",
        "insurer told: Ness Mutual",
        "authority told: the county",
        "class II, set by the county",
        "asked the printer for new labels",
        "level A, as long as no other is set: 2 of 2 asked, 1 of them answered. Still to ask: Orla Fenn.",
    ):
        assert words in told
    assert "R1 is closed" in run("recall", "close", "R1", "--conclusion", "all told of").stdout
    assert recalls(sold.rows())[0].closed.unexplained == 0  # type: ignore[union-attr]
    assert "Orla Fenn" not in run("history").stdout.split("Opened recall")[1]  # a person by the short name
    assert "closed 1 Jun 2026" in run("recall", "list").stdout


def test_it_may_be_opened_by_answering(sold: Any, run: Run) -> None:
    run("recall", "open", "--bar", sold.batch, input="too much lye\nburns\n\n")
    card = recalls(sold.rows())[0]
    assert (card.reason, card.hazard, card.found_by, card.by) == ("too much lye", "burns", None, "Nuala")


def test_first_it_is_said_what_it_would_hold_and_nothing_is(sold: Any, run: Run) -> None:
    said = run("recall", "open", "4471/2", "-n").stdout
    assert "would hold 4 bars and 1 lot" in said
    assert sold.olive in said
    assert recalls(sold.rows()) == ()
    assert [one["code"] for one in json.loads(run("recall", "open", "4471/2", "-n", "--json").stdout)] == [
        sold.olive,
        sold.batch,
    ]


def test_where_all_is_held_already_it_says_so_and_can_be_taken_back(sold: Any, run: Run) -> None:
    run("lot", "hold", sold.olive, sold.batch, "--reason", "looks odd")
    assert "hold nothing. All of it that is here is on hold already." in " ".join(
        run("recall", "open", "4471/2", "-n").stdout.split()
    )
    said = run(*OPEN).stdout
    assert "Recall R1 is open: all of it that is here is on hold already." in said
    run("undo", "--yes")
    assert "none was opened yet" in run("recall", "show", "R1", code=2).stderr
    run(*OPEN)
    assert recalls(sold.rows())[0].name == "R2"  # the first number is not given again


def status_of(sold: Any, code: str) -> str:
    return str(find_lot(sold.rows(), code).status)


def test_each_step_is_taken_back_the_newest_first_and_last_the_opening_with_its_holds(opened: Any, run: Run) -> None:
    """As long as something stands on it, that is named; then all is as it was, and bars may leave again."""
    entry = recalls(opened.rows())[0].entry
    assert {status_of(opened, opened.olive), status_of(opened, opened.batch)} == {"on hold"}
    for words in (("--told", "tern-hall"), ("--notice", "the quay"), ("--level", "C"), ("x",)):
        run("recall", "note", "R1", *words)
    run("recall", "close", "R1", "--conclusion", "over")
    for left in (4, 3, 2, 1, 0):
        said = run("undo", str(entry), code=1).stderr  # refused before she is asked
        assert said.count("\n") == 1
        assert "depend" in said
        run("undo", "--yes")
        card = recalls(opened.rows())[0]
        assert card.closed is None
        assert len(card.steps) == left
    run("undo", str(entry), "--yes")
    assert recalls(opened.rows()) == ()
    assert (status_of(opened, opened.olive), status_of(opened, opened.batch)) == ("accepted", "released")
    assert "dispatched to Tern Hall" in run("dispatch", "tern-hall", f"{opened.batch}=1", "--price", "4").stdout
    run("check")


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("recall", "show", "R9"), 2, "There is no recall 'R9'; near it: R1."),
        (("recall", "note", "Q", "x"), 2, "There is no recall 'Q'; the last: R1."),
        (("recall", "note", "R1"), 2, "Write what was done, in quotes."),
        (("recall", "note", "R1", "--told", "Torn Hall"), 2, "Did you mean"),
        (("recall", "note", "R1", "--told", "complaint 7"), 2, "There is no complaint 7"),
        (("recall", "note", "R1", "--class", "II"), 2, "Only an authority sets a class"),
        (("recall", "note", "R1", "--returned", "0", "--from", "tern-hall"), 2, "above zero"),
        (("recall", "note", "R1", "--from", "tern-hall"), 2, "--from says whose bars"),
        (("recall", "note", "R1", "x", "--how", "letter"), 2, "--how says how somebody was told"),
        (("recall", "note", "R1", "--level", "F"), 2, "'F' is no level"),
        (("recall", "note", "R1", "x", "--on", "31 May 2026"), 2, "was opened on 1 Jun 2026"),
        ((*OPEN,), 1, "Recall R1 asks the same and is open"),
        (("recall", "open", "no such"), 2, "No lot with the number 'no such'"),
    ],
)
def test_what_cannot_be_is_one_line_and_nothing_is_written(
    opened: Any, run: Run, words: tuple[str, ...], code: int, said: str
) -> None:
    before = opened.rows().execute("SELECT count(*) FROM entry").fetchone()[0]
    assert said in run(*words, code=code).stderr
    assert opened.rows().execute("SELECT count(*) FROM entry").fetchone()[0] == before


def test_a_closed_one_takes_nothing_more_and_says_how_to_go_on(opened: Any, run: Run) -> None:
    run("recall", "close", "R1", "--conclusion", "over")
    end = recalls(opened.rows())[0].closed
    assert end is not None
    for words in (("note", "R1", "x"), ("close", "R1", "--conclusion", "again")):
        said = run("recall", *words, code=1).stderr
        assert said.count("\n") == 1
        assert "closed on 1 Jun 2026 by Nuala" in said
        assert f"soapledger undo {end.entry}" in said
    run("recall", "open", "4471/2", "--reason", "once more")  # a closed one asks no longer
    assert [one.name for one in recalls(opened.rows())] == ["R1", "R2"]


def test_where_what_was_asked_about_was_taken_back_it_says_so_and_can_be_closed(sold: Any, run: Run) -> None:
    run("complaint", "add", "a rash", "--batch", sold.batch)
    about = sold.rows().execute("SELECT max(id) FROM entry").fetchone()[0]
    run("recall", "open", "--complaint", "1", "--reason", "a rash")
    run("undo", str(about), "--yes")
    said = " ".join(run("recall", "show", "R1").stdout.split())
    assert "Nothing answers to it any more. what was asked, complaint 1: There is no complaint 1" in said
    run("recall", "close", "R1", "--conclusion", "was another soap")


@pytest.mark.parametrize("way", ["lot", "bar", "of"])
def test_a_look_up_says_how_to_open_what_it_shows(sold: Any, run: Run, way: str) -> None:
    asked = {"lot": ("4471/2",), "bar": (sold.batch,), "of": ("4471/2", "--product", "Plain Bar")}[way]
    lines = run("recall", way, *asked).stdout.splitlines()
    line = next(one for one in lines if "soapledger recall open" in one)
    words = shlex.split(line.split("soapledger ")[1])
    run(*words)
    shown = life(run)["answer"]["totals"]
    assert shown == json.loads(run("recall", way, *asked, "--json").stdout)["totals"]


def test_bars_unexplained_want_a_reason_at_the_close(sold: Any, run: Run) -> None:
    """Ten made, six out, three counted of the four that should stand here: one is unexplained."""
    run("lot", "count", sold.batch, "3")
    run(*OPEN)
    said = run("recall", "close", "R1", "--conclusion", "over", code=1).stderr
    assert f"1 bar of recall R1 is unexplained ({sold.batch}: 1)" in said
    run("recall", "close", "R1", "--conclusion", "over", "--reason", "broken at the count")
    end = recalls(sold.rows())[0].closed
    assert end is not None
    assert (end.unexplained, end.reason) == (1, "broken at the count")


def test_an_exercise_is_timed_added_up_kept_and_holds_nothing(sold: Any, run: Run) -> None:
    assert "An exercise holds nothing back" in run("recall", "rehearse", "--hold", code=2).stderr
    said = " ".join(run("recall", "rehearse", "4471/2").stdout.split())
    assert "EXERCISE. Recall R1" in said
    assert "1 batch, 10 bars made, 10 told of, none unexplained" in said
    assert "2 telephone calls" in said
    card = recalls(sold.rows())[0]
    assert card.exercise
    assert card.closed
    assert card.took_ms
    held = sold.rows().execute("SELECT count(*) FROM decision WHERE verdict = 'on hold'").fetchone()[0]
    assert held == 0
    assert "was an exercise" in run("recall", "note", "R1", "x", code=1).stderr
    assert run("recall", "show", "R1").stdout.startswith("EXERCISE")
    assert "once a year would be by 1 Jun 2027. That is to come." in " ".join(run("recall", "list").stdout.split())
    drawn = run("recall", "rehearse").stdout
    assert any(f"By chance: lot {code}." in drawn for code in (sold.olive, sold.coconut, sold.lye, sold.water))
    run("undo", "--yes")
    assert len(recalls(sold.rows())) == 1


@pytest.mark.usefixtures("sold")
@pytest.mark.parametrize(
    ("today", "word"), [("2027-05-31", "to come"), ("2027-06-01", "to come"), ("2027-06-02", "over")]
)
def test_the_next_exercise_is_due_a_year_after_the_last(run: Run, frozen: Any, today: str, word: str) -> None:
    run("recall", "rehearse", "4471/2")
    frozen.move_to(f"{today}T12:00:00Z")
    assert f"That is {word}." in " ".join(run("recall", "list").stdout.split())


@pytest.mark.parametrize(
    ("text", "of", "asked"),
    [("A", 25, 25), ("C", 25, 3), ("D", 25, 1), ("E", 25, 0), ("B 40", 25, 10), ("b11%", 25, 3), ("C", 10, 1),
     ("C", 11, 2), ("C", 0, 0), ("D", 50, 1), ("D", 51, 2)],
)  # fmt: skip
def test_a_level_asks_its_share_rounded_up(text: str, of: int, asked: int) -> None:
    """10 % of 25 is 2.5, so 3; 2 % is 0.5, so 1; 40 % is 10; 11 % is 2.75, so 3 (21 CFR 7.42(b)(3))."""
    found = level(text)
    assert found.asked_of(of) == asked
    assert len(set(found.chosen(range(of)))) == asked


def test_who_opens_or_closes_one_says_why(sold: Any) -> None:
    asked = Question((Start("number", "4471/2"),))
    with pytest.raises(BadInput, match="Say why it is recalled"):
        open_recall(sold.book, asked, Opening(" "), on=date(2026, 6, 1), by="Nuala")
    open_recall(sold.book, asked, Opening("rancid"), on=date(2026, 6, 1), by="Nuala")
    with pytest.raises(BadInput, match="Say what was concluded"):
        close_recall(sold.book, "R1", " ", reason=None, on=date(2026, 6, 1), by="Nuala")
    assert len(recalls(sold.rows())) == 1


@pytest.mark.parametrize("text", ["", "B", "B 10", "B 100", "C 3", "F", "AA"])
def test_what_is_no_level_is_refused(text: str) -> None:
    with pytest.raises(BadInput, match="is no level"):
        level(text)
