"""Whether the bars of a batch are covered by what was assessed and notified, for the markets she sells in."""

from collections.abc import Iterator, Sequence
from datetime import date
from typing import NamedTuple

from ledger.domain.bench.decision import Doubt
from ledger.domain.label.market import Market
from ledger.domain.release.assessed import Compared
from ledger.markets import laws_at
from ledger.rows.batch import BatchRow
from ledger.rows.opened import Rows
from ledger.rows.recipe import RecipeCard, recipe_by_code
from ledger.rows.settings import settings
from ledger.views.label.allergens import barred_words
from ledger.views.recipe.skin import batch_skin_checks
from ledger.views.release.assessment import AssessmentView, batch_beside


def _barred(rows: Rows, batch: BatchRow, *, on: date) -> tuple[tuple[str, ...], bool]:
    """What the bars hold that her markets prohibit, in words for each; and whether a market of hers is left."""
    laws = laws_at(settings(rows).addresses)
    found = barred_words(rows, batch, laws, on=on)
    return found, len(found) < len(laws)


def labelled_markets(rows: Rows) -> tuple[Market, ...]:
    """The markets she has a responsible person for in which a bar carries its ingredients on a label.

    Which of them a bar is for is not known before it leaves, so labels for any market are labels. An address in the
    United States counts, since it does not say whether the bars are sold there as soap or as a cosmetic.
    """
    return tuple(law for law in laws_at(settings(rows).addresses) if law.declares_ingredients)


class AgainstSupply(NamedTuple):
    """What speaks against supplying bars on a day."""

    barred: tuple[str, ...]  # what her markets prohibit in them, in words for each
    another_market: bool  # a market of hers prohibits nothing in them
    doubts: tuple[Doubt, ...]  # why they are not covered, a sentence for each, what is prohibited among them
    unnamed: tuple[Doubt, ...]  # those about an ingredient the assessment does not name, where no person decides that


def supply_doubts(rows: Rows, batch: BatchRow, *, on: date) -> AgainstSupply:
    """Why the bars are not covered on a day, a sentence for each; nothing where they are, as far as figures go.

    What a market prohibits, more of a scent than its certificate allows on the skin, no assessment, no notification for
    a market, or a particular of the batch as weighed that lies outside what was assessed. What the assessment is silent
    on is no reason here; it is shown by the comparison. Where a market of hers asks for no assessment, a person decides
    what it does not name, as of the rest.
    """
    barred, another = _barred(rows, batch, on=on)
    checked = batch_skin_checks(rows, batch)
    over = (Doubt("skin", one.words.removesuffix(".")) for one in checked if one.verdict == "over")
    hers = laws_at(settings(rows).addresses)
    laws = [law for law in hers if law.asks("assessment", on)]
    card = recipe_by_code(rows, batch.recipe_code) if laws and batch.recipe_code is not None else None
    view = batch_beside(rows, card, batch.code, markets=[law.code for law in laws], on=on) if card else None
    outside = _compared(view) if view else _no_assessment(card, laws) if card else ()
    unnamed = (_outside(one) for one in view.compared if one.unnamed) if view and len(laws) == len(hers) else ()
    return AgainstSupply(
        barred, another, (*(Doubt("prohibited", words) for words in barred), *over, *outside), tuple(unnamed)
    )


def _outside(one: Compared) -> Doubt:
    notified = one.what.startswith("notification")
    words = f"{one.what} is {one.found}, assessed {one.assessed}"
    of = (f"date assessed {one.assessed}",) if one.what == "date" else ()  # the next day is no other doubt
    return Doubt("notification" if notified else "assessment", words, of)


def _no_assessment(card: RecipeCard, laws: Sequence[Market]) -> tuple[Doubt, ...]:
    asks = f"the market{'s' * (len(laws) > 1)} {', '.join(law.code for law in laws)}"
    words = f"there is no safety assessment of {card.name}, which {asks} ask{'s' * (len(laws) == 1)} for"
    return (Doubt("assessment", words, tuple(f"none for {law.code}" for law in laws)),)


def _compared(view: AssessmentView) -> Iterator[Doubt]:
    for one in view.compared:
        notified = one.what.startswith("notification")
        if one.verdict == "outside":
            yield _outside(one)
        elif one.verdict == "silent" and notified:
            words = f"there is no {one.what.replace('notification', 'notification for', 1)}"
            yield Doubt("notification", words)
