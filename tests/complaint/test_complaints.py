"""What customers report, who decided about it, and what can be forgotten again."""

from datetime import date
from typing import Any

import pytest
from shop import erase_complaint

from ledger.errors import BadInput, Refused
from ledger.operations.complaint.complaints import (
    Noted,
    Report,
    book_complaint,
    close_complaint,
    note_complaint,
)
from ledger.operations.keep.check import check
from ledger.operations.keep.undo import undo
from ledger.rows.complaint import complaint, complaints, complaints_of_batch
from ledger.storage.personal import PersonDetails

ON = date(2026, 5, 20)
IDA = PersonDetails(name="Ida Marsh", phone="020 910 0190", health="a rash on both hands")


def test_a_report_is_kept_with_its_batch_and_its_person(shop: Any) -> None:
    number = book_complaint(shop.book, Report(ON, "itched", IDA, shop.batch, "quay, 9 May", True, "Nuala"))
    card = complaint(shop.rows(), number)
    assert (card.batch_code, card.product, card.bought) == (shop.batch, "Plain Bar", "quay, 9 May")
    assert (card.serious, card.decided_by) == (True, "Nuala")
    assert (card.person, card.phone, card.health) == ("Ida Marsh", "020 910 0190", "a rash on both hands")


def test_a_report_may_know_no_batch_and_decide_nothing(shop: Any) -> None:
    card = complaint(shop.rows(), book_complaint(shop.book, Report(ON, "too soft", PersonDetails())))
    assert (card.batch_code, card.serious, card.person) == (None, None, None)


@pytest.mark.parametrize(
    ("changes", "error", "words"),
    [
        ({"what": "  "}, BadInput, "Write what happened"),
        ({"serious": True}, BadInput, "--decided-by"),
        ({"serious": False}, BadInput, "--decided-by"),
        ({"decided_by": "Nuala"}, BadInput, "--serious yes or --serious no"),
        ({"on": date(2026, 4, 1)}, BadInput, "was not there before 2 Apr 2026"),
        ({"batch": "26-999-9"}, Refused, "26-999"),
    ],
)
def test_what_is_missing_or_cannot_be_is_asked_for(
    shop: Any, changes: dict[str, Any], error: type[Exception], words: str
) -> None:
    report = {"on": ON, "what": "itched", "person": IDA, "batch": shop.batch, **changes}
    before = shop.book.path.read_bytes()
    with pytest.raises(error, match=words):
        book_complaint(shop.book, Report(**report))
    assert shop.book.path.read_bytes() == before


def test_the_very_day_is_no_day_too_early(shop: Any) -> None:
    """The bars were cut on 2 April: bought and reported that day, and closed on the day something was done about it."""
    cut = date(2026, 4, 2)
    number = book_complaint(shop.book, Report(cut, "itched", IDA, shop.batch, bought_on=cut))
    note_complaint(shop.book, number, step("rang", cut))
    close_complaint(shop.book, number, step("bar replaced", cut))
    card = complaint(shop.rows(), number)
    assert (card.bought_on, card.closed_on, len(card.steps)) == (cut, cut, 2)


def test_complaints_are_listed_by_day_and_by_batch(shop: Any) -> None:
    late = book_complaint(shop.book, Report(ON, "too soft", PersonDetails()))
    early = book_complaint(shop.book, Report(date(2026, 5, 10), "itched", IDA, shop.batch))
    assert [one.number for one in complaints(shop.rows())] == [early, late]
    assert [one.number for one in complaints(shop.rows(), batch_code=shop.batch)] == [early]


def test_the_person_is_forgotten_and_the_complaint_stays(shop: Any) -> None:
    number = book_complaint(shop.book, Report(ON, "itched", IDA, shop.batch))
    erase_complaint(shop.book, number, reason="asked by letter")
    card = complaint(shop.rows(), number)
    assert (card.what, card.batch_code) == ("[erased, entry 16]", shop.batch)
    assert (card.person, card.phone, card.health) == (None, None, None)
    assert b"both hands" not in shop.book.path.read_bytes()
    assert check(shop.rows()).findings == ()
    with pytest.raises(Refused, match="nothing to erase"):
        erase_complaint(shop.book, number, reason="asked again")
    with pytest.raises(BadInput, match="no complaint 9"):
        erase_complaint(shop.book, 9, reason="asked by letter")


