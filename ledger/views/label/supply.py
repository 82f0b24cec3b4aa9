"""Whether the bars of a batch are covered by what was assessed and notified, for the markets she sells in."""

from datetime import date

from ledger.domain.bench.decision import Doubt
from ledger.domain.label.market import Market
from ledger.domain.release.assessed import Compared
from ledger.markets import laws_at
from ledger.rows.batch import BatchRow
from ledger.rows.opened import Rows
from ledger.rows.recipe import recipe_by_code
from ledger.rows.settings import settings
from ledger.views.label.allergens import barred_words
from ledger.views.recipe.skin import batch_skin_checks
from ledger.views.release.assessment import batch_beside


def barred_from_supply(rows: Rows, batch: BatchRow, *, on: date) -> tuple[tuple[str, ...], bool]:
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


def supply_doubts(rows: Rows, batch: BatchRow, *, on: date) -> tuple[Doubt, ...]:
    """Why the bars are not covered on a day, a sentence for each; nothing where they are, as far as figures go.

    What a market prohibits, more of a scent than its certificate allows on the skin, no assessment, no notification for
    a market, or a particular of the batch as weighed that lies outside what was assessed. What the assessment is silent
    on is no reason here; it is shown by the comparison.
    """
    barred = (Doubt("prohibited", words) for words in barred_from_supply(rows, batch, on=on)[0])
    checked = batch_skin_checks(rows, batch)
    over = (Doubt("skin", one.words.removesuffix(".")) for one in checked if one.verdict == "over")
    return (*barred, *over, *_not_assessed(rows, batch, on))


def unnamed_doubts(rows: Rows, batch: BatchRow, *, on: date) -> tuple[Doubt, ...]:
    """Those of the doubts that are about an ingredient the assessment does not name.

    Nothing where a market of hers asks for no assessment: there a person decides, as of the rest.
    """
    hers = laws_at(settings(rows).addresses)
    if not hers or not all(law.asks("assessment", on) for law in hers) or batch.recipe_code is None:
        return ()
    view = batch_beside(rows, recipe_by_code(rows, batch.recipe_code), batch.code, on=on)
    return tuple(_outside(one) for one in view.compared if one.unnamed) if view else ()


def _outside(one: Compared) -> Doubt:
    notified = one.what.startswith("notification")
    words = f"{one.what} is {one.found}, assessed {one.assessed}"
    of = (f"date assessed {one.assessed}",) if one.what == "date" else ()  # the next day is no other doubt
    return Doubt("notification" if notified else "assessment", words, of)


def _not_assessed(rows: Rows, batch: BatchRow, on: date) -> tuple[Doubt, ...]:
    laws = [law for law in laws_at(settings(rows).addresses) if law.asks("assessment", on)]
    if not laws or batch.recipe_code is None:
        return ()
    card = recipe_by_code(rows, batch.recipe_code)
    view = batch_beside(rows, card, batch.code, markets=[law.code for law in laws], on=on)
    if view is None:
        asks = f"the market{'s' * (len(laws) > 1)} {', '.join(law.code for law in laws)}"
        words = f"there is no safety assessment of {card.name}, which {asks} ask{'s' * (len(laws) == 1)} for"
        return (Doubt("assessment", words, tuple(f"none for {law.code}" for law in laws)),)
    found = []
    for one in view.compared:
        notified = one.what.startswith("notification")
        if one.verdict == "outside":
            found.append(_outside(one))
        elif one.verdict == "silent" and notified:
            words = f"there is no {one.what.replace('notification', 'notification for', 1)}"
            found.append(Doubt("notification", words))
    return tuple(found)
