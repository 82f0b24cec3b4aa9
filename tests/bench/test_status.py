"""Where a batch stands: every word, and each step from one to the next, from the facts alone."""

from dataclasses import replace
from typing import Any

import pytest

from ledger.domain.bench.status import STATES, Written, in_words, status_of

PLANNED = Written("cold", True, lines=3, open_lines=3, poured=False, yielded=False, verdict=None, discarded=False)
WEIGHED = replace(PLANNED, open_lines=0)
CURING = replace(WEIGHED, poured=True, yielded=True)
INFUSING = replace(WEIGHED, process="infusion", soap=False)


@pytest.mark.parametrize(
    ("batch", "word"),
    [
        (PLANNED, "planned"),
        (replace(PLANNED, lines=0, open_lines=0), "planned"),  # nothing to weigh: a portion before it is divided
        (replace(PLANNED, open_lines=2), "being weighed"),
        (replace(PLANNED, open_lines=1), "being weighed"),
        (WEIGHED, "weighed"),
        (replace(WEIGHED, poured=True), "poured"),
        (INFUSING, "infusing"),
        (CURING, "curing"),
        (replace(CURING, poured=False), "curing"),  # cut, and nobody wrote when it was poured
        (replace(CURING, verdict="passed"), "passed for packing"),
        (replace(CURING, verdict="released"), "released"),
        (replace(CURING, verdict="on hold"), "on hold"),
        (replace(CURING, verdict="rejected"), "rejected"),
        (replace(INFUSING, yielded=True), "strained"),
        (replace(WEIGHED, process="blend", soap=False, yielded=True), "blended"),
        (replace(WEIGHED, process="cold", soap=False, yielded=True), "divided"),
        (replace(PLANNED, process="combine", soap=False, lines=0, open_lines=0, yielded=True), "combined"),
        (replace(PLANNED, process="rework", soap=False, lines=0, open_lines=0, yielded=True), "reworked"),
    ],
)
def test_each_state_has_its_word(batch: Written, word: str) -> None:
    assert status_of(batch) == word
    assert status_of(replace(batch, discarded=True)) == "discarded"  # given up, wherever it stood


@pytest.mark.parametrize(
    ("batch", "step", "word"),
    [
        (PLANNED, {"open_lines": 2}, "being weighed"),
        (replace(PLANNED, open_lines=1), {"open_lines": 0}, "weighed"),
        (replace(PLANNED, lines=1, open_lines=1), {"open_lines": 0}, "weighed"),
        (WEIGHED, {"poured": True}, "poured"),
        (WEIGHED, {"yielded": True}, "curing"),
        (WEIGHED, {"open_lines": 1}, "being weighed"),  # a line that was put back
        (replace(PLANNED, open_lines=1), {"poured": True}, "being weighed"),  # what is left is added later
        (PLANNED, {"poured": True}, "planned"),  # nothing weighed yet, whatever was read
        (replace(INFUSING, open_lines=1), {"open_lines": 0}, "infusing"),
        (replace(INFUSING, lines=2, open_lines=1), {}, "being weighed"),
        (INFUSING, {"poured": True}, "infusing"),
        (INFUSING, {"yielded": True}, "strained"),
        (CURING, {"verdict": "passed"}, "passed for packing"),
        (CURING, {"open_lines": 1}, "curing"),
    ],
)
def test_each_step_leads_to_the_next_word(batch: Written, step: dict[str, Any], word: str) -> None:
    assert status_of(replace(batch, **step)) == word


@pytest.mark.parametrize("verdict", ["accepted", "on hold", "rejected"])
def test_what_is_decided_of_bulk_is_no_state_of_its_batch(verdict: Any) -> None:
    assert status_of(replace(INFUSING, yielded=True, verdict=verdict)) == "strained"


def test_the_last_state_holds_for_every_batch() -> None:
    assert [holds(WEIGHED) for holds, _ in STATES] == [False] * 8 + [True]


def test_only_passed_bars_are_printed_in_more_words() -> None:
    words = ["curing", "passed", "released", "on hold", "rejected", "quarantine"]
    assert [in_words(one) for one in words] == ["curing", "passed for packing", *words[2:]]
