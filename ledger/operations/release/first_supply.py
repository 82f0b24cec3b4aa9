"""When and to whom bars under labels of an earlier list were first supplied: said by a person, and written down."""

from dataclasses import dataclass
from datetime import date

from ledger.domain.release.supply import Before
from ledger.errors import BadInput
from ledger.rows.label import first_supplies, supplied_on
from ledger.rows.opened import Rows
from ledger.storage.tables.label import FirstSupply
from ledger.storage.transaction import Transaction


@dataclass(frozen=True)
class FirstSupplied:
    """What a person says of the first supply of the very bars that go out. Raises BadInput where it is to nobody."""

    on: date
    whom: str
    by: str

    def __post_init__(self) -> None:
        """Refuse a supply to nobody."""
        if not self.whom.strip():
            raise BadInput("To whom were these very bars first supplied? Write it like '2026-07-20; Larkmere market'.")


def before_of(rows: Rows, lot_id: int, said: FirstSupplied | None) -> Before | None:
    """The same beside what is booked of that day, without the bars of which it was said before."""
    if said is None:
        return None
    told = sum(one.bars for one in first_supplies(rows, lot_id) if not one.back and one.supplied_on == said.on)
    return Before(said.on, max(0, supplied_on(rows, lot_id, said.on) - told))


def write_first_supply(
    tx: Transaction, lot_id: int, said: FirstSupplied, bars: int, *, on: date, back: bool = False
) -> None:
    """Keep what was said beside the bars that went by it."""
    tx.add(
        FirstSupply(
            lot_id=lot_id,
            on=on,
            bars=bars,
            back=int(back),
            supplied_on=said.on,
            whom=said.whom.strip(),
            by=said.by,
        )
    )
