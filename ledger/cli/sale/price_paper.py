"""The prices of an outlet on paper: a list, or a card for each product."""

from functools import partial
from pathlib import Path

from ledger import __version__
from ledger.cli.kit.answer import Paper, answer
from ledger.cli.kit.desk import Desk
from ledger.cli.kit.paper import paper_size
from ledger.cli.kit.show import count, say_wrapped
from ledger.cli.label.cards import print_card
from ledger.documents.label.labels import TicketText
from ledger.documents.sale.price_list import draw_price_list
from ledger.rows.settings import printed_from
from ledger.views.sale.price_list import PriceList


def print_prices(here: Desk, found: PriceList, output: Path, cards: str | None, paper: str, force: bool) -> None:
    """Print them in a layout of cards, else as a list."""
    business = here.settings.business
    if cards:
        texts = [
            TicketText(one.product, one.net_quantity, one.price, one.unit_price, business=business)
            for one in found.priced
        ]
        print_card(here, texts, cards, None, "1", "1", None, output, force)
    else:
        source = printed_from(here.rows(), __version__)
        draw = partial(draw_price_list, found, business=business, printed_from=source, paper=paper_size(paper))
        answer(found, False, paper=Paper(f"{count(len(found.priced), 'price')} in {output}.", draw, output, force))
    if found.unpriced:
        say_wrapped(f"Without a price: {', '.join(found.unpriced)}.")
    for words in found.remains:
        say_wrapped(words)
