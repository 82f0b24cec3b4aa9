"""The packers' rules on a sample of bars that all carry one nominal weight."""

from collections.abc import Callable, Sequence
from fractions import Fraction
from typing import NamedTuple

from ledger.errors import BadInput
from ledger.units.wording import opening

# Directive 76/211/EEC, annex I (read): up to so many g, the tolerable negative error in % of the nominal weight
# or in mg. Where two rows meet, both give the same.
_ERRORS = (
    (50_000, Fraction(9, 100), 0),
    (100_000, Fraction(0), 4_500),
    (200_000, Fraction("0.045"), 0),
    (300_000, Fraction(0), 9_000),
    (500_000, Fraction(3, 100), 0),
    (1_000_000, Fraction(0), 15_000),
    (10_000_000, Fraction("0.015"), 0),
)
LEAST_MG, MOST_MG = 5_000, 10_000_000  # where that table begins and ends (read)
_TENTH_MG = 100  # percentages are rounded up to the next 0.1 g (read)


class Few(NamedTuple):
    """How many of a batch may lie below the nominal weight less the tolerable error."""

    ppm: int
    where: str
    source: str
    status: str


class RuleFinding(NamedTuple):
    """One rule over the sample, with its figures in words."""

    rule: str  # "mean", "few", "none"
    holds: bool
    clause: str
    source: str
    status: str

    @property
    def words(self) -> str:
        """The finding as a sentence with its figures."""
        return f"{opening(self.clause)}."


class PackersFinding(NamedTuple):
    """What was checked over the bars weighed; it says nothing of the bars that were not."""

    rules: tuple[RuleFinding, ...]
    basis: str  # what it was checked against, as a sentence

    @property
    def holds(self) -> bool:
        """Whether every rule holds in this sample."""
        return all(one.holds for one in self.rules)

    @property
    def words(self) -> tuple[str, ...]:
        """A sentence for each rule, and one for what they were checked against."""
        return (*(one.words for one in self.rules), self.basis)


class System(NamedTuple):
    """One way to judge the bars weighed at packing, and the nominal weights it is known for; a market names which."""

    judge: Callable[[int, Sequence[int]], PackersFinding]
    least_mg: int = 1000
    most_mg: int | None = None


def grams(mg: Fraction | int) -> str:
    """A weight to the milligram, cut off, so that one below a limit never reads as the limit: 109.999 g."""
    head, tail = divmod(int(mg), 1000)
    return f"{head}.{tail:03d}".rstrip("0").rstrip(".") + " g"


def percent(ppm: Fraction | int) -> str:
    """A share to a hundredth of a percent, rounded up, so that one above a limit never reads as the limit."""
    head, tail = divmod(-(-Fraction(ppm) // 100), 100)
    return f"{head}.{tail:02d}".rstrip("0").rstrip(".") + " %"


def mean_mg(weights_mg: Sequence[int]) -> Fraction:
    """The mean weight, exactly. Raises BadInput for no bar, or a bar without a weight."""
    if not weights_mg:
        raise BadInput("No bar was weighed; weigh some of them first.")
    if any(weight <= 0 for weight in weights_mg):
        raise BadInput("A bar of no weight cannot be; look at the weights again.")
    return Fraction(sum(weights_mg), len(weights_mg))


def tolerable_negative_error(nominal_mg: int) -> int:
    """The tolerable negative error in mg, percentages rounded up to the next 0.1 g (Directive 76/211/EEC, read).

    Raises BadInput outside 5 g to 10 kg.
    """
    if not LEAST_MG <= nominal_mg <= MOST_MG:
        raise BadInput(f"The tolerable errors are for 5 g to 10 kg; {grams(nominal_mg)} lies outside.")
    share, fixed = next((share, fixed) for up_to, share, fixed in _ERRORS if nominal_mg <= up_to)
    return -int(-nominal_mg * share // _TENTH_MG) * _TENTH_MG if share else fixed


def average_system(
    nominal_mg: int, weights_mg: Sequence[int], *, few: Few, source: str = "Directive 76/211/EEC"
) -> PackersFinding:
    """The three packers' rules of the average system over the bars weighed.

    The mean is not below the nominal weight; few bars lie more than the tolerable error below it; none lies more than
    twice that below it (Directive 76/211/EEC, read). Raises BadInput outside 5 g to 10 kg, or for no weights.
    """
    error, bars = tolerable_negative_error(nominal_mg), len(weights_mg)
    mean = mean_rule(nominal_mg, weights_mg, source, "read")
    limit = nominal_mg - error
    below = sum(weight < limit for weight in weights_mg)
    share = Fraction(below * 1_000_000, bars)
    clause = f"{_lie(below, bars)} below {grams(limit)} ({percent(share)}), where at most {percent(few.ppm)} may"
    some = RuleFinding("few", share <= few.ppm, clause, f"{few.where}: {few.source}", few.status)
    none = none_below(nominal_mg - 2 * error, weights_mg, source, "read")
    basis = (
        f"Checked over the {bars} bars weighed against the packers' rules of {source} for {grams(nominal_mg)} with a "
        f"tolerable error of {grams(error)}; the inspectors' test of a whole batch was not made."
    )
    return PackersFinding((mean, some, none), basis)


def minimum_system(nominal_mg: int, weights_mg: Sequence[int], *, source: str, status: str) -> PackersFinding:
    """No bar below the nominal weight. Raises BadInput for no weights."""
    mean_mg(weights_mg)
    none = none_below(nominal_mg, weights_mg, source, status)
    basis = (
        f"Checked over the {len(weights_mg)} bars weighed against the minimum system of {source} for "
        f"{grams(nominal_mg)}."
    )
    return PackersFinding((none,), basis)


def mean_rule(nominal_mg: int, weights_mg: Sequence[int], source: str, status: str) -> RuleFinding:
    """That the mean of the sample is not below the nominal weight."""
    mean = mean_mg(weights_mg)
    holds = mean >= nominal_mg
    how = "not below" if holds else "below"
    clause = f"the mean of the {len(weights_mg)} bars is {grams(mean)}, {how} the nominal {grams(nominal_mg)}"
    return RuleFinding("mean", holds, clause, source, status)


def none_below(limit_mg: int, weights_mg: Sequence[int], source: str, status: str) -> RuleFinding:
    """That no bar of the sample lies below a limit."""
    below = sum(weight < limit_mg for weight in weights_mg)
    lightest = grams(min(weights_mg))
    clause = f"{_lie(below, len(weights_mg))} below {grams(limit_mg)}, where none may (the lightest is {lightest})"
    return RuleFinding("none", not below, clause, source, status)


def _lie(below: int, bars: int) -> str:
    return f"{below or 'none'} of {bars} bars {'lie' if below > 1 else 'lies'}"
