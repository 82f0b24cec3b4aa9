"""soapledger init."""

from typing import Annotated, get_args

import typer

from ledger.cli.kit.desk import desk, now
from ledger.cli.kit.options import Phone
from ledger.cli.kit.show import ask, say
from ledger.errors import BadInput
from ledger.markets import address_codes
from ledger.operations.house.setup import Setup, set_up
from ledger.rows.settings import Responsible, settings_if_any
from ledger.storage.book import Book
from ledger.units.measures import SYSTEMS, degree_unit, weights_of, with_degrees
from ledger.units.money import parse_money
from ledger.units.quantity import parse_mass
from ledger.units.web import read_web
from ledger.units.words import RejectedBars, checked


def command(
    ctx: typer.Context,
    business: Annotated[str | None, typer.Option("--business", help="The name you trade under.")] = None,
    country: Annotated[str | None, typer.Option("--country", help="Two letters, e.g. IE.")] = None,
    currency: Annotated[str | None, typer.Option("--currency", help="Three letters, e.g. EUR.")] = None,
    units: Annotated[str | None, typer.Option("--units", help="metric or us.")] = None,
    temperature: Annotated[
        str | None, typer.Option("--temperature", help="F or C, where your thermometer is not that of --units.")
    ] = None,
    time_zone: Annotated[str | None, typer.Option("--time-zone", help="E.g. Europe/Dublin.")] = None,
    market: Annotated[
        list[str] | None,
        typer.Option(
            "--market",
            help="A market with its responsible person and address, as 'eu=Name; street, town' (repeat for more).",
        ),
    ] = None,
    maker: Annotated[
        str | None, typer.Option("--maker", help="Your own name: who decides where nobody else is named.")
    ] = None,
    phone: Phone = None,
    web: Annotated[str | None, typer.Option("--web", help="Your web address, for a code on labels.")] = None,
    line: Annotated[str | None, typer.Option("--line", help="A line of your own, on the face of labels.")] = None,
    scale_step: Annotated[
        str | None, typer.Option("--scale-step", help="The smallest step your bench scale shows, e.g. '1 g' (0.1 g).")
    ] = None,
    labour: Annotated[str | None, typer.Option("--labour", help="What an hour of your work costs.")] = None,
    rejected_bars: Annotated[
        str | None,
        typer.Option(
            "--rejected-bars", help="What bars rejected or thrown away cost: 'load the good' or 'written off'."
        ),
    ] = None,
) -> None:
    """Start a ledger in this folder, or change its settings; asks for what is left out."""
    here = desk(ctx)
    there = here.path.exists()
    old = settings_if_any(here.rows()) if there else None

    def value(given: str | None, known: str | None, question: str, default: str | None = None) -> str:
        if given is not None:
            return given.strip()
        if known is not None:
            return known
        return ask(question, default=default)

    name = value(business, old.business if old else None, "The name you trade under")
    own = maker.strip() if maker else old.maker if old else value(None, here.who_given, "Your own name")
    land = value(country, old.country if old else None, "Country (two letters)").upper()
    money = value(currency, old.currency if old else None, "Currency (three letters)", "EUR").upper()
    system = value(units, weights_of(old.units) if old else None, "Units (metric or us)", "metric").lower()
    # her own degrees stay where they differ from those of the weights, until others are said
    degrees = temperature or (degree_unit(old.units) if old and old.units not in SYSTEMS else None)
    zone = value(time_zone, old.time_zone if old else None, "Time zone", "Europe/Dublin")
    addresses = dict(old.addresses) if old else {}
    if market is None and old is None:
        code = ask(f"Market ({', '.join(address_codes())}; nothing for none yet)", default="")
        if code:
            market = [f"{code}={ask('Responsible person')}; {ask('Their address, one line')}"]
    for text in market or ():
        code, responsible = _market(text)
        addresses[code] = Responsible(*responsible)
    asked = old is None and None in (business, country, currency, units, time_zone)
    if scale_step is None and asked:
        scale_step = ask("Smallest step your bench scale shows, for example 0.1 g or 1 g", default="0.1 g")
    setup = Setup(
        business=name,
        country=land,
        currency=money,
        units=with_degrees(checked(system, SYSTEMS, what="a system of units"), degrees),
        time_zone=zone,
        addresses=addresses,
        maker=own,
        web=read_web(web) if web else (old.web if old else None),
        line=line or (old.line if old else None),
        phone=phone or (old.phone if old else None),
        labour_minor_per_hour=parse_money(labour, money, what="the cost of an hour")
        if labour
        else (old.labour_minor_per_hour if old else None),
        rejected_bars=checked(rejected_bars, get_args(RejectedBars), what="what becomes of their cost")
        if rejected_bars
        else (old.rejected_bars if old else None),
        scale_step_mg=parse_mass(scale_step, what="the step of the scale")
        if scale_step
        else (old.scale_step_mg if old else None),
    )
    if old:
        set_up(here.book(), setup)
        say(f"The settings of {name} are changed.")
        return
    book = here.book() if there else here.writing_in(Book.create(here.path, who=own or here.who, now=now))
    try:
        set_up(book, setup)
    except Exception:
        book.close()
        if not there:
            here.path.unlink()
        raise
    say(f"The ledger of {name} is started in {here.path}.")
    if scale_step is None:
        say('Your scale is taken to show 0.1 g; where it shows 1 g: soapledger init --scale-step "1 g"')
    say("Next: soapledger supplier add NAME, then soapledger material add NAME --like olive")


def _market(text: str) -> tuple[str, tuple[str, str]]:
    code, separator, rest = text.partition("=")
    name, second, address = rest.partition(";")
    code = code.strip().lower()
    if not separator or not second or not name.strip() or not address.strip():
        raise BadInput(f"'{text}' is not a market with its address; write 'eu=Name; street, town'.")
    if code not in address_codes():
        raise BadInput(f"'{code}' is not a market known here; choose from {', '.join(address_codes())}.")
    return code, (name.strip(), address.strip())
