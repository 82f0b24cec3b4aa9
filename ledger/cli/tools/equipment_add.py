"""soapledger equipment add."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Note, ShortName
from ledger.cli.kit.show import say
from ledger.cli.tools.equipment import Against, Every, Tolerance, read_days, read_tried
from ledger.domain.tools.equipment import EXAMPLES, READ_WITH
from ledger.operations.tools.equipment import EquipmentDetails, add_equipment
from ledger.units.names import kind_meant


def command(
    ctx: typer.Context,
    kind: Annotated[str, typer.Argument(help="scale, thermometer or pH meter.")],
    name: Annotated[str, typer.Argument(help="What you call it.")],
    code: ShortName = None,
    every: Every = None,
    against: Against = None,
    tolerance: Tolerance = None,
    note: Note = None,
) -> None:
    """Add an item, e.g. equipment add scale "bench scale" --every 30 --against "500 g" --tolerance "1 g"."""
    here = desk(ctx)
    meant = kind_meant(kind, READ_WITH, noun="equipment")
    expected, off = read_tried(meant, against, tolerance)
    details = EquipmentDetails(name, read_days(every), expected, off, note)
    chosen = add_equipment(here.book(), meant, details, on=here.today, code=code)
    say(f"{name} is added as '{chosen}'.")
    say(f'Next: soapledger equipment check {chosen} "{EXAMPLES[meant]}"')
