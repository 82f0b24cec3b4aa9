"""Reads what she types about a material, starting from published figures where she names them."""

from dataclasses import fields, replace
from typing import Annotated, Literal

import typer

from ledger.cli.kit.desk import Desk
from ledger.cli.kit.show import say_wrapped
from ledger.errors import BadInput
from ledger.operations.material.materials import MaterialFacts, started_from
from ledger.reference.find import find_reference
from ledger.reference.tables import ReferenceAcid, ReferenceAlkali, ReferenceFat
from ledger.rows.material import MaterialCard, material_by_code
from ledger.units.quantity import parse_number, parse_share
from ledger.units.words import AlkaliKind, MaterialKind
from ledger.views.material.figures import figures_of

Like = Annotated[
    str | None, typer.Option("--like", help="Start from published figures: olive, citric acid, goat milk …")
]
Inci = Annotated[str | None, typer.Option("--inci", help="Its INCI name, as the label lists it.")]
Salts = Annotated[
    str | None,
    typer.Option("--salts", help="INCI names of its soaps, sodium first: 'SODIUM OLIVATE; POTASSIUM OLIVATE'."),
]
Sap = Annotated[str | None, typer.Option("--sap", help="Saponification value, mg KOH per g: 190 or 184-196.")]
Source = Annotated[str | None, typer.Option("--sap-source", help="Where that value stands, e.g. its certificate.")]
Alkali = Annotated[str | None, typer.Option("--alkali", help="NaOH or KOH.")]
Purity = Annotated[str | None, typer.Option("--purity", help="Purity of the alkali, percent.")]
Strength = Annotated[
    str | None, typer.Option("--strength", help="Strength of an acid, or of an alkali kept dissolved, percent.")
]
Water = Annotated[str | None, typer.Option("--water", help="The share of water in a liquid, percent: milk 87.")]
UsesUp = Annotated[
    str | None,
    typer.Option("--uses-up", help="The alkali that anything uses up, mg KOH per g: an acid value, 45, or 8-12."),
]
Density = Annotated[str | None, typer.Option("--density", help="Density in g per mL, e.g. 0.92.")]


def read_sap(text: str, *, what: str = "the saponification value") -> tuple[int, int]:
    """A saponification value or range in mg KOH per g, as mg KOH per kg; raises BadInput."""
    parts = text.replace("–", "-").split("-")
    if len(parts) > 2:
        raise BadInput(f"'{text}' is not {what.replace('the ', 'a ')}; write 190 or 184-196.")
    values = [round(parse_number(part, what=what) * 1000) for part in parts]
    return values[0], values[-1]


def read_purity(text: str) -> tuple[int, int | None]:
    """A purity in percent, or a range such as 98-100, in ppm; raises BadInput."""
    parts = text.replace("–", "-").split("-")
    values = [parse_share(part, what="the purity") for part in parts]
    if len(values) > 2 or values[0] > values[-1]:
        raise BadInput(f"'{text}' is not a purity; write 99, or 98-100 with the lower figure first.")
    return values[0], values[1] if len(values) == 2 else None


def read_density(text: str) -> int:
    """A density in g per mL as mg per mL; raises BadInput for what nothing here has.

    The lightest is mica, loose, at 0.2 (from memory, unverified), the heaviest far above any lye.
    """
    plain = text.removesuffix("g/mL").removesuffix("g/ml").strip()
    density = round(parse_number(plain, what="the density") * 1000)
    if not 200 <= density <= 2500:
        raise BadInput(f"A density of {text} cannot be; oils lie near 0.92 g/mL, water at 1.00.")
    return density


def kind_of(like: str | None, alkali: str | None) -> MaterialKind | Literal[""]:
    """The kind of material that published figures or an alkali make it; nothing where neither was named."""
    if like is None:
        return "alkali" if alkali else ""
    found = find_reference(like)
    if isinstance(found, ReferenceFat):
        return "fat"
    if isinstance(found, ReferenceAlkali):
        return "alkali"
    return "additive" if isinstance(found, ReferenceAcid) else "liquid"


def read_facts(
    old: MaterialFacts,
    kind: MaterialKind,
    *,
    like: str | None,
    inci: str | None,
    salts: str | None,
    sap: str | None,
    source: str | None,
    alkali: str | None,
    purity: str | None,
    strength: str | None,
    water: str | None,
    uses_up: str | None,
    density: str | None,
    note: str | None,
) -> MaterialFacts:
    """What is known of a material after what was typed; what was left out stays. Raises BadInput."""
    facts = started_from(old, find_reference(like)) if like else old
    if inci:
        facts = replace(facts, inci=inci.upper())
    if salts:
        sodium, _, potassium = (part.strip().upper() or None for part in salts.partition(";"))
        facts = replace(facts, inci_sodium=sodium, inci_potassium=potassium)
    if sap:
        low, high = read_sap(sap)
        facts = replace(facts, sap_low_mg_per_kg=low, sap_high_mg_per_kg=high, sap_source=source or "your own entry")
    if alkali:
        if alkali.lower() not in ("naoh", "koh"):
            raise BadInput(f"'{alkali}' is not an alkali known here; write NaOH or KOH.")
        meant: AlkaliKind = "NaOH" if alkali.lower() == "naoh" else "KOH"
        name = "SODIUM HYDROXIDE" if meant == "NaOH" else "POTASSIUM HYDROXIDE"
        facts = replace(facts, alkali_kind=meant, inci=inci.upper() if inci else name)
    if purity and strength:
        raise BadInput("Flakes have a purity and a stock lye has a strength; give one of them.")
    if purity:
        facts = replace(facts, purity_ppm=parse_share(purity, what="the purity"))
    if strength:
        ppm = parse_share(strength, what="the strength")
        facts = replace(facts, purity_ppm=ppm)
        if facts.alkali_kind:  # the rest of a stock lye is water
            facts = replace(facts, water_ppm=max(1_000_000 - ppm, 0))
    if water:
        facts = replace(facts, water_ppm=parse_share(water, what="the water"))
    if uses_up:  # of a range the lower end, which errs towards less lye
        low, _ = read_sap(uses_up, what="what it uses up")
        facts = replace(facts, acid_koh_mg_per_kg=low or None)
        if facts.acid_koh_mg_per_kg and kind == "additive" and facts.purity_ppm is None:
            facts = replace(facts, purity_ppm=1_000_000)
    if density:
        facts = replace(facts, density_mg_per_ml=read_density(density))
    if note:
        facts = replace(facts, note=note)
    return facts


def as_facts(card: MaterialCard) -> MaterialFacts:
    """What is known of a material now."""
    return MaterialFacts(**{field.name: getattr(card, field.name) for field in fields(MaterialFacts)})


def say_typed(here: Desk, code: str) -> None:
    """How far one figure typed for a material is trusted, and where a certificate's goes."""
    if words := figures_of(material_by_code(here.rows(), code)).stated():
        say_wrapped(f"{words} (common practice, no source). A certificate's figure goes to its lot, as it is received.")
