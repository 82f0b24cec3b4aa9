"""The words of a label by language: files in templates/, and her own beside her ledger or where she says."""

import re
from pathlib import Path

from ledger.domain.label.words import Words
from ledger.errors import BadInput
from ledger.reference.shipped import templates
from ledger.units.toml_reader import TomlFile, TomlPart, toml_text

_MONTHS = 12


class _WordsFile(TomlFile):
    words = {
        "": (
            "what",
            "language",
            "name",
            "best_before",
            "months",
            "date",
            "made_in",
            "batch",
            "per",
            "breaks",
            "source",
        ),
        "translation": ("of", "is"),
    }
    noun = "file of words"


def label_words(languages: str, folder: Path | None = None) -> tuple[Words, ...]:
    """The words of one language or several, "en fr", or of a file of hers.

    A file words-de.toml in `folder` goes before the shipped one; a language without a file has no words, so that the
    hourglass stands before the date. Raises BadInput for what is no language, or a file that is not whole.
    """
    return tuple(_words(one, folder) for one in languages.replace(",", " ").split())


def spoken() -> tuple[str, ...]:
    """The languages that come with the program."""
    return tuple(sorted(path.stem.removeprefix("words-") for path in templates().glob("words-*.toml")))


def _words(language: str, folder: Path | None) -> Words:
    if language.endswith(".toml"):
        return _read(Path(language))
    code = language.lower()
    if not re.fullmatch(r"[a-z]{2}", code):
        raise BadInput(
            f"'{language}' is not a language; write its two letters, such as de, several as 'en fr', or the name of a "
            f"file of your own (copy one of words-{', words-'.join(spoken())}.toml)."
        )
    places = [place / f"words-{code}.toml" for place in (folder, templates()) if place is not None]
    path = next((one for one in places if one.exists()), None)
    return _read(path, code) if path else Words(code)


def _breaks(head: TomlPart) -> tuple[str, ...]:
    """Words with their joints. Raises BadInput for one that has none, or a joint at its end."""
    found = head.listed("breaks", '["Haut-reizungen", …]') or ()
    for one in found:
        if not re.fullmatch(r"[^\W\d_]{2,}(-[^\W\d_]{2,})+", one):
            raise head.bad(
                f"breaks are words with a hyphen at each joint, such as Haut-reizungen, not '{one}'.", "breaks"
            )
    return found


def _read(path: Path, expected: str | None = None) -> Words:
    """One file, whole. Raises BadInput with file and line."""
    if not path.exists():
        raise BadInput(f"There is no file {path}; copy one of templates/words-{'.toml, words-'.join(spoken())}.toml.")
    file = _WordsFile(toml_text(path), path.name)
    head = file.head
    if file.data.get("what") != "words":
        raise head.bad('this file holds no words of a label; write what = "words" in it.', "what")
    file.check()
    language = head.word("language")
    if not re.fullmatch(r"[a-z]{2}", language) or (expected and language != expected):
        raise head.bad(f"language is {expected or 'two letters'}, as in its name, not '{language}'.", "language")
    months = head.listed("months", '["January", …]', needed=True) or ()
    if len(months) != _MONTHS:
        raise head.bad(f"months are the twelve names in their order; here are {len(months)}.", "months")
    date = head.maybe_word("date") or Words("").date
    if "{month}" not in date or "{year}" not in date:
        raise head.bad('date says where month and year stand; write date = "{month} {year}".', "date")
    return Words(
        language=language,
        name=head.word("name"),
        best_before=head.word("best_before"),
        months=months,
        date=date,
        made_in=head.word("made_in"),
        batch=head.word("batch"),
        per=head.maybe_word("per") or "",
        breaks=_breaks(head),
        translations={part.word("of"): part.word("is") for part in file.parts("translation")},
        source=head.word("source"),
    )
