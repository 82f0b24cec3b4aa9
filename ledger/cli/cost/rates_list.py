"""soapledger rates list."""

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.show import count
from ledger.rows.sell.cost import rates
from ledger.units.dates import show_date
from ledger.units.money import show_money

_OF = {"hour": "an hour of work", "batch": "the house, for each batch"}


def command(ctx: typer.Context, json: Json = False) -> None:
    """List what an hour and a batch cost, from which day on."""
    here = desk(ctx)
    own = here.settings
    found = sorted(rates(here.rows()), key=lambda one: (one.kind, one.on))
    held = own.labour_minor_per_hour
    lines = [(_OF[one.kind], show_date(one.on), show_money(one.minor, own.currency)) for one in found]
    first = " before the first rate for one" if any(one.kind == "hour" for one in found) else ""
    before = "" if held is None else f"An hour{first}: {show_money(held, own.currency)} (soapledger init --labour)."
    answer(
        found,
        json,
        Listed(
            f"{count(len(found), 'rate')}. A batch is costed by those of the day it was begun.",
            ("of", "from", "rate"),
            lines,
            right=(2,),
            none=f"No rate is set yet. {before}\nNext: soapledger rates set hour AMOUNT --from DAY".replace(
                " \n", "\n"
            ),
            then=before,
        ),
    )
