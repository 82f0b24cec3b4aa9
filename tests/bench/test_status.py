"""Where a batch stands: every word, and each step from one to the next, from the facts alone."""

from typing import Any

import pytest

from ledger.domain.bench.status import STATES, Written, in_words, status_of

PLANNED = Written("cold", True, lines=3, open_lines=3, poured=False, yielded=False, verdict=None, discarded=False)
WEIGHED = PLANNED._replace(open_lines=0)
CURING = WEIGHED._replace(poured=True, yielded=True)
INFUSING = WEIGHED._replace(process="infusion", soap=False)


@pytest.mark.parametrize(
    ("batch", "word"),
    [
        (PLANNED, "planned"),
        (PLANNED._replace(lines=0, open_lines=0), "planned"),  # nothing to weigh: a portion before it is divided
        (PLANNED._replace(open_lines=2), "being weighed"),
        (PLANNED._replace(open_lines=1), "being weighed"),
        (WEIGHED, "weighed"),
        (WEIGHED._replace(poured=True), "poured"),
        (INFUSING, "infusing"),
        (CURING, "curing"),
        (CURING._replace(poured=False), "curing"),  # cut, and nobody wrote when it was poured
        (CURING._replace(verdict="passed"), "passed for packing"),
        (CURING._replace(verdict="released"), "released"),
        (CURING._replace(verdict="on hold"), "on hold"),
        (CURING._replace(verdict="rejected"), "rejected"),
        (INFUSING._replace(yielded=True), "strained"),
        (WEIGHED._replace(process="blend", soap=False, yielded=True), "blended"),
        (WEIGHED._replace(process="cold", soap=False, yielded=True), "divided"),
        (PLANNED._replace(process="combine", soap=False, lines=0, open_lines=0, yielded=True), "combined"),
        (PLANNED._replace(process="rework", soap=False, lines=0, open_lines=0, yielded=True), "reworked"),
    ],
)
def test_each_state_has_its_word(batch: Written, word: str) -> None:
    assert status_of(batch) == word
    assert status_of(batch._replace(discarded=True)) == "discarded"  # given up, wherever it stood


@pytest.mark.parametrize(
    ("batch", "step", "word"),
    [
        (PLANNED, {"open_lines": 2}, "being weighed"),
        (PLANNED._replace(open_lines=1), {"open_lines": 0}, "weighed"),
        (PLANNED._replace(lines=1, open_lines=1), {"open_lines": 0}, "weighed"),
        (WEIGHED, {"poured": True}, "poured"),
        (WEIGHED, {"yielded": True}, "curing"),
        (WEIGHED, {"open_lines": 1}, "being weighed"),  # a line that was put back
        (PLANNED._replace(open_lines=1), {"poured": True}, "being weighed"),  # what is left is added later
        (PLANNED, {"poured": True}, "planned"),  # nothing weighed yet, whatever was read
        (INFUSING._replace(open_lines=1), {"open_lines": 0}, "infusing"),
        (INFUSING._replace(lines=2, open_lines=1), {}, "being weighed"),
        (INFUSING, {"poured": True}, "infusing"),
        (INFUSING, {"yielded": True}, "strained"),
        (CURING, {"verdict": "passed"}, "passed for packing"),
        (CURING, {"open_lines": 1}, "curing"),
    ],
)
def test_each_step_leads_to_the_next_word(batch: Written, step: dict[str, Any], word: str) -> None:
    assert status_of(batch._replace(**step)) == word


@pytest.mark.parametrize("verdict", ["accepted", "on hold", "rejected"])
def test_what_is_decided_of_bulk_is_no_state_of_its_batch(verdict: Any) -> None:
    assert status_of(INFUSING._replace(yielded=True, verdict=verdict)) == "strained"


def test_the_last_state_holds_for_every_batch() -> None:
    assert [holds(WEIGHED) for holds, _ in STATES] == [False] * 8 + [True]


def test_only_passed_bars_are_printed_in_more_words() -> None:
    words = ["curing", "passed", "released", "on hold", "rejected", "quarantine"]
    assert [in_words(one) for one in words] == ["curing", "passed for packing", *words[2:]]
