"""soapledger supplier list."""

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.rows.people import supplier_list
from ledger.units.wording import count


def command(ctx: typer.Context, json: Json = False) -> None:
    """List the suppliers with their telephone numbers."""
    cards = supplier_list(desk(ctx).rows())
    words = Listed(
        f"{count(len(cards), 'supplier')}.",
        ("short name", "name", "phone", "lots"),
        ((c.code, c.name + (" (own)" if c.own else ""), c.phone or "", str(c.lots)) for c in cards),
        right=(3,),
        none="No supplier yet. Add one: soapledger supplier add NAME --phone NUMBER",
    )
    answer(cards, json, words)
