"""soapledger lot combine."""

from typing import Annotated

import typer

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import On, Yes
from ledger.cli.kit.show import confirm, count, say, warn
from ledger.cli.stock.options import Codes
from ledger.operations.stock.combine import combine, poured_together
from ledger.views.stock.lot_card import lot_card


def command(
    ctx: typer.Context,
    codes: Codes,
    into: Annotated[str | None, typer.Option("--into", help="What you call the drum.")] = None,
    on: On = None,
    yes: Yes = False,
) -> None:
    """Pour lots of one material together, as when a drum is topped up; a recall follows both."""
    here = desk(ctx)
    day = here.day(on)
    poured_together(here.rows(), codes, day)
    for card in [lot_card(here.rows(), code) for code in codes]:
        if card.planned:
            batches = ", ".join(batch for batch, _ in card.planned)
            warn(f"Lot {card.lot.code} is set aside for batch {batches}, which will have to take the new one.")
    confirm(f"Pour {', '.join(codes)} together into one new lot?", yes)
    lot = combine(here.book(), codes, on=day, by=here.who, into=into)
    say(
        f"{count(len(codes), 'lot')} poured together: lot {lot.code}, {lot.material}, "
        f"{amount(lot.on_hand, lot.counted, here.settings.units)}. Write the new code on the drum."
    )
