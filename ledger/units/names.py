"""Finding what she means by a code, a name, or the start of one."""

import difflib
from collections.abc import Callable, Iterable, Sequence
from typing import Protocol, TypeVar

from ledger.errors import BadInput
from ledger.units.signs import folded, without_accents

_LONG_WORD = 4  # letters; a shorter word of a name is like too many others
_CLOSE_WORD = 0.75


class Named(Protocol):
    """What is known by a short name and a name."""

    @property
    def code(self) -> str:
        """Its short name."""

    @property
    def name(self) -> str:
        """Its name."""


One = TypeVar("One", bound=Named)
Word = TypeVar("Word", bound=str)


def near(text: str, known: Iterable[str], limit: int = 3, *, cutoff: float = 0.55) -> list[str]:
    """The known words closest to what was typed, nearest first; a higher cutoff wants them closer."""
    by_fold = {folded(word): word for word in known}
    close = difflib.get_close_matches(folded(text), by_fold, n=limit, cutoff=cutoff)
    return [by_fold[word] for word in close]


def nearest(text: str, known: Iterable[str], *, key: Callable[[str], str]) -> list[str]:
    """The three known words that the fewest slips turn into what was typed: a sign wrong, missing or too many is one.

    Not more than a third of its signs are wrong, and one may be in any; `key` is how both are compared.
    """
    wanted = key(text)
    far = {word: _slips(wanted, key(word)) for word in dict.fromkeys(known)}
    close = [word for word, slips in far.items() if slips <= max(1, len(wanted) // 3)]
    return sorted(close, key=lambda word: far[word])[:3]


def _slips(one: str, other: str) -> int:
    """The edit distance of two words (Levenshtein)."""
    before = list(range(len(other) + 1))
    for row, sign in enumerate(one, start=1):
        here = [row]
        for column, against in enumerate(other, start=1):
            here.append(min(before[column] + 1, here[-1] + 1, before[column - 1] + (sign != against)))
        before = here
    return before[-1]


def _begun(wanted: str, names: Sequence[tuple[str, str]], key: Callable[[str], str]) -> list[tuple[str, str]]:
    """Those whose code, name or a word of it begins so."""
    return [
        (code, name)
        for code, name in names
        if wanted
        and (
            key(code).startswith(wanted)
            or key(name).startswith(wanted)
            or any(word.startswith(wanted) for word in key(name).split())
        )
    ]


def named(text: str, known: Sequence[One], *, noun: str, add: str) -> One:
    """The one meant by a code, a name or the start of one. Raises BadInput as `match_name`."""
    code = match_name(text, [(one.code, one.name) for one in known], noun=noun, add=add)
    return next(one for one in known if one.code == code)


def kind_meant(text: str, kinds: Iterable[Word], *, noun: str) -> Word:
    """The kind meant by its name or the start of it. Raises BadInput with the list."""
    wanted, known = text.strip().casefold(), tuple(kinds)
    exact = [kind for kind in known if kind.casefold() == wanted]
    fits = exact or [kind for kind in known if wanted and kind.casefold().startswith(wanted)]
    if len(fits) == 1:
        return fits[0]
    close = near(text, known, 1)
    hint = f" Did you mean {close[0]}?" if close else ""
    raise BadInput(f"'{text}' is not a kind of {noun} known here.{hint} Write one of {', '.join(known)}.")


def match_name(text: str, names: Sequence[tuple[str, str]], *, noun: str, add: str) -> str:
    """The code meant among (code, name) pairs.

    An exact code wins, then an exact name, then the start of a code, of a name, or of a word in a name, where only one
    fits; where none does, those starts without the accents that a keyboard may lack. Raises BadInput listing what it
    could mean, or near matches and `add`, the command that adds one.
    """
    wanted = folded(text.strip())
    for code, _ in names:
        if wanted == folded(code):
            return code
    exact = [code for code, name in names if wanted == folded(name)]
    if len(exact) == 1:
        return exact[0]
    fits = _begun(wanted, names, folded)
    if not fits and text.isascii():
        fits = _begun(wanted, names, without_accents)
    if len(fits) == 1:
        return fits[0][0]
    if fits:
        listed = ", ".join(f"{code} ({name})" for code, name in fits[:8])
        raise BadInput(f"'{text}' could be any of these {noun}s: {listed}. Write its short name.")
    close = near(text, [code for code, _ in names] + [name for _, name in names])
    if not close:  # one word of a longer name, mistyped
        words = {word: name for _, name in reversed(names) for word in folded(name).split() if len(word) >= _LONG_WORD}
        close = list(dict.fromkeys(words[word] for word in near(text, words, cutoff=_CLOSE_WORD)))
    hint = f" Did you mean {' or '.join(close)}?" if close else ""
    raise BadInput(f"No {noun} is called '{text}'.{hint} To add one: {add}")
