"""soapledger customer erase."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Yes
from ledger.cli.kit.show import confirm, say
from ledger.cli.people.customer import Which
from ledger.operations.people.customers import erase_customer
from ledger.rows.people import details_held


def command(
    ctx: typer.Context,
    which: Which,
    reason: Annotated[str, typer.Option("--reason", help="Why, e.g. asked to be forgotten.")],
    yes: Yes = False,
) -> None:
    """Erase a customer's name, phone, email and address for good; what they bought stays."""
    here = desk(ctx)
    held = details_held(here.rows(), which)
    confirm(
        f"Erase the personal details of {held.name} for good? A recall could then not reach them.",
        yes,
    )
    erase_customer(here.book(), which, reason=reason)
    say(f"The personal details of customer {held.code} are erased; the sales remain.")
