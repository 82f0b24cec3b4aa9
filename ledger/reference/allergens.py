"""The fragrance allergens that labels declare, their other names, and what essential oils usually hold of them."""

import re
import unicodedata
from collections.abc import Mapping
from fractions import Fraction
from functools import cache, lru_cache
from typing import Literal, NamedTuple, get_args

from ledger.reference.shipped import table_rows
from ledger.units.words import checked

LimitKind = Literal["maximum", "peroxide", "free of", "oral", "preserving"]
_LIMIT_KINDS: tuple[LimitKind, ...] = get_args(LimitKind)
_GREEK = {"α": "alpha", "β": "beta", "γ": "gamma", "δ": "delta"}
_DASHES = dict.fromkeys(map(ord, "-_\u00ad\u2010\u2011\u2012\u2013\u2014\u2015\u2212"))
_NUMBER = re.compile(
    r"(?:\bcas\b[\s:.#-]*(?:no|nr|n|number)?[\s:.#°]*)?(?<![\d-])(\d{2,7}-\d\d-\d)(?![\d-])", re.IGNORECASE
)
_HYPHENS = dict.fromkeys(map(ord, "\u2010\u2011\u2012\u2013\u2212"), "-")
_MARKS = dict.fromkeys(map(ord, "®™©"))
# The inventory gives these for another plant or part as well, so a name is asked for: cinnamon leaf as well as bark,
# Eucalyptus citriodora as well as globulus (inventory read). Those that stand in two entries drop out by themselves.
_TWO_PLANTS = ("84649-98-9", "8000-48-4")


class Allergen(NamedTuple):
    """One entry of Annex III to Regulation (EC) 1223/2009, by the name a label prints; or what Annex II prohibits."""

    name: str
    entry: str
    first_list: bool  # among the first 26
    prohibited: bool  # by Annex II, which the entry then names
    source: str


class EntryLimit(NamedTuple):
    """What an entry asks beside its name on the label: a maximum, a purity, or where it is no line of a label."""

    name: str
    entry: str
    kind: LimitKind
    figure: Fraction | None  # percent of the finished product, or mmol/L of peroxides in the material itself
    words: str
    source: str
    status: str

    @property
    def read(self) -> bool:
        """Whether its figure was read anywhere; one from memory refuses nothing."""
        return self.status.startswith("read")

    @property
    def maximum_ppm(self) -> Fraction | None:
        """The highest share in the finished product."""
        return self.figure * 10_000 if self.figure is not None and self.kind == "maximum" else None


class Usual(NamedTuple):
    """What an essential oil usually holds of a constituent, in ppm; for plausibility alone."""

    constituent: str
    low_ppm: int
    high_ppm: int
    source: str
    status: str


@cache
def allergens() -> Mapping[str, Allergen]:
    """Every entry, by its label name in small letters."""
    return {
        row["name"].casefold(): Allergen(
            row["name"], row["entry"], row["first_list"] == "yes", row["prohibited"] == "yes", row["source"]
        )
        for row in table_rows("allergens.csv")
    }


@cache
def entry_limits() -> Mapping[str, EntryLimit]:
    """What entries ask beside their name on the label, by their label names."""
    return {
        row["name"]: EntryLimit(
            row["name"],
            row["entry"],
            checked(row["kind"], _LIMIT_KINDS, what="a kind of limit"),
            Fraction(row["figure"]) if row["figure"] else None,
            row["words"],
            row["source"],
            row["status"],
        )
        for row in table_rows("allergen_limits.csv")
    }


@lru_cache(maxsize=4096)  # an answer about many batches looks the same few names up again and again
def plain(name: str) -> str:
    """A name as it is looked up: capitals, hyphens, spaces, accents, ®, Greek letters, a leading "CAS" do not count."""
    text = name.casefold()
    if not text.isascii():
        text = unicodedata.normalize("NFKD", text.translate(_MARKS))
        text = "".join(_GREEK.get(sign, sign) for sign in text if not unicodedata.combining(sign))
    text = text.strip()
    if text.startswith("cas"):
        text = re.sub(r"^cas[\s:.#-]*(no|nr|n|number)?[\s:.#°]*(?=\d)", "", text)
    text = "".join(text.split())
    return text.replace("-", "").replace("_", "") if text.isascii() else text.translate(_DASHES)


class _Name(NamedTuple):
    """One name of an entry, and what a person should know who reads it so."""

    entry: str
    remark: str
    read: bool = True  # whether a text was read that names it so; else it is from memory


@cache
def _names() -> Mapping[str, _Name]:
    """Every label name, CAS number, synonym and INCI name of a natural oil; a number of two entries is none."""
    found = {plain(one.name): _Name(one.name, "") for one in allergens().values()}
    by_number: dict[str, set[str]] = {}
    for row in table_rows("allergens.csv"):
        for number in filter(None, (part.strip() for part in row["cas"].split(";"))):
            by_number.setdefault(plain(number), set()).add(row["name"])
    doubtful = {plain(number) for number in _TWO_PLANTS} | {one for one, names in by_number.items() if len(names) > 1}
    found |= {one: _Name(min(names), "") for one, names in by_number.items() if one not in doubtful}
    for row in table_rows("allergen_oils.csv"):
        found.setdefault(plain(row["inci"]), _Name(row["name"], "", _read(row)))
    for row in table_rows("allergen_synonyms.csv"):
        if plain(row["synonym"]) not in doubtful:
            found.setdefault(plain(row["synonym"]), _Name(row["name"], row["note"], _read(row)))
    return found


