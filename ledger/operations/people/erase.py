"""Erase whatever names a person, for good; what was done, when and how much stays."""

from collections.abc import Callable, Collection
from dataclasses import dataclass
from pathlib import Path

from ledger.errors import BadInput, Refused
from ledger.rows.opened import Rows
from ledger.storage.book import Book
from ledger.storage.compared import copies_before
from ledger.storage.erasing import Blank, blank
from ledger.storage.personal import forget_person
from ledger.views.people.erasable import Erasable

_WHAT = {
    "customer": "the personal details of customer",
    "supplier": "whom to ask for at supplier",
    "complaint": "who reported complaint",
}


@dataclass(frozen=True)
class Erased:
    """What an erasure took, and the copies beside the ledger that hold it still."""

    code: str  # the short name from then on, which may have been made from the person's own
    copies: tuple[Path, ...]


def erase(
    book: Book,
    find: Callable[[Rows], Erasable],
    *,
    reason: str,
    leave: Collection[int] = (),
    shown: Erasable | None = None,
) -> Erased:
    """Erase what `find` finds of a person, in one entry, and write the file anew.

    `leave` are the numbers of what stays, counted from 1, details first; `shown` is what she was shown and said yes to.
    Raises BadInput for a number that nothing has, or a reason that names the person; Refused when nothing is left to
    erase, when something else was found than shown, or when the file could not be cleared of what was erased.
    """
    with book.look() as rows:
        found = find(rows)
    if shown is not None and (shown.details, shown.items) != (found.details, found.items):
        raise Refused("The ledger was written in meanwhile; look again at what would be erased.")
    every = (*found.details, *found.items)
    if wrong := [one for one in leave if not 1 <= one <= len(every)]:
        raise BadInput(f"Nothing that would be erased has the number {wrong[0]}; leave that out.")
    if found.named.spans(reason):
        raise BadInput("The reason stays for good, and names the person; leave it out, such as: asked by letter.")
    taken = [one for number, one in enumerate(every, 1) if number not in leave]
    details = [one for one in found.details if one in taken]
    items = [one for one in found.items if one in taken]
    if not taken:
        book.sweep()
        raise Refused(f"No personal details are kept of {found.noun} {found.code}; nothing to erase.")
    with book.write(f"{found.noun} erase") as tx:
        for one in details:
            forget_person(tx, one.id, reason)
        blanks = [Blank(*one.text[:4], one.after(tx.entry)) for one in items]
        blank(tx, blanks)
        renamed = [one.after for one in blanks if (one.table, one.column) == (found.noun, "code")]
        code = renamed[0] if renamed else found.code
        places = f" and {len(items)} text{'s' if len(items) != 1 else ''} that named them" if items else ""
        tx.say(f"Erased {_WHAT[found.noun]} {code}{places}: {reason}.")
    book.sweep()
    since = min([*(one.entry for one in details), *(one.text.entry for one in items)])
    return Erased(code, copies_before(book.path, tx.entry, since=since))
