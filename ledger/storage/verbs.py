"""What can happen to lots, said of whole sets of them: they come to be, they move, they change places."""

from abc import ABC, abstractmethod
from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from typing import NamedTuple

from ledger.units.codes import supplier_number_key
from ledger.units.words import Verdict, Way


class LotFigures(NamedTuple):
    """What a lot's own certificate says, or what was worked out from what went into it."""

    sap_low_mg_per_kg: int | None = None
    sap_high_mg_per_kg: int | None = None
    purity_ppm: int | None = None
    purity_high_ppm: int | None = None
    water_ppm: int | None = None
    certificate: str | None = None


class FirstDecision(NamedTuple):
    """What a named person decided about a lot on the day it came to be."""

    verdict: Verdict
    by: str
    reason: str | None = None


class NewLot(NamedTuple):
    """A lot that is to be: mg or pieces of a material, and what is known of it."""

    code: str
    material_id: int
    quantity: int
    supplier_number: str | None = None
    best_before: date | None = None
    cost_minor: int | None = None
    mass_mg: int | None = None  # of bars, together
    figures: LotFigures = LotFigures()
    decided: FirstDecision | None = None
    note: str | None = None  # with its first movement


class Moved(NamedTuple):
    """So much (mg or pieces) of one lot that came (above zero) or went (below), and for what."""

    lot_id: int
    quantity: int
    batch_id: int | None = None
    plan_line_id: int | None = None
    customer_id: int | None = None
    money_minor: int | None = None
    note: str | None = None


class LotVerbs(ABC):
    """The three things that happen to lots; whatever may not be, the caller and the guards of the file refuse."""

    @abstractmethod
    def add_rows(self, table: str, rows: Sequence[Mapping[str, object]]) -> Sequence[int]:
        """Write rows of one table, each with the same columns, and return their numbers."""

    def open_lots(
        self,
        lots: Sequence[NewLot],
        *,
        place_id: int,
        on: date,
        batch_id: int | None = None,
        delivery_id: int | None = None,
        supplier_id: int | None = None,
    ) -> Sequence[int]:
        """Book what a delivery brought or a batch gave, each lot with its first movement and decision.

        Returns the numbers of the lots, in the order given.
        """
        source = {"on": on, "batch_id": batch_id, "delivery_id": delivery_id, "supplier_id": supplier_id}
        numbers = self.add_rows("lot", [_lot_row(one) | source for one in lots])
        first = [
            Moved(number, one.quantity, batch_id, note=one.note) for number, one in zip(numbers, lots, strict=True)
        ]
        self.move(first, "received" if batch_id is None else "yielded", place_id=place_id, on=on)
        self.add_rows(
            "decision",
            [
                {"lot_id": number, "on": on, **one.decided._asdict()}
                for number, one in zip(numbers, lots, strict=True)
                if one.decided
            ],
        )
        return numbers

    def move(self, moved: Iterable[Moved], way: Way, *, place_id: int, on: date) -> Sequence[int]:
        """Book what came to a place or went from it on a day, all in one way; returns the numbers, in that order."""
        rows = [one._asdict() | {"kind": way, "place_id": place_id, "on": on} for one in moved]
        return self.add_rows("movement", rows)

    def transfer(
        self, lots: Iterable[tuple[int, int]], *, source_id: int, target_id: int, on: date, note: str | None = None
    ) -> Sequence[int]:
        """Take so much of each lot (its number, mg or pieces) from one place to another: two movements for each.

        Returns the numbers of those that came to the second place, in the order of the lots.
        """
        numbers = self.add_rows(
            "movement",
            [
                {"lot_id": lot_id, "place_id": place_id, "on": on, "quantity": signed, "kind": "moved", "note": note}
                for lot_id, quantity in lots
                for place_id, signed in ((source_id, -quantity), (target_id, quantity))
            ],
        )
        return numbers[1::2]


def _lot_row(lot: NewLot) -> dict[str, object]:
    number = lot.supplier_number
    return {
        "code": lot.code,
        "material_id": lot.material_id,
        "supplier_number": number,
        "supplier_number_key": supplier_number_key(number) if number else None,
        "best_before": lot.best_before,
        "cost_minor": lot.cost_minor,
        "mass_mg": lot.mass_mg,
        **lot.figures._asdict(),
    }
