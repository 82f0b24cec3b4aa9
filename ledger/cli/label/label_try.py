"""soapledger label try."""

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, Force
from ledger.cli.kit.show import say_marked, say_wrapped
from ledger.cli.label.figures import MarketOption, sold_in
from ledger.cli.label.sheets import Black, Output
from ledger.documents.kit.files import check_free, write_file
from ledger.documents.kit.layout import label_layout
from ledger.documents.label.doubts import look_doubts
from ledger.documents.label.tries import draw_tries
from ledger.markets import paper_in
from ledger.views.label.label import label_text


def command(
    ctx: typer.Context, code: Batch, output: Output, market: MarketOption = None, black: Black = False,
    force: Force = False,
) -> None:  # fmt: skip
    """Print one label in each layout on three sheets, to choose from, e.g. soapledger label try 26-118-0 -o try.pdf."""
    here = desk(ctx)
    check_free(output, force)
    view = label_text(here.rows(), code, sold_in(here, market), on=here.today)
    doubts = {words for name in ("wrap", "leaf-wrap") for words in look_doubts(view, label_layout(name))}
    paper = paper_in(here.settings.country)
    data = draw_tries(view, paper=paper, ink="black" if black else "colour", business=here.settings.business)
    write_file(output, data, force=force)
    say_wrapped(
        f"Every layout with the label of batch {view.batch_code} is in {output}, at printing size; nothing was booked."
    )
    for words in sorted(doubts):
        say_marked(words)
    say_wrapped(f"Print with the one you choose: soapledger label print {view.batch_code} --layout NAME -o labels.pdf")
