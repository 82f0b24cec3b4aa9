"""soapledger label ticket."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, Force
from ledger.cli.kit.show import say
from ledger.cli.label.cards import print_card
from ledger.cli.label.figures import MarketOption, sold_in
from ledger.cli.label.sheets import Nudge, Output, Sheet, Start
from ledger.documents.label.labels import TicketText
from ledger.domain.label.unit_price import needed
from ledger.errors import BadInput
from ledger.markets import laws
from ledger.markets import market as law_of
from ledger.units.money import parse_money, show_money
from ledger.views.label.label import label_text


def command(
    ctx: typer.Context,
    code: Batch,
    output: Output,
    price: Annotated[str, typer.Option("--price", help="What a bar is sold for, taxes included.")],
    market: MarketOption = None,
    northern_ireland: Annotated[
        bool, typer.Option("--northern-ireland", help="In pounds, rounded as Northern Ireland asks.")
    ] = False,
    number: Annotated[str, typer.Option("--count", help="How many.")] = "1",
    sheet: Sheet = None,
    start: Start = "1",
    nudge: Nudge = None,
    force: Force = False,
) -> None:
    """Print price tickets with the price and the price per kilogram, for a stall or a shelf."""
    here = desk(ctx)
    law = law_of(sold_in(here, market))
    view = label_text(here.rows(), code, law.code, on=here.today)
    unit = law.unit_price("Northern Ireland" if northern_ireland else None)
    if northern_ireland and not unit:
        ways = " or ".join(f"--market {one.code}" for one in laws() if one.unit_price("Northern Ireland"))
        raise BadInput(f"{law.name} ({law.code}) has no rule for Northern Ireland; leave that out, or add {ways}.")
    currency = (unit and unit.currency) or here.settings.currency
    minor = parse_money(price, currency, what="the price")
    text = TicketText(
        view.product,
        view.net_quantity,
        show_money(minor, currency),
        unit.show(minor, view.net_mg, currency) if unit and needed(minor, view.net_mg) else "",
        batch_code=view.batch_code,
        code_text=view.code_text,
        figure_height_mm=view.figure_height_mm or 0.0,
    )
    print_card(here, (text,), "ticket-price", sheet, number, start, nudge, output, force)
    if market is None:
        say(f"They are for {law.name} ({law.code}); for another market add --market.")
    for words in unit.remains if unit else (f"No rule on the price of a kilogram is known here for {law.name}.",):
        say(words)
