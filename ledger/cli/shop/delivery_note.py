"""soapledger delivery-note."""

import typer

from ledger.cli.kit.answer import Paper, answer
from ledger.cli.kit.desk import desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.options import Force, Json, Pdf
from ledger.cli.kit.paper import PAPER, paper_size
from ledger.cli.kit.show import count, say, table
from ledger.cli.shop.deliveries import Entry, Sale, delivered
from ledger.documents.kit.files import check_free
from ledger.markets import paper_in
from ledger.units.dates import show_date
from ledger.views.shop.delivery import Delivery


def command(
    ctx: typer.Context,
    sale: Sale = None,
    entry: Entry = None,
    output: Pdf = None,
    paper: PAPER = "",
    force: Force = False,
    json: Json = False,
) -> None:
    """Print what went to a customer, batch by batch, e.g. soapledger delivery-note 12 -o note.pdf."""
    here = desk(ctx)
    check_free(output, force)
    size = paper_size(paper or paper_in(here.settings.country))
    found = delivered(here, sale, entry)
    drawn = Paper(
        f"The delivery note of {found.name} is {output}.",
        lambda: loaded("documents.shop.delivery_page").draw_delivery(found, size=size),
        output,
        force,
    )
    answer(found, json, lambda: _say(found), paper=drawn)


def _say(found: Delivery) -> None:
    how = "on sale or return" if found.consignment else "sold"
    say(f"{count(found.bars, 'bar')} to {found.customer} on {show_date(found.on)}, {how} ({found.name}).")
    table(
        ("product", "batch", "bars", "net weight", "best before"),
        [(one.product, one.batch, str(one.bars), one.net_weight, one.best_before) for one in found.lines],
        right=(2,),
    )
    say("To print it: add -o note.pdf")
