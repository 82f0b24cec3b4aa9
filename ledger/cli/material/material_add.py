"""soapledger material add."""

from typing import Annotated, get_args

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Note, ShortName
from ledger.cli.kit.show import say
from ledger.cli.material.facts import (
    Alkali,
    Density,
    Inci,
    Like,
    Purity,
    Salts,
    Sap,
    Source,
    Strength,
    UsesUp,
    Water,
    kind_of,
    read_facts,
    say_typed,
)
from ledger.cli.material.shown import sap_text, say_published
from ledger.cli.material.words import ask_about, say_of_it
from ledger.errors import BadInput
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.units.names import near
from ledger.units.words import MaterialKind, known

KINDS: tuple[MaterialKind, ...] = tuple(one for one in get_args(MaterialKind) if one != "soap")  # a batch gives that


def command(
    ctx: typer.Context,
    name: Annotated[str | None, typer.Argument(help="What you call it, e.g. olive oil.", metavar="NAME")] = None,
    kind: Annotated[str, typer.Option("--kind", help=", ".join(KINDS))] = "",
    code: ShortName = None,
    like: Like = None,
    inci: Inci = None,
    salts: Salts = None,
    sap: Sap = None,
    sap_source: Source = None,
    alkali: Alkali = None,
    purity: Purity = None,
    strength: Strength = None,
    water: Water = None,
    uses_up: UsesUp = None,
    density: Density = None,
    note: Note = None,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again about an unlikely figure.")] = False,
) -> None:
    """Add a material, e.g. soapledger material add "olive oil" --like olive."""
    if like and like.strip() == "?":
        say_published()
        return
    if name is None:
        raise BadInput('What do you call it? Write its name first: soapledger material add "olive oil" --like olive.')
    written = kind or kind_of(like, alkali)
    chosen_kind = known(written, KINDS)
    if chosen_kind is None:
        close = near(written, KINDS)
        hint = f" Did you mean {close[0]}?" if close else ""
        raise BadInput(f"What kind of material is {name}?{hint} Add --kind with one of: {', '.join(KINDS)}.")
    facts = read_facts(
        MaterialFacts(name),
        chosen_kind,
        like=like,
        inci=inci,
        salts=salts,
        sap=sap,
        source=sap_source,
        alkali=alkali,
        purity=purity,
        strength=strength,
        water=water,
        uses_up=uses_up,
        density=density,
        note=note,
    )
    ask_about(facts, yes, like=like)
    chosen = add_material(desk(ctx).book(), facts, kind=chosen_kind, code=code)
    say(f"{name} is added as '{chosen}', of the kind {chosen_kind}.")
    if facts.sap_low_mg_per_kg is not None:
        say(f"Saponification value {sap_text(facts.sap_low_mg_per_kg, facts.sap_high_mg_per_kg)}: {facts.sap_source}.")
    say_typed(desk(ctx), chosen)
    say_of_it(chosen, facts, like)
    if facts.inci is None and chosen_kind != "packaging":
        say(f"It has no INCI name yet, and a label needs one: soapledger material edit {chosen} --inci NAME")
