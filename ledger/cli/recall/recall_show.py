"""soapledger recall show."""

from typing import Annotated

import typer

from ledger import __version__
from ledger.cli.kit.answer import Paper, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.options import Force, Json, Pdf
from ledger.cli.kit.paper import PAPER, paper_size
from ledger.cli.kit.show import say_wrapped
from ledger.cli.recall.life_words import say_life
from ledger.cli.recall.named import Number
from ledger.documents.kit.files import check_free
from ledger.views.recall.recall_life import discreet, recall_life


def command(
    ctx: typer.Context,
    number: Number,
    output: Pdf = None,
    names: Annotated[bool, typer.Option("--names", help="With private persons' names on the paper.")] = False,
    paper: PAPER = "a4",
    force: Force = False,
    json: Json = False,
) -> None:
    """Show a recall as it stands, or print its report: the answer asked again now, who was told, what came back."""
    here = desk(ctx)
    check_free(output, force)
    life = recall_life(here.rows(), number, on=here.today, program=__version__)
    size, told = paper_size(paper), life
    if output:
        told = life if names else discreet(here.rows(), life)
        told = loaded("views.recall.recall_paper").recall_paper(here.rows(), told)
    here.let_go()
    drawn = Paper(
        f"The report of recall {life.card.name} is {output}.",
        lambda: loaded("documents.recall.life_report").draw_life(told, size=size),
        output,
        force,
    )
    answer(life, json, lambda: say_life(life), paper=drawn)
    if output and not names and any(one.one.private for one in life.people):
        say_wrapped("Private persons stand in it without a name and a number; with both: --names")
