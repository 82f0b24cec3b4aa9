"""Which lots a batch is planned from: first to expire first out, each gram promised once."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date

from ledger.domain.lye.pot import Figures
from ledger.domain.recipe.formulate import Charge, alkali_need
from ledger.domain.recipe.recipe import Recipe
from ledger.errors import BadInput, Refused
from ledger.rows.lot import LotRow, available, find_lot, lot_by_id, lots_of
from ledger.rows.material import MaterialCard, material_by_code
from ledger.rows.opened import Rows
from ledger.rows.settings import settings
from ledger.units.dates import show_best_before, show_date
from ledger.units.quantity import show_mass
from ledger.units.words import AlkaliKind
from ledger.views.material.figures import figures_of


@dataclass(frozen=True)
class Take:
    """So much (mg or pieces) of one lot; no lot where none is set aside yet."""

    card: MaterialCard
    lot: LotRow | None
    quantity: int


@dataclass
class FreeStock:
    """What can be planned with on a date; what one line took is no longer free for the next."""

    rows: Rows
    on: date
    chosen: Mapping[int, str]  # material -> the lot to begin with
    _promised: dict[int, int] = field(default_factory=dict)

    def lots(self, card: MaterialCard) -> list[tuple[LotRow, int]]:
        """The lots of a material with what is free of each, the chosen one first."""
        found = [
            (one.lot, one.free - self._promised.get(one.lot.id, 0)) for one in available(self.rows, card.id, on=self.on)
        ]
        found = [(lot, free) for lot, free in found if free > 0]
        if chosen := self.chosen.get(card.id):
            found.sort(key=lambda pair: pair[0].code != chosen)
        return found

    def take(self, card: MaterialCard, target: int, *, first: str | None = None) -> list[Take]:
        """Fill a line, from one lot or split over several. Raises Refused, saying what is short."""
        found = self.lots(card)
        if first:
            found.sort(key=lambda pair: pair[0].code != first)
        takes, left = [], target
        for lot, free in found:
            if left <= 0:
                break
            part = min(free, left)
            self._promised[lot.id] = self._promised.get(lot.id, 0) + part
            takes.append(Take(card, lot, part))
            left -= part
        if left > 0:
            raise Refused(shortage(self.rows, card, target - left, target, self.on))
        return takes

    def wrap(self, card: MaterialCard, target: int) -> list[Take]:
        """Packaging is wanted only at packing, so what is short now is no reason to refuse."""
        if target <= 0:
            return []
        lot = next((lot for lot, free in self.lots(card) if free >= target), None)
        if lot:
            self._promised[lot.id] = self._promised.get(lot.id, 0) + target
        return [Take(card, lot, target)]

    def alkalis(
        self, recipe: Recipe, charges: Sequence[Charge], named: Mapping[str, MaterialCard]
    ) -> tuple[dict[AlkaliKind, Figures], dict[AlkaliKind, str]]:
        """The figures to reckon each alkali with, by kind, and which lot to begin with.

        One lot that holds enough is taken alone, at its own purity. Where none does, the purest of the
        lots is reckoned with, which errs towards more superfat. Raises Refused when there is none.
        """
        figures: dict[AlkaliKind, Figures] = {}
        first: dict[AlkaliKind, str] = {}
        for line in recipe.of_role("alkali"):
            card, kind = named[line.material], line.kind
            assert kind
            found = [(lot, free, figures_of(card, lot)) for lot, free in self.lots(card)]
            if not found:
                raise Refused(shortage(self.rows, card, 0, None, self.on))
            enough = (
                (lot, known) for lot, free, known in found if free >= alkali_need(recipe, charges, known).weigh_mg
            )
            if alone := next(enough, None):
                first[kind], figures[kind] = alone[0].code, alone[1]
            else:
                figures[kind] = max((known for _, _, known in found), key=lambda one: one.alkali(0).purity_ppm)
        return figures, first


def chosen_lots(
    rows: Rows, using: Mapping[str, str], recipe: Recipe, named: Mapping[str, MaterialCard], on: date
) -> tuple[dict[int, str], dict[str, MaterialCard]]:
    """The lots chosen by hand, by material, and the materials of the recipe with a stock lye in place of flakes.

    Raises BadInput for a material the recipe does not take or a lot of another one; Refused for a lot that
    is not accepted, out of date, or has nothing free.
    """
    chosen: dict[int, str] = {}
    cards = dict(named)
    materials = {named[line.material].id: named[line.material].name for line in recipe.lines}
    for word, code in using.items():
        card, lot = material_by_code(rows, word), find_lot(rows, code, on=on)
        if card.id not in materials:
            raise BadInput(f"The recipe takes no {card.name}; it takes {', '.join(materials.values())}.")
        if lot.material_id != card.id and lot.kind == "alkali" and card.kind == "alkali":
            card = _other_alkali(rows, lot, card, cards)
        if lot.material_id != card.id:
            raise BadInput(f"Lot {lot.code} is {lot.material}, not {card.name}; look at --using.")
        if card.id in chosen:
            raise BadInput(f"Two lots are chosen to begin {card.name} with; name one, the next fills up by itself.")
        now = lot_by_id(rows, lot.id)
        if lot.on > on:
            raise Refused(f"Lot {lot.code} came on {show_date(lot.on)}, after the day of the batch; look at --on.")
        if now.status not in ("accepted", "quarantine"):
            raise Refused(f"Lot {lot.code} ({lot.material}) is {now.status}; choose another.")
        if lot.status == "quarantine":
            raise Refused(f"Lot {lot.code} is in quarantine; accept it first: soapledger lot accept {lot.code}")
        if lot.status != "accepted":
            raise Refused(f"Lot {lot.code} ({lot.material}) is {lot.status}; choose another.")
        if lot.best_before and lot.best_before < on:
            raise Refused(f"Lot {lot.code} was best before {show_best_before(lot.best_before)}; choose another.")
        if lot.id not in {one.lot.id for one in available(rows, card.id, on=on)}:
            raise Refused(f"Lot {lot.code} ({lot.material}) has nothing free; see: soapledger lot show {lot.code}")
        chosen[card.id] = lot.code
    return chosen, cards


def _other_alkali(rows: Rows, lot: LotRow, card: MaterialCard, cards: dict[str, MaterialCard]) -> MaterialCard:
    """A stock lye, or another make, that supplies the line of an alkali of its kind. Raises BadInput for another."""
    other = material_by_code(rows, lot.material_code)
    if other.alkali_kind != card.alkali_kind:
        raise BadInput(
            f"Lot {lot.code} is {other.alkali_kind}, and the recipe reckons with {card.alkali_kind}; choose another."
        )
    for word, one in cards.items():
        if one.id == card.id:
            cards[word] = other
    return other


def shortage(rows: Rows, card: MaterialCard, free: int, target: int | None, on: date) -> str:
    """What is free, what is needed, and which lots there are that cannot be taken, in a sentence."""
    units = settings(rows).units
    asked = f", and {show_mass(target, units)} is needed" if target is not None else ""
    held = [lot for lot in lots_of(rows, card.id) if lot.on_hand > 0]
    hint = ""
    for status, says in (("quarantine", "waits in quarantine"), ("on hold", "is on hold")):
        hint += next((f" Lot {lot.code} {says}." for lot in held if lot.status == status), "")
    if late := next((lot for lot in held if lot.best_before and lot.best_before < on), None):
        assert late.best_before
        hint += f" Lot {late.code} is out of date (best before {show_best_before(late.best_before)})."
    return (
        f"{card.name}: {show_mass(free, units)} of accepted stock is free{asked}.{hint} "
        "Receive more, or plan a smaller batch with --fats."
    )
