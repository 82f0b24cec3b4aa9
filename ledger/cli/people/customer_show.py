"""soapledger customer show."""

import typer

from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, say
from ledger.cli.people.customer import Which
from ledger.rows.people import customer_by_code


def command(ctx: typer.Context, which: Which, json: Json = False) -> None:
    """Show one customer and how to reach them."""
    card = customer_by_code(desk(ctx).rows(), which)
    if answer(card, json):
        return
    say(f"{card.name} ({card.code}), a {card.kind}: {count(card.bars, 'bar')} went there and stayed.")
    for label, value in (
        ("ask for", card.person if card.kind == "shop" else None),
        ("phone", card.phone),
        ("email", card.email),
        ("address", card.address),
        ("note", card.note),
    ):
        if value:
            say(f"  {label:8} {value}")
