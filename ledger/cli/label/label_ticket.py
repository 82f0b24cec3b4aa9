"""soapledger label ticket."""

from functools import partial
from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.options import Batch, Force
from ledger.cli.kit.show import say_wrapped
from ledger.cli.label.cards import print_card
from ledger.cli.label.figures import Language, MarketOption, sold_in, words_of
from ledger.cli.label.sheets import Nudge, Output, Sheet, Start
from ledger.documents.label.labels import TicketText
from ledger.domain.label.unit_price import needed
from ledger.domain.label.words import by_weight
from ledger.domain.sale.pricing import ANYWHERE, Outlet
from ledger.errors import BadInput
from ledger.markets import laws
from ledger.markets import market as law_of
from ledger.rows.batch import find_batch
from ledger.units.prices import parse_price, show_price
from ledger.views.label.label import label_text
from ledger.views.sale.prices import worth_of
from ledger.views.stock.stall import stall_by_name


def command(
    ctx: typer.Context,
    code: Batch,
    output: Output,
    price: Annotated[
        str | None,
        typer.Option("--price", help="What a bar is sold for, taxes included (else as set, or room to write it)."),
    ] = None,
    stall: Annotated[str | None, typer.Option("--stall", help="With the price that is set for this stall.")] = None,
    unit_price: Annotated[
        bool | None,
        typer.Option(
            "--unit-price/--no-unit-price",
            help="With or without the price of a kilogram or pound (else as the market asks).",
        ),
    ] = None,
    layout: Annotated[
        str, typer.Option("--layout", help="ticket-price, ticket-shelf, ticket-stall, or a file of your own.")
    ] = "ticket-price",
    market: MarketOption = None,
    language: Language = None,
    northern_ireland: Annotated[
        bool, typer.Option("--northern-ireland", help="In pounds, rounded as Northern Ireland asks.")
    ] = False,
    number: Annotated[str, typer.Option("--count", help="How many.")] = "1",
    sheet: Sheet = None,
    start: Start = "1",
    nudge: Nudge = None,
    force: Force = False,
) -> None:
    """Print price cards for a shelf, or a sign for a stall, with the price of a kilogram where the market asks."""
    here = desk(ctx)
    law = law_of(sold_in(here, market))
    words = words_of(here, law.code, language)
    view = label_text(here.rows(), code, law.code, on=here.today, words=words)
    unit = law.unit_price("Northern Ireland" if northern_ireland else None)
    if northern_ireland and not unit:
        ways = " or ".join(f"--market {one.code}" for one in laws() if one.unit_price("Northern Ireland"))
        raise BadInput(f"{law.name} ({law.code}) has no rule for Northern Ireland; leave that out, or add {ways}.")
    usual = (unit and unit.currency) or here.settings.currency
    minor, currency = parse_price(price, usual) if price is not None else (None, usual)
    if unit and unit.currency and currency != unit.currency:
        raise BadInput(f"Prices in Northern Ireland are in {unit.currency}; write --price '6.50 {unit.currency}'.")
    said = partial(show_price, currency=currency, country=here.settings.country)
    if price is None and currency == here.settings.currency:
        minor = _as_set(here, view.batch_code, stall) or None
    if minor == 0:
        raise BadInput("A price of nothing is no price; leave --price out for room to write one.")
    wanted = unit is not None and (unit.asked if unit_price is None else unit_price)
    each = unit.show(minor, view.net_mg, said) if minor and unit and wanted and needed(minor, view.net_mg) else ""
    text = TicketText(
        view.product,
        view.net_quantity,
        said(minor) if minor is not None else "",
        by_weight(words, each),
        function=view.function,
        business=here.settings.business,
        batch_code=view.batch_code,
        code_text=view.code_text,
        figure_height_mm=view.figure_height_mm or 0.0,
        origin=view.origin,
        batch_word=view.batch_word,
        languages=view.languages,
        colour=view.colour,
    )
    print_card(here, (text,), layout, sheet, number, start, nudge, output, force)
    if market is None:
        say_wrapped(f"They are for {law.name} ({law.code}); for another market add --market.")
    for left in unit.remains if unit else (f"No rule on the price of a kilogram is known here for {law.name}.",):
        say_wrapped(left)


def _as_set(here: Desk, code: str, stall: str | None) -> int | None:
    """The price that is set for the bars of a batch today, at a stall or anywhere."""
    lot = find_batch(here.rows(), code).yield_lot_id
    outlet = Outlet(place_id=stall_by_name(here.rows(), stall).id) if stall else ANYWHERE
    worth = worth_of(here.rows(), {lot: 1}, on=here.today, outlet=outlet) if lot else {}
    return worth[lot].gross_minor if lot in worth and lot else None
