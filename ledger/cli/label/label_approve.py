"""soapledger label approve."""

import shlex

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch
from ledger.cli.kit.show import say, say_wrapped
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
from ledger.operations.label.labels import LabelRequest, approve_label
from ledger.views.label.label import label_text
from ledger.views.label.net import net_doubts


def command(
    ctx: typer.Context,
    code: Batch,
    market: MarketOption = None,
    net: Net = None,
    months: Months = None,
    language: Language = None,
    on: SupplyDay = None,
) -> None:
    """Approve, by name, what the label of a batch says for a market: soapledger --as NAME label approve CODE."""
    here = desk(ctx)
    market = sold_in(here, market)
    mass, number = figures(net, months)
    words = words_of(here, market, language)
    request = LabelRequest(code, market, "", 0, here.day(on), mass, number, words=words)
    text = approve_label(here.book(), request, by=here.decider)
    say("Approved, word for word:")
    for line in text.splitlines():
        if line:
            say_wrapped(line, first="  ", indent="  ")
    view = label_text(here.rows(), code, market, on=request.on, net=mass, best_before_months=number, words=words)
    for one in view.allergens.no_statement if view.allergens else ():
        say_wrapped(
            f"Nobody stated what {one} holds, so its allergens are not on the label.", first="  ! ", indent="    "
        )
    for doubt in net_doubts(here.rows(), view):
        say_wrapped(doubt, first="  ! ", indent="    ")
    for one in view.allergens.unknown if view.allergens else ():
        say_wrapped(f"Not known here, so not looked up in any list: {one}.", first="  ! ", indent="    ")
    say_words(words)
    spoken = f" --language {shlex.quote(language)}" if language else ""
    say(f"Next: soapledger label print {code} --market {market}{spoken} -o labels.pdf")
