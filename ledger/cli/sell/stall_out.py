"""soapledger stall out."""

from datetime import date
from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import ask, can_answer, count, say, say_next, say_wrapped
from ledger.cli.sell.stalls import Bars, Name
from ledger.cli.stock.bars import read_bars, say_presumed_bare, warn_of_holds, without_a_label
from ledger.cli.stock.first_supply import First, first_supplied
from ledger.errors import BadInput
from ledger.operations.sell.stall_out import TakenOut, stall_out
from ledger.rows.sell.product import products
from ledger.units.dates import show_date
from ledger.units.quantity import parse_pieces
from ledger.views.sell.ready import ready
from ledger.views.stock.stall import stall_by_name


def command(
    ctx: typer.Context,
    name: Name,
    bars: Bars = None,
    each: Annotated[
        str | None,
        typer.Option("--each", help="So many of every product that is ready, or of those named.", metavar="NUMBER"),
    ] = None,
    ticked: Annotated[
        bool, typer.Option("--ticked", help="The list to pack from was ticked: the batches are as booked.")
    ] = False,
    by: Annotated[str | None, typer.Option("--by", help="Who ticked it (else you).")] = None,
    first: First = None,
    on: On = None,
) -> None:
    """Take released bars to a stall, e.g. stall out saturday rosemary=12 26-118-0=6, or saturday --each 12."""
    here = desk(ctx)
    day, place = here.day(on), stall_by_name(here.rows(), name)
    typed = bars or []
    named = [text for text in typed if "=" not in text]
    if named and each is None:
        read_bars(named)
    wanted = read_bars([text for text in typed if "=" in text])
    number = parse_pieces(each, what="the number of each") if each is not None else None
    if number == 0:
        raise BadInput("How many of each? Write --each with a number above zero.")
    if not typed and number is None:
        number, wanted = _ask(here, day)
    bare = without_a_label(here, [lot.code for lots in ready(here.rows(), day).values() for lot in lots])
    taken = stall_out(
        here.book(),
        place.code,
        wanted,
        on=day,
        first=first_supplied(here, first),
        each=number,
        of=named,
        ticked_by=(by or here.decider) if ticked or by else None,
    )
    _say(taken, place.code)
    say_presumed_bare(here, bare)
    warn_of_holds(here, {one.code for one in taken.taken})
    say(f'Next, when you are home: soapledger stall back "{taken.stall}"')


def _ask(here: Desk, day: date) -> tuple[int | None, dict[str, int]]:
    """How many of each product, or of one product after another."""
    if not can_answer():
        raise BadInput("What goes to the stall? Write batches or products with numbers, such as rosemary=12.")
    if each := ask("How many of each product (Enter: product by product)", default=""):
        return parse_pieces(each, what="the number of each"), {}
    standing, wanted = ready(here.rows(), day), {}
    for one in products(here.rows()):
        if lots := standing.get(one.material_id):
            oldest = f"{lots[0].code}, made {show_date(lots[0].made_on)}"
            question = f"{one.name}: {sum(lot.bars for lot in lots)} ready (oldest {oldest}); how many go"
            if many := parse_pieces(ask(question, default="0")):
                wanted[one.code] = many
    return None, wanted


def _say(taken: TakenOut, stall: str) -> None:
    say(f"{count(taken.bars, 'bar')} taken to {taken.stall}.")
    if taken.short:
        say_wrapped(f"All there was of {', '.join(f'{product} ({had})' for product, had in taken.short)}.")
    assumed = [one for one in taken.taken if one.may_be]
    if assumed:
        say_wrapped("Assumed, the oldest first:")
        for one in assumed:
            say_wrapped(
                f"{one.product}: {one.bars} of {one.code}, which may be of {', '.join(one.may_be)}",
                first="  ",
                indent="    ",
            )
        say_next(f"When you have looked at their codes: soapledger stall ticked {stall}")
