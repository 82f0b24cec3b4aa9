"""soapledger lot label."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Force
from ledger.cli.kit.show import say
from ledger.cli.label.cards import print_card
from ledger.cli.label.sheets import Nudge, Output, Sheet, Start
from ledger.units.dates import show_date
from ledger.views.label.lot_label import lot_label


def command(
    ctx: typer.Context,
    codes: Annotated[list[str], typer.Argument(help="Lot codes, e.g. L41-5.")],
    output: Output,
    number: Annotated[str, typer.Option("--count", help="How many of each.")] = "1",
    layout: Annotated[str, typer.Option("--layout", help="lot-jar, lot-drum, or a file of your own.")] = "lot-jar",
    sheet: Sheet = None,
    start: Start = "1",
    nudge: Nudge = None,
    force: Force = False,
) -> None:
    """Print labels for jars, drums and rolls, with their status as of today: soapledger lot label L41-5 -o jars.pdf."""
    here = desk(ctx)
    texts = [lot_label(here.rows(), code, here.today) for code in codes]
    print_card(here, texts, layout, sheet, number, start, nudge, output, force)
    waiting = [f"{one.code} ({one.status})" for one in texts if not one.usable]
    if waiting:
        say(f"Marked not to be used, as of {show_date(here.today)}: {', '.join(waiting)}.")
        say("When that changes, print theirs again.")
