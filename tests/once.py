"""What the tests of a file begin with, worked up once: the first that asks for it plays it, each gets its own copy."""

import shutil
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from shop import Shop


def begun(built: Callable[..., Any], shop: Shop, play: Callable[..., Any], *given: object) -> Any:
    """Put into the ledger of a test what `play` does to the shop as it stands there; returns what that returned.

    A play is known by its name and by the words and numbers it is given. Commands in it find its ledger.
    """

    def played(book: Any) -> Any:
        with pytest.MonkeyPatch.context() as patch:
            patch.setenv("SOAPLEDGER", str(book.path))
            return play(replace(shop, book=book), *given)

    told = "".join(f" {one}" for one in given if isinstance(one, str | int))
    path, found = built(f"{play.__module__}.{play.__qualname__}{told}", played, shop.book.path)
    shutil.copyfile(path, shop.book.path)
    return found
