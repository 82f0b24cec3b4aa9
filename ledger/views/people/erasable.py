"""Everything the ledger holds of a person that an erasure takes, what it does not take, and what may be hers too."""

import re
from collections import defaultdict
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal, NamedTuple

from ledger.errors import BadInput
from ledger.rows.complaint import complaint_kept, complaints_of_customers, words_of_complaints
from ledger.rows.kept import WholePaper, whole_papers
from ledger.rows.opened import Rows
from ledger.rows.people import Details, Text, details_held, every_details, texts, texts_of, texts_to
from ledger.units.mentions import Mentions, Span, words_of
from ledger.units.words import FREE_TEXT, STAYS

_GONE = re.compile(r"\[erased, entry \d+\]|erased-\d+")
_FEWEST_LETTERS = 3  # of a word that is looked for by itself
_FEWEST_SIGNS = 6  # of a SHA-256, as for saving a paper


class Item(NamedTuple):
    """One text that an erasure takes: the whole of it, or the words in it that name the person."""

    text: Text
    spans: tuple[Span, ...] = ()  # none: the whole

    def after(self, entry: int) -> str:
        """What stands there from then on, by the number of the erasing entry."""
        whole, spans = self.text.text, self.spans
        if self.text.column == "code":  # which stays a short name, and the only one of its kind
            return f"{_cut(whole, spans, 'erased') if spans else 'erased'}-{self.text.row}"
        if not spans or spans == ((0, len(whole)),):
            return f"[erased, entry {entry}]"
        return _cut(whole, spans, "[erased]")


class Sought(NamedTuple):
    """What she says of whom to erase."""

    also: tuple[str, ...] = ()  # other words that name the person
    papers: tuple[str, ...] = ()  # how the SHA-256 of papers begins that go as well
    name_too: bool = False  # the name of a firm is a person's, and goes too


NOTHING_MORE = Sought()


@dataclass(frozen=True)
class Erasable:
    """What an erasure takes of one customer, supplier or complaint."""

    noun: Literal["customer", "supplier", "complaint"]
    code: str
    details: tuple[Details, ...]
    items: tuple[Item, ...]
    perhaps: tuple[Item, ...]  # one word of the name alone
    stays: tuple[Item, ...]  # who did or decided something, and the like
    alike: tuple[Details, ...]  # details of others with the same name or number
    unread: int  # papers that cannot be searched
    named: Mentions

    @property
    def found(self) -> bool:
        """Whether anything is left to erase."""
        return bool(self.details or self.items)


class _Person(NamedTuple):
    """Whom to look for: her own details, what was written of her, and the words that name her."""

    own: Sequence[Details]
    written: Sequence[Text]
    codes: Sequence[Text]
    complaints: Collection[int]
    sought: Sought


def erasable_customer(rows: Rows, text: str, sought: Sought = NOTHING_MORE) -> Erasable:
    """What is held of a customer, with the complaints that are the person's. Raises BadInput for an unknown one."""
    held = details_held(rows, text)
    written = [*texts_of(rows, "customer", held.ids)]
    person = not any(one.column == "name" for one in written)  # a person's name stands among the details
    if person or sought.name_too:
        written += texts_to(rows, held.ids)
    complaints = complaints_of_customers(rows, held.ids) if person else ()
    whom = _whom(rows, "customer", held.ids, written, complaints, sought)
    return _erasable(rows, "customer", held.code, whom)


def erasable_supplier(rows: Rows, text: str, sought: Sought = NOTHING_MORE) -> Erasable:
    """What is held of whom to ask for at a supplier; of the firm's name only where told. Raises BadInput."""
    held = details_held(rows, text, "supplier")
    whom = _whom(rows, "supplier", held.ids, [*texts_of(rows, "supplier", held.ids)], (), sought)
    return _erasable(rows, "supplier", held.code, whom)


def erasable_complaint(rows: Rows, number: int, sought: Sought = NOTHING_MORE) -> Erasable:
    """What is held of whoever reported a complaint, taken back or not. Raises BadInput for an unknown number."""
    complaint_kept(rows, number)
    whom = _whom(rows, "complaint", (number,), (), (number,), sought)
    return _erasable(rows, "complaint", str(number), whom)


def _whom(
    rows: Rows,
    noun: Literal["customer", "supplier", "complaint"],
    ids: Collection[int],
    written: Sequence[Text],
    complaints: Collection[int],
    sought: Sought,
) -> _Person:
    own = [one for one in every_details(rows) if one.noun == noun and one.number in ids]
    firm = noun == "supplier" or any(one.column == "name" for one in written)
    named = noun != "complaint" and (not firm or sought.name_too)  # a firm's short name is made from its own
    codes = [one for one in texts(rows, {noun: ("code",)}) if one.row in ids] if named else []
    kept = [one for one in written if (one.column != "name" or sought.name_too) and not _GONE.fullmatch(one.text)]
    return _Person(own, kept, codes, complaints, sought)


class _Sought(NamedTuple):
    """What names her, and what of it was found first."""

    named: Mentions
    weak: Mentions  # one word of the name alone
    renamed: Sequence[Text]  # short names made from hers
    papers: Sequence[Item]
    unread: int


