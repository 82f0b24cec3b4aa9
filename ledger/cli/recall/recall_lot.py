"""soapledger recall lot."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json
from ledger.cli.kit.paper import PAPER, paper_size
from ledger.cli.kit.show import say
from ledger.cli.recall.answer import AnswerWanted, Contacts, Exercise, Force, Hold, Output, Reason, give_answer
from ledger.errors import BadInput
from ledger.rows.material import material_by_code
from ledger.rows.people import supplier_by_code
from ledger.units.dates import parse_date, show_date
from ledger.views.recall.recall_search import Notice, bars_called, batches_meant, lots_meant


def command(
    ctx: typer.Context,
    numbers: Annotated[list[str] | None, typer.Argument(help="Their lot numbers, as the notice quotes them.")] = None,
    supplier: Annotated[str | None, typer.Option("--supplier", help="Only from this supplier.")] = None,
    material: Annotated[str | None, typer.Option("--material", help="Only this material.")] = None,
    from_: Annotated[str | None, typer.Option("--from", metavar="DATE", help="Received on this day or later.")] = None,
    to: Annotated[str | None, typer.Option("--to", metavar="DATE", help="Received on this day or earlier.")] = None,
    every: Annotated[bool, typer.Option("--all", help="All lots that fit, where several do.")] = False,
    hold: Hold = False,
    reason: Reason = "supplier's recall",
    exercise: Exercise = False,
    output: Output = None,
    csv_file: Contacts = None,
    paper: PAPER = "a4",
    force: Force = False,
    json: Json = False,
) -> None:
    """Answer for one or several lot numbers, e.g. soapledger recall lot "4471/2" --hold -o recall.pdf."""
    wanted = AnswerWanted(hold, reason, exercise, output, csv_file, paper_size(paper), force, json)
    here = desk(ctx)
    asked = tuple(numbers or ())
    if not asked and not (supplier and material):
        raise BadInput("Give their lot number, or both --supplier and --material (and --from and --to).")
    vendor = supplier_by_code(here.rows(), supplier) if supplier else None
    card = material_by_code(here.rows(), material) if material else None
    notice = Notice(
        numbers=asked,
        supplier_id=vendor.id if vendor else None,
        material_id=card.id if card else None,
        received_from=parse_date(from_, today=here.today, what="the day of --from") if from_ else None,
        received_to=parse_date(to, today=here.today, what="the day of --to") if to else None,
    )
    ours, from_bars = bars_called(here.rows(), notice)
    if from_bars:
        give_answer(here, (), batches_meant(here.rows(), asked), asked, wanted)
        return
    found = lots_meant(here.rows(), notice, every=every)
    if not asked and vendor and card:
        days = (("from", notice.received_from), ("up to", notice.received_to))
        span = "".join(f" {word} {show_date(day)}" for word, day in days if day)
        asked = (f"{card.name} from {vendor.name}" + (f", received{span}" if span else ""),)
    give_answer(here, found, (), asked, wanted)
    if not json:
        for code in ours:
            say(f"{code} is the code of a batch of ours too; for its bars: soapledger recall bar {code}")
