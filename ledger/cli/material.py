"""soapledger material: what goes into the pot, on the bar or round it."""

from typing import TYPE_CHECKING, Annotated, get_args

import typer

from ledger.cli.desk import desk
from ledger.cli.material_facts import (
    Alkali,
    Density,
    Inci,
    Like,
    Note,
    Purity,
    Salts,
    Sap,
    Source,
    Strength,
    Water,
    as_facts,
    kind_of,
    read_facts,
    read_shares,
    say_typed,
)
from ledger.cli.show import confirm, out_json, say, say_wrapped, table
from ledger.domain.words import MaterialKind, known
from ledger.errors import BadInput

if TYPE_CHECKING:
    from ledger.operations.materials import MaterialFacts
    from ledger.views.material import MaterialCard

app = typer.Typer(help="Fats, lye, essential oils, wrappers and the rest: add, edit, contains, limit, list, show.")

KINDS: tuple[MaterialKind, ...] = tuple(one for one in get_args(MaterialKind) if one != "soap")  # a batch gives that

Json = Annotated[bool, typer.Option("--json", help="Answer as JSON.")]
Which = Annotated[str, typer.Argument(help="Its short name or name.")]


@app.command("add")
def add(
    ctx: typer.Context,
    name: Annotated[str, typer.Argument(help="What you call it, e.g. olive oil.")],
    kind: Annotated[str, typer.Option("--kind", help=", ".join(KINDS))] = "",
    code: Annotated[str | None, typer.Option("--code", help="A short name of your choosing.")] = None,
    like: Like = None,
    inci: Inci = None,
    salts: Salts = None,
    sap: Sap = None,
    sap_source: Source = None,
    alkali: Alkali = None,
    purity: Purity = None,
    strength: Strength = None,
    water: Water = None,
    density: Density = None,
    note: Note = None,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again about an unlikely figure.")] = False,
) -> None:
    """Add a material, e.g. soapledger material add "olive oil" --like olive."""
    from ledger.domain.names import near
    from ledger.operations.materials import MaterialFacts, add_material

    written = kind or kind_of(like, alkali)
    chosen_kind = known(written, KINDS)
    if chosen_kind is None:
        close = near(written, KINDS)
        hint = f" Did you mean {close[0]}?" if close else ""
        raise BadInput(f"What kind of material is {name}?{hint} Add --kind with one of: {', '.join(KINDS)}.")
    facts = read_facts(
        MaterialFacts(name),
        like=like,
        inci=inci,
        salts=salts,
        sap=sap,
        source=sap_source,
        alkali=alkali,
        purity=purity,
        strength=strength,
        water=water,
        density=density,
        note=note,
    )
    _ask_about(facts, yes)
    chosen = add_material(desk(ctx).book(), facts, kind=chosen_kind, code=code)
    say(f"{name} is added as '{chosen}', of the kind {chosen_kind}.")
    if facts.sap_low_mg_per_kg is not None:
        say(f"Saponification value {_sap_text(facts)}: {facts.sap_source}.")
    say_typed(desk(ctx), chosen)
    if facts.inci is None and chosen_kind != "packaging":
        say(f"It has no INCI name yet, and a label needs one: soapledger material edit {chosen} --inci NAME")


@app.command("edit")
def edit(
    ctx: typer.Context,
    which: Which,
    name: Annotated[str | None, typer.Option("--name")] = None,
    like: Like = None,
    inci: Inci = None,
    salts: Salts = None,
    sap: Sap = None,
    sap_source: Source = None,
    alkali: Alkali = None,
    purity: Purity = None,
    strength: Strength = None,
    water: Water = None,
    density: Density = None,
    note: Note = None,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again about an unlikely figure.")] = False,
) -> None:
    """Change what is known of a material; what you leave out stays as it was."""
    from dataclasses import replace

    from ledger.operations.materials import edit_material
    from ledger.views.material import material_by_code

    here = desk(ctx)
    card = material_by_code(here.rows(), which)
    facts = read_facts(
        as_facts(card),
        like=like,
        inci=inci,
        salts=salts,
        sap=sap,
        source=sap_source,
        alkali=alkali,
        purity=purity,
        strength=strength,
        water=water,
        density=density,
        note=note,
    )
    _ask_about(facts, yes)
    facts = replace(facts, name=name or card.name)
    edit_material(here.book(), card.code, facts)
    say(f"{facts.name} is changed; batches made before keep the figures they used.")
    if sap or purity or strength:
        say_typed(here, card.code)


@app.command("contains")
def contains(
    ctx: typer.Context,
    which: Which,
    shares: Annotated[list[str], typer.Argument(help="What it contains, in percent: linalool=32 limonene=0.8.")],
    source: Annotated[str, typer.Option("--source", help="Where it stands, e.g. 'allergen statement, 2 Mar 2026'.")],
    lot: Annotated[str | None, typer.Option("--lot", help="For this lot alone.")] = None,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again about a name not known here.")] = False,
) -> None:
    """State what an oil or fragrance contains, by name or CAS number, as its supplier says, or for one lot."""
    from ledger.operations.skin import state_contents
    from ledger.reference.allergens import allergen_named
    from ledger.views.skin import constituent_doubt

    found = read_shares(shares)
    here = desk(ctx)
    for name in found:
        if words := constituent_doubt(here.rows(), name):
            confirm(f"{words} Is it right?", yes)
    card = state_contents(here.book(), which, found, source=source, lot=lot)
    say(f"{card.name}{f', lot {lot},' if lot else ''} contains {', '.join(found)} as stated ({source}).")
    if unknown := [name for name in found if allergen_named(name) is None]:
        say_wrapped(f"Not known here, so no label counts it: {', '.join(unknown)}. Its CAS number may be.")


