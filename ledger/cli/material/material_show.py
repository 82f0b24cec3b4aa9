"""soapledger material show."""

import typer

from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json, Which
from ledger.cli.kit.show import say
from ledger.rows.material import material_by_code, on_hand
from ledger.units.quantity import show_mass, show_share
from ledger.views.material.figures import figures_of
from ledger.views.recipe.skin import stated


def command(ctx: typer.Context, which: Which, json: Json = False) -> None:
    """Show one material, each figure with where it comes from."""
    here = desk(ctx)
    card = material_by_code(here.rows(), which)
    here_of_it = on_hand(here.rows(), card.id)
    if answer({**card._asdict(), "on_hand": here_of_it}, json):
        return
    figures = figures_of(card)
    held = f"{here_of_it} pieces" if card.counted else show_mass(here_of_it, here.settings.units)
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
            f"{card.acid_koh_mg_per_kg / 1_000_000:.4g} g KOH per g{' of pure acid' * (card.kind == 'additive')}"
            if card.acid_koh_mg_per_kg
            else "",
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
