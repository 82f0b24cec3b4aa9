"""Whether bars may be released and leave, from the facts alone: each answer, and the bar and the label to each side."""

from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest

from ledger.domain.bench.decision import Deviation, Doubt
from ledger.domain.release.bars import Bars
from ledger.domain.release.releasing import Finished, Released, Releasing, may_release
from ledger.domain.release.supply import KEPT, Labels, Supply, may_leave
from ledger.domain.tools.bar_checks import Check
from ledger.errors import BadInput, Refused
from ledger.units.words import EVERY

CUT, ON = date(2026, 5, 6), date(2026, 6, 10)
DAY = timedelta(days=1)
BARS = Bars("26-125-3", CUT, here=10, decisions=(("passed", ON),), deviations=(), decided=frozenset())
SUPPLY = Supply(barred=(), another_market=True, uncovered=(), unnamed=(), stale={})
LABELS = Labels(markets=(("eu", "European Union"),), printed=True, on_bars=10, uncounted=None)
LOOK, ASH = Check("look", "good", True), Check("look", "ash", False)
FINISHED = Finished("plain-bar", ("look",), (LOOK,), LABELS)
UNCOVERED = Doubt("assessment", "there is no safety assessment")
STALE = {"eu": Doubt("labels", "run 1 does not name Camphor")}


def answer(
    bars: Bars = BARS, supply: Supply = SUPPLY, finished: Finished = FINISHED, *, on: date = ON, **more: Any
) -> Released:
    return may_release(bars, supply, finished, Releasing(on, "Nuala", **more))


def refusal(*facts: Any, **more: Any) -> str:
    with pytest.raises(Refused) as refused:
        answer(*facts, **more)
    return str(refused.value)


def stood(*verdicts: str) -> Bars:
    return BARS._replace(decisions=tuple((one, ON) for one in verdicts))


def labelled(**more: Any) -> Finished:
    return replace(FINISHED, labels=LABELS._replace(**more))


def test_packed_bars_are_released_without_a_word() -> None:
    assert answer() == Released(None, (), (LOOK,))


@pytest.mark.parametrize("verdicts", [(), ("on hold",), ("rejected",)])
def test_bars_never_passed_are_not_released(verdicts: tuple[str, ...]) -> None:
    said = "are not passed for packing yet: soapledger pass 26-125-3"
    assert said in refusal(stood(*verdicts), reason="all the same", anyway="a trial")


@pytest.mark.parametrize("verdict", ["on hold", "rejected"])
def test_bars_held_after_they_were_passed_need_a_reason(verdict: str) -> None:
    bars = stood("passed", verdict)
    for nothing in (None, " "):
        assert f"are {verdict}; to release them all the same, say why" in refusal(bars, reason=nothing, anyway="x")
    assert answer(bars, reason="another lot was meant").reason == "another lot was meant"


@pytest.mark.parametrize(("days", "refused"), [(-1, True), (0, False), (1, False)])
def test_not_before_the_decision_taken_last(days: int, refused: bool) -> None:
    if refused:
        assert "have been passed since 10 Jun 2026" in refusal(on=ON + days * DAY)
    else:
        assert answer(on=ON + days * DAY).reason is None


def test_nor_before_the_cut() -> None:
    with pytest.raises(BadInput, match="was cut on 6 May 2026"):
        answer(on=CUT - DAY)


def test_what_every_market_prohibits_has_no_way_round() -> None:
    barred = SUPPLY._replace(barred=("it holds Lilial",), another_market=False)
    said = "The bars of batch 26-125-3 may not be supplied: it holds Lilial."
    assert refusal(BARS, barred, anyway="a trial") == said
    assert answer(BARS, barred._replace(another_market=True)).reason is None  # a doubt by market, if it is one
    with pytest.raises(Refused, match="may not be supplied"):
        may_leave(stood("passed", "released"), barred, ON)


@pytest.mark.parametrize(
    ("supply", "anyway", "released_again"),
    [
        (SUPPLY, None, False),
        (SUPPLY, "a trial", False),  # nothing is doubted, so there is nothing to decide
        (SUPPLY._replace(uncovered=(UNCOVERED,)), None, False),
        (SUPPLY._replace(uncovered=(UNCOVERED,)), "a trial", True),
        (SUPPLY._replace(stale=STALE), "a trial", True),
    ],
)
def test_released_bars_are_decided_about_anew_only_for_a_new_doubt(
    supply: Supply, anyway: str | None, released_again: bool
) -> None:
    bars = stood("passed", "released")
    if released_again:
        # looked at and labelled then, so that neither is asked again
        assert answer(bars, supply, labelled(printed=False), anyway=anyway).checks == ()
    else:
        assert refusal(bars, supply, anyway=anyway) == "The bars of batch 26-125-3 are released already."


