"""Book a supplier's delivery, or her own harvest, as new lots."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from ledger.domain.lye.saponification import check_purity
from ledger.errors import BadInput
from ledger.reference.plausible import check_sap, purity_doubt, sap_doubt, sap_range
from ledger.rows.codes import came_alike, came_before, lot_codes_given
from ledger.rows.lot import place_of_kind
from ledger.rows.material import MaterialCard, materials_named
from ledger.rows.opened import Rows
from ledger.rows.people import supplier_by_code
from ledger.storage.book import Book
from ledger.storage.tables.stock import Delivery
from ledger.storage.transaction import Transaction
from ledger.storage.verbs import FirstDecision, LotFigures, NewLot
from ledger.units.codes import lot_code
from ledger.units.dates import show_best_before
from ledger.units.money import share_out
from ledger.units.quantity import WHOLE_PPM
from ledger.units.words import CarriageBy


@dataclass(frozen=True)
class DeliveryLine:
    """One line of a delivery: mg or pieces, and what it cost; a supplier's number may be unknown (None)."""

    material: str
    quantity: int
    supplier_number: str | None
    cost_minor: int | None
    best_before: date | None = None
    sap_mg_per_kg: tuple[int, int] | None = None
    purity_ppm: int | None = None  # of an alkali, or the strength of an acid or a stock lye
    purity_high_ppm: int | None = None
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
    carriage_by: CarriageBy = "value"


@dataclass(frozen=True)
class ReceivedLot:
    """One new lot, and what to write on its container."""

    code: str
    material: str
    quantity: int
    counted: bool
    supplier_number: str | None
    status: str
    cost_minor: int | None  # with its share of the carriage; None: not known
    carriage_minor: int  # that share


def next_lot_code(tx: Transaction) -> str:
    """The next lot code; a number once given is never given again, undone or not."""
    return next_lot_codes(tx, 1)[0]


def next_lot_codes(tx: Transaction, many: int) -> list[str]:
    """The next lot codes, so many of them."""
    given = lot_codes_given(tx.rows)
    return [lot_code(given + n) for n in range(1, many + 1)]


