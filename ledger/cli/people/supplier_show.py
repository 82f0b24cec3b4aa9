"""soapledger supplier show."""

import typer

from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json, Which
from ledger.cli.kit.show import plain, say
from ledger.rows.equipment import latest_approval
from ledger.rows.people import supplier_by_code
from ledger.units.dates import show_date
from ledger.units.wording import count


def command(
    ctx: typer.Context,
    which: Which,
    json: Json = False,
) -> None:
    """Show one supplier, how to reach it, and its latest approval."""
    here = desk(ctx)
    card = supplier_by_code(here.rows(), which)
    approval = latest_approval(here.rows(), card.code, here.today)
    if answer({**plain(card), "approval": approval}, json):
        return
    say(f"{card.name} ({card.code}): {count(card.lots, 'lot')} received.")
    if card.own:
        say("Your own growing.")
    for label, value in (
        ("ask for", card.person),
        ("phone", card.phone),
        ("email", card.email),
        ("address", card.address),
        ("note", card.note),
    ):
        if value:
            say(f"  {label:8} {value}")
    if approval:
        again = f"; again on {show_date(approval.next_on)}, {approval.state}" if approval.next_on else ""
        say(f"  approved {show_date(approval.on)} by {approval.by}: {approval.what}{again}")
    elif not card.own:
        say(f'  no approval was noted: soapledger upkeep add "supplier approval" "WHY" --supplier {card.code}')