@pytest.mark.parametrize(
    ("supply", "words", "reason"),
    [
        (
            SUPPLY._replace(uncovered=(UNCOVERED,)),
            "Batch 26-125-3 is not covered by what was assessed: there is no safety assessment. See: soapledger recipe "
            "assessment plain-bar --batch 26-125-3. To release it all the same, add --anyway REASON.",
            "not covered by what was assessed (there is no safety assessment); released all the same: a trial",
        ),
        (
            SUPPLY._replace(stale=STALE),
            "Batch 26-125-3: its labels are not usable any more: run 1 does not name Camphor. New labels: soapledger "
            "label approve 26-125-3 --market eu, then soapledger label print 26-125-3 --market eu -o labels.pdf, then "
            "label count. To release it all the same, add --anyway REASON.",
            "its labels are not usable any more (run 1 does not name Camphor); released all the same: a trial",
        ),
    ],
)
def test_what_speaks_against_supply_is_decided_by_name(supply: Supply, words: str, reason: str) -> None:
    assert refusal(BARS, supply, anyway=" ") == words
    settled = answer(BARS, supply, anyway=" a trial ")
    assert (settled.reason, settled.doubts) == (reason, (*supply.uncovered, *supply.stale.values()))
    known = frozenset((one.subject, one.words) for one in settled.doubts)
    assert answer(BARS._replace(decided=known), supply).reason is None  # decided once, and not asked again
    with pytest.raises(Refused, match="To supply it all the same, a person decides so: soapledger release 26-125-3"):
        may_leave(stood("passed", "released"), supply, ON)
    may_leave(BARS._replace(decided=known), supply, ON)


def test_an_older_decision_covers_every_doubt_of_its_subject_and_no_other() -> None:
    both = SUPPLY._replace(uncovered=(UNCOVERED,), stale=STALE)
    bars = BARS._replace(decided=frozenset({("assessment", EVERY)}))
    assert "its labels are not usable" in refusal(bars, both)


@pytest.mark.parametrize(("retain", "refused"), [(9, False), (10, False), (11, True)])
def test_no_more_samples_than_bars(retain: int, refused: bool) -> None:
    if refused:
        assert "has 10 bars in the workshop; 11 cannot be set aside" in refusal(retain=retain)
    else:
        assert answer(retain=retain).reason is None


def test_a_run_of_labels_is_counted_first() -> None:
    said = "Run 3 of labels for batch 26-125-3 is not counted yet: soapledger label count 3 --spoiled 0 --returned 0"
    assert refusal(BARS, SUPPLY, labelled(uncounted=3), anyway="a trial", bare="a trial") == said


@pytest.mark.parametrize(
    ("on_bars", "retain", "words"),
    [
        (9, 0, "it has 9 labels on its bars, and 10 bars would leave"),
        (10, 0, None),
        (11, 0, None),
        (9, 1, None),
        (8, 1, "it has 8 labels on its bars, and 9 bars would leave"),
        (1, 8, "it has 1 label on its bars, and 2 bars would leave"),
        (0, 9, "it has 0 labels on its bars, and 1 bar would leave"),
        (0, 10, None),
    ],
)
def test_each_bar_that_leaves_has_a_label(on_bars: int, retain: int, words: str | None) -> None:
    finished = labelled(on_bars=on_bars)
    if words is None:
        assert answer(BARS, SUPPLY, finished, retain=retain).reason is None
        return
    short = 10 - retain - on_bars
    way = f"Print them: soapledger label print 26-125-3 --market eu --count {short} -o more.pdf, then label count."
    said = refusal(BARS, SUPPLY, finished, retain=retain, anyway="no answer to this", bare=" ")
    assert said.startswith(f"Batch 26-125-3: {words}. {way}")
    settled = answer(BARS, SUPPLY, finished, retain=retain, bare=" sold by weight ")
    assert settled.reason == f"{words}; released bare: sold by weight"
    assert [one.subject for one in settled.doubts] == ["bare"]


