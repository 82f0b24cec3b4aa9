"""Whether a saponification value typed from a certificate is believable for the fat it is said to be."""

from ledger.domain.fatty_acids import far_from_profile, implied_sap
from ledger.domain.quantity import show_sap
from ledger.reference.tables import fats, fatty_acids, profiles


def sap_doubt(name: str, reference_key: str | None, low_mg_per_kg: int, high_mg_per_kg: int) -> str | None:
    """A sentence for a value over 5 % from the published range or from what its fatty acids imply; else None.

    Five percent: common practice, no source; the two ways of reckoning agree within it for the published fats.
    """
    fat = fats().get(reference_key or "")
    if fat is None:
        return None
    value = sap_range(low_mg_per_kg, high_mg_per_kg)
    ends = f"{name}: the saponification value {value}"
    if low_mg_per_kg * 100 < fat.sap_low_mg_per_kg * 95 or high_mg_per_kg * 100 > fat.sap_high_mg_per_kg * 105:
        known = sap_range(fat.sap_low_mg_per_kg, fat.sap_high_mg_per_kg)
        return f"{ends} lies far from the {known} published for {fat.name}, and the lye would follow it."
    profile = profiles().get(fat.key)
    if profile is None:
        return None
    implied = implied_sap(profile, fatty_acids())
    if far_from_profile(low_mg_per_kg, high_mg_per_kg, implied, fat.unsaponifiable_ppm):
        return (
            f"{ends} lies over 5 % from the {show_sap(implied)} that the usual fatty acids of {fat.name} imply, "
            "and the lye would follow it."
        )
    return None


def sap_range(low_mg_per_kg: int, high_mg_per_kg: int) -> str:
    """A value or a range as it is read: 190.0, or 184.0 to 196.0."""
    low, high = show_sap(low_mg_per_kg), show_sap(high_mg_per_kg)
    return low if low == high else f"{low} to {high}"
