"""Reads the rows of the sample season's tables as what the operations take."""

from datetime import date, timedelta

from ledger.domain.money import parse_money
from ledger.domain.quantity import parse_amount, parse_number, parse_pieces, parse_share
from ledger.operations.materials import MaterialFacts
from ledger.operations.receive import DeliveryLine
from ledger.reference.tables import ReferenceFat, find_reference
from ledger.storage.personal import PersonDetails

_ALKALI_INCI = {"NaOH": "SODIUM HYDROXIDE", "KOH": "POTASSIUM HYDROXIDE"}


def person_details(row: dict[str, str]) -> PersonDetails:
    """Whom to ask for at a supplier or a shop."""
    return PersonDetails(row["contact"] or None, row["phone"] or None, row["email"] or None, row["address"] or None)


def _density(row: dict[str, str]) -> int | None:
    return round(parse_number(row["density"]) * 1000) if row["density"] else None


def material_facts(row: dict[str, str]) -> MaterialFacts:
    """A material, with the published figures of the fat it is like."""
    like = find_reference(row["like"]) if row["like"] else None
    fat = like if isinstance(like, ReferenceFat) else None
    return MaterialFacts(
        name=row["name"],
        inci=row["inci"] or (fat.inci if fat else _ALKALI_INCI.get(row["alkali"])),
        reference_key=fat.key if fat else None,
        sap_low_mg_per_kg=fat.sap_low_mg_per_kg if fat else None,
        sap_high_mg_per_kg=fat.sap_high_mg_per_kg if fat else None,
        sap_source=fat.source if fat else None,
        alkali_kind=row["alkali"] or None,
        purity_ppm=parse_share(row["purity"]) if row["purity"] else None,
        density_mg_per_ml=_density(row),
        note=row["note"] or None,
        inci_sodium=fat.inci_sodium if fat else None,
        inci_potassium=fat.inci_potassium if fat else None,
    )


def delivery_line(row: dict[str, str], material: dict[str, str], on: date, currency: str) -> DeliveryLine:
    """One line of a delivery of that material that came on that day."""
    sap = round(parse_number(row["sap"]) * 1000) if row["sap"] else None
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
        purity_ppm=parse_share(row["purity"]) if row["purity"] else None,
        certificate=row["certificate"] or None,
        hold_back=row["hold"] or None,
    )