def _read(row: Mapping[str, str]) -> bool:
    return row["status"].startswith("read")


def is_cas_number(text: str) -> bool:
    """Whether it is a CAS number by its form and its check digit: the others, weighted 1, 2, 3 … from the right."""
    if not re.fullmatch(r"[1-9]\d{1,6}-\d\d-\d", text):
        return False
    *digits, check = (int(sign) for sign in text if sign.isdigit())
    return sum(place * digit for place, digit in enumerate(reversed(digits), start=1)) % 10 == check


def entries_of_number(number: str) -> tuple[str, ...]:
    """The entries that a CAS number of several stands in; nothing for one that tells what it is."""
    wanted = plain(number)
    if wanted in _names():
        return ()
    return tuple(
        row["name"] for row in table_rows("allergens.csv") if wanted in {plain(one) for one in row["cas"].split(";")}
    )


@cache
def _oils() -> frozenset[str]:
    return frozenset(plain(row["inci"]) for row in table_rows("allergen_oils.csv"))


def allergen_named(name: str) -> Allergen | None:
    """The entry that a constituent or an oil is declared under, by label name, synonym, INCI name or CAS number."""
    found = _looked_up(name)
    return allergens()[found.entry.casefold()] if found else None


@lru_cache(maxsize=4096)
def _looked_up(name: str) -> _Name | None:
    """A name as it stands, else by what it is made of; nothing where that is of two entries, which is asked about.

    That is: a CAS number in it; a name without its common one in brackets, LAVANDULA ANGUSTIFOLIA (LAVENDER) OIL; or
    names side by side, Lyral / HICC, each of which is known. What stands in brackets speaks against it, not for it.
    """
    if found := _names().get(plain(name)):
        return found
    plainly = name.translate(_HYPHENS)
    numbers = [one for one in _NUMBER.findall(plainly) if is_cas_number(one)]
    words = _NUMBER.sub("", plainly).strip(" ,;:")
    by_number = [one for one in map(_known, numbers) if one]
    found = _known(words) or _known(without_brackets(words)) or _side_by_side(words)
    beside = [one for one in map(_known, re.findall(r"\(([^()]*)\)", words)) if one]
    if len({one.entry for one in (*by_number, *beside, *([found] if found else []))}) > 1:
        return None
    return found or (by_number[0] if by_number and len(by_number) == len(numbers) else None)


def _known(name: str) -> _Name | None:
    return _names().get(plain(name))


def _side_by_side(words: str) -> _Name | None:
    """What several names mean alike, where each of them is known."""
    parts = [one for one in re.split(r"[/;|]", words) if any(map(str.isalpha, one))]
    known = [one for one in map(_known, parts) if one]
    return known[0] if known and len(known) == len(parts) and len({one.entry for one in known}) == 1 else None


def without_brackets(name: str) -> str:
    """A name without its common name in brackets, and without the asterisk or full stop of a list."""
    return re.sub(r"\([^()]*\)", "", name).strip().rstrip("*.")


def remark_on(name: str) -> str:
    """What a person should know of a name that is read as that of an entry; mostly nothing."""
    found = _looked_up(name)
    return found.remark if found else ""


def from_memory(name: str) -> bool:
    """Whether a name is read as that of an entry from memory alone, and no text was seen that names it so."""
    found = _looked_up(name)
    return found is not None and not found.read


def counted_as(name: str) -> str:
    """One word for all the names of an entry, so that a group is summed; for any other name the name itself."""
    found = allergen_named(name)
    return plain(found.name if found else name)


@cache
def names_to_propose() -> tuple[str, ...]:
    """Label names, then synonyms, without the numbers."""
    words = [one.name for one in allergens().values()] + [row["synonym"] for row in table_rows("allergen_synonyms.csv")]
    return tuple(word for word in words if not plain(word).isdigit())


def essential_oil(inci: str) -> bool:
    """Whether an INCI name is that of an oil that holds allergens, whatever kind of material it is booked as."""
    return any(plain(one) in _oils() or plain(one) in _usual() for one in (inci, without_brackets(inci)))


@cache
def _usual() -> Mapping[str, list[dict[str, str]]]:
    found: dict[str, list[dict[str, str]]] = {}
    for row in table_rows("essential_oils.csv"):
        found.setdefault(plain(row["inci"]), []).append(row)
    return found


def usual_contents(inci: str) -> tuple[Usual, ...]:
    """What an oil of that INCI name usually holds; nothing for one not in the table."""
    return tuple(
        Usual(row["constituent"], _ppm(row["low_percent"]), _ppm(row["high_percent"]), row["source"], row["status"])
        for row in _usual().get(plain(inci), ())
    )


def _ppm(percent: str) -> int:
    return round(Fraction(percent) * 10_000)