@app.command("limit")
def limit(
    ctx: typer.Context,
    which: Annotated[str, typer.Argument(help="The fragrance; or a constituent, with --constituent.")],
    percent: Annotated[str, typer.Argument(help="The highest share in the finished bar, percent.")],
    certificate: Annotated[str, typer.Option("--certificate", help="The certificate's number.")],
    category: Annotated[str, typer.Option("--category", help="The kind of product it is for; soap is 9.")] = "",
    amendment: Annotated[str | None, typer.Option("--amendment", help="The amendment it goes by.")] = None,
    dated: Annotated[str | None, typer.Option("--dated", help="Its date (today).")] = None,
    constituent: Annotated[
        bool, typer.Option("--constituent", help="It is a constituent, summed over all oils.")
    ] = False,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again about a name not known here.")] = False,
) -> None:
    """State how much of a fragrance, or of a constituent, a certificate allows on the skin."""
    from ledger.domain.quantity import parse_share, show_share
    from ledger.domain.skin_limits import SOAP_CATEGORY, is_for_soap
    from ledger.operations.skin import LimitFacts, state_limit
    from ledger.views.skin import constituent_doubt

    here = desk(ctx)
    if constituent and (words := constituent_doubt(here.rows(), which)):
        confirm(f"{words} Is it right?", yes)
    facts = LimitFacts(
        parse_share(percent, what="the limit"),
        certificate,
        category,
        here.day(dated, what="the date of the certificate"),
        amendment,
    )
    name = state_limit(
        here.book(), facts, material=None if constituent else which, constituent=which if constituent else None
    )
    say(
        f"{name}: at most {show_share(facts.limit_ppm, 3)} of the bar, by certificate {certificate}, "
        f"category {category}."
    )
    if not is_for_soap(category):
        say(f"It is kept and not counted: soap is category {SOAP_CATEGORY}. Ask for that line of the certificate.")


@app.command("list")
def list_(
    ctx: typer.Context,
    kind: Annotated[str | None, typer.Option("--kind", help="Only this kind.")] = None,
    json: Json = False,
) -> None:
    """List the materials."""
    from ledger.views.material import material_list, with_stock

    rows = desk(ctx).rows()
    cards = [c for c in material_list(rows) if kind in (None, c.kind)]
    if json:
        out_json([with_stock(rows, card) for card in cards])
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
    from ledger.views.figures import figures_of
    from ledger.views.material import material_by_code, with_stock
    from ledger.views.skin import stated

    here = desk(ctx)
    card = with_stock(here.rows(), material_by_code(here.rows(), which))
    if json:
        out_json(card)
        return
    figures = figures_of(card)
    held = f"{card.on_hand} pieces" if card.counted else show_mass(card.on_hand, here.settings.units)
    say(f"{card.name} ({card.code}), {card.kind}: {held} on hand.")
    lines = (
        ("INCI name", card.inci or "not given yet"),
        (
            "saponification value",
            f"{figures.sap_words()}  [{card.sap_source}]" if card.sap_source else "",
        ),
        ("alkali", card.alkali_kind or ""),
        ("soap salts", "; ".join(name for name in (card.inci_sodium, card.inci_potassium) if name)),
        (
            "strength" if card.dissolved or not card.alkali_kind else "purity",
            figures.purity_words() if card.purity_ppm else "",
        ),
        (
            "uses up",
            f"{card.acid_koh_mg_per_kg / 1_000_000:.4g} g KOH per g of pure acid" if card.acid_koh_mg_per_kg else "",
        ),
        ("water", show_share(card.water_ppm) if card.water_ppm else ""),
        ("density", f"{card.density_mg_per_ml / 1000:.3f} g/mL" if card.density_mg_per_ml else ""),
        ("note", card.note or ""),
    )
    for label, value in lines:
        if value:
            say(f"  {label:21} {value}")
    for words in stated(here.rows(), card.id):
        say(f"  {words}")


def _ask_about(facts: "MaterialFacts", yes: bool) -> None:
    """Ask again about a saponification value or a purity that is unlikely; what cannot be is refused later."""
    from ledger.domain.saponification import LEAST_PURITY_PPM
    from ledger.reference.plausible import possible_sap, purity_doubt, sap_doubt

    doubts = []
    flakes = facts.water_ppm is None and (facts.purity_ppm or 0) >= LEAST_PURITY_PPM
    if flakes and facts.alkali_kind and facts.purity_ppm is not None:
        doubts.append(purity_doubt(facts.name, facts.alkali_kind, facts.purity_ppm, None))
    low, high = facts.sap_low_mg_per_kg, facts.sap_high_mg_per_kg
    if low is not None and high is not None and possible_sap(low, high):
        doubts.append(sap_doubt(facts.name, facts.reference_key, low, high))
    for doubt in filter(None, doubts):
        confirm(f"{doubt} Is it right?", yes)


def _sap_text(facts: "MaterialFacts | MaterialCard") -> str:
    low, high = facts.sap_low_mg_per_kg, facts.sap_high_mg_per_kg
    if low is None or high is None:
        return ""
    return f"{low / 1000:g}" if low == high else f"{low / 1000:g} to {high / 1000:g}"
