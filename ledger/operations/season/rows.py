"""Reads the rows of the sample season's tables as what the operations take."""

from dataclasses import replace
from datetime import date, timedelta

from ledger.operations.material.materials import MaterialFacts, started_from
from ledger.operations.stock.receive import DeliveryLine
from ledger.reference.find import find_reference
from ledger.reference.tables import ReferenceLiquid
from ledger.storage.personal import PersonDetails
from ledger.units.money import parse_money
from ledger.units.quantity import parse_amount, parse_number, parse_pieces, parse_share


def person_details(row: dict[str, str]) -> PersonDetails:
    """Whom to ask for at a supplier or a shop."""
    return PersonDetails(row["contact"] or None, row["phone"] or None, row["email"] or None, row["address"] or None)


def _density(row: dict[str, str]) -> int | None:
    if row["density"]:
        return round(parse_number(row["density"]) * 1000)
    like = find_reference(row["like"]) if row["like"] else None
    return like.density_mg_per_ml if isinstance(like, ReferenceLiquid) else None


def material_facts(row: dict[str, str]) -> MaterialFacts:
    """A material, with the published figures of what it is like."""
    facts = MaterialFacts(row["name"])
    if row["like"]:
        facts = started_from(facts, find_reference(row["like"]))
    return replace(
        facts,
        inci=row["inci"] or facts.inci,
        purity_ppm=parse_share(row["purity"]) if row["purity"] else facts.purity_ppm,
        density_mg_per_ml=_density(row) or facts.density_mg_per_ml,
        note=row["note"] or None,
    )


def delivery_line(row: dict[str, str], material: dict[str, str], on: date, currency: str) -> DeliveryLine:
    """One line of a delivery of that material that came on that day."""
    sap = round(parse_number(row["sap"]) * 1000) if row["sap"] else None
    low, _, high = row["purity"].partition("-")
    counted = material["kind"] == "packaging"
    return DeliveryLine(
        material=row["material"],
        quantity=parse_pieces(row["quantity"])
        if counted
        else parse_amount(row["quantity"], density_mg_per_ml=_density(material)),
        supplier_number=None if row["lot"] == "unknown" else row["lot"],
        cost_minor=parse_money(row["cost"], currency),
        best_before=on + timedelta(days=int(row["best_before_days"])) if row["best_before_days"] else None,
        sap_mg_per_kg=(sap, sap) if sap else None,
        purity_ppm=parse_share(low) if low else None,
        purity_high_ppm=parse_share(high) if high else None,
        certificate=row["certificate"] or None,
        hold_back=row["hold"] or None,
    )
