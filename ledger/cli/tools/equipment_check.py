"""soapledger equipment check."""

from typing import Annotated

import typer

from ledger.cli.kit.answer import answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json, Note, On, Which
from ledger.cli.kit.show import say
from ledger.cli.tools.equipment import Against, Tolerance, read_tried, say_touched, say_where
from ledger.domain.tools.equipment import parse_value, show_difference, show_value
from ledger.operations.tools.checks import check_equipment
from ledger.rows.equipment import checks_of, equipment_by_code
from ledger.views.tools.equipment_doubts import touched_since_last_good

SETTINGS = {"ignore_unknown_options": True}  # so that -0.3 C can be typed


def command(
    ctx: typer.Context,
    which: Which,
    found: Annotated[str, typer.Argument(help="What it showed, with its unit.")],
    against: Against = None,
    tolerance: Tolerance = None,
    on: On = None,
    note: Note = None,
    json: Json = False,
) -> None:
    """Book what an item showed against something known, e.g. equipment check bench-scale "500.4 g"."""
    here = desk(ctx)
    day = here.day(on)
    item = equipment_by_code(here.rows(), which, day)
    expected, off = read_tried(item.kind, against, tolerance)
    showed = parse_value(item.kind, found, what="what it showed")
    passed = check_equipment(
        here.book(), item.code, showed, on=day, by=here.who, expected=expected, tolerance=off, note=note
    )
    done = max(checks_of(here.rows(), item.id), key=lambda one: one.id)
    touched = None if passed else touched_since_last_good(here.rows(), item, done)
    if answer({"check": done, "touched": touched}, json):
        return
    units = here.settings.units
    say(
        f"{item.name} showed {show_value(item.kind, done.found, units)} against "
        f"{show_value(item.kind, done.expected, units)}; it may be off by "
        f"{show_difference(item.kind, done.tolerance, units)}: {'passed' if passed else 'failed'}."
    )
    if touched:
        say_touched(touched)
        say_where(here, item, touched)
        say(f"Do not use it until it passes, or retire it: soapledger equipment edit {item.code} --retired")
