"""soapledger label rack."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, Force
from ledger.cli.label.cards import print_card
from ledger.cli.label.sheets import Nudge, Output, Sheet, Start
from ledger.documents.label.labels import RackText
from ledger.errors import Refused
from ledger.rows.batch import find_batch


def command(
    ctx: typer.Context,
    code: Batch,
    output: Output,
    number: Annotated[str, typer.Option("--count", help="How many.")] = "1",
    sheet: Sheet = None,
    start: Start = "1",
    nudge: Nudge = None,
    force: Force = False,
) -> None:
    """Print a card for the curing rack: what it is, its code, made on and ready on. At any time."""
    here = desk(ctx)
    batch = find_batch(here.rows(), code)
    if not batch.soap or batch.ready_on is None:
        raise Refused(f"Batch {batch.code} is {batch.status}; a rack card is for bars that were cut.")
    text = RackText(batch.product, batch.code, batch.on, batch.ready_on, batch.code)
    print_card(here, (text,), "card-rack", sheet, number, start, nudge, output, force)
