"""A material's figures on the screen."""

from ledger.cli.kit.show import say, say_wrapped, table
from ledger.reference.find import published
from ledger.reference.tables import Reference, ReferenceAcid, ReferenceFat, ReferenceLiquid


def sap_text(low: int | None, high: int | None) -> str:
    """A saponification value or range in mg KOH per g; empty where none is known."""
    if low is None or high is None:
        return ""
    return f"{low / 1000:g}" if low == high else f"{low / 1000:g} to {high / 1000:g}"


def say_published() -> None:
    """What --like can start from, with what else each is called and its figure."""
    every = published().values()
    say_wrapped(f"{len(every)} published materials; write one behind --like, by its name or by what else it is called.")
    rows = [(one.key, _figure(one), "; ".join(one.aliases)) for one in sorted(every, key=_order)]
    table(("like", "figure", "also called"), rows)
    say_wrapped("A value is mg KOH per g; one marked m is from memory, unverified. Your lot's certificate goes first.")
    say('Next: soapledger material add "olive oil" --like olive')


def _order(one: Reference) -> tuple[int, str]:
    kinds = (ReferenceFat, ReferenceAcid, ReferenceLiquid)
    return next((place for place, kind in enumerate(kinds) if isinstance(one, kind)), len(kinds)), one.key


def _figure(one: Reference) -> str:
    if isinstance(one, ReferenceFat):
        return f"{sap_text(one.sap_low_mg_per_kg, one.sap_high_mg_per_kg)}{' m' if one.status == 'memory' else ''}"
    if isinstance(one, ReferenceAcid):
        return f"{one.koh_mg_per_kg / 1000:.1f}, acid"
    return f"{one.water_ppm / 10_000:g} % water" if isinstance(one, ReferenceLiquid) else one.kind
