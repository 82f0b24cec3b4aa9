"""Asking again about unlikely figures of a material."""

from ledger.cli.kit.show import confirm
from ledger.domain.lye.saponification import LEAST_PURITY_PPM
from ledger.operations.material.materials import MaterialFacts
from ledger.reference.plausible import possible_sap, purity_doubt, sap_doubt


def ask_about(facts: MaterialFacts, yes: bool) -> None:
    """Ask again about a saponification value or a purity that is unlikely; what cannot be is refused later."""
    doubts = []
    flakes = facts.water_ppm is None and (facts.purity_ppm or 0) >= LEAST_PURITY_PPM
    if flakes and facts.alkali_kind and facts.purity_ppm is not None:
        doubts.append(purity_doubt(facts.name, facts.alkali_kind, facts.purity_ppm, None))
    low, high = facts.sap_low_mg_per_kg, facts.sap_high_mg_per_kg
    if low is not None and high is not None and possible_sap(low, high):
        doubts.append(sap_doubt(facts.name, facts.reference_key, low, high))
    for doubt in filter(None, doubts):
        confirm(f"{doubt} Is it right?", yes)
