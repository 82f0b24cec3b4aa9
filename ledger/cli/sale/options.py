"""What the commands of sales take alike."""

from typing import Annotated

import typer

from ledger.cli.kit.show import say_next
from ledger.errors import BadInput
from ledger.units.money import figure, show_money
from ledger.units.quantity import parse_pieces
from ledger.units.words import PaidBy

Number = Annotated[str, typer.Argument(help="The number of the sale, e.g. 12.", metavar="N")]
Cash = Annotated[bool, typer.Option("--cash", help="In cash.")]
Card = Annotated[bool, typer.Option("--card", help="By card.")]
Bank = Annotated[bool, typer.Option("--bank", help="Through the bank.")]


def read_number(text: str) -> int:
    """The number of a sale: 12, or 'sale 12'. Raises BadInput."""
    return parse_pieces(text.strip().casefold().removeprefix("sale").strip(), what="the number of a sale")


def say_to_pay_back(sale: int, minor: int, currency: str) -> None:
    """What is still to be paid back of a sale, and how to book it once it is."""
    pay = f"soapledger sale pay {sale} {figure(minor, currency)} --back --cash"
    say_next(f"{show_money(minor, currency)} is still to be paid back of sale {sale}. When it is: {pay}")


def commission_words(minor: int, currency: str) -> str:
    """What a shop gives back of its commission, behind what is taken back of a sale; nothing where it is nothing."""
    return f", less {show_money(minor, currency)} commission that the shop gives back" if minor else ""


def way_of(*, cash: bool, card: bool, bank: bool) -> PaidBy | None:
    """Which way money went; None where none was said. Raises BadInput for two."""
    ways: dict[PaidBy, bool] = {"cash": cash, "card": card, "bank": bank}
    said = [way for way, given in ways.items() if given]
    if len(said) > 1:
        raise BadInput(f"--{said[0]} and --{said[1]} say two ways; leave one out, and book the rest with: sale pay")
    return said[0] if said else None
