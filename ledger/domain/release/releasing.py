"""Whether packed bars may be released, and what is written of the decision."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from ledger.domain.bench.decision import Doubt, list_words
from ledger.domain.release.bars import Bars, Settled, after_the_cut, deviations_settled, not_before_the_last, said
from ledger.domain.release.supply import (
    BARE,
    KEPT,
    STALE,
    Before,
    Labels,
    Supply,
    first_supplied_in_time,
    named,
    not_barred,
    stale_labels,
    stale_words,
    too_few_labels,
    uncovered_words,
)
from ledger.domain.tools.bar_checks import Check, missing
from ledger.errors import BadInput, Refused
from ledger.units.dates import show_date
from ledger.units.wording import count

UNCOVERED = "not covered by what was assessed"  # before the reason of a decision to supply bars all the same


@dataclass(frozen=True)
class Finished:
    """What was found of finished bars before they are released."""

    recipe: str | None
    checklist: Sequence[str]  # the points its recipe asks for
    known: Sequence[Check]  # those that a reading answers
    labels: Labels


@dataclass(frozen=True)
class Releasing:
    """What a person says who releases bars."""

    on: date
    by: str
    retain: int = 0  # bars set aside as samples
    kept_at: str = "the shelf of retained samples"
    keep_until: date | None = None
    checks: Sequence[Check] = ()
    reason: str | None = None  # why bars on hold or rejected are released
    anyway: str | None = None
    bare: str | None = None  # why bars without a label are, to go where they are sold so alone
    keep: bool = False  # bars without a label stay, and the others are released
    before: Before | None = None  # when and to whom these very bars were first supplied


@dataclass(frozen=True)
class Released(Settled):
    """What is written of a release: also what was looked at, nothing where they were released before."""

    checks: tuple[Check, ...]
    by_first_supply: bool = False  # whether the bars go on under labels of a list that has ended
    kept: int = 0  # bars without a label that stay


def may_release(bars: Bars, supply: Supply, finished: Finished, asked: Releasing) -> Released:
    """What is written where bars may be released.

    Raises Refused before they are passed, while on hold or rejected without a reason to lift it, for
    more samples than bars, while a print run of labels is not counted or a deviation is open, for a point of the
    recipe's checklist that nobody looked at or that is not good, where they are not covered by an assessment and a
    notification, or their labels are not usable that day (unless `anyway` gives a reason), for bars with no label
    printed, or fewer labels on them than bars (unless `bare` gives one), and without a way round it, for bars that
    hold what every market of hers prohibits, or what their assessment does not name, or carry labels of a list that has
    ended and were not supplied before.
    """
    after_the_cut(bars, asked.on)
    not_before_the_last(bars, asked.on)
    if not bars.passed:
        raise Refused(f"The bars of batch {bars.batch} are not passed for packing yet: soapledger pass {bars.batch}")
    not_barred(bars, supply)
    named(bars, supply, finished.recipe)
    uncovered, stale = bars.undecided(*supply.uncovered), stale_labels(bars, supply)
    again, anyway = bars.status == "released", said(asked.anyway)
    if again and not (anyway and (stale or uncovered)):
        raise Refused(f"The bars of batch {bars.batch} are released already.")
    _may_be_packed_away(bars, finished, asked)
    before = first_supplied_in_time(bars, supply, asked.on, bars.here - asked.retain, asked.before)
    checks = () if again else looked_at(bars, finished, asked.checks)
    accepted = {one.found for batch, one in bars.deviations if batch == bars.batch and one.verdict == "accepted"}
    bad = [one for one in not_good(bars, checks) if one.words not in accepted]
    against = [f"Batch {bars.batch} is not good in {list_words(bad)}."] if bad else []
    see = f"See: soapledger recipe assessment {finished.recipe} --batch {bars.batch}."
    against += [f"{uncovered_words(bars, uncovered)} {see}"] if uncovered else []
    against += [stale_words(bars, stale)] if stale else []
    if against and not anyway:  # all of it, since one reason decides of all
        raise Refused(" ".join((*against, "To release it all the same, add --anyway REASON.")))
    naked = () if again else _naked(bars, finished.labels, asked)
    reasons = [asked.reason or ""] if said(asked.reason) else []
    reasons += [f"not good in {list_words(bad)}; released all the same: {anyway}"] if bad else []
    reasons += [f"{UNCOVERED} ({list_words(uncovered)}); released all the same: {anyway}"] if uncovered else []
    reasons += [f"{STALE} ({list_words(stale.values())}); released all the same: {anyway}"] if stale else []
    kept = 0
    if naked and naked[0].of == (KEPT,):
        kept = bars.here - asked.retain - finished.labels.on_bars
        reasons += [f"{naked[0].words}; {count(kept, 'bar')} without one stay{'s' * (kept == 1)}"]
    else:
        where = f"for {', '.join(finished.labels.bare_at)} alone, as settled before"
        reasons += [f"{one.words}; released bare: {said(asked.bare) or where}" for one in naked]
    return Released("; ".join(reasons) or None, (*bad, *uncovered, *stale.values(), *naked), checks, before, kept)


def _may_be_packed_away(bars: Bars, finished: Finished, asked: Releasing) -> None:
    """Raise Refused for bars held without a reason to lift it, too many samples, a run not counted, a deviation."""
    if bars.status in ("on hold", "rejected") and not said(asked.reason):
        raise Refused(
            f'The bars of batch {bars.batch} are {bars.status}; to release them all the same, say why: --reason "…".'
        )
    if asked.keep_until and asked.keep_until < asked.on:
        raise BadInput(f"The samples would be kept until {show_date(asked.keep_until)}, before they are taken.")
    if asked.retain > bars.here:
        raise Refused(
            f"Batch {bars.batch} has {count(bars.here, 'bar')} in the workshop; {asked.retain} cannot be set aside."
        )
    if finished.labels.uncounted is not None:
        raise Refused(
            f"Run {finished.labels.uncounted} of labels for batch {bars.batch} is not counted yet: soapledger label "
            f"count {finished.labels.uncounted} --spoiled 0 --returned 0"
        )
    deviations_settled(bars)


def looked_at(bars: Bars, finished: Finished, checks: Iterable[Check]) -> tuple[Check, ...]:
    """What was looked at of the bars, each point once as said last. Raises Refused for a point nobody looked at."""
    known = {one.what: one for one in (*finished.known, *checks)}
    if left := missing(finished.checklist, tuple(known.values())):
        raise Refused(
            f"Nobody looked at the {', '.join(left)} of batch {bars.batch} yet; say what was found: "
            f"soapledger release {bars.batch} --check '{left[0]}=…'"
        )
    return tuple(known.values())


def not_good(bars: Bars, checks: Iterable[Check]) -> tuple[Doubt, ...]:
    """What is not good, as far as it was not decided at a release before."""
    return bars.undecided(*(Doubt("check", f"{one.what}: {one.found}") for one in checks if not one.good))


class TooFewLabels(Refused):
    """Bars would leave without a label, and nobody said yet what becomes of them."""

    def __init__(self, batch: str, found: str, way: str, *, some: bool) -> None:
        """Say what was found, how they are labelled, and what else may be decided; `some` of them have a label."""
        alone = " To release those with a label alone, add --keep." if some else ""
        super().__init__(
            f"Batch {batch}: {found}. Print them: {way}, then label count.{alone} Where bars are sold without a label, "
            "add --bare REASON."
        )
        self.found, self.some = found, some


def sold_bare(found: Doubt) -> Doubt:
    """That bars are released without a label, to go where they are sold so and nowhere else."""
    return found._replace(of=(*found.particulars, BARE))


def _naked(bars: Bars, labels: Labels, asked: Releasing) -> tuple[Doubt, ...]:
    """That bars would leave without labels, as far as nobody decided so. Raises Refused without a reason for it."""
    found = too_few_labels(bars, labels, bars.here - asked.retain)
    if found is None or not bars.undecided(found[0]):
        return ()
    if said(asked.bare):
        return (sold_bare(found[0]),)
    if asked.keep and labels.on_bars:
        return (found[0]._replace(of=(KEPT,)),)
    if labels.bare_at and not asked.keep:
        return (sold_bare(found[0]),)
    raise TooFewLabels(bars.batch, found[0].words, found[1], some=bool(labels.on_bars))
