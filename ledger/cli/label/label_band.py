"""soapledger label band."""

from pathlib import Path
from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On
from ledger.cli.kit.show import say, say_wrapped
from ledger.cli.label.figures import MarketOption, sold_in
from ledger.operations.label.bands import approve_band
from ledger.units.given import read_given_text


def command(
    ctx: typer.Context,
    lot: Annotated[str, typer.Argument(help="The lot of bands, e.g. L60-1.")],
    file: Annotated[Path, typer.Argument(help="A text file of what stands on them, a particular a line.")],
    market: MarketOption = None,
    on: On = None,
) -> None:
    """Approve, by name, what stands on bands that a printer made; every batch in them is held against it."""
    here = desk(ctx)
    code, day = sold_in(here, market), here.day(on)
    text = read_given_text(file)
    found = approve_band(here.book(), lot, code, text, file=str(file), on=day, by=here.decider)
    say(f"Approved for {code}, word for word, what stands on the bands of lot {found.code}:")
    for line in text.splitlines():
        if line.strip():
            say_wrapped(line.strip(), first="  ", indent="  ")
    say_wrapped(
        "Next, once bars are wrapped in them: soapledger label print CODE --layout sticker-small -o stickers.pdf"
    )
