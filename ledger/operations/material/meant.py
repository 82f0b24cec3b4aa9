"""Book what a person says that a name in a statement is, and the peroxide value of an oil."""

from dataclasses import dataclass
from datetime import date

from ledger.errors import BadInput
from ledger.reference.allergens import allergen_named, names_to_propose, plain
from ledger.rows.lot import find_lot
from ledger.rows.material import constituents_known, material_by_code
from ledger.storage.book import Book
from ledger.storage.tables.material import NameMeant, Peroxide
from ledger.units.names import near

_HIGHEST_UMOL_PER_L = 10_000_000  # far above any oil that is still used (common practice, no source)


@dataclass(frozen=True)
class Meaning:
    """What a name in statements is: an entry by any of its names, or none; by whom, and why."""

    name: str
    is_entry: str | None
    on: date
    by: str
    reason: str
    material: str | None = None  # for this one alone


def say_what_it_is(book: Book, said: Meaning) -> str | None:
    """Book it and return the label name of the entry, or None for none; a later word stands in its place.

    Raises BadInput for a name that is known here already, one that stands in no statement, or an entry that is none.
    """
    entry = allergen_named(said.is_entry) if said.is_entry is not None else None
    if said.is_entry is not None and entry is None:
        close = near(said.is_entry, names_to_propose(), 1, cutoff=0.7)
        hint = f" Did you mean {close[0]}?" if close else ""
        raise BadInput(f"'{said.is_entry}' is no entry known here.{hint} Write the name a label would print.")
    if own := allergen_named(said.name):
        raise BadInput(f"'{said.name}' is known here: it is {own.name} ({own.entry}), and nobody says otherwise.")
    if not said.reason.strip():
        raise BadInput("Why is it that? Add --reason, such as 'their letter of 2 Mar 2026'.")
    with book.write("material means") as tx:
        written = {plain(one): one for one in constituents_known(tx.rows)}
        if plain(said.name) not in written:
            close = near(said.name, written.values(), 1)
            hint = f" Did you mean {close[0]}?" if close else ""
            raise BadInput(f"'{said.name}' stands in no statement here.{hint}")
        card = material_by_code(tx.rows, said.material) if said.material else None
        name, meant = written[plain(said.name)], entry.name if entry else None
        tx.add(
            NameMeant(
                material_id=card.id if card else None,
                name=name,
                meant=meant,
                on=said.on,
                by=said.by,
                reason=said.reason.strip(),
            )
        )
        where = f" in {card.name}" if card else ""
        tx.say(f"Said that {name}{where} is {meant or 'no entry'}, by {said.by}.")
    return meant


def state_peroxide(book: Book, material: str, umol_per_l: int, *, source: str, lot: str | None = None) -> str:
    """Book the peroxide value of a material or of one lot; returns what it is of. A later one stands in its place.

    Raises BadInput for a value that cannot be, no source, or a lot of another material.
    """
    if not 0 <= umol_per_l <= _HIGHEST_UMOL_PER_L:
        raise BadInput(f"A peroxide value of {umol_per_l / 1000:g} mmol/L cannot be; look at the certificate again.")
    if not source.strip():
        raise BadInput("Where does it stand? Add --source, such as 'certificate 114 of 2 Mar 2026'.")
    with book.write("material peroxide") as tx:
        card = material_by_code(tx.rows, material)
        mine = find_lot(tx.rows, lot) if lot else None
        if mine and mine.material_id != card.id:
            raise BadInput(f"Lot {mine.code} is {mine.material}, not {card.name}; look at --lot.")
        tx.add(
            Peroxide(
                material_id=card.id,
                lot_id=mine.id if mine else None,
                umol_per_l=umol_per_l,
                source=source.strip(),
            )
        )
        where = f"{card.name}, lot {mine.code}" if mine else card.name
        tx.say(f"Peroxide value of {where}: {umol_per_l / 1000:g} mmol/L.")
    return where
