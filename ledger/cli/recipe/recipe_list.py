"""soapledger recipe list."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import out_json, say, table
from ledger.rows.recipe import recipe_list
from ledger.units.wording import count


def command(ctx: typer.Context, json: Json = False) -> None:
    """List the recipes."""
    cards = recipe_list(desk(ctx).rows())
    if json:
        out_json(cards)
        return
    if not cards:
        say("No recipe yet. Add one: soapledger recipe add FILE.toml")
        return
    say(f"{count(len(cards), 'recipe')}.")
    table(
        ("short name", "name", "process", "version", "batches"),
        [(c.code, c.name, c.process, str(c.version), str(c.batches)) for c in cards],
        right=(3, 4),
    )
