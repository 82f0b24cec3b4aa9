"""soapledger material list."""

from typing import Annotated

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.material.shown import sap_text
from ledger.rows.material import material_list, on_hand
from ledger.units.wording import count


def command(
    ctx: typer.Context,
    kind: Annotated[str | None, typer.Option("--kind", help="Only this kind.")] = None,
    json: Json = False,
) -> None:
    """List the materials."""
    rows = desk(ctx).rows()
    cards = [c for c in material_list(rows) if kind in (None, c.kind)]
    words = Listed(
        f"{count(len(cards), 'material')}.",
        ("short name", "kind", "INCI name", "saponification value"),
        ((c.code, c.kind, c.inci or "", sap_text(c.sap_low_mg_per_kg, c.sap_high_mg_per_kg)) for c in cards),
        none="No such material yet. Add one: soapledger material add NAME --like olive",
    )
    answer([{**card._asdict(), "on_hand": on_hand(rows, card.id)} for card in cards] if json else cards, json, words)