def _sought(rows: Rows, whom: _Person) -> _Sought:
    own, sought = whom.own, whom.sought
    names = [*(one.name for one in own if one.name), *(one.text for one in whom.written if one.column == "name")]
    single = {word for one in names for word in words_of(one) if len(word) >= _FEWEST_LETTERS}
    weak = Mentions(single)
    words = [*sought.also, *(one.email for one in own if one.email), *_addresses(own)]
    one_word = [one for one in names if len(words_of(one)) == 1]  # which may be the word for an oil, as Rose
    words += [one for one in names if one not in one_word]
    renamed = [one for one in whom.codes if single & {*words_of(one.text)}]
    for one in renamed:
        words += [f"{before} {one.text}" for before in ("customer", "supplier", "to", "from")]  # as history tells of it
    phones = [one.phone for one in own]
    papers, unread = _papers(rows, Mentions(words, phones), sought.papers)
    words += [one.text.text for one in papers if weak.spans(one.text.text)]  # as letter-marsh.pdf, where it is told of
    return _Sought(Mentions(words, phones, whole=one_word), weak, renamed, papers, unread)


def _erasable(rows: Rows, noun: Literal["customer", "supplier", "complaint"], code: str, whom: _Person) -> Erasable:
    named, weak, renamed, papers, unread = _sought(rows, whom)
    others = [one for one in every_details(rows) if one not in whom.own and _hits(one, named)]
    hers = [one for one in others if one.noun == "complaint" and not _differs(one, whom.own, named)]
    complaints = {*whom.complaints, *(one.number for one in hers)}
    said = [one for one in words_of_complaints(rows, complaints) if not _GONE.fullmatch(one.text)]
    items = {_place(one): Item(one) for one in (*whom.written, *renamed, *said)}
    stays = [*texts(rows, STAYS)]
    known = Mentions({one.text for one in stays if weak.spans(one.text) and not named.spans(one.text)})
    perhaps = []
    for text in texts(rows, FREE_TEXT):
        if _place(text) in items or _GONE.fullmatch(text.text):
            continue
        whole = named.spans(text.text)
        if whole:
            items[_place(text)] = Item(text, whole)
        if spans := _outside(weak.spans(text.text), (*whole, *known.spans(text.text))):
            perhaps.append(Item(text, spans))  # beside what goes too: the surname alone stays there
    return Erasable(
        noun=noun,
        code=code,
        details=(*whom.own, *hers),
        items=(*items.values(), *papers),
        perhaps=tuple(perhaps),
        stays=tuple(Item(one, spans) for one in stays if (spans := named.spans(one.text))),
        alike=tuple(one for one in others if one not in hers),
        unread=unread,
        named=named,
    )


def _place(text: Text) -> tuple[str, int, str]:
    return text.table, text.row, text.column


def _cut(text: str, spans: Sequence[Span], instead: str) -> str:
    """The text with other words in place of some."""
    for start, end in reversed(spans):
        text = text[:start] + instead + text[end:]
    return text


def _outside(spans: Sequence[Span], others: Sequence[Span]) -> tuple[Span, ...]:
    """The places that lie in none of others, as those of the maker's own name, of which she may have the surname."""
    return tuple(one for one in spans if not any(start <= one[0] and one[1] <= end for start, end in others))


def _addresses(own: Sequence[Details]) -> Iterator[str]:
    """Postal addresses, and the street of each, where it has a number."""
    for one in own:
        if one.address:
            yield one.address
            street = one.address.partition(",")[0]
            if any(sign.isdigit() for sign in street) and len(words_of(street)) > 1:
                yield street


def _hits(one: Details, named: Mentions) -> bool:
    return any(named.spans(text) for text in (one.name, one.phone, one.email) if text)


def _differs(one: Details, own: Sequence[Details], named: Mentions) -> bool:
    """Whether another's number or email speaks against its being hers, whatever the name."""
    told = ((one.phone, [mine.phone for mine in own]), (one.email, [mine.email for mine in own]))
    return any(text and any(known) and not named.spans(text) for text, known in told)


def _papers(rows: Rows, named: Mentions, wanted: Sequence[str]) -> tuple[list[Item], int]:
    """The papers that name her or that she asked for, and how many others cannot be searched.

    Raises BadInput for the beginning of a SHA-256 that is too short or that no paper has.
    """
    starts = [one.strip().rstrip("….").casefold() for one in wanted]
    kept: dict[str, list[WholePaper]] = defaultdict(list)  # the same content stands once, whatever it is kept with
    taken, unread = set(), 0
    for paper in whole_papers(rows):
        kept[paper.sha256].append(paper)
        if len(kept[paper.sha256]) > 1:
            continue
        text, plain = _read(paper.content)
        if named.spans(text) or any(paper.sha256.startswith(one) for one in starts):
            taken.add(paper.sha256)
        elif not plain:
            unread += 1
    for one in starts:
        if len(one) < _FEWEST_SIGNS or not any(digest.startswith(one) for digest in kept):
            raise BadInput(f"No paper kept here begins with '{one}', six signs at least; see: soapledger attachments")
    found = [paper for digest in taken for paper in kept[digest]]
    texts = [Text(one.entry, "attachment", one.id, "content", one.name) for one in sorted(found, key=lambda p: p.id)]
    return [Item(one) for one in texts], unread


def _read(content: bytes) -> tuple[str, bool]:
    """A paper as text, and whether it is one: a picture or a PDF shows little of what stands in it."""
    for name in ("utf-16",) if content[:2] in (b"\xff\xfe", b"\xfe\xff") else ("utf-8",):
        try:
            return content.decode(name), b"\0" not in content or name == "utf-16"
        except UnicodeDecodeError:
            break
    return content.decode("latin-1"), False
