"""How far the true superfat may lie below the one reckoned, from what is not known of lots, alkali and scale."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Sequence
from fractions import Fraction
from math import ceil, floor, isqrt
from typing import NamedTuple

from ledger.domain.lye.saponification import MG_PER_KG, AlkaliCharge, FatCharge, demand_koh, superfat_of
from ledger.units.quantity import WHOLE_PPM, show_share

# What one figure on a lot's own certificate leaves open, either way. Common practice, no source: a repeated titration
# of a fat agrees to about 1 mg KOH per g, and an assay of an alkali to about half a percent.
STATED_SAP_SPREAD = 1_000
STATED_PURITY_SPREAD = 5_000
# NaOH without a certificate is reckoned as pure; so much less it may be, which only raises the superfat (Ph. Eur. 97.0
# to 100.5 %, from memory, unverified).
PURE_DOWN_TO_PPM = 970_000
# How far a scale that shows each step right is untrue between the weight of the fats and that of the lye. Common
# practice, no source; what it is untrue by everywhere alike cancels out.
UNTRUE_PPM = 1_000
_FATS = ("fat", "slow fat")
STEP = 5_000  # advice on the superfat goes in steps of half a percent


class Spread(NamedTuple):
    """What is not known of one thing, as a share of the alkali demand, in ppm."""

    what: str
    of: str  # "fat", "slow fat" (which no certificate narrows), "alkali", "acid" or "scale"
    share_ppm: int


class Superfat(NamedTuple):
    """The superfat as reckoned, and how low it may lie; in ppm.

    *Likely low*: the independent spreads of fats, alkali, acids and scale combined in quadrature; about one batch in
    thirty lies lower, where lots lie anywhere within their ranges (tests/oracles/test_drawn_batches.py). *Likely high*:
    the same to the other side. *All low*: every one at its limit together.
    """

    nominal_ppm: int
    likely_low_ppm: int
    all_low_ppm: int
    spreads: tuple[Spread, ...]  # the widest first
    likely_high_ppm: int | None = None


def superfat_range(
    fats: Sequence[FatCharge],
    alkalis: Sequence[AlkaliCharge],
    *,
    scale_step_mg: int,
    acids_koh_mg: Fraction = Fraction(0),
    acids_open: Sequence[tuple[str, Fraction]] = (),
) -> Superfat:
    """The superfat of what is in the pot, with likely low and all low.

    With demand D = Σ mass × value and worth A = Σ mass × purity (both as KOH, acids taken off), the superfat is
    1 − A/D. A relative error e of D or A moves A/D by e × A/D. Half the range of a lot is its spread; two lots of one
    fat without certificates of their own err together. `acids_open` names how much less KOH, in mg, an acid may use up.
    Raises BadInput when there is no fat.
    """
    full = demand_koh(fats)
    nominal = superfat_of(fats, alkalis, acids_koh_mg=acids_koh_mg)
    gross = sum((alkali.koh_mg for alkali in alkalis), Fraction(0))
    net = gross - acids_koh_mg  # what is left for the fats
    shares = _shares(fats, alkalis, full, gross)
    for name, koh_mg in acids_open if gross else ():
        shares[name, "acid"] = shares.get((name, "acid"), Fraction(0)) + koh_mg / gross
    steps = _steps(fats, alkalis, full, gross, scale_step_mg)
    moved = [share * (net if of == "fat" else gross) for of, share in steps]
    low = [share * (net if of in _FATS else gross) for (_, of), share in shares.items()]
    weaker = [alkali.koh_mg * _purity_below(alkali) / alkali.purity_ppm for alkali in alkalis]
    high = [share * (net if of in _FATS else gross) for (_, of), share in shares.items() if of != "alkali"] + weaker
    likely = 1 - (net + _root((*moved, *low))) / full
    likely_high = 1 - (net - _root((*moved, *high))) / full
    least_fats = sum((_at_its_least(fat, scale_step_mg) for fat in fats), Fraction(0))
    least_acids = acids_koh_mg - sum((koh_mg for _, koh_mg in acids_open), Fraction(0))
    untrue = 1 + Fraction(UNTRUE_PPM if scale_step_mg else 0, WHOLE_PPM)
    most_alkali = sum((_at_its_top(alkali, scale_step_mg) for alkali in alkalis), Fraction(0)) * untrue - least_acids
    all_low = 1 - most_alkali / least_fats if least_fats > 0 else Fraction(-1)
    spreads = [Spread(what, of, round(share * WHOLE_PPM)) for (what, of), share in shares.items()]
    spreads.append(Spread("the scale", "scale", round(_root(share for _, share in steps) * WHOLE_PPM)))
    return Superfat(
        nominal,
        floor(likely * WHOLE_PPM),
        floor(all_low * WHOLE_PPM),
        tuple(sorted(spreads, key=lambda one: -one.share_ppm)),
        ceil(likely_high * WHOLE_PPM),
    )


def _shares(
    fats: Sequence[FatCharge], alkalis: Sequence[AlkaliCharge], full: Fraction, gross: Fraction
) -> dict[tuple[str, str], Fraction]:
    """What each thing leaves open, as a share of the demand or of the alkali."""
    found: dict[tuple[str, str], Fraction] = defaultdict(Fraction)
    for fat in fats:
        found[fat.name, "slow fat" if fat.slow else "fat"] += fat.mass_mg * _sap_spread(fat) / MG_PER_KG / full
    for alkali in alkalis:
        if alkali.mass_mg:
            found[alkali.name, "alkali"] += alkali.koh_mg / gross * _purity_spread(alkali) / alkali.purity_ppm
    return found


def _steps(
    fats: Sequence[FatCharge], alkalis: Sequence[AlkaliCharge], full: Fraction, gross: Fraction, step: int
) -> list[tuple[str, Fraction]]:
    """What a step of the scale leaves open at each weighing, and what it is untrue by between fats and lye."""
    found = [("fat", step * fat.sap_mg_per_kg / MG_PER_KG / full) for fat in fats]
    found += [("alkali", alkali.koh_mg / gross * step / alkali.mass_mg) for alkali in alkalis if alkali.mass_mg]
    return [*found, ("alkali", Fraction(UNTRUE_PPM, WHOLE_PPM))] if step and gross else found


def _root(shares: Iterable[Fraction]) -> Fraction:
    """The root of the sum of squares, downwards to a thousand-millionth."""
    return Fraction(isqrt(floor(sum((one**2 for one in shares), Fraction(0)) * 10**18)), 10**9)


def _at_its_least(fat: FatCharge, step: int) -> Fraction:
    """Its demand as KOH at the foot of its range and a scale step less, in mg."""
    return max(fat.mass_mg - step, 0) * (fat.sap_mg_per_kg - _sap_spread(fat)) / MG_PER_KG


def _sap_spread(fat: FatCharge) -> Fraction:
    half = Fraction(fat.sap_high_mg_per_kg - fat.sap_low_mg_per_kg, 2)
    return max(half, Fraction(STATED_SAP_SPREAD))


def _purity_spread(alkali: AlkaliCharge) -> Fraction:
    """Upwards only: an alkali cannot be purer than pure, so one reckoned as pure leaves nothing open."""
    half = Fraction(alkali.purity_high_ppm - alkali.purity_low_ppm, 2)
    return min(max(half, Fraction(STATED_PURITY_SPREAD)), WHOLE_PPM - alkali.purity_ppm)


def _purity_below(alkali: AlkaliCharge) -> Fraction:
    """Downwards: one reckoned as pure may be as weak as is sold."""
    if alkali.purity_ppm == WHOLE_PPM:
        return Fraction(WHOLE_PPM - PURE_DOWN_TO_PPM)
    half = Fraction(alkali.purity_high_ppm - alkali.purity_low_ppm, 2)
    return max(half, Fraction(STATED_PURITY_SPREAD))


def _at_its_top(alkali: AlkaliCharge, step: int) -> Fraction:
    """Its worth as KOH at its highest purity and a scale step more, in mg."""
    if not alkali.mass_mg:
        return Fraction(0)
    top = (alkali.purity_ppm + _purity_spread(alkali)) / alkali.purity_ppm
    return alkali.koh_mg * top * Fraction(alkali.mass_mg + step, alkali.mass_mg)


class SaferAdvice(NamedTuple):
    """What would bring likely low above zero: a superfat, and the one certificate that would narrow it most."""

    superfat_ppm: int | None  # None: no superfat up to 49 % would
    certificate_of: str | None  # None where nothing but the scale is open
    with_certificate_ppm: int | None  # likely low with that certificate, at the superfat as it is


def safer(
    at: Callable[[int], Superfat], superfat_ppm: int, now: Superfat, certified: Callable[[str], Superfat]
) -> SaferAdvice:
    """The advice for a recipe whose likely low is at or below zero.

    `at` reckons the pot at another superfat; `certified` reckons it with a certificate for one thing by name.
    """
    enough = next(
        (ppm for ppm in range((superfat_ppm // STEP + 1) * STEP, 490_001, STEP) if at(ppm).likely_low_ppm > 0), None
    )
    widest = next((one.what for one in now.spreads if one.of not in ("scale", "slow fat") and one.share_ppm), None)
    return SaferAdvice(enough, widest, certified(widest).likely_low_ppm if widest else None)


def all_low_warning(found: Superfat | None) -> str | None:
    """The sentence that stays with a batch whose superfat is nothing, may be, or would be with all at its limit."""
    if found is None or found.all_low_ppm > 0:
        return None
    if found.nominal_ppm <= 0:
        return (
            f"LYE IS LEFT OVER: the superfat is {show_share(found.nominal_ppm, 2)}, and the bars burn. They are not "
            "for skin: give the batch up, or rework it."
        )
    if found.likely_low_ppm <= 0:
        return (
            f"Lye may be left over: the superfat is likely to be as low as {show_share(found.likely_low_ppm, 2)}. "
            "Test every bar before any is passed."
        )
    return (
        f"With every lot, the alkali and the scale at their limits together the superfat would be "
        f"{show_share(found.all_low_ppm, 2)} (all low): rare, but test the bars before they are passed."
    )
