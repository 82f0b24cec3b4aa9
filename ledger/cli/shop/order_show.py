"""soapledger order show."""

import typer

from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, say, say_wrapped, table
from ledger.cli.shop.words import Number, read_number
from ledger.units.dates import show_date
from ledger.units.money import show_money
from ledger.views.shop.orders import OrderView, order_view


def command(ctx: typer.Context, number: Number, json: Json = False) -> None:
    """Show one order: what went, what is still to go, and what will be late."""
    here = desk(ctx)
    found = order_view(here.rows(), read_number(number, "order"), here.today)
    answer(found, json, lambda: _say(found, here.settings.currency))


def _say(found: OrderView, currency: str) -> None:
    stands = {
        "open": f"{count(found.still, 'bar')} still to go",
        "gone": "all of it went",
        "ended": f"ended on {show_date(found.ended_on)} by {found.ended_by}: {found.reason}" if found.ended_on else "",
    }[found.stands]
    say_wrapped(f"Order {found.number}, {found.customer}, due {show_date(found.due_on)}: {stands}.")
    table(
        ("product", "batch", "bars", "went", "still to go", "price of one"),
        [
            (
                one.product,
                one.batch or "",
                str(one.bars),
                str(one.gone),
                str(one.still),
                "" if one.price_minor is None else show_money(one.price_minor, currency),
            )
            for one in found.lines
        ],
        right=(2, 3, 4, 5),
    )
    if found.note:
        say_wrapped(f"Note: {found.note}")
    for sentence in found.words:
        say_wrapped(sentence)
    if found.stands == "open":
        say(f"When they go: soapledger dispatch --order {found.number}")
