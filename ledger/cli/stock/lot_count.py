"""soapledger lot count."""

from typing import Annotated

import typer

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Note, On, Yes
from ledger.cli.kit.show import say, warn_of
from ledger.cli.stock.lots import read_quantity
from ledger.cli.stock.options import At, Code
from ledger.operations.stock.lots import count_lot
from ledger.rows.lot import find_lot
from ledger.units.quantity import show_mass, thousandfold


def command(
    ctx: typer.Context,
    code: Code,
    found: Annotated[str, typer.Argument(help="What is there, e.g. 182 g or 12.")],
    at: At = None,
    on: On = None,
    note: Note = None,
    yes: Yes = False,
) -> None:
    """Book what a count or a weighing of the container found, e.g. soapledger lot count L41-5 "182 g"."""
    here = desk(ctx)
    lot = find_lot(here.rows(), code)
    counted = read_quantity(here, code, found)
    units = here.settings.units
    if not lot.counted and (slip := thousandfold(counted, lot.on_hand, units)):
        held = show_mass(lot.on_hand, units)
        warn_of([f"Lot {lot.code} should hold {held}, not {show_mass(counted, units)}{slip}."], yes)
    off = count_lot(here.book(), lot.code, counted, place=at, on=here.day(on), note=note)
    if off == 0:
        say(f"Lot {lot.code} is as the ledger says: {amount(counted, lot.counted, units)}.")
        return
    size = amount(abs(off), lot.counted, units)
    say(f"Lot {lot.code}: {size} {'missing' if off < 0 else 'more than expected'}, now booked as counted.")
