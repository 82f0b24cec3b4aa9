"""Add a material, or change what is known of one."""

from dataclasses import asdict, dataclass, replace

from ledger.domain.lye.saponification import check_purity
from ledger.errors import BadInput
from ledger.reference.find import named_so
from ledger.reference.plausible import check_sap
from ledger.reference.tables import Reference, ReferenceAcid, ReferenceAlkali, ReferenceFat
from ledger.rows.material import material_by_code, material_list
from ledger.storage.book import Book
from ledger.storage.tables.material import Material, MaterialRevision
from ledger.units.quantity import WHOLE_PPM
from ledger.units.shortcode import check_code, short_code
from ledger.units.signs import folded
from ledger.units.words import AlkaliKind, MaterialKind

# mg KOH per kg: waxes lie near 90 000, the shortest fats of the trade near 270 000 (common practice, no source);


@dataclass(frozen=True)
class MaterialFacts:
    """What is known of a material, with where the saponification value comes from."""

    name: str
    inci: str | None = None
    reference_key: str | None = None
    sap_low_mg_per_kg: int | None = None
    sap_high_mg_per_kg: int | None = None
    sap_source: str | None = None
    alkali_kind: AlkaliKind | None = None
    purity_ppm: int | None = None
    density_mg_per_ml: int | None = None
    note: str | None = None
    inci_sodium: str | None = None
    inci_potassium: str | None = None
    acid_koh_mg_per_kg: int | None = None
    water_ppm: int | None = None


def started_from(facts: MaterialFacts, found: Reference) -> MaterialFacts:
    """The facts with the published figures of what a material is like.

    INCI names are taken only where its own name calls it so: goat milk gives yogurt its water and not its name.
    """
    own = named_so(facts.name, found)
    facts = replace(facts, reference_key=found.key, inci=(found.inci if own else None) or facts.inci)
    if isinstance(found, ReferenceFat):
        return replace(
            facts,
            sap_low_mg_per_kg=found.sap_low_mg_per_kg,
            sap_high_mg_per_kg=found.sap_high_mg_per_kg,
            sap_source=found.source,
            inci_sodium=found.inci_sodium if own else facts.inci_sodium,
            inci_potassium=found.inci_potassium if own else facts.inci_potassium,
        )
    if isinstance(found, ReferenceAlkali):
        return replace(facts, alkali_kind=found.kind)
    if isinstance(found, ReferenceAcid):
        return replace(facts, acid_koh_mg_per_kg=found.koh_mg_per_kg, purity_ppm=found.strength_ppm)
    return replace(facts, water_ppm=found.water_ppm, density_mg_per_ml=found.density_mg_per_ml)


def check_facts(kind: MaterialKind, facts: MaterialFacts) -> None:
    """Raise BadInput for what the lye cannot be reckoned with: a fat without a value, KOH without purity."""
    low, high = facts.sap_low_mg_per_kg, facts.sap_high_mg_per_kg
    if kind == "fat" and (low is None or high is None):
        raise BadInput(
            f"{facts.name} is a fat without a saponification value; add --sap 188-192 from its certificate, "
            "or --like olive to start from a published range."
        )
    if low is not None and high is not None:
        check_sap(facts.name, low, high)
    if kind not in ("fat", "intermediate") and low is not None:
        raise BadInput(
            f"Only a fat, or an oil of your own making, has a saponification value; leave out --sap for {facts.name}."
        )
    if kind == "alkali" and facts.alkali_kind is None:
        raise BadInput(f"Which alkali is {facts.name}? Add --alkali NaOH or --alkali KOH.")
    if facts.acid_koh_mg_per_kg is not None:
        _check_uses_up(kind, facts)
        if kind == "additive" and facts.purity_ppm is None:
            raise BadInput(f"How strong is {facts.name}? Add --strength 80, as its label or certificate says.")
        if facts.purity_ppm is not None and not 0 < facts.purity_ppm <= WHOLE_PPM:
            raise BadInput(
                f"A strength of {facts.purity_ppm / 10_000:g} % cannot be; it lies above 0, at most at 100 %."
            )
    elif kind == "alkali" and facts.purity_ppm is not None:
        check_purity(facts.purity_ppm, what=facts.name, dissolved=facts.water_ppm is not None)
    elif facts.purity_ppm is not None:
        raise BadInput(f"{facts.name} is neither an alkali nor an acid, so it has no purity or strength; leave it out.")
    if facts.water_ppm is not None and (kind not in ("liquid", "alkali") or not 0 < facts.water_ppm <= WHOLE_PPM):
        raise BadInput(f"The water in {facts.name} is a share above 0, at most 100 %, of a liquid; look at --water.")
    if facts.alkali_kind == "KOH" and facts.purity_ppm is None:
        raise BadInput("KOH is sold at 85 to 95 % and the lye depends on it; add --purity 90 from its certificate.")


def _check_uses_up(kind: MaterialKind, facts: MaterialFacts) -> None:
    """Raise BadInput for alkali used up where it is told otherwise, or by what is not weighed into a pot."""
    if kind in ("fat", "intermediate", "alkali", "packaging", "soap", "rework"):
        why = "its saponification value tells that" if kind in ("fat", "intermediate") else f"it is {kind}"
        raise BadInput(f"{facts.name} is not said to use up alkali: {why}. Leave out --uses-up.")
    if kind != "additive" and facts.purity_ppm is not None:
        raise BadInput(
            f"An acid such as {facts.name} is an additive; write --kind additive. Of anything else write what it uses "
            "up as it is (--uses-up), and no strength."
        )
    if kind == "liquid" and facts.water_ppm is None:
        raise BadInput(f"How much of {facts.name} is water? Add --water 87, in percent.")


def add_material(book: Book, facts: MaterialFacts, *, kind: MaterialKind, code: str | None) -> str:
    """Book a new material and return its short name. Raises BadInput when the name or code is taken."""
    check_facts(kind, facts)
    with book.write("material add") as tx:
        known = material_list(tx.rows)
        taken = {one.code for one in known}
        if any(folded(one.name) == folded(facts.name) for one in known):
            raise BadInput(
                f"There is a material '{facts.name}' already; change it with: soapledger material edit \"{facts.name}\""
            )
        chosen = check_code(code, taken, noun="material") if code else short_code(facts.name, taken)
        material = tx.add(Material(code=chosen, kind=kind))
        assert material.id is not None
        tx.add(_revision(material.id, facts))
        tx.say(f"Added material {facts.name} ({chosen}).")
    return chosen


def edit_material(book: Book, code: str, facts: MaterialFacts) -> None:
    """Write a new revision of a material; batches made before keep the figures they used."""
    with book.write("material edit") as tx:
        material = material_by_code(tx.rows, code)
        check_facts(material.kind, facts)
        tx.add(_revision(material.id, facts))
        tx.say(f"Changed material {facts.name} ({material.code}).")


def _revision(material_id: int, facts: MaterialFacts) -> MaterialRevision:
    return MaterialRevision(material_id=material_id, **asdict(facts))
