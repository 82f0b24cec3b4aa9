"""Whether bars may be passed or rejected, from the facts alone: each answer, and the day and the bar to each side."""

from datetime import date, timedelta
from typing import Any

import pytest

from ledger.domain.bench.decision import Deviation, Doubt, undecided
from ledger.domain.release.bars import Bars, Passing, Settled, deviations_settled, may_pass, may_reject
from ledger.errors import BadInput, Refused
from ledger.units.words import EVERY

CUT, READY = date(2026, 5, 6), date(2026, 6, 3)  # 28 days
DAY = timedelta(days=1)
BARS = Bars("26-125-3", CUT, here=10, decisions=(), deviations=(), decided=frozenset())
DEVIATION = Deviation(
    1, 1, on=READY, subject="", found="soft", done=None, verdict=None, decided_on=None, by=None, reason=None, entry=1
)


def answer(bars: Bars = BARS, *, superfat: int | None = 50_000, on: date = READY, **more: Any) -> Settled:
    return may_pass(bars, Passing(on, "Nuala", **more), ready_on=READY, superfat_ppm=superfat)


def refusal(bars: Bars = BARS, **more: Any) -> str:
    with pytest.raises(Refused) as refused:
        answer(bars, **more)
    return str(refused.value)


@pytest.mark.parametrize("on", [READY, READY + DAY])
def test_cured_bars_are_passed_without_a_word(on: date) -> None:
    assert answer(on=on) == Settled(None, ())


@pytest.mark.parametrize(("before", "left"), [(1, "1 day more"), (2, "2 days more")])
def test_before_the_cure_has_ended_a_person_decides(before: int, left: str) -> None:
    on = READY - before * DAY
    for nothing in (None, "", "  "):
        assert refusal(on=on, anyway=nothing) == (
            f"Batch 26-125-3: it cures until 3 Jun 2026, {left}. To pass it all the same, add --anyway REASON."
        )
    settled = answer(on=on, anyway=" a test ")
    assert settled.reason == f"it cures until 3 Jun 2026, {left}; passed all the same: a test"
    assert [one.particulars for one in settled.doubts] == [("it cures until 3 Jun 2026",)]  # on whatever day


@pytest.mark.parametrize(("superfat", "burns"), [(None, None), (1, None), (0, "0.00 %"), (-2_900, "\u22120.29 %")])
def test_lye_left_over_as_weighed_is_a_doubt_from_no_superfat_down(superfat: int | None, burns: str | None) -> None:
    if burns is None:
        assert answer(superfat=superfat).doubts == ()
        return
    said = f"as weighed its superfat is {burns}, so lye is left over and it burns"
    assert f"{said}. To pass it all the same, add --anyway" in refusal(superfat=superfat)
    (doubt,) = answer(superfat=superfat, anyway="for the floor").doubts
    assert (doubt.subject, doubt.words) == ("superfat", said)


def test_both_doubts_are_said_and_answered_at_once() -> None:
    said = refusal(superfat=0, on=READY - DAY)
    assert "1 day more; and as weighed its superfat is 0.00 %" in said
    settled = answer(superfat=0, on=READY - DAY, anyway="a test")
    assert [one.subject for one in settled.doubts] == ["cure", "superfat"]
    assert str(settled.reason).count("; passed all the same: a test") == 1


@pytest.mark.parametrize(("days", "refused"), [(-1, True), (0, False), (1, False)])
def test_no_decision_is_dated_before_the_cut(days: int, refused: bool) -> None:
    on = CUT + days * DAY
    if refused:
        with pytest.raises(BadInput, match="Batch 26-125-3 was cut on 6 May 2026; look at --on"):
            answer(on=on, anyway="a test")
        with pytest.raises(BadInput, match="was cut on 6 May 2026"):
            may_reject(BARS, on)
    else:
        assert answer(on=on, anyway="a test").doubts
        may_reject(BARS, on)


