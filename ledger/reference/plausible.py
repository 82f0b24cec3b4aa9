"""Whether a saponification value typed from a certificate is believable for the fat it is said to be."""

from ledger.domain.lye.fatty_acids import far_from_profile, implied_sap
from ledger.errors import BadInput
from ledger.reference.find import called
from ledger.reference.tables import fats, fatty_acids, profiles
from ledger.units.quantity import show_sap
from ledger.units.words import AlkaliKind

_LEAST_FAT, _MOST_FAT = 85_000, 275_000  # waxes to coconut; common practice, no source
_MOST_OF_MCT = 365_000  # of medium-chain triglycerides alone: Ph. Eur. 310-360, from memory, unverified


# mg KOH per kg: no fat of the trade lies beyond; common practice, no source.
_LEAST_SAP, _MOST_SAP = 40_000, 400_000


def possible_sap(low_mg_per_kg: int, high_mg_per_kg: int) -> bool:
    """Whether a value, or a range with its lower figure first, is one that a fat can have at all."""
    return _LEAST_SAP <= low_mg_per_kg <= high_mg_per_kg <= _MOST_SAP


def check_sap(name: str, low_mg_per_kg: int, high_mg_per_kg: int) -> None:
    """Raise BadInput for a saponification value that no fat has, or a range the wrong way round."""
    if not possible_sap(low_mg_per_kg, high_mg_per_kg):
        value = sap_range(low_mg_per_kg, high_mg_per_kg)
        raise BadInput(
            f"{name}: a saponification value of {value} mg KOH/g cannot be; fats lie between about 45 and 360, the "
            "lower figure first. One given for NaOH, such as 0.134, is multiplied by 1402.7."
        )


def sap_doubt(name: str, reference_key: str | None, low_mg_per_kg: int, high_mg_per_kg: int) -> str | None:
    """A sentence for a value over 5 % from the published range or from what its fatty acids imply; else None.

    Five percent: common practice, no source; the two ways of reckoning agree within it for the published fats.
    """
    fat = fats().get(reference_key or "")
    value = sap_range(low_mg_per_kg, high_mg_per_kg)
    ends = f"{name}: the saponification value {value}"
    if fat is None:
        most = _MOST_OF_MCT if "fractionated coconut" in called(name) else _MOST_FAT
        if low_mg_per_kg >= _LEAST_FAT and high_mg_per_kg <= most and high_mg_per_kg * 100 <= low_mg_per_kg * 125:
            return None
        return (
            f"{ends} mg KOH/g is unusual (fats lie between about 90 and 270, each within a fifth), and the lye would "
            "follow it."
        )
    if low_mg_per_kg * 100 < fat.sap_low_mg_per_kg * 95 or high_mg_per_kg * 100 > fat.sap_high_mg_per_kg * 105:
        known = sap_range(fat.sap_low_mg_per_kg, fat.sap_high_mg_per_kg)
        return f"{ends} lies far from the {known} published for {fat.name}, and the lye would follow it."
    profile = profiles().get(fat.key)
    if profile is None:
        return None
    implied = implied_sap(profile, fatty_acids(), free=fat.ester == "acid")
    if far_from_profile(low_mg_per_kg, high_mg_per_kg, implied, fat.unsaponifiable_ppm):
        return (
            f"{ends} lies over 5 % from the {show_sap(implied)} that the usual fatty acids of {fat.name} imply, "
            "and the lye would follow it."
        )
    return None


# What the trade sells: NaOH 97.0-100.5 % (95.0 at least: USP), KOH 85.0 % at least and seldom above 95 %. Ph. Eur. and
# USP, from memory, unverified.
_SOLD_PPM = {"NaOH": (950_000, 1_000_000), "KOH": (830_000, 960_000)}
_WIDEST_PPM = 60_000  # a certificate's range wider than this is a slip; common practice, no source


def purity_doubt(name: str, kind: AlkaliKind, low_ppm: int, high_ppm: int | None) -> str | None:
    """A sentence for a purity that flakes of that alkali are hardly sold at, since the lye follows it; else None."""
    least, most = _SOLD_PPM[kind]
    high = low_ppm if high_ppm is None else high_ppm
    shown = f"{low_ppm / 10_000:g}" + (f" to {high / 10_000:g}" if high != low_ppm else "")
    if least <= low_ppm and high <= most and high - low_ppm <= _WIDEST_PPM:
        return None
    return (
        f"{name}: a purity of {shown} % is unusual for {kind}, which is sold at {least / 10_000:g} to "
        f"{most / 10_000:g} %, and the lye would follow it: too low a figure asks for too much lye."
    )


def sap_range(low_mg_per_kg: int, high_mg_per_kg: int) -> str:
    """A value or a range as it is read: 190.0, or 184.0 to 196.0."""
    low, high = show_sap(low_mg_per_kg), show_sap(high_mg_per_kg)
    return low if low == high else f"{low} to {high}"
