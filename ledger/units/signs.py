"""Signs of Unicode that are not seen: refused where she types them, shown by number where a ledger holds them."""

import unicodedata
from collections.abc import Callable

from ledger.errors import BadInput

# Categories of the Unicode character database (UAX 44, table 12): control, format, line and paragraph separator.
_UNSEEN = frozenset(("Cc", "Cf", "Zl", "Zp"))
# Letters, marks and a pattern that are drawn blank (those of Default_Ignorable_Code_Point, DerivedCoreProperties.txt of
# the same, that are of no category above and choose no form; U+2800 by its name). From memory, unverified.
_BLANK = frozenset("\u034f\u115f\u1160\u17b4\u17b5\u2800\u3164\uffa0")
_LINES = "\n\t"
# Of the format signs these are seen: numbers and verse ends written round what follows (Prepended_Concatenation_Mark,
# PropList.txt of the same).
_SEEN = frozenset(map(chr, (*range(0x600, 0x606), 0x6DD, 0x70F, 0x890, 0x891, 0x8E2, 0x110BD, 0x110CD)))
_JOINER, _FLAG = "\u200d", "\U0001f3f4"
# What may follow a picture: its colour, the choice of a coloured form, and the signs of a flag (UTS 51, 1.4.9).
_AFTER_PICTURE = "\ufe0f" + "".join(map(chr, (*range(0x1F3FB, 0x1F400), *range(0xE0020, 0xE0080))))
# Letters that are no letter with an accent, as they are typed without them; common practice, no source.
_TYPED_AS = str.maketrans({"æ": "ae", "œ": "oe", "ø": "o", "ł": "l", "đ": "d", "ð": "d", "þ": "th", "ı": "i"})
_KINDS = {
    "\u200e\u200f\u061c": "a mark that turns the direction of writing",
    "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069": "a sign that turns the direction of writing",
    "\u200b\u2060\ufeff": "a space without width",
    "\u200c\u200d": "a joiner without width",
    "\u2028\u2029": "an end of a line",
    "\u00ad": "a hyphen that is not seen",
    "".join(_BLANK): "a sign that is drawn blank",
}


def refuse_unseen(text: str, what: str, *, lines: bool = False, instead: str = "type it again without it") -> None:
    """Raise BadInput for the first sign that is not seen, with its place; `lines` lets line ends and tabs stand."""
    for place in _unseen(text):
        sign = text[place]
        if lines and sign in _LINES:
            continue
        kind = next((words for signs, words in _KINDS.items() if sign in signs), "a control character")
        before = "".join(one if one.isprintable() else " " for one in text[max(0, place - 12) : place]).strip()
        where = f"after '{before}'" if before else "at the beginning"
        line = text.count("\n", 0, place) + 1
        at = f"line {line}, sign {place - text.rfind(chr(10), 0, place)}" if lines else f"sign {place + 1}"
        raise BadInput(f"{what}, {at}: {where} stands U+{ord(sign):04X}, {kind}, which nobody sees; {instead}.")


def masked(text: str) -> str:
    """A text with every sign that is not seen as its number in Unicode, in brackets: [U+202E]. Line ends stand."""
    return _with_unseen(text, lambda sign: f"[U+{ord(sign):04X}]")


def escaped(text: str) -> str:
    """JSON with every sign that is not seen escaped, as JSON may have any (RFC 8259, 7); line ends stand."""
    return _with_unseen(text, _escape)


def _with_unseen(text: str, written: Callable[[str], str]) -> str:
    """A text with every sign that is not seen written otherwise, but for line ends."""
    if _all_seen(text):
        return text
    if "\n" in text:  # a long answer line by line, since nearly every line has none; no picture goes over a line's end
        return "\n".join(_with_unseen(line, written) for line in text.split("\n"))
    hidden = {place for place in _unseen(text) if text[place] not in _LINES}
    return "".join(written(sign) if at in hidden else sign for at, sign in enumerate(text))


def _escape(sign: str) -> str:
    units = sign.encode("utf-16-be")
    return "".join(f"\\u{units[at]:02x}{units[at + 1]:02x}" for at in range(0, len(units), 2))


def folded(text: str) -> str:
    """A name for comparing: one Unicode form, without capitals (canonical caseless matching, Unicode 3.13, D145)."""
    if text.isascii():
        return text.casefold()
    return unicodedata.normalize("NFC", unicodedata.normalize("NFD", text).casefold())


def without_accents(text: str) -> str:
    """A name as somebody types it whose keyboard lacks its signs: Žofie Ægir as zofie aegir."""
    if text.isascii():
        return text.casefold()
    parts = unicodedata.normalize("NFKD", folded(text).translate(_TYPED_AS))
    return "".join(sign for sign in parts if not unicodedata.combining(sign))


def composed(text: str) -> str:
    """A text in the form in which it is kept, an accent in one sign with its letter (NFC, UAX 15)."""
    return text if text.isascii() else unicodedata.normalize("NFC", text)


def _unseen(text: str) -> list[int]:
    """The places of the signs that are not seen; those that join or end one picture are seen as that picture."""
    if _all_seen(text):
        return []
    return [
        place
        for place, sign in enumerate(text)
        if sign in _BLANK
        or (unicodedata.category(sign) in _UNSEEN and sign not in _SEEN and not _in_picture(text, place))
    ]


def _all_seen(text: str) -> bool:
    return text.isprintable() and (text.isascii() or _BLANK.isdisjoint(text))


def _in_picture(text: str, place: int) -> bool:
    sign = text[place]
    if sign != _JOINER and not "\U000e0020" <= sign <= "\U000e007f":
        return False
    end = place
    while end and text[end - 1] in _AFTER_PICTURE:
        end -= 1
    before = text[end - 1 : end] if end else ""
    if sign != _JOINER:
        return before == _FLAG
    return _picture(before) and _picture(text[place + 1 : place + 2])


def _picture(sign: str) -> bool:
    """Whether a sign is drawn as a picture: a symbol of the planes and blocks that emoji are in (UTS 51)."""
    return bool(sign) and (sign >= "\U0001f000" or "\u2190" <= sign <= "\u2bff") and unicodedata.category(sign) == "So"
