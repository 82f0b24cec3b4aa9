"""The ways to name what is bad, for a look-up and for a recall that is opened alike."""

from datetime import date
from typing import Annotated

import typer

from ledger.domain.recall.question import Kind, Question, Start
from ledger.units.dates import parse_date

Many = list[str] | None
Numbers = Annotated[Many, typer.Argument(help="Their lot numbers, our lot codes, batch codes from bars.")]
Bar = Annotated[Many, typer.Option("--bar", metavar="CODE", help="The batch of a bar.")]
Product = Annotated[Many, typer.Option("--product", metavar="NAME", help="A soap, made between the days.")]
LabelsOf = Annotated[Many, typer.Option("--labels", metavar="RUN", help="A print run, as after a misprint.")]
Tool = Annotated[Many, typer.Option("--tool", metavar="NAME", help="All that a failed tool measured.")]
Instead = Annotated[Many, typer.Option("--instead", metavar="NAME", help="A material that was weighed for another.")]
Recipe = Annotated[Many, typer.Option("--recipe", metavar="NAME", help="A recipe, or NAME@2 for one version.")]
Complaint = Annotated[Many, typer.Option("--complaint", metavar="NUMBER", help="What a complaint is about.")]
Supplier = Annotated[str | None, typer.Option("--supplier", help="Only lots from this supplier.")]
Material = Annotated[str | None, typer.Option("--material", help="Only lots of this material.")]
From = Annotated[str | None, typer.Option("--from", metavar="DATE", help="Received, or made, on this day or later.")]
To = Annotated[str | None, typer.Option("--to", metavar="DATE", help="Received, or made, on this day or earlier.")]
Fitting = Annotated[bool, typer.Option("--all", help="All lots that fit, where several do.")]
Number = Annotated[str, typer.Argument(help="Its number, e.g. R1.", metavar="NUMBER")]


def question_of(
    asked: dict[Kind, Many],
    *,
    supplier: str | None,
    material: str | None,
    days: tuple[str | None, str | None],
    every: bool,
    today: date,
) -> Question:
    """The question that the words make. Raises BadInput for a day that is none."""
    first, last = (
        parse_date(day, today=today, what=f"the day of --{name}") if day else None
        for name, day in zip(("from", "to"), days, strict=True)
    )
    starts = tuple(Start(kind, what) for kind, words in asked.items() for what in words or ())
    return Question(starts, supplier, material, first, last, every)
