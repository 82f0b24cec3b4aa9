"""soapledger receive."""

from collections.abc import Sequence
from pathlib import Path
from typing import Annotated, get_args

import typer

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json, Yes
from ledger.cli.kit.show import ask, count, say, say_wrapped, table, warn, warn_of
from ledger.cli.stock.delivery import COLUMNS, came_on, from_csv, from_prompts, from_text, with_exceptions
from ledger.errors import BadInput
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, ReceivedLot, doubts, receive
from ledger.rows.people import supplier_by_code
from ledger.units.money import parse_money, show_money
from ledger.units.words import CarriageBy, checked


def command(
    ctx: typer.Context,
    supplier: Annotated[str, typer.Argument(help="Who it came from: short name or name.")],
    line: Annotated[
        list[str] | None,
        typer.Option(
            "--line",
            help="'material; quantity; lot NUMBER; cost' and, as needed, '; best before 2027-03', "
            "'; sap 189', '; purity 99.2', '; certificate NUMBER', '; hold REASON' (repeat for each line).",
        ),
    ] = None,
    csv_file: Annotated[
        Path | None, typer.Option("--csv", help=f"A CSV file with the columns {', '.join(COLUMNS)}.")
    ] = None,
    note: Annotated[str | None, typer.Option("--note", help="The number on the delivery note.")] = None,
    carriage: Annotated[str | None, typer.Option("--carriage", help="What the carriage cost.")] = None,
    carriage_by: Annotated[
        str | None, typer.Option("--carriage-by", help="By what it is shared: value or mass (value).")
    ] = None,
    on: Annotated[str | None, typer.Option("--on", help="The day it came (today).")] = None,
    accept: Annotated[bool, typer.Option("--accept", help="Accept every line that has no reason to wait.")] = False,
    exceptions: Annotated[
        list[str] | None, typer.Option("--except", help="A line that waits, e.g. '2=drum dented' (repeat).")
    ] = None,
    yes: Yes = False,
    json: Json = False,
) -> None:
    """Book a delivery as new lots. A lot number you do not have is written as: lot unknown."""
    here = desk(ctx)
    came = here.day(on, what="the day it came")
    card = supplier_by_code(here.rows(), supplier)
    cost = parse_money(carriage, here.settings.currency, what="the carriage") if carriage else 0
    if carriage_by is not None and not cost:
        raise BadInput("--carriage-by says how the carriage is shared; give the carriage too, such as --carriage 12.")
    shared: CarriageBy = (
        checked(carriage_by, get_args(CarriageBy), what="a way to share the carriage") if carriage_by else "value"
    )
    if csv_file is not None and line:
        raise BadInput("Give the lines by --line or by --csv, not both.")
    by_hand = csv_file is None and not line  # then whether all is accepted is asked at the end
    accepter = here.decider if accept or by_hand else None
    if csv_file is not None:
        lines = from_csv(came_on(here, came, own=card.own), csv_file)
    elif line:
        known = came_on(here, came, own=card.own)
        lines = [from_text(known, text) for text in line]
    else:
        lines = list(from_prompts(here, came, own=card.own))
        if lines and not accept:
            exceptions, accept = _looked_at(lines, exceptions or [])
    delivery = DeliveryNote(
        supplier=card.code,
        on=came,
        lines=with_exceptions(here, lines, exceptions or ()),
        note_number=note,
        carriage_minor=cost,
        accepted_by=accepter if accept else None,
        carriage_by=shared,
    )
    warn_of(doubts(here.rows(), delivery), yes)
    received = receive(here.book(), delivery)
    if answer(received, json):
        return
    say(f"{count(len(received), 'lot')} from {card.name}. Write these codes on the containers:")
    table(
        ("lot", "material", "quantity", "their number", "status"),
        [
            (
                one.code,
                one.material,
                amount(one.quantity, one.counted, here.settings.units),
                one.supplier_number or ("own" if card.own else "unknown"),
                one.status,
            )
            for one in received
        ],
        right=(2,),
    )
    if cost:
        say_wrapped(_carriage(received, cost, shared, here.settings.currency))
    if waiting := [one.code for one in received if one.status == "quarantine"]:
        say(f"Next, once looked at: soapledger lot accept {' '.join(waiting)}")
    elif held := [one.code for one in received if one.status == "on hold"]:
        say(f'Next, once settled: soapledger lot accept {" ".join(held)} --reason "…"')
    say(f"Labels with their status: soapledger lot label {' '.join(one.code for one in received)} -o jars.pdf")


def _carriage(received: Sequence[ReceivedLot], cost: int, by: CarriageBy, currency: str) -> str:
    """What became of the carriage."""
    if not any(one.carriage_minor for one in received):
        return (
            f"The carriage, {show_money(cost, currency)}, is in no lot, since no line says what it cost; it is shown "
            "beside what is not known: soapledger worth"
        )
    bore = [one for one in received if one.cost_minor is not None]
    left = "" if len(bore) == len(received) else " Lots whose cost is not known bear none."
    shares = ", ".join(f"{one.code} {show_money(one.carriage_minor, currency)}" for one in bore)
    return f"The carriage, {show_money(cost, currency)}, is shared by {by}: {shares}.{left}"


def _looked_at(lines: list[DeliveryLine], exceptions: list[str]) -> tuple[list[str], bool]:
    """(exceptions, whether the rest is accepted): one question for the whole delivery."""
    question, usual = "Accept them all, looked at and as ordered? yes or no", "yes"
    while (typed := ask(question, default=usual).casefold()) not in ("y", "yes", "n", "no"):
        warn("  Write yes, or no to say which lines wait.")
        usual = ""  # an answer was refused, so no Enter accepts them
    if typed in ("y", "yes"):
        return exceptions, True
    which = ask(f"Which lines wait, 1 to {len(lines)}, such as 2 5 (Enter for all)", default="")
    if not which:
        return exceptions, False
    reason = ask("Why")
    return [*exceptions, *(f"{number}={reason}" for number in which.replace(",", " ").split())], True
