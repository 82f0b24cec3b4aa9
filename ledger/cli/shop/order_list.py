"""soapledger order list."""

from datetime import date

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count, say_wrapped
from ledger.cli.kit.window import Every, Last, asked_for, latest, the_last
from ledger.units.dates import show_date
from ledger.views.shop.orders import OrderView, order_views


def command(ctx: typer.Context, last: Last = None, every: Every = False, json: Json = False) -> None:
    """List the orders, the open ones first by the day they are due, and say which will be late."""
    here = desk(ctx)
    number = asked_for(last, every)
    found = order_views(here.rows(), here.today)
    still = [one for one in found if one.stands == "open"]
    done, more = latest([one for one in found if one.stands != "open"], number)
    shown = [*still, *done]
    words = Listed(
        f"{count(len(still), 'open order')}, {count(sum(one.still for one in still), 'bar')} still to go"
        + (f"; {the_last(count(len(done), 'order'), more)} done or ended." if done else "."),
        ("order", "customer", "due", "bars", "still to go", ""),
        (
            (
                str(one.number),
                one.customer,
                show_date(one.due_on),
                str(one.bars),
                str(one.still) if one.still else "",
                _stands(one, here.today),
            )
            for one in shown
        ),
        right=(0, 3, 4),
        none="No order yet. Promise bars: soapledger order add CUSTOMER PRODUCT=12 --due DAY",
        earlier="soapledger order list --all" if more else "",
    )
    answer(shown, json, words)
    if not json:
        for one in still:
            for sentence in one.words:
                say_wrapped(sentence)


def _stands(one: OrderView, today: date) -> str:
    """How an order stands, in a word or two."""
    if one.stands != "open":
        return one.stands
    return "overdue" if one.due_on < today else "will be late" if one.late else ""
