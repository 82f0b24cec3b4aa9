"""soapledger customer show."""

import typer

from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, say, say_wrapped
from ledger.cli.people.customer import Which
from ledger.rows.people import customer_by_code
from ledger.views.shop.customer import customer_shop, customer_words


def command(ctx: typer.Context, which: Which, json: Json = False) -> None:
    """Show one customer and how to reach them; what is agreed, promised and owed."""
    here = desk(ctx)
    card = customer_by_code(here.rows(), which)
    stands = customer_shop(here.rows(), card.id, here.today)
    if answer(card._asdict() | {"shop": stands}, json):
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
    for label, value in customer_words(here.rows(), stands):
        say_wrapped(f"{label:8} {value}", first="  ", indent=" " * 11)
