"""soapledger tax set."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.show import say, say_wrapped
from ledger.cli.sale.outlet import From, Stall, To, day_from, outlet_of, recipe_of
from ledger.errors import BadInput
from ledger.operations.sale.set_tax import set_tax, set_tax_number
from ledger.units.quantity import parse_share


def command(
    ctx: typer.Context,
    rate: Annotated[
        str | None, typer.Argument(help="The rate, e.g. 20%; none: no tax is booked.", metavar="[RATE|none]")
    ] = None,
    name: Annotated[str | None, typer.Option("--name", help="What it is called, e.g. VAT.")] = None,
    product: Annotated[str | None, typer.Option("--product", help="Of this product alone.")] = None,
    stall: Stall = None,
    to: To = None,
    country: Annotated[str | None, typer.Option("--country", help="Of customers in this country, e.g. FR.")] = None,
    number: Annotated[
        str | None, typer.Option("--number", help="The number you are registered under.", metavar="NUMBER")
    ] = None,
    from_: From = None,
) -> None:
    """Set, by name, a rate of tax or the number you are registered under, e.g. soapledger tax set 20% --name VAT.

    Off unless set. What is booked is what you set: ask your accountant which rates hold for you.
    """
    here = desk(ctx)
    if rate is None and number is None:
        raise BadInput("Give a rate, such as 20%, or the number you are registered under: --number.")
    by = here.decider
    if country and (stall or to):
        raise BadInput("Give --country, --stall or --to, not two of them.")
    if number is not None:
        set_tax_number(here.book(), number, by=by)
        say(f"Registered under {number.strip()}.")
    if rate is None:
        return
    off = rate.strip().casefold() in ("none", "off")
    ppm = None if off else parse_share(rate, what="the rate")
    recipe, called = recipe_of(here, product) if product else (None, "")
    outlet, where = outlet_of(here, stall, to)
    what = [one for one in (called, f"at {where}" if stall else f"for {where}" if to else "") if one]
    what += [f"customers in {country.upper()}"] if country else []
    told = set_tax(
        here.book(),
        ppm,
        on=day_from(here, from_),
        by=by,
        name=name,
        recipe_id=recipe,
        place_id=outlet.place_id,
        customer_id=outlet.customer_id,
        country=country,
        what=what,
    )
    say_wrapped(f"{told}. See: soapledger tax list")
