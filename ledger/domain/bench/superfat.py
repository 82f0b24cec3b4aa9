"""What is doubted of a superfat before a batch is planned or its weights are booked, and what would lift it."""

from collections.abc import Sequence

from ledger.domain.bench.decision import Doubt
from ledger.domain.lye.pot import stated
from ledger.domain.lye.uncertainty import Superfat
from ledger.domain.lye.weighed import LyeCheck
from ledger.domain.recipe.formulate import Formulation
from ledger.units.quantity import show_share
from ledger.units.words import LIKELY_NOTHING


def likely_low_refusal(worked: Formulation, name: str) -> str | None:
    """Why a recipe is not planned with what is in hand, and what would make it safe; None where it may be."""
    low = worked.pot.lowest()
    if low.likely_low_ppm > 0:
        return None
    pot = " in the pot, before the fat held back goes in," if worked.pot.before_addition() else ""
    what = (
        f"{name} is reckoned{pot} with a superfat of {show_share(low.nominal_ppm, 2)}, but from what is known of "
        f"these lots it is likely to be as low as {show_share(low.likely_low_ppm, 2)}: lye may be left over and burn."
    )
    advice = worked.advice()
    ways = []
    if worked.pot.before_addition():
        ways.append("keep the fat held back out of the demand (in_demand = false), or hold back less of it")
    if advice.superfat_ppm is not None:
        ways.append(f"write superfat = {advice.superfat_ppm / 10_000:g} in the recipe")
    if advice.certificate_of is not None and advice.with_certificate_ppm is not None:
        enough = "would do by itself" if advice.with_certificate_ppm > 0 else "would narrow it most"
        ways.append(
            f"get the certificate of the lot of {advice.certificate_of}, which {enough} "
            f"(likely low {show_share(advice.with_certificate_ppm, 2)} if it gives the middle of the range)"
        )
    known = stated([*(one.figures for one in worked.charges), *worked.alkalis.values()], worked.recipe.process)
    return (
        f"{what}{_reckoned(known)} What would lift it: {'; or '.join(ways)}. To plan it as it is, add --anyway REASON."
    )


def _reckoned(known: Sequence[str]) -> str:
    """Whose the single figures are that the superfat is reckoned with."""
    return f" Reckoned with {'; '.join(known)}." if known else ""


def superfat_doubt(words: str, low: Superfat) -> Doubt:
    """What is doubted of a superfat, as it is refused.

    That likely low may be nothing is decided once for a batch, however far; a superfat that is itself nothing is
    decided for its figure alone.
    """
    burns = () if low.nominal_ppm > 0 else (show_share(low.nominal_ppm, 2),)
    return Doubt("superfat", words, (LIKELY_NOTHING, *burns))


def as_weighed_doubt(batch: str, check: LyeCheck) -> Doubt | None:
    """Why weights are not booked without a decision; None where they may be."""
    low = check.before_addition or check.superfat or check.as_meant
    if low is None or low.likely_low_ppm > 0:
        return None
    pot = ", before the fat held back goes in," if check.before_addition else ""
    if low is check.as_meant:
        pot = ", with what goes in at trace at its target,"
    shown = f"With these weights batch {batch}{pot} has a superfat of {show_share(low.nominal_ppm, 2)}"
    ways = (
        f"Nothing was written. Weigh again; for what can be done: soapledger batch correct {batch} LINE=GRAMS. "
        "To keep it as it is, add --anyway REASON."
    )
    if low.nominal_ppm <= 0:
        return superfat_doubt(f"{shown}: lye is left over and it would burn. {ways}", low)
    likely = f"likely as low as {show_share(low.likely_low_ppm, 2)}: lye may be left over and burn."
    return superfat_doubt(f"{shown}, {likely}{_reckoned(check.stated)} {ways}", low)


def burning_doubt(batch: str, take: str, found: Superfat) -> Doubt:
    """Why a way that leaves lye over, or may, is none and is not booked without a decision."""
    shown = f"superfat of {show_share(found.nominal_ppm, 2)}"
    left = "lye is left over and it would burn"
    if found.nominal_ppm > 0:
        shown += f", likely as low as {show_share(found.likely_low_ppm, 2)}"
        left = "lye may be left over and burn"
    words = (
        f"'{take}' is not a way out here: it leaves batch {batch} with a {shown}: {left}. Nothing was written. "
        "If it is done already, book it with --anyway REASON, which is kept."
    )
    return superfat_doubt(words, found)
