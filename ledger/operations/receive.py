"""Book a supplier's delivery, or her own harvest, as new lots."""

from dataclasses import dataclass
from datetime import date

from ledger.domain.codes import lot_code, supplier_number_key
from ledger.domain.money import share_out
from ledger.errors import BadInput
from ledger.storage.book import Book, Transaction
from ledger.storage.tables import Decision, Delivery, Lot, Movement
from ledger.views.lots import place_of_kind
from ledger.views.material import material_by_code
from ledger.views.supplier import supplier_by_code


@dataclass(frozen=True)
class DeliveryLine:
    """One line of a delivery: mg or pieces, and what it cost; a supplier's number may be unknown (None)."""

    material: str
    quantity: int
    supplier_number: str | None
    cost_minor: int | None
    best_before: date | None = None
    sap_mg_per_kg: tuple[int, int] | None = None
    purity_ppm: int | None = None
    certificate: str | None = None
    hold_back: str | None = None  # the reason it is not accepted with the rest


@dataclass(frozen=True)
class DeliveryNote:
    """A whole delivery, as its note says."""

    supplier: str
    on: date
    lines: tuple[DeliveryLine, ...]
    note_number: str | None = None
    carriage_minor: int = 0
    accepted_by: str | None = None  # None: everything waits in quarantine


@dataclass(frozen=True)
class ReceivedLot:
    """One new lot, and what to write on its container."""

    code: str
    material: str
    quantity: int
    counted: bool
    supplier_number: str | None
    status: str


def next_lot_code(tx: Transaction) -> str:
    """The next lot code; a number once given is never given again, undone or not."""
    number = tx.rows.execute("SELECT count(*) FROM lot WHERE code LIKE 'L%'").fetchone()[0] + 1
    return lot_code(number)


def receive(book: Book, note: DeliveryNote) -> tuple[ReceivedLot, ...]:
    """Book a delivery as new lots, in quarantine until accepted; carriage is shared by what lines cost.

    Raises BadInput for an unknown supplier or material, or figures that do not fit the material.
    """
    if not note.lines:
        raise BadInput('A delivery has at least one line; add --line "olive oil; 5 kg; lot 4471; 32.50".')
    with book.write("receive") as tx:
        supplier = supplier_by_code(tx.rows, note.supplier)
        workshop = place_of_kind(tx.rows, "workshop")
        delivery = tx.add(
            Delivery(
                supplier_id=supplier.id,
                note_number=note.note_number,
                on=note.on,
                carriage_minor=note.carriage_minor,
            )
        )
        costs = [line.cost_minor or 0 for line in note.lines]
        carriage = share_out(note.carriage_minor, costs if any(costs) else [1] * len(costs))
        received = []
        for line, share in zip(note.lines, carriage, strict=True):
            card = material_by_code(tx.rows, line.material)
            _check(line, card.kind, card.name)
            cost = None if line.cost_minor is None else line.cost_minor + share
            lot = tx.add(
                Lot(
                    code=next_lot_code(tx),
                    material_id=card.id,
                    on=note.on,
                    delivery_id=delivery.id,
                    supplier_id=supplier.id,
                    supplier_number=line.supplier_number,
                    supplier_number_key=supplier_number_key(line.supplier_number) if line.supplier_number else None,
                    best_before=line.best_before,
                    cost_minor=0 if supplier.own and cost is None else cost,
                    sap_low_mg_per_kg=line.sap_mg_per_kg[0] if line.sap_mg_per_kg else None,
                    sap_high_mg_per_kg=line.sap_mg_per_kg[1] if line.sap_mg_per_kg else None,
                    purity_ppm=line.purity_ppm,
                    certificate=line.certificate,
                )
            )
            assert lot.id is not None
            tx.add(
                Movement(
                    lot_id=lot.id,
                    place_id=workshop.id,
                    on=note.on,
                    quantity=line.quantity,
                    kind="received",
                )
            )
            accepted = note.accepted_by is not None and line.hold_back is None
            if accepted:
                assert note.accepted_by is not None
                tx.add(Decision(lot_id=lot.id, verdict="accepted", on=note.on, by=note.accepted_by))
            elif line.hold_back:
                tx.add(
                    Decision(
                        lot_id=lot.id,
                        verdict="on hold",
                        on=note.on,
                        by=note.accepted_by or book.who,
                        reason=line.hold_back,
                    )
                )
            status = "accepted" if accepted else "on hold" if line.hold_back else "quarantine"
            received.append(ReceivedLot(lot.code, card.name, line.quantity, card.counted, line.supplier_number, status))
        plural = "lot" if len(received) == 1 else "lots"
        codes = ", ".join(one.code for one in received)
        tx.say(f"Received {len(received)} {plural} from {supplier.name}: {codes}.")
    return tuple(received)


def _check(line: DeliveryLine, kind: str, name: str) -> None:
    if line.quantity <= 0:
        raise BadInput(f"{name}: nothing was received; write how much came, such as 5 kg.")
    if kind in ("soap", "rework"):
        raise BadInput(f"{name} comes from your own batches and is not received from a supplier.")
    if line.sap_mg_per_kg and kind != "fat":
        raise BadInput(f"{name} is not a fat, so it has no saponification value; leave it out.")
    if line.purity_ppm is not None and (kind != "alkali" or not 0 < line.purity_ppm <= 1_000_000):
        raise BadInput(f"{name}: a purity belongs to an alkali and is at most 100 %.")
