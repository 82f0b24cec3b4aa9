"""soapledger recall notice."""

from typing import Annotated

import typer

from ledger import __version__
from ledger.cli.kit.answer import Paper, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.options import Force, Json, Pdf
from ledger.cli.kit.paper import PAPER, paper_size
from ledger.cli.kit.show import say, say_next, say_wrapped, warn
from ledger.cli.recall.named import Number
from ledger.documents.kit.files import check_free
from ledger.reference.recall_notices import notice_draft
from ledger.views.recall.recall_life import recall_life
from ledger.views.recall.recall_notice import RecallNotice, recall_notice
from ledger.views.recall.recall_paper import recall_paper


def command(
    ctx: typer.Context,
    number: Number,
    whom: Annotated[str, typer.Argument(help="customer, shop or stall.", metavar="WHOM")],
    language: Annotated[
        str | None, typer.Option("--language", metavar="LL", help="In the language of a file you made, e.g. de.")
    ] = None,
    output: Pdf = None,
    paper: PAPER = "a4",
    force: Force = False,
    json: Json = False,
) -> None:
    """Draft a notice for a customer, a shop or a stall, e.g. recall notice R1 shop -o shop.pdf; nothing is sent."""
    here = desk(ctx)
    check_free(output, force)
    draft = notice_draft(whom, here.path.absolute().parent, language)
    rows, size = here.rows(), paper_size(paper)
    life = recall_life(rows, number, on=here.today, program=__version__)
    found = recall_notice(recall_paper(rows, life), draft, on=here.today)
    here.let_go()
    drawn = Paper(
        f"The notice is {output}, a draft; nothing was sent.",
        lambda: loaded("documents.recall.notice_page").draw_notice(found, size=size),
        output,
        force,
    )
    answer(found, json, lambda: _say(found), paper=drawn)
    if found.dulled:
        warn(
            f"It says {' and '.join(found.dulled)}, which lowers the sense of risk; in the EU a notice has no such "
            "words (Regulation (EU) 2023/988, Art 36(2), read in a secondary text)."
        )
    if found.language != "en":
        warn("Words that lower the sense of risk are looked for in English alone; look through it for them yourself.")
    if not json:
        name = life.card.name
        say_next(f"When it is up or sent: soapledger recall note {name} --notice PLACE, or --told NAME --how letter")


def _say(found: RecallNotice) -> None:
    if found.exercise:
        say("EXERCISE")
    say(found.headline.upper())
    for heading, text in found.parts:
        say()
        say(heading)
        for line in text.split("\n"):
            say_wrapped(line, first="  ", indent="  ")
    say()
    say("A draft; nothing was sent.")
