"""soapledger equipment edit."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import NewName, Note, Which
from ledger.cli.kit.show import say
from ledger.cli.tools.equipment import Against, Every, Tolerance, read_days, read_tried
from ledger.operations.tools.equipment import EquipmentDetails, revise_equipment
from ledger.rows.equipment import equipment_by_code


def command(
    ctx: typer.Context,
    which: Which,
    name: NewName = None,
    every: Every = None,
    against: Against = None,
    tolerance: Tolerance = None,
    note: Note = None,
    retired: Annotated[bool | None, typer.Option("--retired/--in-use", help="No longer used, or again.")] = None,
) -> None:
    """Change what is known of an item, or retire it; what you leave out stays as it was."""
    here = desk(ctx)
    old = equipment_by_code(here.rows(), which, here.today)
    expected, off = read_tried(old.kind, against, tolerance)
    details = EquipmentDetails(
        name or old.name,
        old.every_days if every is None else read_days(every),
        old.expected if expected is None else expected,
        old.tolerance if off is None else off,
        note or old.note,
    )
    gone = old.retired if retired is None else retired
    revise_equipment(here.book(), old.code, details, on=here.today, retired=gone)
    say(f"{details.name} is {'retired' if gone else 'changed'}; its checks stay to be read.")
