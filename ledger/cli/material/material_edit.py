"""soapledger material edit."""

from dataclasses import replace
from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import NewName, Note, Which
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
    as_facts,
    read_facts,
    say_typed,
)
from ledger.cli.material.words import ask_about, say_of_it
from ledger.operations.material.materials import edit_material
from ledger.rows.material import material_by_code


def command(
    ctx: typer.Context,
    which: Which,
    name: NewName = None,
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
    """Change what is known of a material; what you leave out stays as it was."""
    here = desk(ctx)
    card = material_by_code(here.rows(), which)
    facts = read_facts(
        replace(as_facts(card), name=name or card.name),
        card.kind,
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
    edit_material(here.book(), card.code, facts)
    say(f"{facts.name} is changed; batches made before keep the figures they used.")
    say_of_it(card.code, facts, like)
    if sap or purity or strength:
        say_typed(here, card.code)
