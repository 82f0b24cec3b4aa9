"""Whether bars may be passed for packing or rejected, and what is written of the decision."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from typing import NamedTuple

from ledger.domain.bench.decision import Deviation, Doubt, list_words, undecided
from ledger.errors import BadInput, Refused
from ledger.units.dates import show_date
from ledger.units.quantity import show_share
from ledger.units.wording import count


class Bars(NamedTuple):
    """The bars of a batch, as far as a decision about them asks."""

    batch: str
    cut_on: date
    here: int  # in the workshop on the day of the decision
    decisions: tuple[tuple[str, date], ...]  # verdict and day of each that counts, the one taken last at the end
    deviations: tuple[tuple[str, Deviation], ...]  # with its batch: this one, or the one this was divided from
    decided: frozenset[tuple[str, str]]  # subject and particular of every doubt that was decided about the bars

    @property
    def status(self) -> str:
        """What was decided last; the date of a decision is never before the one of the last."""
        return self.decisions[-1][0] if self.decisions else "curing"

    @property
    def passed(self) -> bool:
        """Whether they were passed for packing, whatever was decided since."""
        return any(verdict == "passed" for verdict, _ in self.decisions)

    def undecided(self, *doubts: Doubt) -> tuple[Doubt, ...]:
        """Those of some doubts about which nobody decided yet."""
        return undecided(doubts, self.decided)


@dataclass(frozen=True)
class Settled:
    """What is written of a decision: the reason, and the doubts it was taken about."""

    reason: str | None
    doubts: tuple[Doubt, ...]


@dataclass(frozen=True)
class Passing:
    """What a person says who passes bars for packing. Raises BadInput for bars thrown away without a reason."""

    on: date
    by: str
    wasted: int = 0
    reason: str | None = None  # what was wrong with those
    anyway: str | None = None
    lift: str | None = None  # why a hold is lifted
    unwrapped: bool = False

    def __post_init__(self) -> None:
        """Refuse what is no answer, whatever the bars are."""
        if self.wasted and not said(self.reason):
            raise BadInput('Say what was wrong with the bars thrown away: --reason "…".')


def said(words: str | None) -> str:
    """What was typed for an answer, without the blanks around it; nothing is no answer."""
    return (words or "").strip()


def after_the_cut(bars: Bars, on: date) -> None:
    """Raise BadInput for a decision dated before there were bars."""
    if on < bars.cut_on:
        raise BadInput(f"Batch {bars.batch} was cut on {show_date(bars.cut_on)}; look at --on.")


def not_before_the_last(bars: Bars, on: date) -> None:
    """Raise Refused for a date before the decision taken last: that one holds, and would be lifted unseen."""
    if bars.decisions and bars.decisions[-1][1] > on:
        raise Refused(
            f"The bars of batch {bars.batch} have been {bars.status} since {show_date(bars.decisions[-1][1])}; "
            "date the decision that day or later."
        )


def may_pass(
    bars: Bars, asked: Passing, *, ready_on: date, superfat_ppm: int | None, losing: str | None = None
) -> Settled:
    """What is written where bars may be passed for packing: they cure until `ready_on`.

    Raises Refused before that, while a week takes more of their weight than the recipe allows (`losing`), or with lye
    left over as weighed (unless `anyway` gives a reason), for bars on hold (unless `lift` does), for bars rejected,
    while a deviation is open, and for no good bars at all.
    """
    after_the_cut(bars, asked.on)
    not_before_the_last(bars, asked.on)
    _may_still_be_passed(bars, asked)
    against = tuple(_against(asked.on, ready_on, superfat_ppm, losing))
    anyway = said(asked.anyway)
    if against and not anyway:
        why = "; and ".join(one.words for one in against)
        raise Refused(f"Batch {bars.batch}: {why}. To pass it all the same, add --anyway REASON.")
    deviations_settled(bars)
    if asked.wasted > bars.here:
        raise Refused(
            f"Batch {bars.batch} has {count(bars.here, 'bar')} in the workshop; {asked.wasted} cannot be thrown away."
        )
    if asked.wasted == bars.here:
        raise Refused(
            f'No bar of batch {bars.batch} is good then; reject it: soapledger reject {bars.batch} --reason "…"'
        )
    reasons = [f"{list_words(against)}; passed all the same: {anyway}"] if against else []
    reasons += [f"hold lifted: {asked.lift}"] if bars.status == "on hold" else []
    return Settled("; ".join(reasons) or None, against)


def _may_still_be_passed(bars: Bars, asked: Passing) -> None:
    if bars.status in ("passed", "released"):
        following = f" Next: soapledger release {bars.batch}" if bars.status == "passed" else ""
        raise Refused(f"The bars of batch {bars.batch} are {bars.status} already.{following}")
    if bars.status == "rejected":
        raise Refused(f"The bars of batch {bars.batch} are rejected and are not packed.")
    if bars.passed:
        raise Refused(
            f"The bars of batch {bars.batch} were passed and are {bars.status} now; to let them go all the same: "
            f'soapledger release {bars.batch} --reason "…"'
        )
    if bars.status == "on hold" and not said(asked.lift):
        raise Refused(f"The bars of batch {bars.batch} are on hold; to lift the hold, add --lift REASON.")


def _against(on: date, ready_on: date, superfat_ppm: int | None, losing: str | None) -> Iterator[Doubt]:
    """What speaks against packing bars on a day, though a person may decide so."""
    if on < ready_on:
        left = (ready_on - on).days
        cures = f"it cures until {show_date(ready_on)}"
        yield Doubt("cure", f"{cures}, {left} day{'s' * (left > 1)} more", (cures,))
    if losing:
        yield Doubt("drying", losing)
    if superfat_ppm is not None and superfat_ppm <= 0:
        burns = f"as weighed its superfat is {show_share(superfat_ppm, 2)}, so lye is left over and it burns"
        yield Doubt("superfat", burns)


def may_reject(bars: Bars, on: date) -> None:
    """Raise Refused for bars that are rejected already, or before the decision taken last; BadInput before the cut."""
    after_the_cut(bars, on)
    if bars.status == "rejected":
        raise Refused(f"The bars of batch {bars.batch} are rejected already.")
    not_before_the_last(bars, on)


def deviations_settled(bars: Bars, *, found_by: date | None = None) -> None:
    """Raise Refused while a deviation waits for its decision, or was decided against the bars.

    With `found_by`, only what had been found by that day.
    """
    for batch, found in bars.deviations:
        if found_by is not None and found.on > found_by:
            continue
        if found.open:
            raise Refused(
                f"Batch {batch} has an open deviation ({found.found}). Decide it first: soapledger batch decide "
                f'{batch} {found.number} accept --reason "…"'
            )
        if found.verdict in ("reject", "rework"):
            raise Refused(
                f"Deviation {found.number} of batch {batch} ({found.found}) was decided: {found.verdict}, by "
                f'{found.by}. Go by that: soapledger reject {bars.batch} --reason "deviation {found.number}", or '
                f"decide it anew: soapledger batch decide {batch} {found.number} accept --reason …"
            )
