"""Work that many tests begin with is done once for each state of a ledger, and its pages are written the next time.

A test that plans the same batch in the same shop as another gets the file that the first one got, in a tenth of
the time. What a test asks about is done all the same: only what was done to the very same bytes is not done again.
Where a test has put something else in the program's place, all is done.
"""

from collections import OrderedDict
from collections.abc import Callable
from copy import deepcopy
from functools import wraps
from pathlib import Path
from types import FunctionType
from typing import Any, ParamSpec, TypeVar
from weakref import WeakSet

import pytest

P, T = ParamSpec("P"), TypeVar("T")

PAGE = 4096
_ITSELF = object()  # the book or the shop was the answer
KEPT = 400  # states; some hundred kilobytes each
_done: OrderedDict[tuple[Any, ...], tuple[list[tuple[int, bytes]], list[Any], Any]] = OrderedDict()

_patching: WeakSet[pytest.MonkeyPatch] = WeakSet()
_setattr = pytest.MonkeyPatch.setattr


def _noted(self: pytest.MonkeyPatch, *args: Any, **more: Any) -> None:
    """Put something in the program's place, and remember who did."""
    _patching.add(self)
    _setattr(self, *args, **more)


pytest.MonkeyPatch.setattr = _noted  # type: ignore[method-assign, assignment]


def _told(one: object) -> object:
    """What a piece of work is given, as it is known by: the way to run commands is the same in every test."""
    return one.__qualname__ if isinstance(one, FunctionType) else one


def once(work: Callable[P, T]) -> Callable[P, T]:
    """For work on a book or a shop that reads no clock but the book's and returns it or plain values."""

    @wraps(work)
    def done(*args: P.args, **more: P.kwargs) -> T:
        if any(not type(target).__module__.startswith("_pytest") for one in _patching for target, *_ in one._setattr):
            return work(*args, **more)
        on: Any = args[0] if args else next(iter(more.values()))  # a fixture is given what it asks for by name
        given = [*args[1:], *list(more.items())[0 if args else 1 :]]
        book: Any = getattr(on, "book", on)
        named = [(key, value) for key, value in vars(on).items() if key != "book"] if book is not on else []
        before = book.path.read_bytes()
        key = (work, hash(before), len(before), book.who, book._now(), repr((named, [*map(_told, given)])))
        if key in _done:
            _done.move_to_end(key)
            pages, entries, answer = _done[key]
            with book.path.open("r+b") as file:
                for at, page in pages:
                    file.seek(at)
                    file.write(page)
            book.handed_over += entries
            return on if answer is _ITSELF else deepcopy(answer)  # type: ignore[no-any-return]
        known = len(book.handed_over)
        answer = work(*args, **more)
        after = book.path.read_bytes()
        pages = [
            (at, after[at : at + PAGE])
            for at in range(0, len(after), PAGE)
            if before[at : at + PAGE] != after[at : at + PAGE]
        ]
        if len(after) >= len(before):  # else the file was swept, which pages do not tell
            _done[key] = (pages, book.handed_over[known:], _ITSELF if answer is on else deepcopy(answer))
        if len(_done) > KEPT:
            _done.popitem(last=False)
        return answer

    return done


_begun: dict[str, bytes] = {}


def typed_once(work: Callable[[], object], ledger: Path) -> None:
    """Commands that each test of a file begins with, on a frozen clock: typed once, then their ledger is copied."""
    named = f"{work.__module__}.{work.__qualname__}"
    if named in _begun:
        ledger.write_bytes(_begun[named])
    else:
        work()
        _begun[named] = ledger.read_bytes()
