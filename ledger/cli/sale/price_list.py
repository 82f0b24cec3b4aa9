"""soapledger price list."""

from collections.abc import Iterator
from datetime import date
from functools import partial
from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.options import Force, Json
from ledger.cli.kit.paper import PAPER
from ledger.cli.kit.show import count, say, say_wrapped, table
from ledger.cli.label.figures import MarketOption, sold_in
from ledger.cli.sale.outlet import Stall, To, outlet_of
from ledger.domain.sale.pricing import ANYWHERE, Outlet
from ledger.errors import Refused
from ledger.units.dates import parse_date, show_date
from ledger.units.money import show_money
from ledger.units.prices import show_price
from ledger.views.sale.price_list import HeldPrice, PriceList, held_prices, price_list


def command(
    ctx: typer.Context,
    on: Annotated[str | None, typer.Option("--on", help="As they hold on a day, also one to come (today).")] = None,
    stall: Stall = None,
    to: To = None,
    output: Annotated[Path | None, typer.Option("-o", help="Print it for buyers, as a PDF file.")] = None,
    cards: Annotated[
        str | None,
        typer.Option(
            "--cards", help="Cards in place of a list: ticket-price, ticket-shelf, ticket-stall.", metavar="LAYOUT"
        ),
    ] = None,
    paper: PAPER = "a4",
    market: MarketOption = None,
    force: Force = False,
    json: Json = False,
) -> None:
    """List the prices that hold, or print them for a stall or a shop, by weight too where that is asked."""
    here = desk(ctx)
    day = parse_date(on, today=here.today, what="the day") if on else here.today
    outlet, where = outlet_of(here, stall, to)
    if output or outlet != ANYWHERE:
        found = _for_buyers(here, day, outlet, where, market)
        if output:
            loaded("cli.sale.price_paper").print_prices(here, found, output, cards, paper, force)
        else:
            answer(found, json, lambda: _say(found))
        return
    held = held_prices(here.rows(), day)
    words = Listed(
        f"{count(len(held), 'price')} on {show_date(day)}.",
        ("product", "where", "price", "since"),
        _rows(held, here.settings.currency),
        right=(2,),
        none="No price is set yet. Set one: soapledger price set PRODUCT 6.50",
    )
    answer(held, json, words)


def _rows(held: list[HeldPrice], currency: str) -> Iterator[tuple[str, ...]]:
    for one in held:
        amount = show_money(one.price_minor or 0, currency)
        each = amount if one.bars == 1 else f"{one.bars} for {amount}"
        yield one.product or "every product", one.where or "anywhere", each, show_date(one.since)


def _for_buyers(here: Desk, day: date, outlet: Outlet, where: str, market: str | None) -> PriceList:
    said = partial(show_price, currency=here.settings.currency, country=here.settings.country)
    found = price_list(here.rows(), day, outlet=outlet, where=where, market_code=sold_in(here, market), said=said)
    if not found.priced:
        raise Refused(
            f"No price holds {f'at {where} ' if where else ''}on {show_date(day)}; set one: "
            "soapledger price set PRODUCT 6.50"
        )
    return found


def _say(found: PriceList) -> None:
    say(f"{count(len(found.priced), 'product')} at {found.where} on {show_date(found.on)}.")
    table(
        ("product", "net", "price", "by weight"),
        [(one.product, one.net_quantity, one.price, one.unit_price) for one in found.priced],
        right=(1, 2, 3),
    )
    for one in found.offers:
        say_wrapped(one)
    if found.unpriced:
        say_wrapped(f"Without a price: {', '.join(found.unpriced)}.")
