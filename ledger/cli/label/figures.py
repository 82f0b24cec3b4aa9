"""What the commands of a label take alike: market, net weight, months, day of supply."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.show import say_wrapped
from ledger.domain.label import net_quantity
from ledger.domain.label.panel import EXAMPLES, Front, read_front
from ledger.domain.label.words import Words
from ledger.errors import BadInput
from ledger.markets import market as law_of
from ledger.markets import own_market
from ledger.reference.label_words import label_words
from ledger.units.quantity import parse_pieces

Net = Annotated[str | None, typer.Option("--net", help="Net weight per bar (else the recipe's), e.g. 100 g.")]
Months = Annotated[
    str | None, typer.Option("--months", help="Best before, months from the making (else the recipe's).")
]
SupplyDay = Annotated[str | None, typer.Option("--on", help="The day they are first supplied (today).")]


def figures(net: str | None, months: str | None) -> tuple[net_quantity.Net | None, int | None]:
    """The net weight, in the unit it was typed in, and the months, as typed. Raises BadInput."""
    mass = net_quantity.read_net(net) if net else None
    number = parse_pieces(months, what="the months") if months else None
    if number == 0:
        raise BadInput("Best before lies at least one month after the making.")
    return mass, number


Pack = Annotated[
    str | None,
    typer.Option("--pack", help="The side of the pack that bears the front, e.g. '55 x 80 mm' (else the layout's)."),
]
Language = Annotated[
    str | None,
    typer.Option("--language", help="Of its words: de, 'en fr', or a file of yours (else by market and country)."),
]
Layout = Annotated[str, typer.Option("--layout", help="A layout that is shipped, or a file of your own.")]


def front_of(pack: str | None, layout: str, market: str) -> Front | None:
    """The side of the pack that bears the front: hers, or as the layout says.

    Raises BadInput where neither says it, the law of the market goes by it, and the layout has the net quantity.
    """
    law, front = law_of(market), read_front(pack) if pack else None
    if law.heights_by != "panel":
        return None
    form = loaded("documents.kit.layout").label_layout(layout)
    front = front or form.pack
    if front is None and law.figure_heights and "net_quantity" in form.placed:
        raise BadInput(
            f"In {law.name} the height of the net quantity goes by the side of the pack that bears the front, and the "
            f"layout '{layout}' does not say it; measure and write it: --pack {EXAMPLES}."
        )
    return front


def say_front(market: str, layout: str, pack: str | None, front: Front | None) -> None:
    """By which pack the net quantity was set where she named none, and where a sticker with it goes."""
    form, law = loaded("documents.kit.layout").label_layout(layout), law_of(market)
    if front is None or "net_quantity" not in form.placed:
        return
    if pack is None:
        say_wrapped(
            f"The net quantity is as high as a front of {front.words} asks, for which the layout is made; for another "
            f"add --pack, written like that."
        )
    if form.purpose == "sticker" and (low := law.lettering.on(front.cm2).lowest):
        say_wrapped(
            f"In {law.name} the net quantity stands in the lowest {100 * low:g} % of the front: the sticker goes there."
        )


def words_of(here: Desk, market: str, language: str | None) -> tuple[Words, ...]:
    """The words of a label: of the languages she names, else of those of the market in her own country.

    A file words-de.toml beside her ledger goes before the shipped one. Raises BadInput.
    """
    languages = law_of(market).languages_in(here.settings.country) if language is None else language
    return label_words(languages, here.path.parent)


def say_words(words: tuple[Words, ...]) -> None:
    """In which languages the words of a label are, and how another is had."""
    if not words:
        say_wrapped(
            "No language is known here for your country in this market, so its words are as you wrote them and "
            "the hourglass stands before the date; name one: --language de"
        )
        return
    wordless = [one.language for one in words if not one.best_before]
    other = next(one for one in ("de", "fr", "en") if one not in [spoken.language for spoken in words] or one == "en")
    say_wrapped(f"Its words are in {' and '.join(one.called for one in words)}; for another: --language {other}")
    for one in wordless:
        say_wrapped(
            f"No words for the date are known here in {one}, so the hourglass stands before it; a file of your "
            f"own gives them: words-{one}.toml beside your ledger."
        )


MarketOption = Annotated[str | None, typer.Option("--market", help="Where they are sold (else your own market).")]


def sold_in(here: Desk, market: str | None) -> str:
    """The market as typed, else the code of her own; every answer names it. Raises BadInput for several."""
    return own_market(here.settings.addresses, here.settings.country).code if market is None else market
