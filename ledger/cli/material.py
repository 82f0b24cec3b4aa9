"""soapledger material: what goes into the pot, on the bar or round it."""

from typing import TYPE_CHECKING, Annotated

import typer

from ledger.cli.desk import desk
from ledger.cli.show import out_json, say, table
from ledger.errors import BadInput

if TYPE_CHECKING:
    from ledger.operations.materials import MaterialFacts
    from ledger.views.material import MaterialCard

app = typer.Typer(help="Fats, lye, essential oils, wrappers and the rest: add, edit, list, show.")

KINDS = (
    "fat",
    "alkali",
    "liquid",
    "additive",
    "fragrance",
    "botanical",
    "colourant",
    "packaging",
    "intermediate",
    "rework",
)

Json = Annotated[bool, typer.Option("--json", help="Answer as JSON.")]
Which = Annotated[str, typer.Argument(help="Its short name or name.")]
Like = Annotated[str | None, typer.Option("--like", help="Start from a published fat, e.g. olive or coconut.")]
Inci = Annotated[str | None, typer.Option("--inci", help="Its INCI name, as the label lists it.")]
Sap = Annotated[str | None, typer.Option("--sap", help="Saponification value, mg KOH per g: 190 or 184-196.")]
Source = Annotated[str | None, typer.Option("--sap-source", help="Where that value stands, e.g. its certificate.")]
Alkali = Annotated[str | None, typer.Option("--alkali", help="NaOH or KOH.")]
Purity = Annotated[str | None, typer.Option("--purity", help="Purity of the alkali, percent.")]
Density = Annotated[str | None, typer.Option("--density", help="Density in g per mL, e.g. 0.92.")]
Note = Annotated[str | None, typer.Option("--note")]


def read_sap(text: str) -> tuple[int, int]:
    """A saponification value or range in mg KOH per g, as mg KOH per kg; raises BadInput."""
    from ledger.domain.quantity import parse_number

    parts = text.replace("–", "-").split("-")
    if len(parts) > 2:
        raise BadInput(f"'{text}' is not a saponification value; write 190 or 184-196.")
    values = [round(parse_number(part, what="the saponification value") * 1000) for part in parts]
    return values[0], values[-1]


def read_density(text: str) -> int:
    """A density in g per mL as mg per mL; raises BadInput for what no liquid has."""
    from ledger.domain.quantity import parse_number

    plain = text.removesuffix("g/mL").removesuffix("g/ml").strip()
    density = round(parse_number(plain, what="the density") * 1000)
    if not 500 <= density <= 2500:
        raise BadInput(f"A density of {text} cannot be; oils lie near 0.92 g/mL, water at 1.00.")
    return density


def _facts(
    old: "MaterialFacts",
    like: str | None,
    inci: str | None,
    sap: str | None,
    source: str | None,
    alkali: str | None,
    purity: str | None,
    density: str | None,
    note: str | None,
) -> "MaterialFacts":
    from dataclasses import replace

    from ledger.domain.quantity import parse_share
    from ledger.reference.tables import find_fat

    facts = old
    if like:
        fat = find_fat(like)
        facts = replace(
            facts,
            inci=fat.inci,
            reference_key=fat.key,
            sap_low_mg_per_kg=fat.sap_low_mg_per_kg,
            sap_high_mg_per_kg=fat.sap_high_mg_per_kg,
            sap_source=f"{fat.source} ({fat.status})",
        )
    if inci:
        facts = replace(facts, inci=inci.upper())
    if sap:
        low, high = read_sap(sap)
        facts = replace(
            facts,
            sap_low_mg_per_kg=low,
            sap_high_mg_per_kg=high,
            sap_source=source or "her own entry",
        )
    if alkali:
        if alkali.lower() not in ("naoh", "koh"):
            raise BadInput(f"'{alkali}' is not an alkali known here; write NaOH or KOH.")
        kind = "NaOH" if alkali.lower() == "naoh" else "KOH"
        name = "SODIUM HYDROXIDE" if kind == "NaOH" else "POTASSIUM HYDROXIDE"
        facts = replace(facts, alkali_kind=kind, inci=inci.upper() if inci else name)
    if purity:
        facts = replace(facts, purity_ppm=parse_share(purity, what="the purity"))
    if density:
        facts = replace(facts, density_mg_per_ml=read_density(density))
    if note:
        facts = replace(facts, note=note)
    return facts