@pytest.mark.parametrize(("days", "refused"), [(-1, True), (0, False), (1, False)])
def test_nor_before_the_decision_taken_last(days: int, refused: bool) -> None:
    held = BARS._replace(decisions=(("on hold", READY + DAY),))
    on = READY + DAY + days * DAY
    if refused:
        said = "have been on hold since 4 Jun 2026; date the decision that day or later."
        assert said in refusal(held, on=on, lift="another lot")
        with pytest.raises(Refused, match="on hold since 4 Jun 2026"):
            may_reject(held, on)
    else:
        assert answer(held, on=on, lift="another lot").reason == "hold lifted: another lot"
        may_reject(held, on)


@pytest.mark.parametrize(
    ("verdicts", "words"),
    [
        (["passed"], "are passed already. Next: soapledger release 26-125-3"),
        (["passed", "released"], "are released already."),
        (["rejected"], "are rejected and are not packed."),
        (["passed", "rejected"], "are rejected and are not packed."),
        (["passed", "on hold"], "were passed and are on hold now; to let them go all the same: soapledger release"),
        (["on hold"], "are on hold; to lift the hold, add --lift REASON."),
    ],
)
def test_what_was_decided_before_stands(verdicts: list[str], words: str) -> None:
    bars = BARS._replace(decisions=tuple((one, READY) for one in verdicts))
    assert words in refusal(bars, anyway="a reason for something else", lift=" ")


def test_bars_are_rejected_once_and_may_be_after_any_other_decision() -> None:
    for verdict in ("on hold", "passed", "released"):
        may_reject(BARS._replace(decisions=((verdict, READY),)), READY)
    with pytest.raises(Refused, match="are rejected already"):
        may_reject(BARS._replace(decisions=(("rejected", READY),)), READY)


@pytest.mark.parametrize(
    ("wasted", "words"),
    [(0, None), (9, None), (10, "No bar of batch 26-125-3 is good then"), (11, "has 10 bars in the workshop; 11")],
)
def test_a_good_bar_is_left(wasted: int, words: str | None) -> None:
    if words is None:
        assert answer(wasted=wasted, reason="cracked").reason is None
    else:
        assert words in refusal(wasted=wasted, reason="cracked")


def test_bars_thrown_away_have_a_reason_whatever_they_are() -> None:
    for nothing in (None, "", " "):
        with pytest.raises(BadInput, match="Say what was wrong with the bars thrown away"):
            Passing(READY, "Nuala", wasted=1, reason=nothing)
    assert Passing(READY, "Nuala", reason=" ").wasted == 0


@pytest.mark.parametrize(
    ("verdict", "words"),
    [
        (None, r"Batch 26-124-5 has an open deviation \(soft\). Decide it first: soapledger batch decide 26-124-5 1"),
        ("reject", r'was decided: reject, by Nuala. Go by that: soapledger reject 26-125-3 --reason "deviation 1"'),
        ("rework", r"was decided: rework, by Nuala"),
        ("accepted", None),
        ("corrected", None),
    ],
)
def test_a_deviation_is_settled_first(verdict: Any, words: str | None) -> None:
    bars = BARS._replace(deviations=(("26-124-5", DEVIATION._replace(verdict=verdict, by="Nuala")),))
    if words is None:
        assert answer(bars) == Settled(None, ())
    else:
        with pytest.raises(Refused, match=words):
            answer(bars)


@pytest.mark.parametrize(("days", "refused"), [(-1, False), (0, True), (1, True)])
def test_a_deviation_counts_from_the_day_it_was_found(days: int, refused: bool) -> None:
    bars = BARS._replace(deviations=(("26-125-3", DEVIATION),))
    if refused:
        with pytest.raises(Refused, match="open deviation"):
            deviations_settled(bars, found_by=READY + days * DAY)
    else:
        deviations_settled(bars, found_by=READY + days * DAY)


@pytest.mark.parametrize(
    ("known", "left"),
    [
        (set(), True),
        ({("cure", "a")}, True),  # one of its two particulars
        ({("cure", "a"), ("cure", "b")}, False),
        ({("check", "a"), ("check", "b")}, True),  # of another subject
        ({("cure", EVERY)}, False),
        ({("check", EVERY)}, True),
    ],
)
def test_a_doubt_is_open_until_all_of_it_is_decided(known: set[tuple[str, str]], left: bool) -> None:
    doubt = Doubt("cure", "words", ("a", "b"))
    assert undecided([doubt], known) == ((doubt,) if left else ())
