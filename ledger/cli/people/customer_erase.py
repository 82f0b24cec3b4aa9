"""soapledger customer erase."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Yes
from ledger.cli.kit.show import count, say_next
from ledger.cli.people.customer import Which
from ledger.cli.people.erasing import Also, Leave, NameToo, Paper, Reason, erase_shown
from ledger.rows.people import customer_list, details_held
from ledger.rows.sell.order import order_lines, orders
from ledger.views.people.erasable import Sought, erasable_customer


def command(
    ctx: typer.Context,
    which: Which,
    reason: Reason,
    also: Also = None,
    attachment: Paper = None,
    leave: Leave = None,
    name_too: NameToo = False,
    yes: Yes = False,
) -> None:
    """Erase a customer's details, and whatever names the person, for good; what they bought stays."""
    here = desk(ctx)
    held = details_held(here.rows(), which)
    cards, lines = customer_list(here.rows(), code=held.code), order_lines(here.rows())  # none: its adding was undone
    promised = [one for card in cards for one in orders(here.rows(), customer_id=card.id) if one.ended_on is None]
    still = {one.id: sum(line.open for line in lines.get(one.id, ())) for one in promised}
    sought = Sought(tuple(also or ()), tuple(attachment or ()), name_too)
    erase_shown(
        here,
        lambda rows: erasable_customer(rows, which, sought),
        question=f"Erase the personal details of {held.name} for good? A recall could then not reach them.",
        says=f"The personal details of customer {held.code} are erased; the sales remain.",
        reason=reason,
        leave=leave,
        yes=yes,
    )
    for number, bars in still.items():
        if bars:
            say_next(
                f"Their order {number} is still open, {count(bars, 'bar')}. To end it: "
                f'soapledger order end {number} --by NAME --reason "…"'
            )
