"""soapledger recipe list."""

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.rows.recipe import recipe_list
from ledger.units.wording import count


def command(ctx: typer.Context, json: Json = False) -> None:
    """List the recipes."""
    cards = recipe_list(desk(ctx).rows())
    words = Listed(
        f"{count(len(cards), 'recipe')}.",
        ("short name", "name", "process", "version", "batches"),
        ((c.code, c.name, c.process, str(c.version), str(c.batches)) for c in cards),
        right=(3, 4),
        none="No recipe yet. Add one: soapledger recipe add FILE.toml",
    )
    answer(cards, json, words)
