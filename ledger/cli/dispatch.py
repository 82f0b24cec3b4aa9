"""soapledger dispatch, return, resell and gift: bars that leave one by one, and some that come back."""

from typing import Annotated

import typer

from ledger.cli.bars import BARS, read_bars, warn_of_holds
from ledger.cli.desk import desk
from ledger.cli.show import count, say
from ledger.errors import BadInput

On = Annotated[str | None, typer.Option("--on", help="The day (today).")]


def dispatch(
    ctx: typer.Context,
    customer: Annotated[str, typer.Argument(help="Who gets them: short name or name.")],
    bars: BARS,
    price: Annotated[str | None, typer.Option("--price", help="What one bar was sold for.")] = None,
    note: Annotated[str | None, typer.Option("--note", help="E.g. the number of your delivery note.")] = None,
    on: On = None,
) -> None:
    """Send released bars to a shop or a person, e.g. soapledger dispatch tern-hall 26-118-0=12 --price 4.50."""
    from ledger.domain.money import parse_money
    from ledger.operations.sell import dispatch

    here = desk(ctx)
    wanted = read_bars(bars)
    each = parse_money(price, here.settings.currency, what="the price") if price else None
    whom = dispatch(here.book(), customer, wanted, on=here.day(on), price_minor=each, note=note)
    say(f"{count(sum(wanted.values()), 'bar')} dispatched to {whom}.")
    warn_of_holds(here, wanted)


def gift(
    ctx: typer.Context,
    bars: BARS,
    to: Annotated[str | None, typer.Option("--to", help="To whom, so that a recall can find them.")] = None,
    on: On = None,
) -> None:
    """Give released bars away, e.g. soapledger gift 26-118-0=2 --to "the school fair"."""
    from ledger.operations.sell import gift

    here = desk(ctx)
    wanted = read_bars(bars)
    whom = gift(here.book(), wanted, to=to, on=here.day(on))
    say(f"{count(sum(wanted.values()), 'bar')} given to {whom}.")
    warn_of_holds(here, wanted)


def return_(
    ctx: typer.Context,
    bars: BARS,
    from_: Annotated[str | None, typer.Option("--from", help="The customer.")] = None,
    stall: Annotated[str | None, typer.Option("--stall", help="The stall they were bought at.")] = None,
    reason: Annotated[str | None, typer.Option("--reason", help="Why they came back.")] = None,
    on: On = None,
) -> None:
    """Book bars that came back, on the returns shelf, e.g. soapledger return 26-118-0=2 --from tern-hall."""
    from ledger.operations.sell import take_back

    if from_ and stall:
        raise BadInput("Give --from a customer or --stall, not both.")
    here = desk(ctx)
    wanted = read_bars(bars)
    take_back(here.book(), wanted, customer=from_, stall=stall, on=here.day(on), reason=reason)
    say(f"{count(sum(wanted.values()), 'bar')} on the returns shelf. They do not go back on sale by themselves.")
    say(f'When someone decided so: soapledger resell {" ".join(bars)} --by NAME --reason "…"')


def resell(
    ctx: typer.Context,
    bars: BARS,
    by: Annotated[str, typer.Option("--by", help="Who decided that they can be sold again.")],
    reason: Annotated[str, typer.Option("--reason", help="Why, e.g. the seal is unbroken.")],
    on: On = None,
) -> None:
    """Put bars from the returns shelf back on sale, e.g. resell 26-118-0=3 --by Orla --reason "seal unbroken"."""
    from ledger.operations.resell import resell

    here = desk(ctx)
    wanted = read_bars(bars)
    resell(here.book(), wanted, on=here.day(on), by=by, reason=reason)
    verb = "is" if sum(wanted.values()) == 1 else "are"
    say(f"{count(sum(wanted.values()), 'bar')} {verb} back on sale, as {by.strip()} decided.")
    warn_of_holds(here, wanted)
