"""The words of a label that are questioned, and who let them stand before."""

from datetime import date
from typing import NamedTuple

from ledger.domain.label.claims import Questioned, question
from ledger.markets import market
from ledger.rows.batch import BatchRow
from ledger.rows.label import WordsStand, words_stand
from ledger.rows.opened import Rows
from ledger.rows.recipe import recipe_of
from ledger.views.label.label import LabelText, digest_of


class LabelWords(NamedTuple):
    """What is questioned of a label for a market, the digest of all that was read, and who let it stand."""

    questioned: tuple[Questioned, ...]
    digest: str
    stand: WordsStand | None


def claimed_words(rows: Rows, batch: BatchRow, label: LabelText, *, on: date) -> LabelWords:
    """Of the name, what it is and is for, her line, the claims and the precautions; an empty answer passes nothing.

    The digest is of the words and of what is questioned of them, so that a program that knows more words asks again.
    """
    recipe, law = recipe_of(rows, batch), market(label.market)
    hers = (label.product, label.function, label.line, label.use, recipe.label.claims if recipe else None)
    read = (*hers, *label.precautions)
    text = ". ".join(word for word in read if word)
    asked = question(text, market_is_soap=law.asks("only soap", on))
    digest = digest_of("\n".join((text, *(one.words for one in asked))))
    return LabelWords(asked, digest, words_stand(rows, law.code, digest) if asked else None)


def asked_words(one: Questioned) -> str:
    """One of them as a sentence with its source."""
    return f"'{one.words}': {one.reason} [{one.source}; {one.status}]"
