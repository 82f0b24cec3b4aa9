"""What customers report, who decided about it, and what can be forgotten again."""

from datetime import date
from typing import Any

import pytest

from ledger.errors import BadInput, Refused
from ledger.operations.check import check
from ledger.operations.complaints import Report, book_complaint, erase_complaint
from ledger.storage.personal import PersonDetails
from ledger.views.complaint import complaint, complaints

ON = date(2026, 5, 20)
IDA = PersonDetails(name="Ida Marsh", phone="01 555 0190", health="a rash on both hands")


def test_a_report_is_kept_with_its_batch_and_its_person(shop: Any) -> None:
    number = book_complaint(shop.book, Report(ON, "itched", IDA, shop.batch, "quay, 9 May", True, "Nuala"))
    card = complaint(shop.rows(), number)
    assert (card.batch_code, card.product, card.bought) == (shop.batch, "Plain Bar", "quay, 9 May")
    assert (card.serious, card.decided_by) == (True, "Nuala")
    assert (card.person, card.phone, card.health) == ("Ida Marsh", "01 555 0190", "a rash on both hands")


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


def test_complaints_are_listed_by_day_and_by_batch(shop: Any) -> None:
    late = book_complaint(shop.book, Report(ON, "too soft", PersonDetails()))
    early = book_complaint(shop.book, Report(date(2026, 5, 10), "itched", IDA, shop.batch))
    assert [one.number for one in complaints(shop.rows())] == [early, late]
    assert [one.number for one in complaints(shop.rows(), batch_code=shop.batch)] == [early]


def test_the_person_is_forgotten_and_the_complaint_stays(shop: Any) -> None:
    number = book_complaint(shop.book, Report(ON, "itched", IDA, shop.batch))
    erase_complaint(shop.book, number, reason="asked by letter")
    card = complaint(shop.rows(), number)
    assert (card.what, card.batch_code) == ("itched", shop.batch)
    assert (card.person, card.phone, card.health) == (None, None, None)
    assert b"both hands" not in shop.book.path.read_bytes()
    assert check(shop.rows()).findings == ()
    with pytest.raises(Refused, match="nothing to erase"):
        erase_complaint(shop.book, number, reason="asked again")
    with pytest.raises(BadInput, match="no complaint 9"):
        erase_complaint(shop.book, 9, reason="asked by letter")
