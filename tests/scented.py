"""The plain bar with a scent or what a scent is made of, for tests of what a label says of it and where it may go."""

from datetime import date
from typing import Any

from making import cut, deliver
from once import once
from shop import PLAIN_BAR, Shop

from ledger.domain.release.bars import Passing
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.material.skin import state_contents
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.release.release import pass_bars
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.stock.receive import DeliveryLine
from ledger.storage.book import Book

CANADA = "ca=Nuala Quill; 3 Slip Lane, Port Emmer"
SOURCE = "allergen statement of 2 Mar 2026"


def scented(part: str, name: str, grams: str) -> str:
    """The plain bar with one thing more."""
    text = PLAIN_BAR.replace("plain-bar", "scented").replace("Plain Bar", "Scented")
    return f'{text}\n[[{part}]]\nmaterial = "{name}"\ngrams = {grams}\n'


def three_scents(book: Book) -> None:
    """200 g each of three oils whose INCI names are in no table."""
    for name in ("bay oil", "rosewood oil", "sea scent"):
        add_material(book, MaterialFacts(name, name.upper()), kind="fragrance", code=None)
        deliver(book, DeliveryLine(name, 200_000, f"F-{name[:3]}", 2000))


@once
def bars(shop: Shop, inci: str, *, kind: str = "fragrance", part: str = "fragrance", grams: str = "20") -> str:
    """Ten bars with so much of a thing called 'sea scent', passed for packing on 3 June."""
    add_material(shop.book, MaterialFacts("sea scent", inci), kind=kind, code=None)
    deliver(shop.book, DeliveryLine("sea scent", 200_000, "S-1", 2000))
    add_recipe(shop.book, scented(part, "sea scent", grams), file="s.toml")
    code = cut(shop.book, "scented")
    pass_bars(shop.book, code, Passing(on=date(2026, 6, 3), by="Nuala"))
    return code


def with_camphor(shop: Shop) -> str:
    """Ten bars passed for packing, a stall and a shop; 0.05 % of linalool and of camphor, on the long list alone."""
    state_contents(shop.book, "olive oil", {"linalool": 1_000, "Camphor": 1_000}, source="a statement made up")
    code = cut(shop.book)
    pass_bars(shop.book, code, Passing(on=date(2026, 6, 3), by="Nuala"))
    add_stall(shop.book, "Quay market")
    add_customer(shop.book, CustomerDetails("The Heron"), kind="shop", code="heron")
    return code


def told(run: Any, *words: str, **more: Any) -> str:
    """What a command says, on one line."""
    done = run(*words, **more)
    return " ".join((done.stdout + done.stderr).split())
