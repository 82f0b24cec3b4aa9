"""soapledger equipment list."""

import typer

from ledger.cli.kit.answer import Listed, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json, On
from ledger.cli.kit.show import count
from ledger.cli.tools.equipment import tried_against
from ledger.rows.equipment import equipment_list
from ledger.units.dates import parse_date, show_date


def command(ctx: typer.Context, on: On = None, json: Json = False) -> None:
    """List the scales, thermometers and pH meters, those to be tried first."""
    here = desk(ctx)
    moment = parse_date(on, today=here.today) if on else here.today
    items = sorted(equipment_list(here.rows(), moment), key=lambda one: (one.retired, one.why_due is None))
    waiting = [one for one in items if one.why_due]
    words = Listed(
        f"{count(len(items), 'item')}, {len(waiting) or 'none'} to be tried.",
        ("short name", "what", "name", "tried against", "last tried", "next", "state"),
        (
            (
                one.code,
                one.kind,
                one.name,
                tried_against(here, one),
                show_date(one.last.on) if one.last else "",
                show_date(one.next_on) if one.next_on and not one.retired else "",
                "retired" if one.retired else one.why_due or "in order",
            )
            for one in items
        ),
        none='Nothing is listed yet. Next: soapledger equipment add scale "bench scale" --against "500 g"',
        then=f"Next: soapledger equipment check {waiting[0].code} FOUND" if waiting else "",
    )
    answer(items, json, words)
