"""Codes of batches and lots, with a check character, and supplier numbers as quoted by telephone."""

import re
import unicodedata
from collections.abc import Iterable

from ledger.errors import BadInput, Refused
from ledger.units.signs import composed

# Every hyphen and dash that a keyboard, a printer or a PDF may put in a code (U+2010 to U+2015 and the minus sign).
_DASHES = re.compile(r"[\s\-\u2010-\u2015−./_]+")


def _check_character(digits: str) -> str:
    """The ISO/IEC 7064 MOD 11-2 check character."""
    from stdnum.iso7064 import mod_11_2  # here, since it loads ssl, which a mere look at the stock need not wait for

    character: str = mod_11_2.calc_check_digit(digits)
    return character


def batch_code(year: int, number: int) -> str:
    """26-118-X: the year, the running number in it, and the ISO/IEC 7064 MOD 11-2 check character.

    Digits and X alone, so that nothing in it can be read as another sign.
    """
    digits = f"{year % 100:02d}{number:03d}"
    return f"{digits[:2]}-{digits[2:]}-{_check_character(digits)}"


def lot_code(number: int) -> str:
    """L41-7: the running number and its ISO/IEC 7064 MOD 11-2 check character."""
    return f"L{number}-{_check_character(str(number))}"


def looks_like_batch_code(text: str) -> bool:
    """Whether it has the shape of a batch code, right or mistyped."""
    return re.fullmatch(r"\d{5,}[\dX]", _DASHES.sub("", text).upper()) is not None


def looks_like_lot_code(text: str) -> bool:
    """Whether it has the shape of one of our lot codes, right or mistyped."""
    return re.fullmatch(r"L\d+[\dX]", _DASHES.sub("", text).upper()) is not None


def _checked(digits: str, check: str, text: str, right: str) -> str:
    if _check_character(digits) != check:
        raise Refused(
            f"'{text.strip()}' is not a code of ours: its last character does not fit the rest "
            f"(it would be {right}). Read the label again."
        )
    return right


def read_batch_code(text: str) -> str:
    """A batch code as typed, in its one spelling.

    Raises Refused when the check character does not fit, BadInput when it is no batch code at all.
    """
    plain = _DASHES.sub("", text).upper()
    if not looks_like_batch_code(text):
        raise BadInput(f"'{text.strip()}' is not a batch code; one looks like {batch_code(2026, 118)}.")
    right = batch_code(int(plain[:2]), int(plain[2:-1]))
    if len(plain) != len(_DASHES.sub("", right)):
        # One zero too many may fit its check character by chance, and would else pass for another batch.
        raise Refused(f"'{text.strip()}' is not a code of ours: it has too many noughts. Read the label again.")
    return _checked(plain[:-1], plain[-1], text, right)


def read_lot_code(text: str) -> str:
    """A lot code of ours as typed, in its one spelling; raises like `read_batch_code`."""
    plain = _DASHES.sub("", text).upper()
    if not looks_like_lot_code(text):
        raise BadInput(f"'{text.strip()}' is not a lot code of ours; one looks like {lot_code(41)}.")
    return _checked(plain[1:-1], plain[-1], text, lot_code(int(plain[1:-1])))


def near_codes(text: str, known: Iterable[str]) -> list[str]:
    """The known codes that one slip of the hand makes into what was typed, dashes and capitals apart."""
    typed = _DASHES.sub("", text).upper()
    return [code for code in known if _one_slip(typed, _DASHES.sub("", code))]


def _one_slip(typed: str, right: str) -> bool:
    """One sign wrong, one left out, one too many, or two neighbours swapped."""
    if len(typed) == len(right):
        wrong = [place for place, sign in enumerate(right) if typed[place] != sign]
        if len(wrong) == 2:
            first, second = wrong
            return second == first + 1 and typed[first : second + 1] == right[second] + right[first]
        return len(wrong) == 1
    short, long = sorted((typed, right), key=len)
    return len(long) == len(short) + 1 and any(long[:n] + long[n + 1 :] == short for n in range(len(long)))


_PREFIX = re.compile(
    r"(?:(?:lot|lote|batch|chargen?)(?:[\W_]*(?:number|no|nr))?|b/n|l/n|bn)(?![a-z])[\W_]*",
    re.IGNORECASE,
)


def supplier_number_key(text: str) -> str:
    """A supplier's lot number for comparing, however a notice or a voice on the telephone quotes it.

    Capitals, spaces, dashes, slashes, dots and a prefix such as LOT or BN make no difference, nor does the way in
    which an accent is typed; leading zeros do.
    """
    return composed(_key(composed(text)))


def keys_kept(text: str) -> tuple[str, ...]:
    """The keys under which a ledger may hold a number: earlier programs kept one for each way of typing an accent."""
    forms = (unicodedata.normalize(form, text) for form in ("NFC", "NFD"))
    return tuple({supplier_number_key(text), *map(_key, forms)})


def same_number(kept: str, asked: str) -> bool:
    """Whether a number that is kept is the one asked for; one without a letter or figure is none."""
    return supplier_number_key(kept) == supplier_number_key(asked) != ""


def _key(text: str) -> str:
    plain = text.strip().strip("'\"")
    while match := _PREFIX.match(plain):
        if not re.search(r"[^\W_]", plain[match.end() :]):
            break
        plain = plain[match.end() :]
    return re.sub(r"[\W_]+", "", plain).casefold()


_WORDS = dict(
    zip(
        "0123456789",
        ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"],
        strict=True,
    )
)
