"""soapledger parcel."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Force
from ledger.cli.label.cards import print_card
from ledger.cli.label.sheets import Nudge, Output, Sheet, Start
from ledger.cli.shop.deliveries import Entry, Sale, delivered
from ledger.views.shop.parcel import parcel_text


def command(
    ctx: typer.Context,
    output: Output,
    sale: Sale = None,
    entry: Entry = None,
    number: Annotated[str, typer.Option("--count", help="How many parcels.")] = "1",
    layout: Annotated[str, typer.Option("--layout", help="parcel-label, or a file of your own.")] = "parcel-label",
    sheet: Sheet = None,
    start: Start = "1",
    nudge: Nudge = None,
    force: Force = False,
) -> None:
    """Print the label of a parcel, with their address and yours, e.g. soapledger parcel 12 -o parcel.pdf."""
    here = desk(ctx)
    text = parcel_text(delivered(here, sale, entry))
    print_card(here, [text], layout, sheet, number, start, nudge, output, force)
