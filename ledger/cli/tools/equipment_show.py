"""soapledger equipment show."""

import typer

from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json, Which
from ledger.cli.kit.show import count, say, table
from ledger.cli.tools.equipment import say_touched, say_where, tried_against
from ledger.domain.tools.equipment import show_difference, show_value
from ledger.rows.equipment import checks_of, equipment_by_code
from ledger.units.dates import show_date
from ledger.views.tools.equipment_doubts import touched_since_last_good


def command(ctx: typer.Context, which: Which, json: Json = False) -> None:
    """Show one item with its checks, and the batches each failed check throws doubt on."""
    here = desk(ctx)
    item = equipment_by_code(here.rows(), which, here.today)
    checks = checks_of(here.rows(), item.id)
    doubts = [touched_since_last_good(here.rows(), item, one) for one in checks if not one.passed]
    if answer({"item": item, "checks": checks, "touched": doubts}, json):
        return
    units = here.settings.units
    state = "retired" if item.retired else item.why_due or "in order"
    say(f"{item.name} ({item.code}), {item.kind}: {state}.")
    for label, value in (
        ("tried against", tried_against(here, item)),
        ("every", count(item.every_days, "day") if item.every_days else ""),
        ("next", show_date(item.next_on) if item.next_on else ""),
        ("note", item.note),
    ):
        if value:
            say(f"  {label:14} {value}")
    if checks:
        table(
            ("on", "by", "should show", "showed", "may be off by", "", "note"),
            [
                (
                    show_date(one.on),
                    one.by,
                    show_value(item.kind, one.expected, units),
                    show_value(item.kind, one.found, units),
                    show_difference(item.kind, one.tolerance, units),
                    "passed" if one.passed else "failed",
                    one.note or "",
                )
                for one in checks
            ],
        )
    for touched in doubts:
        say_touched(touched)
        say_where(here, item, touched)
