"""What the commands of a complaint take and say alike."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk
from ledger.cli.kit.show import count, say, say_wrapped, table
from ledger.errors import BadInput
from ledger.markets import laws, laws_at
from ledger.rows.complaint import CandidateBatch, ComplaintCard
from ledger.units.dates import show_date
from ledger.units.quantity import parse_pieces

Number = Annotated[str, typer.Argument(help="Its number.")]
Batch = Annotated[str | None, typer.Option("--batch", help="The code on the bar, if known.")]
Serious = Annotated[str | None, typer.Option("--serious", help="yes or no, as a person decided.")]
DecidedBy = Annotated[str | None, typer.Option("--decided-by", help="Who decided that.")]
WORDS = {None: "not decided", True: "serious", False: "not serious"}


def read_number(text: str) -> int:
    """A complaint's number as typed. Raises BadInput."""
    return parse_pieces(text, what="the number of the complaint")


def read_grave(serious: str | None) -> bool | None:
    """Whether it is serious, as a person decided; None where nobody did. Raises BadInput."""
    if serious is not None and serious.casefold() not in ("yes", "no"):
        raise BadInput("Is it serious? Write --serious yes or --serious no.")
    return None if serious is None else serious.casefold() == "yes"


def say_duties(here: Desk) -> None:
    """The duty to report in each market she names a responsible person for; in all, where she names none."""
    say("A reminder, not legal advice:")
    for one in laws_at(here.settings.addresses) or laws():
        duty = one.serious_effect
        say_wrapped(f"{one.name}: {duty.says}, to {duty.to} ({duty.source}; {duty.status}).", first="  ", indent="    ")


def say_candidates(found: tuple[CandidateBatch, ...], card: ComplaintCard) -> None:
    """The batches that it may be about, where the code on the bar is not known."""
    where = f"at {card.bought_at}" if card.bought_at else "anywhere"
    until = show_date(card.bought_on or card.on)
    if not found:
        say_wrapped(f"No bars could have been bought {where} up to {until}; look at where and when.")
        return
    say_wrapped(f"{count(len(found), 'batch', 'batches')} could have been bought {where} up to {until}:")
    table(
        ("batch", "product", "bars left", "from", "to", "standing there"),
        [
            (
                one.code,
                one.product,
                str(one.bars),
                show_date(one.first_on) if one.first_on else "",
                show_date(one.last_on) if one.last_on else "",
                str(one.standing) if one.standing else "",
            )
            for one in found
        ],
        right=(2, 5),
    )
    say(f"When the code is known: soapledger complaint note {card.number} WORDS --batch CODE")
