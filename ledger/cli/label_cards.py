"""soapledger label ticket, rack and try-sheet: what carries no law's text and is not booked as a run."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from ledger.cli.desk import Desk, desk
from ledger.cli.label_print import Force, MarketOption, Nudge, Output, Sheet, Start, read_nudge, sold_in, usual_sheet_of
from ledger.cli.show import count, say
from ledger.errors import BadInput

if TYPE_CHECKING:
    from ledger.documents.labels import RackText, TicketText


def try_sheet(
    ctx: typer.Context,
    sheet: Annotated[str, typer.Argument(help="The sheet.")],
    output: Output,
    nudge: Nudge = None,
    force: Force = False,
) -> None:
    """Print the outlines of a sheet, to lay over a sheet of labels and see whether the printer feeds askew."""
    from ledger.documents.files import check_free, write_file
    from ledger.documents.labels import draw_test_sheet
    from ledger.documents.layout import sheet_layout

    desk(ctx)
    check_free(output, force)
    write_file(output, draw_test_sheet(sheet_layout(sheet), nudge_mm=read_nudge(nudge)), force=force)
    say(f"The outlines of {sheet} are {output}; hold it against a sheet, then print with --nudge.")


def ticket(
    ctx: typer.Context,
    code: Annotated[str, typer.Argument(help="The batch code.")],
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
    from ledger.documents.labels import TicketText
    from ledger.domain.money import parse_money, show_money
    from ledger.domain.unit_price import needed
    from ledger.markets import laws
    from ledger.markets import market as law_of
    from ledger.views.label import label_text

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
    _print_card(here, text, "ticket-price", sheet, number, start, nudge, output, force)
    if market is None:
        say(f"They are for {law.name} ({law.code}); for another market add --market.")
    for words in unit.remains if unit else (f"No rule on the price of a kilogram is known here for {law.name}.",):
        say(words)


def rack(
    ctx: typer.Context,
    code: Annotated[str, typer.Argument(help="The batch code.")],
    output: Output,
    number: Annotated[str, typer.Option("--count", help="How many.")] = "1",
    sheet: Sheet = None,
    start: Start = "1",
    nudge: Nudge = None,
    force: Force = False,
) -> None:
    """Print a card for the curing rack: what it is, its code, made on and ready on. At any time."""
    from ledger.documents.labels import RackText
    from ledger.errors import Refused
    from ledger.views.batch import find_batch

    here = desk(ctx)
    batch = find_batch(here.rows(), code)
    if not batch.soap or batch.ready_on is None:
        raise Refused(f"Batch {batch.code} is {batch.status}; a rack card is for bars that were cut.")
    text = RackText(batch.product, batch.code, batch.on, batch.ready_on, batch.code)
    _print_card(here, text, "card-rack", sheet, number, start, nudge, output, force)


def _print_card(
    here: Desk,
    text: "TicketText | RackText",
    layout: str,
    sheet: str | None,
    number: str,
    start: str,
    nudge: str | None,
    output: Path,
    force: bool,
) -> None:
    """Tickets and rack cards, which carry no law's text and are not booked as runs."""
    from ledger.documents.files import check_free, write_file
    from ledger.documents.labels import draw_labels
    from ledger.documents.layout import label_layout, sheet_layout
    from ledger.domain.quantity import parse_pieces

    check_free(output, force)
    page = sheet_layout(sheet or usual_sheet_of(layout, here.settings.country))
    many = parse_pieces(number, what="the number")
    if many == 0:
        raise BadInput("How many? Write --count with a number above zero.")
    first = parse_pieces(start, what="the position")
    data = draw_labels(text, label_layout(layout), page, count=many, start=first, nudge_mm=read_nudge(nudge))
    write_file(output, data, force=force)
    say(f"{count(many, 'card')} in {output}.")
