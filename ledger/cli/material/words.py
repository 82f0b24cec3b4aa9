"""Asking again about unlikely figures of a material."""

from ledger.cli.kit.show import confirm, say, say_wrapped
from ledger.domain.lye.saponification import LEAST_PURITY_PPM
from ledger.operations.material.materials import MaterialFacts
from ledger.reference.find import called, find_reference, named_so, published
from ledger.reference.plausible import possible_sap, purity_doubt, sap_doubt
from ledger.reference.tables import Reference, ReferenceFat
from ledger.units.wording import opening


def ask_about(facts: MaterialFacts, yes: bool, *, like: str | None = None) -> None:
    """Ask again about a saponification value or a purity that is unlikely; what cannot be is refused later.

    Also where its own name calls it another published material than the one it starts from.
    """
    doubts = [_other_name(facts.name, find_reference(like))] if like else []
    flakes = facts.water_ppm is None and (facts.purity_ppm or 0) >= LEAST_PURITY_PPM
    if flakes and facts.alkali_kind and facts.purity_ppm is not None:
        doubts.append(purity_doubt(facts.name, facts.alkali_kind, facts.purity_ppm, None))
    low, high = facts.sap_low_mg_per_kg, facts.sap_high_mg_per_kg
    if low is not None and high is not None and possible_sap(low, high):
        doubts.append(sap_doubt(facts.name, facts.reference_key, low, high))
    for doubt in filter(None, doubts):
        confirm(f"{doubt} Is it right?", yes)


def _other_name(name: str, found: Reference) -> str | None:
    keys = called(name)
    if not keys or named_so(name, found):
        return None
    other = published()[min(keys)]
    return f"{name} is called like {other.name}, and starts from the figures of {found.name}."


def say_of_it(code: str, facts: MaterialFacts, like: str | None) -> None:
    """What is remarked of what a material is like, and that its INCI name was left where it is not called so."""
    found = find_reference(like) if like else None
    if isinstance(found, ReferenceFat) and found.note:
        say_wrapped(f"{opening(found.name)}: {found.note}.")
    if found and found.inci and facts.inci != found.inci and not named_so(facts.name, found):
        say_wrapped(f"The INCI name of {found.name} was not taken, since {facts.name} is not called so.")
        say(f'If it is the same: soapledger material edit {code} --inci "{found.inci}"')
