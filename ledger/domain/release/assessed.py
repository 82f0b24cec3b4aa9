"""Lays a product, as written or as weighed, beside its safety assessment, particular by particular."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from fractions import Fraction
from typing import Literal, NamedTuple

from ledger.domain.release.assessment import Assessment, Bounds, inci_key
from ledger.units.dates import show_date
from ledger.units.quantity import WHOLE_PPM, show_share
from ledger.units.words import Process


class Share(NamedTuple):
    """What was weighed in under one INCI name, in mg."""

    inci: str
    mass_mg: int
    fragrance: bool = False  # laid beside the assessed fragrances, not beside the ingredients


class Assessed(NamedTuple):
    """What is laid beside an assessment: a recipe as written, or a batch as weighed."""

    process: Process
    superfat_ppm: int | None  # None where it cannot be reckoned; a rebatch has none of its own
    best_before_months: int
    shares: tuple[Share, ...]  # everything weighed in, wrapping apart
    markets: Mapping[str, bool]  # those asked for, and whether each asks for a notification


Bounded = Literal["inside", "outside", "silent"]  # silent: the assessment names nothing to compare with


class Compared(NamedTuple):
    """One particular: what was found, what was assessed, and how the one lies to the other."""

    what: str
    found: str
    assessed: str
    verdict: Bounded
    unnamed: bool = False  # an ingredient that the assessment does not name


def compare(assessment: Assessment, facts: Assessed, *, on: date) -> tuple[Compared, ...]:
    """Every particular of the product beside the assessment, as of one day.

    Shares are compared exactly, not as they are rounded for reading; a share at its limit is inside.
    """
    whole = sum(one.mass_mg for one in facts.shares)
    ingredients = [one for one in facts.shares if not one.fragrance]
    fragrances = [one for one in facts.shares if one.fragrance]
    return (
        _date(assessment, on),
        _process(assessment, facts),
        *_superfat(assessment, facts),
        _durability(assessment, facts),
        *_shares(ingredients, assessment, assessment.ingredients, whole),
        *_shares(fragrances, assessment, assessment.fragrances, whole, " fragrance"),
        *(row for market, notified in facts.markets.items() for row in _market(assessment, market, notified, on)),
    )


def _verdict(inside: bool) -> Bounded:
    return "inside" if inside else "outside"


def _date(assessment: Assessment, on: date) -> Compared:
    if on < assessment.on:
        return Compared("date", show_date(on), f"from {show_date(assessment.on)}", "outside")
    if assessment.until is None:
        return Compared("date", show_date(on), "no end named", "silent")
    return Compared("date", show_date(on), f"until {show_date(assessment.until)}", _verdict(on <= assessment.until))


def _process(assessment: Assessment, facts: Assessed) -> Compared:
    named = ", ".join(assessment.process)
    return Compared("process", facts.process, named, _verdict(facts.process in assessment.process))


def _superfat(assessment: Assessment, facts: Assessed) -> Iterator[Compared]:
    found, limits = facts.superfat_ppm, assessment.superfat_ppm
    if found is None and facts.process == "rebatch":  # the lye went into the soap that is melted
        return
    if limits is None:
        shown = "not reckoned" if found is None else show_share(found)
        yield Compared("superfat", shown, "not named", "silent")
    elif found is None:
        yield Compared("superfat", "not reckoned", _range(*limits), "outside")
    else:
        shown = _beside(Fraction(found), *limits, decimals=1)
        yield Compared("superfat", shown, _range(*limits), _verdict(limits[0] <= found <= limits[1]))


def _durability(assessment: Assessment, facts: Assessed) -> Compared:
    months, most = facts.best_before_months, assessment.durability_months
    if most is None:
        return Compared("best before", f"{months} months", "not named", "silent")
    return Compared("best before", f"{months} months", f"at most {most} months", _verdict(months <= most))


def _shares(
    found: Iterable[Share], given: Assessment, named: Iterable[Bounds], whole: int, kind: str = ""
) -> Iterator[Compared]:
    """Each ingredient beside its bounds, under the name it has in the report; what that does not name lies outside."""
    masses: dict[str, int] = defaultdict(int)
    own: dict[str, dict[str, None]] = defaultdict(dict)
    also, bounds = dict(given.also), {one.inci: one for one in named}
    for one in found:
        key = inci_key(one.inci)
        name = key if key in bounds else also.get(key, key)
        masses[name] += one.mass_mg
        own[name][key] = None
    for name in sorted(filter(masses.get, masses), key=lambda name: (-masses[name], name)):
        share, what = Fraction(masses[name] * WHOLE_PPM, whole), ", ".join(own[name])
        if bound := bounds.get(name):
            low, high = bound.lowest_ppm, bound.highest_ppm
            inside = low * whole <= masses[name] * WHOLE_PPM <= high * whole
            assessed = _range(low, high) if low else f"at most {_exact(high)}"
            under = "" if list(own[name]) == [name] else f" as {name}"
            yield Compared(what, _beside(share, low, high, decimals=2) + kind, assessed + under, _verdict(inside))
        elif name in given.held:
            yield Compared(what, show_share(round(share), 2) + kind, "in the soaps it names", "silent")
        else:
            yield Compared(what, show_share(round(share), 2) + kind, "not named", "outside", unnamed=True)
    for name, bound in bounds.items():
        if bound.lowest_ppm and not masses.get(name):
            yield Compared(
                name, f"no{kind}" if kind else "none", _range(bound.lowest_ppm, bound.highest_ppm), "outside"
            )


def _market(assessment: Assessment, market: str, notified: bool, on: date) -> Iterator[Compared]:
    named = ", ".join(assessment.markets).upper()
    yield Compared(f"market {market.upper()}", "asked for", named, _verdict(market in assessment.markets))
    noted = next((one for one in assessment.notifications if one.market == market), None)
    if noted is None and not notified:
        return
    if noted is None:
        yield Compared(f"notification {market.upper()}", "asked for", "not named", "silent")
    else:
        since = "" if noted.on <= on else f" from {show_date(noted.on)}"
        named = f"{noted.reference}{since}"
        yield Compared(f"notification {market.upper()}", "asked for", named, _verdict(noted.on <= on))


def _exact(ppm: int) -> str:
    return f"{ppm / 10_000:g} %"


def _range(low_ppm: int, high_ppm: int) -> str:
    return f"{_exact(low_ppm)} to {_exact(high_ppm)}"


def _beside(share_ppm: Fraction, low_ppm: int, high_ppm: int, *, decimals: int) -> str:
    """A share as it is read; so near a limit that rounding might hide the side, the side in words."""
    limit = min((low_ppm, high_ppm), key=lambda one: abs(share_ppm - one))
    gap = share_ppm - limit
    if abs(gap) >= 10 ** (4 - decimals):
        return show_share(round(share_ppm), decimals)
    return f"just {'over' if gap > 0 else 'under'} {_exact(limit)}" if gap else _exact(limit)