@pytest.mark.parametrize(("on_bars", "kept"), [(0, None), (1, 8), (8, 1), (9, 0), (10, 0)])
def test_the_labelled_bars_alone_are_released(on_bars: int, kept: int | None) -> None:
    """Ten bars, of which one is a sample."""
    finished = labelled(on_bars=on_bars)
    if kept is None:
        said = refusal(BARS, SUPPLY, finished, retain=1, keep=True)
        assert "it has 0 labels on its bars" in said
        assert "--keep" not in said
        return
    settled = answer(BARS, SUPPLY, finished, retain=1, keep=True)
    assert settled.kept == kept
    assert [one.particulars for one in settled.doubts] == ([(KEPT,)] if kept else [])
    assert kept == 0 or str(settled.reason).endswith(
        "1 bar without one stays" if kept == 1 else "8 bars without one stay"
    )
    assert kept == 0 or "add --keep" in refusal(BARS, SUPPLY, finished, retain=1)


@pytest.mark.parametrize(
    ("unlabelled", "number", "refused"), [(3, 7, False), (3, 8, True), (10, 1, True), (0, 10, False)]
)
def test_no_more_leave_than_have_a_label_where_the_others_stay(unlabelled: int, number: int, refused: bool) -> None:
    supply, bars = SUPPLY._replace(unlabelled=unlabelled), stood("passed", "released")
    may_leave(bars, supply, ON, number)  # where nobody said that they stay
    bars = bars._replace(decided=frozenset({("bare", KEPT)}))
    if refused:
        with pytest.raises(Refused, match=rf"{unlabelled} without one stays? until labels for them are printed"):
            may_leave(bars, supply, ON, number)
    else:
        may_leave(bars, supply, ON, number)


def test_bars_without_a_label_are_asked_about_where_a_bar_carries_one() -> None:
    two = (("eu", "European Union"), ("gb", "Great Britain"))
    said = refusal(BARS, SUPPLY, labelled(markets=two, printed=False, on_bars=0))
    assert "no label was printed for it, and a bar carries one in: European Union; Great Britain. Print them" in said
    assert "soapledger label approve 26-125-3 --market eu, then soapledger label print 26-125-3 --market eu -o" in said
    assert answer(BARS, SUPPLY, labelled(markets=(), printed=False, on_bars=0)).doubts == ()


def test_every_point_is_looked_at_and_the_one_said_last_counts() -> None:
    two = replace(FINISHED, checklist=("look", "smell"))
    said = "Nobody looked at the smell of batch 26-125-3 yet"
    assert said in refusal(BARS, SUPPLY, two, anyway="a trial")
    assert answer(BARS, SUPPLY, two, checks=[Check("smell", "good", True)]).checks[1].what == "smell"
    assert answer(BARS, SUPPLY, replace(FINISHED, known=(ASH,)), checks=[LOOK]).checks == (LOOK,)


def test_a_point_that_is_not_good_is_decided_by_name_or_as_a_deviation_of_this_batch() -> None:
    bad = replace(FINISHED, known=(ASH,))
    assert "is not good in look: ash. To release it all the same, add --anyway" in refusal(BARS, SUPPLY, bad)
    settled = answer(BARS, SUPPLY, bad, anyway="it is washed off")
    assert settled.reason == "not good in look: ash; released all the same: it is washed off"
    assert answer(BARS._replace(decided=frozenset({("check", "look: ash")})), SUPPLY, bad).doubts == ()
    accepted = Deviation(1, 1, ON, "at release", "look: ash", None, "accepted", ON, "Nuala", "washed off", 1)
    assert answer(BARS._replace(deviations=(("26-125-3", accepted),)), SUPPLY, bad).doubts == ()
    assert "not good in look: ash" in refusal(BARS._replace(deviations=(("26-124-5", accepted),)), SUPPLY, bad)


def test_all_that_was_decided_is_written_in_the_order_it_was_asked() -> None:
    supply = SUPPLY._replace(uncovered=(UNCOVERED,), stale=STALE)
    finished = replace(FINISHED, known=(ASH,), labels=LABELS._replace(on_bars=0))
    settled = answer(stood("passed", "on hold"), supply, finished, reason="another lot", anyway="a trial", bare="so")
    assert [one.subject for one in settled.doubts] == ["check", "assessment", "labels", "bare"]
    assert str(settled.reason).split("; ") == [
        "another lot",
        "not good in look: ash",
        "released all the same: a trial",
        "not covered by what was assessed (there is no safety assessment)",
        "released all the same: a trial",
        "its labels are not usable any more (run 1 does not name Camphor)",
        "released all the same: a trial",
        "it has 0 labels on its bars, and 10 bars would leave",
        "released bare: so",
    ]


@pytest.mark.parametrize("until", [ON, ON + DAY])
def test_samples_are_kept_until_the_day_they_are_taken_or_later(until: date) -> None:
    assert answer(retain=1, keep_until=until) == Released(None, (), (LOOK,))
    with pytest.raises(BadInput, match="before they are taken"):
        answer(retain=1, keep_until=ON - DAY)
