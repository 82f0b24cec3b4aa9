"""What several tests begin with, worked up once: the first that asks for it plays it, each gets its own copy."""

import shutil
import zlib
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from making import cut
from shop import Shop


def begun(built: Callable[..., Any], shop: Shop, play: Callable[..., Any], *given: object) -> Any:
    """Put into the ledger of a test what `play` does to the shop as it stands there; returns what that returned.

    A play is known by its name, the words and numbers it is given and what stood there before it; commands in it find
    its ledger.
    """

    def played(book: Any) -> Any:
        with pytest.MonkeyPatch.context() as patch:
            patch.setenv("SOAPLEDGER", str(book.path))
            return play(replace(shop, book=book), *given)

    told = [str(one) for one in given if isinstance(one, str | int)]
    before = f"{zlib.crc32(shop.book.path.read_bytes()):08x}"
    path, found = built(" ".join((play.__module__, play.__qualname__, *told, before)), played, shop.book.path)
    shutil.copyfile(path, shop.book.path)
    return found


def second_cut(shop: Shop) -> str:
    """A second batch of the plain bar, ten bars cut on 6 May; returns its code."""
    return cut(shop.book)
