"""A workshop with released bars of several products, for tests of stalls."""

from collections.abc import Mapping
from datetime import date, timedelta

from making import LOOKED_GOOD, cut, deliver
from shop import PLAIN_BAR, released_before

from ledger.domain.release.bars import Passing
from ledger.domain.release.releasing import Releasing
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.release.release import pass_bars
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.stock.receive import DeliveryLine
from ledger.storage.book import Book

FIRST = date(2026, 3, 10)  # the first batch is made; each other one a day later
SATURDAY = date(2026, 5, 30)


def bake(book: Book, batches: Mapping[str, int], *, stall: str = "Saturday market") -> dict[str, list[str]]:
    """So many batches of ten bars of each product, made and released on days after each other; their codes by name."""
    add_stall(book, stall)
    many = sum(batches.values())
    deliver(book, DeliveryLine("olive oil", 600_000 * many, "4502/1", 100))
    deliver(book, DeliveryLine("coconut oil", 400_000 * many, "CN-1001", 100))
    deliver(book, DeliveryLine("sodium hydroxide", 1_000_000 * many, "SH 90", 100))
    deliver(book, DeliveryLine("water", 1_000_000 * many, None, 100))
    found: dict[str, list[str]] = {}
    day = FIRST
    for name, number in batches.items():
        code = name.casefold().replace(" ", "-")
        text = PLAIN_BAR.replace("Plain Bar", name).replace("plain-bar", code)
        add_recipe(book, text, file=f"{code}.toml")
        for _ in range(number):
            found.setdefault(name, []).append(release(book, cut(book, code, on=day), on=day + timedelta(30)))
            day += timedelta(1)
    return found


def release(book: Book, code: str, *, on: date) -> str:
    """The bars of a batch passed and released on a day; returns the code."""
    pass_bars(book, code, Passing(on=on, by="Nuala"))
    told = Releasing(on=on, by="Nuala", anyway="a trial", bare="a trial", checks=LOOKED_GOOD)
    released_before(book, code, told)
    return code
