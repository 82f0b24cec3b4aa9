"""Where a text names a person: her name, telephone number or email, whole, however they are written."""

import re
import unicodedata
from collections.abc import Iterable

# What may stand between the words of a name; \n as JSON writes it, too.
_BETWEEN = r"(?:\\n|[\s\-_.,'’#/])+"
_IN_A_NUMBER = r"[\s\-./()]*"
_BEFORE_A_NUMBER = rf"\(?\+?(?:(?:00)?\d{{1,3}}{_IN_A_NUMBER})?(?:\(?0\)?{_IN_A_NUMBER})?\(?"
_FEWEST_DIGITS = 6  # fewer are any number

Span = tuple[int, int]


class Mentions:
    """Looks for words and telephone numbers, in one Unicode form and without regard to capitals."""

    def __init__(
        self, words: Iterable[str | None], phones: Iterable[str | None] = (), *, whole: Iterable[str | None] = ()
    ) -> None:
        """Of several words a name may also stand with the last one first; `whole` names her as the whole text alone."""
        alone = {form for text in whole if text for form in _forms(text)}
        names = {form for text in words if text for form in _forms(text)}
        numbers = {form for text in phones if text for form in _numbers(text)}
        longest = sorted(names, key=len, reverse=True)
        found = [rf"\A(?:{'|'.join(sorted(alone))})\Z"] if alone else []
        found += [rf"(?:(?<!\w)|(?<=\\n))(?:{'|'.join(longest)})(?!\w)"] if longest else []
        found += [rf"(?<!\d)(?:{_BEFORE_A_NUMBER})(?:{'|'.join(sorted(numbers))})(?!\d)"] if numbers else []
        self._pattern = re.compile("|".join(found)) if found else None

    def spans(self, text: str) -> tuple[Span, ...]:
        """Where in the text she is named, from sign to sign."""
        if self._pattern is None:
            return ()
        fold, starts, ends = _folded(text)
        return tuple((starts[one.start()], ends[one.end() - 1]) for one in self._pattern.finditer(fold))


def words_of(text: str) -> tuple[str, ...]:
    """The single words of a name, as they are compared."""
    return tuple(word for word in re.split(_BETWEEN, _folded(text)[0]) if word)


def _forms(text: str) -> list[str]:
    words = [re.escape(word).replace('"', r'\\?"') for word in words_of(text)]
    turned = [words[-1:] + words[:-1]] if len(words) > 1 else []
    return [_BETWEEN.join(one) for one in (words, *turned) if one]


def _numbers(text: str) -> list[str]:
    """A telephone number with and without the country's, which may have one to three digits."""
    digits = re.sub(r"\D", "", text)
    abroad = text.strip().startswith(("+", "00"))
    whole = digits.lstrip("0")
    cores = [whole, *(whole[cut:].lstrip("0") for cut in (1, 2, 3) if abroad)]
    return [_IN_A_NUMBER.join(core) for core in cores if len(core) >= _FEWEST_DIGITS]


def _folded(text: str) -> tuple[str, list[int] | range, list[int] | range]:
    """The text in one form, and where each of its signs begins and ends in the text as it was."""
    if text.isascii():
        return text.lower(), range(len(text)), range(1, len(text) + 1)
    fold, starts, ends, at = [], [], [], 0
    while at < len(text):
        end = at + 1
        while end < len(text) and unicodedata.combining(text[end]):
            end += 1
        part = unicodedata.normalize("NFKC", unicodedata.normalize("NFKC", text[at:end]).casefold())
        fold.append(part)
        starts += [at] * len(part)
        ends += [end] * len(part)
        at = end
    return "".join(fold), starts, ends
