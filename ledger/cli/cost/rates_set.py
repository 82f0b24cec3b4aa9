"""soapledger rates set."""

from typing import Annotated, get_args

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.show import count, say_wrapped
from ledger.operations.cost.rates import OF, set_rate
from ledger.units.dates import parse_date, show_date
from ledger.units.money import parse_money, show_money
from ledger.units.words import CostRateKind, checked


def command(
    ctx: typer.Context,
    kind: Annotated[str, typer.Argument(help="hour, or batch: what each batch bears of rent, power and the like.")],
    amount: Annotated[str, typer.Argument(help="What it costs, e.g. 16.50.", metavar="AMOUNT")],
    since: Annotated[
        str | None, typer.Option("--from", help="The day from which it holds (today).", metavar="DATE")
    ] = None,
) -> None:
    """Set what an hour, or a batch, costs from a day on, e.g. rates set hour 16.50 --from 2026-12-01."""
    here = desk(ctx)
    meant = checked(kind.strip().casefold(), get_args(CostRateKind), what="a rate")
    money = here.settings.currency
    minor = parse_money(amount, money, what="the rate")
    on = parse_date(since, today=here.today, what="the day from which it holds") if since else here.today
    booked = set_rate(here.book(), meant, minor, on=on)
    before = "" if booked.before_minor is None else f" Before that it is {show_money(booked.before_minor, money)}."
    say_wrapped(f"{OF[meant].format(show_money(minor, money))} from {show_date(on)} on.{before}")
    if booked.batches:
        begun = f"{count(booked.batches, 'batch', 'batches')} begun since then"
        say_wrapped(f"{begun} {'is' if booked.batches == 1 else 'are'} costed by it; those before keep theirs.")
