"""What a name in a statement is: by the tables, else by what a person said of it."""

from collections.abc import Mapping

from ledger.reference.allergens import allergen_named, entries_of_number, plain
from ledger.rows.material import MeantRow, names_meant
from ledger.rows.opened import Rows
from ledger.units.dates import show_date


class Meanings:
    """Everything that was said of names; of one material before what holds for all, the latest first."""

    def __init__(self, rows: Rows) -> None:
        self._said = {(one.material_id, plain(one.name)): one for one in names_meant(rows)}

    def of(self, name: str, material_id: int | None) -> MeantRow | None:
        """Who said what of a name; nothing for one that is known here, of which nobody says otherwise."""
        if not self._said or allergen_named(name):
            return None
        found = self._said.get((material_id, plain(name))) or self._said.get((None, plain(name)))
        return found if found and (found.meant is None or allergen_named(found.meant)) else None

    def counted(self, stated: Mapping[str, int], material_id: int) -> dict[str, int]:
        """A statement with every name that a person called an entry's under the name of that entry."""
        found: dict[str, int] = {}
        for name, ppm in stated.items():
            said = self.of(name, material_id)
            under = said.meant if said and said.meant else name
            found[under] = found.get(under, 0) + ppm
        return found


def number_words(name: str) -> str | None:
    """A sentence for a CAS number that does not tell which entry it is; nothing for any other name."""
    entries = entries_of_number(name)
    if not entries:
        return None
    others = f" and of {' and of '.join(entries[1:])}" if entries[1:] else ", and of another plant or part as well"
    return f"{name} is a number of {entries[0]}{others}, so it does not tell which."


def said_of(one: MeantRow) -> str:
    """What a person said of a name, who and when."""
    what = f"is {one.meant}" if one.meant else "is the name of no entry"
    return f"'{one.name}' {what}, as {one.by} said on {show_date(one.on)} ({one.reason})"
