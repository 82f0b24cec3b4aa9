"""soapledger sale list."""

from typing import Annotated

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count
from ledger.cli.kit.window import Every, Last, asked_for, latest, one_more, the_last
from ledger.errors import BadInput
from ledger.rows.sell.sale import sales_found
from ledger.units.dates import show_date
from ledger.units.money import figure
from ledger.views.sale.outlet import outlet_named
from ledger.views.sale.sale import SaleListed, listed


def command(
    ctx: typer.Context,
    at: Annotated[str | None, typer.Option("--at", help="Only at this stall, or to this customer.")] = None,
    on: Annotated[str | None, typer.Option("--on", help="Only of this day.")] = None,
    since: Annotated[str | None, typer.Option("--since", help="Only from this day on.")] = None,
    until: Annotated[str | None, typer.Option("--until", help="Only up to this day.")] = None,
    last: Last = None,
    every: Every = False,
    json: Json = False,
) -> None:
    """List the sales, returns and credits, the latest last, e.g. soapledger sale list --at tern-hall."""
    if on and (since or until):
        raise BadInput("--on is one day; leave it out, or --since and --until.")
    number, here = asked_for(last, every), desk(ctx)
    rows = here.rows()
    outlet = outlet_named(rows, at) if at else None
    found, more = latest(
        sales_found(
            rows,
            place_id=outlet.place_id if outlet else None,
            customer_id=outlet.customer_id if outlet else None,
            since=here.day(on or since) if on or since else None,
            until=here.day(on or until) if on or until else None,
            last=one_more(number),
        ),
        number,
    )
    shown, currency = listed(rows, list(found)), here.settings.currency
    words = Listed(
        f"{the_last(count(len(shown), 'sale'), more)}, the latest last.",
        ("sale", "day", "what", "to", "bars", currency, "owed"),
        (
            (
                str(one.sale),
                show_date(one.on),
                what(one),
                one.to,
                str(one.bars) if one.bars else "",
                _figure(one.amount_minor, currency) + ("+?" if one.untold and one.amount_minor is not None else ""),
                _figure(one.owed_minor, currency) if one.owed_minor else "",
            )
            for one in shown
        ),
        right=(0, 4, 5, 6),
        none="No sale yet." if not (at or on or since or until) else "No such sale.",
        then="One in full: soapledger sale show N",
        earlier=here.typed("sale list --all") if more else "",
    )
    answer(shown, json, words)


def what(one: SaleListed) -> str:
    """What it is, and of which sale."""
    return one.kind if not one.of else f"{one.kind} of {', '.join(map(str, one.of))}"


def _figure(minor: int | None, currency: str) -> str:
    return "–" if minor is None else figure(minor, currency)