def receive(book: Book, note: DeliveryNote) -> tuple[ReceivedLot, ...]:
    """Book a delivery as new lots, in quarantine until accepted; carriage is shared by what lines cost, or by mass.

    Raises BadInput for an unknown supplier or material, figures that do not fit the material, or carriage by mass where
    something is counted in pieces.
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
                carriage_by=note.carriage_by if note.carriage_minor else None,
            )
        )
        material, codes = materials_named(tx.rows), next_lot_codes(tx, len(note.lines))
        cards = [material(line.material) for line in note.lines]
        costs = [0 if line.cost_minor is None and supplier.own else line.cost_minor for line in note.lines]
        lots, received = [], []
        for code, line, card, paid, share in zip(
            codes, note.lines, cards, costs, carriage_shares(note, cards, costs), strict=True
        ):
            _check(line, card)
            decided = _decided(line, note, book.who)
            cost = None if paid is None else paid + share
            lots.append(_lot(code, line, card, cost, decided))
            status = decided.verdict if decided else "quarantine"
            received.append(
                ReceivedLot(code, card.name, line.quantity, card.counted, line.supplier_number, status, cost, share)
            )
        tx.open_lots(lots, place_id=workshop.id, on=note.on, delivery_id=delivery.id, supplier_id=supplier.id)
        plural = "lot" if len(received) == 1 else "lots"
        tx.say(f"Received {len(received)} {plural} from {supplier.name}: {', '.join(codes)}.")
    return tuple(received)


def _lot(code: str, line: DeliveryLine, card: MaterialCard, cost: int | None, decided: FirstDecision | None) -> NewLot:
    low, high = line.sap_mg_per_kg or (None, None)
    return NewLot(
        code,
        card.id,
        line.quantity,
        supplier_number=line.supplier_number,
        best_before=line.best_before,
        cost_minor=cost,
        figures=LotFigures(
            low,
            high,
            line.purity_ppm,
            line.purity_high_ppm,
            WHOLE_PPM - line.purity_ppm if card.dissolved and line.purity_ppm else None,
            line.certificate,
        ),
        decided=decided,
    )


def _decided(line: DeliveryLine, note: DeliveryNote, who: str) -> FirstDecision | None:
    """A line with a reason to wait is held; the rest waits in quarantine until someone accepts it."""
    if line.hold_back:
        return FirstDecision("on hold", note.accepted_by or who, line.hold_back)
    return None if note.accepted_by is None else FirstDecision("accepted", note.accepted_by)


def carriage_shares(note: DeliveryNote, cards: Sequence[MaterialCard], costs: Sequence[int | None]) -> list[int]:
    """The carriage shared exactly: by what lines cost, evenly where all were free, or by what they weigh.

    A line of unknown cost bears none. Raises BadInput by mass where something is counted in pieces.
    """
    if note.carriage_by == "mass" and note.carriage_minor:
        if pieces := [card.name for card in cards if card.counted]:
            raise BadInput(
                f"{pieces[0]} is counted in pieces and not weighed, so the carriage cannot be shared by mass; leave "
                "--carriage-by out, or book it as a delivery of its own."
            )
        weights = [0 if cost is None else line.quantity for line, cost in zip(note.lines, costs, strict=True)]
    else:
        weights = [cost or 0 for cost in costs]
    if not any(weights):
        weights = [0 if cost is None else 1 for cost in costs]
    return share_out(note.carriage_minor, weights) if any(weights) else weights


def _check(line: DeliveryLine, card: MaterialCard) -> None:
    kind, name = card.kind, card.name
    if line.quantity <= 0:
        raise BadInput(f"{name}: nothing was received; write how much came, such as 5 kg.")
    if kind in ("soap", "rework"):
        raise BadInput(f"{name} comes from your own batches and is not received from a supplier.")
    if line.sap_mg_per_kg:
        low, high = line.sap_mg_per_kg
        if kind not in ("fat", "intermediate"):
            raise BadInput(f"{name} is not a fat, so it has no saponification value; leave it out.")
        check_sap(name, low, high)
    if line.purity_ppm is not None:
        if kind != "alkali" and card.acid_koh_mg_per_kg is None:
            raise BadInput(f"{name} is neither an alkali nor an acid, so it has no purity here; leave it out.")
        for ppm in (line.purity_ppm, line.purity_high_ppm or line.purity_ppm):
            if kind == "alkali":
                check_purity(ppm, what=name, dissolved=card.dissolved)
            elif not 0 < ppm <= WHOLE_PPM:
                raise BadInput(f"{name}: a strength of {ppm / 10_000:g} % cannot be; it lies above 0, up to 100 %.")


def _sap_doubt(card: MaterialCard, low: int, high: int) -> str | None:
    """A value far from the published ones, or from what she has for the material."""
    if doubt := sap_doubt(card.name, card.reference_key, low, high):
        return doubt
    usual_low, usual_high = card.sap_low_mg_per_kg, card.sap_high_mg_per_kg
    if usual_low is None or usual_high is None:
        return None
    if low * 100 < usual_low * 95 or high * 100 > usual_high * 105:  # common practice, no source
        usual = sap_range(usual_low, usual_high)
        return (
            f"{card.name}: the saponification value {sap_range(low, high)} lies far from the {usual} known for it, "
            "and the lye would follow it."
        )
    return None


def doubts(rows: Rows, note: DeliveryNote) -> tuple[str, ...]:
    """What to look at twice before a delivery is booked, a sentence for each; she decides.

    A number of this supplier's that came before for the same material, a best-before that has passed, a
    saponification value far from what the material has. Raises BadInput like `receive`.
    """
    supplier = supplier_by_code(rows, note.supplier)
    found, material = [], materials_named(rows)
    for line in note.lines:
        card = material(line.material)
        _check(line, card)
        if line.supplier_number and (codes := came_before(rows, supplier.id, card.code, line.supplier_number)):
            found.append(f"{card.name} came before under their number {line.supplier_number}, as {', '.join(codes)}.")
        if (
            supplier.own
            and not line.supplier_number
            and (codes := came_alike(rows, supplier.id, card.code, note.on, line.quantity))
        ):
            found.append(f"As much {card.name} came from there on that day already, as {', '.join(codes)}.")
        if line.best_before and line.best_before < note.on:
            found.append(f"{card.name} was best before {show_best_before(line.best_before)}, before it came.")
        if line.purity_ppm is not None and card.alkali_kind and not card.dissolved:
            found += (
                [one]
                if (one := purity_doubt(card.name, card.alkali_kind, line.purity_ppm, line.purity_high_ppm))
                else []
            )
        if line.sap_mg_per_kg and (doubt := _sap_doubt(card, *line.sap_mg_per_kg)):
            found.append(doubt)
    return tuple(found)
