"""The drafts of recall notices: files in templates/, and her own beside her ledger, which go before them."""

import re
from datetime import date
from pathlib import Path
from typing import Literal, NamedTuple, get_args

from ledger.errors import BadInput
from ledger.reference.shipped import templates
from ledger.units.dates import MONTHS
from ledger.units.toml_reader import TomlFile, toml_text
from ledger.units.words import checked

For = Literal["customer", "shop", "stall"]
FIELDS = ("business", "contact", "products", "sold", "reason", "hazard", "class", "recall", "date")


class NoticeWords(NamedTuple):
    """What is put between the words of a notice, in its language; fields stand in braces."""

    months: tuple[str, ...] = MONTHS
    written: str = "{day} {month} {year}"  # a date
    span: str = "{first} to {last}"
    batch: str = "batch"
    telephone: str = "telephone"
    through: str = "through {number} of our customers, {days}"
    given: str = "given away, {days}"
    unsold: str = "Not yet, as far as is known."
    class_: str = "Class {class}, set by {whom}."

    def day(self, on: date) -> str:
        """A day in the language of the notice."""
        said = self.written.replace("{day}", str(on.day)).replace("{year}", str(on.year))
        return said.replace("{month}", self.months[on.month - 1])

    def between(self, first: date, last: date) -> str:
        """A day, or the first and the last of several."""
        if first == last:
            return self.day(first)
        return self.span.replace("{first}", self.day(first)).replace("{last}", self.day(last))


class NoticeDraft(NamedTuple):
    """A headline, and the parts with their headings; fields stand in braces."""

    to_hang: bool  # for a stall: read from two metres
    headline: str
    parts: tuple[tuple[str, str], ...]
    language: str = "en"
    words: NoticeWords = NoticeWords()


# What must stand in a word, so that nothing is lost from the notice.
_HOLD = {"date": ("day", "month", "year"), "span": ("first", "last"), "through": ("number", "days"), "given": ("days",),
         "class": ("class", "whom")}  # fmt: skip


class _NoticeFile(TomlFile):
    words = {
        "": ("what", "for", "language", "headline"),
        "part": ("heading", "text"),
        "words": ("months", "date", "span", "batch", "telephone", "through", "given", "unsold", "class"),
    }
    once = ("words",)
    noun = "recall notice"


def notice_draft(whom: str, folder: Path | None = None, language: str | None = None) -> NoticeDraft:
    """The draft for a customer, a shop or a stall, in English or in the language of a file that she has beside hers.

    Raises BadInput with file and line for one that is not whole, or for a language without a file.
    """
    checked(whom, get_args(For), what="whom a notice is for")
    path, code = _path(whom, folder, language)
    file = _NoticeFile(toml_text(path), path.name)
    if file.data.get("what") != "recall notice":
        raise file.head.bad('this file is no recall notice; write what = "recall notice" in it.', "what")
    file.check()
    parts = []
    for part in file.parts("part"):
        text = part.word("text")
        for field in re.findall(r"\{([^{}]*)\}", text):
            if field not in FIELDS:
                raise part.bad(f"'{{{field}}}' is not known here; known: {{{'} {'.join(FIELDS)}}}.", "text")
        parts.append((part.word("heading"), text))
    if not parts:
        raise file.head.bad("nothing stands in it; write [[part]] with heading and text.")
    if code and file.head.maybe_word("language") != code:
        written = file.head.maybe_word("language") or "en"
        raise file.head.bad(f"language is {code}, as in its name, not '{written}'.", "language")
    language = file.head.maybe_word("language") or "en"
    words = _words(file) if code or file.parts("words") else NoticeWords()
    return NoticeDraft(whom == "stall", file.head.word("headline"), tuple(parts), language, words)


def _path(whom: str, folder: Path | None, language: str | None) -> tuple[Path, str | None]:
    """The file of a notice, and its language where that is in its name."""
    code = language.strip().lower() if language else None
    if code and not re.fullmatch(r"[a-z]{2}", code):
        raise BadInput(f"'{language}' is not a language; write its two letters, such as de.")
    plain = f"recall-{whom}.toml"
    name = f"recall-{whom}-{code}.toml" if code else plain
    places = [place for place in (folder, templates()) if place is not None]
    found = next((one / name for one in places if (one / name).exists()), None)
    if found:
        return found, code
    if code not in (None, "en"):
        raise BadInput(
            f"There is no {name}; copy templates/{plain} beside your ledger under that name, write "
            f'language = "{code}" in it, and put its words into that language.'
        )
    return next((one / plain for one in places if (one / plain).exists()), places[-1] / plain), None


def _words(file: _NoticeFile) -> NoticeWords:
    """All that is put between, in the language of the file."""
    part = file.one("words")
    months = part.listed("months", '["January", …]', needed=True) or ()
    if len(months) != len(MONTHS):
        raise part.bad(f"months are the twelve names in their order; here are {len(months)}.", "months")
    said = {key: part.word(key) for key in _NoticeFile.words["words"] if key != "months"}
    for key, fields in _HOLD.items():
        if any(f"{{{field}}}" not in said[key] for field in fields):
            raise part.bad(f"{key} says {' and '.join(f'{{{field}}}' for field in fields)}.", key)
    return NoticeWords(months, class_=said.pop("class"), written=said.pop("date"), **said)
