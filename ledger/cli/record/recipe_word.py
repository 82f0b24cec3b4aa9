"""soapledger recipe word."""

from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Recipe
from ledger.cli.kit.show import say, say_wrapped
from ledger.operations.record.word import Word, add_word
from ledger.units.dates import parse_date, show_date
from ledger.units.given import MOST_PAPER, read_given
from ledger.units.quantity import parse_share


def command(
    ctx: typer.Context,
    which: Recipe,
    inci: Annotated[str, typer.Argument(help="The ingredient, by its INCI name.")],
    up_to: Annotated[str, typer.Option("--up-to", help="At most so much of everything weighed in, e.g. 2%.")],
    by: Annotated[str, typer.Option("--by", help="Who wrote it: the assessor of the report.")],
    on: Annotated[str, typer.Option("--on", help="The day it was written.")],
    text: Annotated[str, typer.Option("--text", help="The words.")] = "",
    paper: Annotated[
        Path | None, typer.Option("--paper", help=f"The letter, up to {MOST_PAPER // 1_000_000} MB.")
    ] = None,
) -> None:
    """Book the assessor's word on what the report does not name, e.g. recipe word calendula KAOLIN --up-to 2%."""
    here = desk(ctx)
    given = Word(
        inci=inci,
        highest_ppm=parse_share(up_to, what="the share"),
        by=by,
        on=parse_date(on, today=here.today, what="the day"),
        text=text,
        paper=(paper.name, read_given(paper)) if paper else None,
    )
    card = add_word(here.book(), which, given, today=here.today)
    say_wrapped(f"The word of {by}, {show_date(given.on)}, on {inci.upper()} is kept with the report on {card.name}.")
    say(f"Lay the recipe beside it: soapledger recipe assessment {card.code}")