def step(action: str, on: date = ON, **more: Any) -> Noted:
    return Noted(on, "Nuala", action, **more)


def test_the_latest_word_on_seriousness_and_batch_counts(shop: Any) -> None:
    number = book_complaint(shop.book, Report(ON, "itched", IDA, serious=False, decided_by="Nuala"))
    note_complaint(shop.book, number, step("asked for the bar", date(2026, 5, 22)))
    note_complaint(shop.book, number, step("code read", date(2026, 5, 23), batch=shop.batch))
    note_complaint(shop.book, number, step("a doctor wrote", date(2026, 5, 24), serious=True, decided_by="R. Lund"))
    card = complaint(shop.rows(), number)
    assert (card.serious, card.decided_by, card.batch_code, card.product) == (True, "R. Lund", shop.batch, "Plain Bar")
    assert [one.action for one in card.steps] == ["asked for the bar", "code read", "a doctor wrote"]
    note_complaint(shop.book, number, step("booked late", date(2026, 5, 23), serious=False, decided_by="Nuala"))
    assert complaint(shop.rows(), number).decided_by == "R. Lund"  # of the 24th, after the 23rd


def test_it_is_closed_once_and_opened_by_a_note(shop: Any) -> None:
    number = book_complaint(shop.book, Report(ON, "itched", IDA))
    close_complaint(shop.book, number, step("bar replaced", date(2026, 5, 25)))
    assert complaint(shop.rows(), number).closed_on == date(2026, 5, 25)
    with pytest.raises(Refused, match="closed on 25 May 2026"):
        close_complaint(shop.book, number, step("again", date(2026, 5, 26)))
    note_complaint(shop.book, number, step("rang again", date(2026, 5, 26)))
    assert complaint(shop.rows(), number).closed_on is None
    with pytest.raises(BadInput, match="on 26 May 2026 still"):
        close_complaint(shop.book, number, step("done", date(2026, 5, 25)))


@pytest.mark.parametrize(
    ("given", "words"),
    [
        (step(" "), "Write what was done"),
        (step("rang", serious=True), "--decided-by"),
        (step("rang", date(2026, 5, 19)), "reported on 20 May 2026"),
        (step("rang ida marsh"), "--name and --health"),
        (step("rang 020 910 0190"), "can be erased"),
    ],
)
def test_a_note_that_cannot_be_is_bad_input(shop: Any, given: Noted, words: str) -> None:
    number = book_complaint(shop.book, Report(ON, "itched", IDA))
    with pytest.raises(BadInput, match=words):
        note_complaint(shop.book, number, given)
    assert complaint(shop.rows(), number).steps == ()


def test_what_happened_may_not_name_the_person_for_good(shop: Any) -> None:
    with pytest.raises(BadInput, match="hold 'Ida Marsh'"):
        book_complaint(shop.book, Report(ON, "Ida Marsh itched", IDA))
    book_complaint(shop.book, Report(ON, "Idas bar itched", PersonDetails(name="Ida")))  # another word
    with pytest.raises(BadInput, match="--bought-on"):
        book_complaint(shop.book, Report(ON, "itched", IDA, bought_on=date(2026, 5, 21)))
    with pytest.raises(BadInput, match="No stall or customer"):
        book_complaint(shop.book, Report(ON, "itched", IDA, at="moon"))


def test_a_batch_record_gets_nothing_personal(shop: Any) -> None:
    number = book_complaint(shop.book, Report(ON, "itched", IDA, shop.batch))
    note_complaint(shop.book, number, step("rang"))
    (one,) = complaints_of_batch(shop.rows(), shop.batch)
    assert (one.number, one.what, [each.action for each in one.steps]) == (1, "itched", ["rang"])
    assert "Ida" not in str(one)
    assert "both hands" not in str(one)
    undo(shop.book, shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0])
    assert complaint(shop.rows(), number).steps == ()
