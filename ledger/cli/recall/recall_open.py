"""soapledger recall open."""

from typing import Annotated

import typer

from ledger import __version__
from ledger.cli.kit.amounts import amount
from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Json, On
from ledger.cli.kit.show import ask, can_answer, count, out_json, say_next, say_wrapped, table
from ledger.cli.recall.named import (
    Bar,
    Complaint,
    Fitting,
    From,
    Instead,
    LabelsOf,
    Many,
    Material,
    Numbers,
    Product,
    Recipe,
    Supplier,
    To,
    Tool,
    question_of,
)
from ledger.domain.recall.question import Kind
from ledger.operations.recall.recall_life import Opening, open_recall
from ledger.views.recall.recall_kinds import asked_about_anything
from ledger.views.recall.recall_life import answered_now, recall_life
from ledger.views.recall.recall_words import already_words, to_hold_words


def command(
    ctx: typer.Context,
    numbers: Numbers = None,
    bar: Bar = None,
    product: Product = None,
    labels: LabelsOf = None,
    tool: Tool = None,
    instead: Instead = None,
    recipe: Recipe = None,
    complaint: Complaint = None,
    supplier: Supplier = None,
    material: Material = None,
    from_: From = None,
    to: To = None,
    every: Fitting = False,
    reason: Annotated[str | None, typer.Option("--reason", help="Why it is recalled.")] = None,
    hazard: Annotated[str | None, typer.Option("--hazard", metavar="WORDS", help="What the danger is.")] = None,
    found_by: Annotated[str | None, typer.Option("--found-by", metavar="WORDS", help="Who found it, and how.")] = None,
    dry: Annotated[bool, typer.Option("-n", help="Say what it would hold; open and hold nothing.")] = False,
    on: On = None,
    json: Json = False,
) -> None:
    """Open a recall and hold all that is here, e.g. soapledger recall open "4471/2" --reason "salmonella at theirs"."""
    here = desk(ctx)
    asked: dict[Kind, Many] = {
        "number": numbers, "bar": bar, "product": product, "labels": labels, "tool": tool, "instead": instead,
        "recipe": recipe, "complaint": complaint,
    }  # fmt: skip
    days = (from_, to)
    question = question_of(asked, supplier=supplier, material=material, days=days, every=every, today=here.today)
    rows = here.rows()
    found = answered_now(rows, asked_about_anything(rows, question, on=here.today), program=__version__, exercise=False)
    if dry and json:
        out_json(found.stoppable)
        return
    if dry or (can_answer() and not json):
        would = f"hold {to_hold_words(found)}" if found.stoppable else "hold nothing"
        say_wrapped(f"Opening it would {would}. {'' if found.stoppable else already_words(found)}".rstrip())
        lots = [(one.code, one.what, amount(one.quantity, one.pieces, found.units)) for one in found.stoppable]
        if lots:
            table(("lot", "what", "here"), lots, right=(2,))
    if dry:
        return
    by = here.decider
    if reason is None and can_answer():
        reason = ask("Why is it recalled?")
        hazard = hazard or ask("What is the danger? (Enter: not known yet)", default="") or None
        found_by = found_by or ask("Who found it, and how? (Enter: leave it out)", default="") or None
    number, held = open_recall(here.book(), question, Opening(reason or "", hazard, found_by), on=here.day(on), by=by)
    here.again = here.typed(f"recall show {number}")
    life = recall_life(here.rows(), number, on=here.today, program=__version__)
    if json:
        out_json(life)
        return
    done = f"put {', '.join(held)} on hold" if held else already_words(life.answer).lower().rstrip(".")
    say_wrapped(f"Recall {number} is open: {done}.")
    calls = count(len(life.people), "call")
    say_next(f"{calls} to make, and whatever else is to be done: soapledger recall show {number}")
    say_next(f"For the telephone, as a report: soapledger recall show {number} -o {number}.pdf")
