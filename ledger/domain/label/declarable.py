"""The highest net quantity that bars may declare and still hold when they have dried on the shelf."""

from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

from ledger.domain.label.packers import RuleFinding, System, grams, mean_mg, percent
from ledger.errors import BadInput
from ledger.units.quantity import WHOLE_PPM

AT_PACKING, AT_THE_END = "at packing", "at the end of the stock life"
_GRAM_MG = 1000


class Suggestion(NamedTuple):
    """A nominal weight, and the sentence that says what keeps it from being a gram higher."""

    nominal_mg: int
    why: str


def highest_to_declare(
    weights_mg: Sequence[int],
    end_factor_ppm: int | Fraction,
    *,
    system: System,
    when: str = AT_THE_END,
    weighed: str = AT_PACKING,
) -> Suggestion:
    """The highest whole-gram nominal weight that holds at packing and, on average, when the bars have dried.

    `end_factor_ppm` is what is left of the weight then, `when` says at what time, and `weighed` when they were weighed.
    That the mean must still reach it then is ours; the rules of the system are for the day of packing. Raises BadInput
    for no weights, a factor that is none, or when no nominal weight the system is known for holds.
    """
    if not 0 < end_factor_ppm <= WHOLE_PPM:
        raise BadInput(f"What is left {when} lies above 0 % and up to 100 % of the packing weight.")
    at_end = mean_mg(weights_mg) * end_factor_ppm / WHOLE_PPM
    least, most = system.least_mg, system.most_mg
    reached = int(at_end // _GRAM_MG) * _GRAM_MG
    if most is not None and reached > most:
        raise BadInput(f"The rules of this system are known here up to {grams(most)}; the bars reach {grams(at_end)}.")
    for nominal in range(reached, least - 1, -_GRAM_MG):
        if system.judge(nominal, weights_mg).holds:
            return Suggestion(nominal, _why(nominal, weights_mg, at_end, end_factor_ppm, (weighed, when), system))
    raise BadInput(
        f"No whole gram from {grams(least)} up holds for these bars: the lightest is {grams(min(weights_mg))}, and "
        f"their mean is {grams(at_end)} {when}. Label each with its own weight."
    )


def _why(
    nominal_mg: int,
    weights_mg: Sequence[int],
    at_end: Fraction,
    end_factor_ppm: int | Fraction,
    times: tuple[str, str],
    system: System,
) -> str:
    """The rules that one gram more would break, in one sentence."""
    above, (weighed, when) = nominal_mg + _GRAM_MG, times
    reasons = []
    if at_end < above:
        bars = len(weights_mg)
        if end_factor_ppm == WHOLE_PPM:
            reasons.append(f"the mean of the {bars} bars is {grams(at_end)}")
        else:
            left = percent(end_factor_ppm)
            reasons.append(
                f"the mean of the {bars} bars falls from {grams(mean_mg(weights_mg))} {weighed} to {grams(at_end)} "
                f"{when} ({left} of it left)"
            )
    broken: tuple[RuleFinding, ...] = ()
    if system.most_mg is None or above <= system.most_mg:
        broken = system.judge(above, weights_mg).rules
    # The mean at packing is never below the mean at the end, so the sentence above says it already.
    reasons += [one.clause for one in broken if not one.holds and one.rule != "mean"]
    return f"{grams(nominal_mg)} is the highest; at {grams(above)}, {', and '.join(reasons)}."
