"""Which bars are labelled, and how many labels of a run are on them, from the facts alone."""

from datetime import date, timedelta

import pytest

from ledger.domain.label.run import is_draft, may_be_labelled, used_of
from ledger.errors import BadInput, Refused

ON = date(2026, 6, 3)


@pytest.mark.parametrize(
    ("verdict", "draft"),
    [(None, True), ("on hold", True), ("rejected", True), ("passed", False), ("released", False)],
)
def test_labels_are_a_draft_but_for_packed_bars(verdict: str | None, draft: bool) -> None:
    assert is_draft(verdict) is draft


@pytest.mark.parametrize(
    ("now", "status", "then", "words"),
    [
        (None, "curing", "curing", "are curing; labels are approved and printed for bars that are passed for packing"),
        (None, "curing", "curing", "soapledger pass 26-125-3. A marked draft: --draft"),
        ("on hold", "on hold", "passed", "soapledger release 26-125-3. A marked draft: --draft"),
        ("passed", "passed for packing", "curing", "were not passed for packing on 3 Jun 2026; look at --on"),
        ("released", "released", "on hold", "were not passed for packing on 3 Jun 2026; look at --on"),
        ("passed", "passed for packing", "passed", None),
        ("released", "released", "passed", None),
    ],
)
def test_bars_are_labelled_where_they_are_packed_now_and_were_that_day(
    now: str | None, status: str, then: str, words: str | None
) -> None:
    if words is None:
        may_be_labelled("26-125-3", status=status, now=now, then=then, on=ON)
        return
    with pytest.raises(Refused) as refused:
        may_be_labelled("26-125-3", status=status, now=now, then=then, on=ON)
    assert words in str(refused.value)


@pytest.mark.parametrize(("spoiled", "returned", "used"), [(0, 0, 10), (8, 1, 1), (8, 2, 0), (8, 3, None)])
def test_what_was_neither_spoiled_nor_returned_is_on_the_bars(spoiled: int, returned: int, used: int | None) -> None:
    if used is None:
        with pytest.raises(BadInput, match="Run 2 issued 10 labels; 8 and 3 are more than that"):
            used_of(2, 10, printed_on=ON, spoiled=spoiled, returned=returned, on=ON)
    else:
        assert used_of(2, 10, printed_on=ON, spoiled=spoiled, returned=returned, on=ON) == used


def test_a_run_is_counted_from_the_day_it_was_printed() -> None:
    for day in (ON, ON + timedelta(days=1)):
        assert used_of(2, 10, printed_on=ON, spoiled=0, returned=0, on=day) == 10
    with pytest.raises(BadInput, match="Run 2 was printed on 3 Jun 2026"):
        used_of(2, 10, printed_on=ON, spoiled=0, returned=0, on=ON - timedelta(days=1))