@app.command("add")
def add(
    ctx: typer.Context,
    name: Annotated[str, typer.Argument(help="What you call it, e.g. olive oil.")],
    kind: Annotated[str, typer.Option("--kind", help=", ".join(KINDS))] = "",
    code: Annotated[str | None, typer.Option("--code", help="A short name of your choosing.")] = None,
    like: Like = None,
    inci: Inci = None,
    sap: Sap = None,
    sap_source: Source = None,
    alkali: Alkali = None,
    purity: Purity = None,
    density: Density = None,
    note: Note = None,
) -> None:
    """Add a material, e.g. soapledger material add "olive oil" --like olive."""
    from ledger.domain.names import near
    from ledger.operations.materials import MaterialFacts, add_material

    chosen_kind = kind or ("fat" if like else "alkali" if alkali else "")
    if chosen_kind not in KINDS:
        close = near(chosen_kind, KINDS)
        hint = f" Did you mean {close[0]}?" if close else ""
        raise BadInput(f"What kind of material is {name}?{hint} Add --kind with one of: {', '.join(KINDS)}.")
    facts = _facts(MaterialFacts(name), like, inci, sap, sap_source, alkali, purity, density, note)
    chosen = add_material(desk(ctx).book(), facts, kind=chosen_kind, code=code)
    say(f"{name} is added as '{chosen}', of the kind {chosen_kind}.")
    if facts.sap_low_mg_per_kg is not None:
        say(f"Saponification value {_sap_text(facts)}: {facts.sap_source}.")
    if facts.inci is None and chosen_kind != "packaging":
        say(f"It has no INCI name yet, and a label needs one: soapledger material edit {chosen} --inci NAME")


@app.command("edit")
def edit(
    ctx: typer.Context,
    which: Which,
    name: Annotated[str | None, typer.Option("--name")] = None,
    like: Like = None,
    inci: Inci = None,
    sap: Sap = None,
    sap_source: Source = None,
    alkali: Alkali = None,
    purity: Purity = None,
    density: Density = None,
    note: Note = None,
) -> None:
    """Change what is known of a material; what you leave out stays as it was."""
    from dataclasses import replace

    from ledger.operations.materials import edit_material
    from ledger.views.material import material_by_code

    here = desk(ctx)
    card = material_by_code(here.rows(), which)
    facts = _facts(_as_facts(card), like, inci, sap, sap_source, alkali, purity, density, note)
    facts = replace(facts, name=name or card.name)
    edit_material(here.book(), card.code, facts)
    say(f"{facts.name} is changed; batches made before keep the figures they used.")


@app.command("list")
def list_(
    ctx: typer.Context,
    kind: Annotated[str | None, typer.Option("--kind", help="Only this kind.")] = None,
    json: Json = False,
) -> None:
    """List the materials."""
    from ledger.views.material import material_list

    cards = [c for c in material_list(desk(ctx).rows()) if kind in (None, c.kind)]
    if json:
        out_json(cards)
        return
    if not cards:
        say("No such material yet. Add one: soapledger material add NAME --like olive")
        return
    say(f"{len(cards)} materials.")
    table(
        ("short name", "kind", "INCI name", "saponification value"),
        [(c.code, c.kind, c.inci or "", _sap_text(c)) for c in cards],
        right=(),
    )


@app.command("show")
def show(ctx: typer.Context, which: Which, json: Json = False) -> None:
    """Show one material, each figure with where it comes from."""
    from ledger.domain.quantity import show_mass, show_share
    from ledger.views.material import material_by_code

    here = desk(ctx)
    card = material_by_code(here.rows(), which)
    if json:
        out_json(card)
        return
    held = f"{card.on_hand} pieces" if card.counted else show_mass(card.on_hand, here.settings.units)
    say(f"{card.name} ({card.code}), {card.kind}: {held} on hand.")
    lines = (
        ("INCI name", card.inci or "not given yet"),
        (
            "saponification value",
            f"{_sap_text(card)}  [{card.sap_source}]" if card.sap_source else "",
        ),
        ("alkali", card.alkali_kind or ""),
        ("purity", show_share(card.purity_ppm) if card.purity_ppm else ""),
        ("density", f"{card.density_mg_per_ml / 1000:.3f} g/mL" if card.density_mg_per_ml else ""),
        ("note", card.note or ""),
    )
    for label, value in lines:
        if value:
            say(f"  {label:21} {value}")


def _as_facts(card: "MaterialCard") -> "MaterialFacts":
    from ledger.operations.materials import MaterialFacts

    return MaterialFacts(
        name=card.name,
        inci=card.inci,
        reference_key=card.reference_key,
        sap_low_mg_per_kg=card.sap_low_mg_per_kg,
        sap_high_mg_per_kg=card.sap_high_mg_per_kg,
        sap_source=card.sap_source,
        alkali_kind=card.alkali_kind,
        purity_ppm=card.purity_ppm,
        density_mg_per_ml=card.density_mg_per_ml,
        note=card.note,
    )


def _sap_text(facts: "MaterialFacts | MaterialCard") -> str:
    low, high = facts.sap_low_mg_per_kg, facts.sap_high_mg_per_kg
    if low is None or high is None:
        return ""
    return f"{low / 1000:g}" if low == high else f"{low / 1000:g} to {high / 1000:g}"
