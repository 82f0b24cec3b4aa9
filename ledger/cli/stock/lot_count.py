"""soapledger lot count."""

from typing import Annotated

import typer

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Note, On
from ledger.cli.kit.show import say
from ledger.cli.stock.lots import read_quantity
from ledger.cli.stock.options import At, Code
from ledger.operations.stock.lots import count_lot
from ledger.rows.lot import find_lot


def command(
    ctx: typer.Context,
    code: Code,
    found: Annotated[str, typer.Argument(help="What is there, e.g. 182 g or 12.")],
    at: At = None,
    on: On = None,
    note: Note = None,
) -> None:
    """Book what a count or a weighing of the container found, e.g. soapledger lot count L41-5 "182 g"."""
    here = desk(ctx)
    lot = find_lot(here.rows(), code)
    counted = read_quantity(here, code, found)
    off = count_lot(here.book(), lot.code, counted, place=at, on=here.day(on), note=note)
    if off == 0:
        say(f"Lot {lot.code} is as the ledger says: {amount(counted, lot.counted, here.settings.units)}.")
        return
    size = amount(abs(off), lot.counted, here.settings.units)
    say(f"Lot {lot.code}: {size} {'missing' if off < 0 else 'more than expected'}, now booked as counted.")
