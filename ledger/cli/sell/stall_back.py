"""soapledger stall back."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import ask, count, say, warn
from ledger.cli.sell.stalls import Name
from ledger.cli.stock.bars import read_bars, say_presumed_bare, without_a_label
from ledger.operations.sell.stall_back import stall_back
from ledger.rows.lot import find_lot
from ledger.units.money import parse_money
from ledger.units.quantity import parse_pieces
from ledger.views.stock.stall import at_stall, stall_by_name


def command(
    ctx: typer.Context,
    name: Name,
    bars: Annotated[
        list[str] | None, typer.Argument(help="What came back of each batch, e.g. 26-118-0=2; asks for the others.")
    ] = None,
    takings: Annotated[str | None, typer.Option("--takings", help="What you took that day.")] = None,
    on: On = None,
) -> None:
    """Close a stall day: say what came back of each batch, the rest was sold."""
    here = desk(ctx)
    place = stall_by_name(here.rows(), name)
    wanted = {find_lot(here.rows(), code).code: number for code, number in read_bars(bars or []).items()}
    for one in at_stall(here.rows(), place.id):
        if one.code not in wanted:
            typed = ask(f"{one.product} {one.code}: {one.bars} went out; how many came back", default="0")
            wanted[one.code] = parse_pieces(typed)
    money = parse_money(takings, here.settings.currency, what="the takings") if takings else None
    bare = without_a_label(here, wanted)
    ended = stall_back(here.book(), place.code, wanted, on=here.day(on), takings_minor=money)
    sold = sum(number for _, number in ended.sold)
    say(f"{ended.stall}: {count(sold, 'bar')} sold, {ended.back} came home.")
    say_presumed_bare(here, bare)
    for code in ended.held:
        warn(f"Bars of batch {code}, which is on hold, were sold; see: soapledger lot show {code}")
