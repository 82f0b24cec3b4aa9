"""soapledger customer list."""

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.rows.people import customer_list
from ledger.units.wording import count


def command(ctx: typer.Context, json: Json = False) -> None:
    """List the customers and how many bars each has."""
    cards = customer_list(desk(ctx).rows())
    words = Listed(
        f"{count(len(cards), 'customer')}.",
        ("short name", "name", "kind", "phone", "bars"),
        ((c.code, c.name, c.kind, c.phone or "", str(c.bars)) for c in cards),
        right=(4,),
        none="No customer yet. Add one: soapledger customer add NAME --phone NUMBER with --shop or --person",
    )
    answer(cards, json, words)
