"""soapledger label approve."""

import shlex
from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.options import Batch
from ledger.cli.kit.show import ask, can_answer, say, say_marked, say_wrapped, warn
from ledger.cli.label.figures import (
    Language,
    MarketOption,
    Months,
    Net,
    SupplyDay,
    figures,
    say_words,
    sold_in,
    words_of,
)
from ledger.operations.label.labels import LabelRequest, approve_label, label_asked
from ledger.rows.batch import find_batch
from ledger.views.label.claimed import asked_words, claimed_words
from ledger.views.label.net import net_doubts


def command(
    ctx: typer.Context,
    code: Batch,
    market: MarketOption = None,
    net: Net = None,
    months: Months = None,
    language: Language = None,
    on: SupplyDay = None,
    stand: Annotated[str | None, typer.Option("--stand", help="Why words that are questioned may stand on it.")] = None,
) -> None:
    """Approve, by name, what the label of a batch says for a market: soapledger --as NAME label approve CODE."""
    here = desk(ctx)
    market = sold_in(here, market)
    mass, number = figures(net, months)
    words = words_of(here, market, language)
    request = LabelRequest(code, market, "", 0, here.day(on), mass, number, words=words)
    by = here.decider
    if stand is None:
        stand = _ask_of_words(here, request)
    text = approve_label(here.book(), request, by=by, stand=stand)
    say("Approved, word for word:")
    for line in text.splitlines():
        if line:
            say_wrapped(line, first="  ", indent="  ")
    view = label_asked(here.rows(), request)
    for one in view.allergens.no_statement if view.allergens else ():
        say_marked(
            f"Nobody stated what {one} holds, so the allergens in it are not on the label, but for its own name "
            "where that is listed."
        )
    for doubt in net_doubts(here.rows(), view):
        say_marked(doubt)
    for one in view.allergens.unknown if view.allergens else ():
        say_marked(f"Not known here, so not looked up in any list: {one}.")
    for words_of_entry in view.allergens.questions if view.allergens else ():
        say_marked(words_of_entry)
    say_words(words)
    spoken = f" --language {shlex.quote(language)}" if language else ""
    say(f"Next: soapledger label print {code} --market {market}{spoken} -o labels.pdf")


def _ask_of_words(here: Desk, request: LabelRequest) -> str | None:
    """Show what is questioned and was not let stand yet, and ask why it may; None where nobody answers."""
    rows = here.rows()
    words = claimed_words(rows, find_batch(rows, request.batch), label_asked(rows, request), on=request.on)
    if not words.questioned or words.stand:
        return None
    for one in words.questioned:
        warn(f"  ? {asked_words(one)}")
    if not can_answer():
        return None
    try:
        return ask("Why may these words stand (Enter: they may not)", default="") or None
    except typer.Abort as stopped:
        if isinstance(stopped.__context__, EOFError):
            return None
        raise
