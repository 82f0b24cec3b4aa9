"""A market stall is added."""

from ledger.errors import BadInput
from ledger.rows.lot import places
from ledger.storage.book import Book
from ledger.storage.tables.stock import Place
from ledger.units.shortcode import short_code
from ledger.units.signs import folded


def add_stall(book: Book, name: str) -> str:
    """Add a market stall by name and return its short name. Raises BadInput when there is one already."""
    with book.write("stall add") as tx:
        known = places(tx.rows)
        if any(folded(one.name) == folded(name) for one in known):
            raise BadInput(f"There is a place '{name}' already.")
        code = short_code(name, {one.code for one in known})
        tx.add(Place(code=code, name=name, kind="stall"))
        tx.say(f"Added stall {name}.")
    return code
