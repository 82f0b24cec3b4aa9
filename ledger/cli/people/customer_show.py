"""soapledger customer show."""

import typer

from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, plain, say, say_wrapped, table
from ledger.cli.people.customer import Which
from ledger.rows.people import customer_by_code
from ledger.units.money import show_money
from ledger.views.sale.customer import CustomerStands, customer_stands
from ledger.views.shop.customer import customer_shop, customer_words


def command(ctx: typer.Context, which: Which, json: Json = False) -> None:
    """Show one customer and how to reach them, what they had, brought back and owe, and what is promised."""
    here = desk(ctx)
    card = customer_by_code(here.rows(), which)
    stands = customer_stands(here.rows(), card.id)
    shop = customer_shop(here.rows(), card.id, here.today)
    if answer(plain(card) | plain(stands) | {"shop": plain(shop)}, json):
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
    for label, value in customer_words(here.rows(), shop):
        say_wrapped(f"{label:8} {value}", first="  ", indent=" " * 11)
    _say_stands(stands, here.settings.currency, card.code)


def _say_stands(stands: CustomerStands, currency: str, code: str) -> None:
    if stands.had:
        cells = [
            (one.product, *(str(number) if number else "" for number in (one.sold, one.given, one.returned)))
            for one in stands.had
        ]
        table(("had", "sold", "given", "came back"), cells, right=(1, 2, 3))
    if not stands.sales:
        return
    more = f", and {count(stands.untold, 'sale')} without a price" if stands.untold else ""
    owed = stands.owed_minor
    owes = f"{show_money(owed, currency)} is owed" if owed > 0 else "nothing is owed"
    if owed < 0:
        owes = f"{show_money(-owed, currency)} is to be paid back"
    say_wrapped(f"{count(stands.sales, 'sale')} brought {show_money(stands.brought_minor, currency)}{more}; {owes}.")
    say(f"See: soapledger sale list --at {code}")
