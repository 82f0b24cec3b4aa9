"""What the commands of an instrument take and say alike."""

from datetime import date
from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk
from ledger.cli.kit.show import say, say_wrapped, table, warn
from ledger.domain.tools.equipment import parse_tolerance, parse_value, show_difference, show_value
from ledger.errors import BadInput
from ledger.rows.batch import find_batch
from ledger.rows.equipment import EquipmentRow, due
from ledger.units.dates import show_date
from ledger.units.quantity import parse_pieces
from ledger.units.words import EquipmentKind
from ledger.views.tools.equipment_doubts import Touched, TouchedBatch

Every = Annotated[str | None, typer.Option("--every", help="It is tried every so many days.")]
Against = Annotated[str | None, typer.Option("--against", help="What it should show, e.g. '500 g', '0 C', '7.00'.")]
Tolerance = Annotated[str | None, typer.Option("--tolerance", help="How far it may be off, e.g. '1 g'.")]


def say_touched(touched: Touched) -> None:
    """The batches that a failed check throws doubt on."""
    until = show_date(touched.check.on)
    span = f"after the good check of {show_date(touched.since)}" if touched.since else "ever, for want of a good check"
    if not touched.batches and not touched.unsaid:
        say_wrapped(f"Failed on {until}: no batch was measured with it {span}.")
        return
    for words, found in (
        (f"Failed on {until}: measured with it {span}:", touched.batches),
        (f"Failed on {until}: not said with which, cannot be excluded, {span}:", touched.unsaid),
    ):
        if not found:
            continue
        say_wrapped(words)
        table(
            ("batch", "product", "from", "to", "what"),
            [(one.code, one.product, show_date(one.first_on), show_date(one.last_on), _measured(one)) for one in found],
        )


def say_where(here: Desk, item: EquipmentRow, touched: Touched) -> None:
    """How to ask where the bars are of the batches that were measured with it."""
    known = (find_batch(here.rows(), one.code) for one in touched.batches)
    if any(batch.soap and batch.made for batch in known):
        say(f"Where their bars are, and whom to call: soapledger recall of --tool {item.code}")


def _measured(one: TouchedBatch) -> str:
    lines = [f"weighed line {', '.join(map(str, one.lines))}"] if one.lines else []
    return "; ".join([*lines, *one.readings])


def tried_against(here: Desk, item: EquipmentRow) -> str:
    """What an item is tried against, with how far it may be off; empty where nothing was said."""
    if item.expected is None:
        return ""
    units = here.settings.units
    off = f", off by {show_difference(item.kind, item.tolerance, units)}" if item.tolerance is not None else ""
    return show_value(item.kind, item.expected, units) + off


def read_tried(kind: EquipmentKind, against: str | None, tolerance: str | None) -> tuple[int | None, int | None]:
    """What it should show and how far it may be off, as typed. Raises BadInput."""
    expected = parse_value(kind, against, what="what it should show") if against is not None else None
    return expected, parse_tolerance(kind, tolerance) if tolerance is not None else None


def read_days(text: str | None) -> int | None:
    """Every how many days it is tried, as typed. Raises BadInput."""
    if text is None:
        return None
    days = parse_pieces(text, what="the number of days")
    if days > 3660:
        raise BadInput(f"{days} days are more than ten years; look at --every.")
    return days


def warn_failed(here: Desk, on: date) -> None:
    """Say at the bench which tools failed their last check."""
    for one in due(here.rows(), on):
        if one.last and not one.last.passed:
            warn(f"{one.name} failed its last check; what it touched: soapledger equipment show {one.code}")
