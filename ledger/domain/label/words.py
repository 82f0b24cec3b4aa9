"""The fixed words of a label in the language of the country it is sold in; what needs none has a mark."""

from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from ledger.units.wording import opening

MADE_IN = "Made in "
_BETWEEN = " / "
_AROUND = ".,;:!?()\"'"  # what stands round a word and is none of it


class Words(NamedTuple):
    """The words of one language; one without words of its own has the hourglass and figures."""

    language: str  # two letters: de
    name: str = ""  # as it is called here: German
    best_before: str = ""  # before month and year; empty: the hourglass of Annex VII point 3 stands there
    months: tuple[str, ...] = ()
    date: str = "{month} {year}"
    made_in: str = ""
    batch: str = ""
    per: str = ""  # between a price and the weight it is for: 59.09 per kg
    translations: Mapping[str, str] = {}
    breaks: tuple[str, ...] = ()  # words that may go on in the next line, their joints marked: Haut-reizungen
    source: str = ""  # where the words of durability stand, and how that is known

    @property
    def called(self) -> str:
        """The language with its letters: German (de)."""
        return f"{self.name} ({self.language})" if self.name else self.language


def until(spoken: Sequence[Words], month: int, year: int) -> tuple[str, bool]:
    """Until when a bar keeps, and whether the hourglass stands before it: where one of the languages has no words."""
    if not spoken or not all(one.best_before for one in spoken):
        return f"{month:02d}/{year}", True
    dates = (one.date.replace("{month}", one.months[month - 1]).replace("{year}", str(year)) for one in spoken)
    return _each(f"{opening(one.best_before)} {day}" for one, day in zip(spoken, dates, strict=True)), False


def said(spoken: Sequence[Words], text: str) -> str:
    """What she wrote, in each language that has a translation of it; as she wrote it where one has none."""
    return _each(_one(words, text) for words in spoken) or text


def untranslated(spoken: Sequence[Words], texts: Iterable[str]) -> tuple[str, ...]:
    """What she wrote that a language other than English has no words for."""
    return tuple(
        f"'{text}' in {words.called}"
        for words in spoken
        if words.language != "en"
        for text in texts
        if text and _one(words, text) == text and text not in words.translations
    )


def batch_word(spoken: Sequence[Words]) -> str:
    """What stands before the batch code; nothing where a language has no word for it, since none is asked for."""
    return _each(one.batch for one in spoken) if all(one.batch for one in spoken) else ""


def by_weight(spoken: Sequence[Words], price: str) -> str:
    """The price of a weight, "59.09 per kg"; where a language has no word for it, with a stroke, which needs none."""
    amount, _, unit = price.partition(" per ")
    if not unit:
        return price
    if not spoken or not all(one.per for one in spoken):
        return f"{amount}/{unit}"
    return f"{amount} {_each(f'{one.per} {unit}' for one in spoken)}"


def breaks_in(spoken: Sequence[Words], texts: Iterable[str]) -> tuple[str, ...]:
    """The words of some texts that may break by the rules of their languages, with their joints."""
    held = {word.strip(_AROUND).casefold() for text in texts for word in text.split()}
    known = (one for words in spoken for one in words.breaks)
    return tuple(dict.fromkeys(one for one in known if one.replace("-", "").casefold() in held))


def _one(words: Words, text: str) -> str:
    """A text in one language; of an origin, the words before the country by themselves."""
    if text in words.translations:
        return words.translations[text]
    if text.startswith(MADE_IN) and words.made_in:
        country = text.removeprefix(MADE_IN)
        return f"{words.made_in} {words.translations.get(country, country)}"
    return text


def _each(texts: Iterable[str]) -> str:
    return _BETWEEN.join(dict.fromkeys(text for text in texts if text))
