"""soapledger material contains."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Which
from ledger.cli.kit.show import confirm, say, say_wrapped
from ledger.cli.material.facts import read_shares
from ledger.operations.material.skin import state_contents
from ledger.reference.allergens import allergen_named
from ledger.views.recipe.skin import constituent_doubt


def command(
    ctx: typer.Context,
    which: Which,
    shares: Annotated[list[str], typer.Argument(help="What it contains, in percent: linalool=32 limonene=0.8.")],
    source: Annotated[str, typer.Option("--source", help="Where it stands, e.g. 'allergen statement, 2 Mar 2026'.")],
    lot: Annotated[str | None, typer.Option("--lot", help="For this lot alone.")] = None,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again about a name not known here.")] = False,
) -> None:
    """State what an oil or fragrance contains, by name or CAS number, as its supplier says, or for one lot."""
    found = read_shares(shares)
    here = desk(ctx)
    for name in found:
        if words := constituent_doubt(here.rows(), name):
            confirm(f"{words} Is it right?", yes)
    card = state_contents(here.book(), which, found, source=source, lot=lot)
    say(f"{card.name}{f', lot {lot},' if lot else ''} contains {', '.join(found)} as stated ({source}).")
    if unknown := [name for name in found if allergen_named(name) is None]:
        say_wrapped(f"Not known here, so no label counts it: {', '.join(unknown)}. Its CAS number may be.")
